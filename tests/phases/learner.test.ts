/** The learner's edition: the bench's plan and numbers, an operation a picture, words, questions and answers; nothing upon anything else. */
import { describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import { drawDial } from '../../src/drawing/sheet/dial.ts';
import type { LessonShown, PlainPage } from '../../src/model/sheet.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { writeText } from '../../src/render/text.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { filled, headless, orphans } from '../drawing/sheet-fill.ts';
import { everyPlan, oneInThree } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

const means = { words: allWords(), advances: ADVANCES, language: 'en' } as const;
/** Share of a page's room. */
const LEAST_FILLED = 0.25;
const SPECS = ['launch-feed-check-valve', 'parts/drain-plug', 'parts/pump-ram'];
const plans = everyPlan.filter(({ spec }) => SPECS.includes(spec));
const lessonsOf = (pages: readonly { readonly kind: string }[]): readonly LessonShown[] =>
  pages
    .filter((page): page is PlainPage => page.kind === 'plain')
    .flatMap((page) => page.sections.flatMap((s) => (s.kind === 'lessons' ? s.lessons : [])));

it('there are these specs', () => {
  expect(plans.length).toBe(SPECS.length);
});

describe.each(plans)('$spec', ({ plan, stages }) => {
  const { view, document } = sheet(plan, stages, { ...means, edition: 'learner' });
  const bench = sheet(plan, stages, means).view;
  const lessons = lessonsOf(view.pages);

  it('has a lesson for every operation, once, with why and how to tell', () => {
    const wanted = plan.parts.flatMap(({ part, route }) => route.setUps.flatMap((s) => s.operations).map((_, i) => `${part.id} ${i}`));
    expect(lessons.map((l) => `${l.part} ${l.step}`).sort()).toEqual([...wanted].sort());
    for (const { boxes } of lessons) expect(boxes.map((b) => b.heading)).toEqual(expect.arrayContaining(['Why here', 'How to tell']));
  });
  it('has the same numbers as the bench edition, row by row', () => {
    const rows = bench.pages.flatMap((page) => (page.kind === 'grip' ? page.blocks.flatMap((b) => b.rows) : []));
    for (const row of rows) {
      const lesson = lessons.find((l) => l.part === row.op.slice(0, row.op.indexOf('/')) && l.number === row.number);
      const texts = (lesson?.facts ?? []).map((f) => f.text).join(' | ');
      for (const s of row.sizes) expect(texts.replaceAll('· ', '')).toContain(`${s.text}${s.limits ? ` ${s.limits}` : ''}`.trim());
      expect(texts).toContain(row.rpm);
    }
    expect(view.mark).toBe(bench.mark);
  });
  it('draws a dial where the plan has a reading, at that reading, and says from where where that is not the first touch', () => {
    for (const { part, figures, route } of plan.parts)
      for (const { op, dial, zero } of figures) {
        const step = route.setUps.flatMap((s) => s.operations).indexOf(op);
        const shown = lessons.find((l) => l.part === part.id && l.step === step)?.dial;
        expect(shown?.turns).toBe(dial?.turns);
        if (!dial || !shown) continue;
        expect(shown.says.endsWith(', from the lips')).toBe(zero?.at === 'lips');
        const { turn, division } = plan.workshop.lathe.dials[dial.which] ?? { turn: 0, division: 1 };
        expect(shown.round).toBe(turn / division);
        expect(Math.abs(dial.turns * turn + shown.divisions * division - dial.total)).toBeLessThanOrEqual(division);
      }
  });
  it('asks questions that it answers, and says only words that it uses', () => {
    const items = (key: string): number =>
      view.pages
        .flatMap((p) => (p.kind === 'plain' && p.key === key ? p.sections : []))
        .reduce((n, s) => n + (s.kind === 'notes' ? s.items.length : 0), 0);
    expect(items('learner/questions')).toBeGreaterThan(0);
    expect(items('learner/answers')).toBe(items('learner/questions'));
    const text = writeText(view, document);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  });
});

describe('every spec', () => {
  it.each(oneInThree(2))(
    '$spec has no text on another or outside the margins, no page nearly empty, no orphan, no table without heads',
    (each) => {
      const { pages } = sheet(each.plan, each.stages, { ...means, edition: 'learner' }).document;
      const faults = pages.flatMap((page, i) => {
        const empty = filled(page) < LEAST_FILLED && i < pages.length - 1 ? [`filled ${filled(page)}`] : [];
        return [...faultsOf(page), ...empty, ...orphans(page), ...headless(page)].map((fault) => `${i + 1}: ${fault}`);
      });
      expect(faults).toEqual([]);
    },
  );
});

describe('the drawn dial', () => {
  it.each([
    [50, 0, 0, 90],
    [50, 2, 12.5, 0],
    [100, 1, 50, -90],
  ])('of %i divisions at %i turns and %d: its hand points to %d degrees', (round, turns, divisions, degrees) => {
    const items = drawDial({ advances: ADVANCES }, { round, turns, divisions, says: '' });
    const head = items.find((i) => i.kind === 'path' && i.fill === 'new');
    const [tip] = head?.kind === 'path' ? head.segments : [];
    if (tip?.to !== 'move') throw new Error('no hand');
    const middle = 14.5;
    expect(Math.round((Math.atan2(middle - tip.y, tip.x - middle) * 180) / Math.PI)).toBe(degrees);
    expect(collisions({ width: 29, height: 29, items, boxes: [], alt: '' })).toEqual([]);
  });
});
