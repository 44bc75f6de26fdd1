/** What the hand needs at that moment, row by row: each was missing, or said what is not so. */
import { describe, expect, it } from 'vitest';
import type { LessonShown } from '../../src/model/sheet.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { gripsOf, rowsOf, words } from '../fixtures/views.ts';
import { ADVANCES } from '../render/assets.ts';

const all = everyPlan.flatMap(({ spec, plan }) => plan.parts.map((part) => ({ spec, plan, ...part })));
const rows = everyPlan.flatMap(({ spec }) => gripsOf(spec).flatMap((page) => rowsOf(page).map((row) => ({ spec, page, row }))));

describe('a drill', () => {
  const eased = words.say('rule.drill-break-through.title');
  it('that ends in the bar breaks through nowhere, and its row does not say so', () => {
    const drilled = all.flatMap(({ spec, part, route, figures }) =>
      route.setUps
        .filter(({ grip }) => grip.kind === 'bar' || grip.kind === 'bar-and-centre')
        .flatMap(({ operations }) => operations.flatMap((op) => figures.filter((one) => one.op === op && one.zero?.at === 'point')))
        .map((one) => ({ key: `${spec} ${part.id} ${one.op}`, comesOut: one.comesOut })),
    );
    expect(drilled.length).toBeGreaterThan(40);
    expect(drilled.filter(({ comesOut }) => comesOut)).toEqual([]);
    expect(rows.filter(({ row, page }) => row.says.includes(eased) && page.hold[0]?.title.startsWith('Bar '))).toEqual([]);
  });
});

describe('a D-bit in the second grip', () => {
  it('comes out at the seat: nothing stands before it there', () => {
    const seat = all.find(({ spec, part }) => spec === 'launch-feed-check-valve' && part.id === 'seat-piece');
    expect(seat?.figures.filter(({ comesOut }) => comesOut).map(({ op }) => op)).toEqual(['seat-piece/bore/d-bit']);
  });
});

describe('a parting blade', () => {
  const blades = all.flatMap(({ spec, plan, part, route, chart, figures }) =>
    route.setUps.flatMap(({ operations, grip }) =>
      operations
        .map((op) => route.chosen.flatMap((m) => m.operations).find(({ id }) => id === op))
        .filter((op) => op?.verb === 'part-off' || op?.verb === 'cut-stub')
        .map((op) => {
          const end = part.features.find((f) => f.kind === 'end' && f.end === grip.out);
          const working = chart.working.find((w) => w.op === op?.id && w.measures === 'length');
          return {
            key: `${spec} ${op?.id}`,
            plan,
            end,
            working,
            width: op?.tool.size ?? 0,
            along: figures.find((f) => f.op === op?.id)?.along,
          };
        }),
    ),
  );
  it('is set by the carriage: the length that it leaves and its own width, from the face that was cut', () => {
    expect(blades.length).toBeGreaterThan(20);
    for (const { key, plan, along } of blades)
      expect([key, along !== undefined]).toEqual([key, plan.workshop.lathe.dials.carriage !== undefined]);
    const fromEnd = blades.filter(({ end, working }) => end?.kind === 'end' && working?.from === end.face);
    expect(fromEnd.length).toBeGreaterThan(10);
    for (const { key, working, width, along } of fromEnd) expect([key, along?.total]).toEqual([key, (working?.limits.target ?? 0) + width]);
  });
  it('says what that counts from', () => {
    const parted = rows.filter(({ row }) => row.title.startsWith('Part off') && row.dial.includes('carriage'));
    expect(parted.length).toBeGreaterThan(10);
    for (const { row } of parted) expect(row.under).toMatch(/from its left side on [A-Z]/);
  });
});

describe('the checkpoint', () => {
  it('asks for sizes where some were measured, and for a thread what mends that thread', () => {
    for (const { page } of rows) {
      const done = page.blocks.flatMap((block) => block.rows);
      const said = page.checkpoint.text.join(' ');
      expect(said.includes('Write the sizes down') && !done.some((row) => row.measure === 'box')).toBe(false);
      const verbs = done.map((row) => row.op.split('/').at(-1) ?? '');
      expect([page.key, said.includes('same tap')]).toEqual([page.key, verbs.some((verb) => verb === 'tap')]);
    }
  });
});

describe('a lesson', () => {
  const lessons = everyPlan
    .filter(({ spec }) => spec === 'launch-feed-check-valve')
    .flatMap(({ plan, stages }) => sheet(plan, stages, { words, advances: ADVANCES, language: 'en', edition: 'learner' }).view.pages)
    .flatMap((page) => (page.kind === 'plain' ? page.sections.flatMap((s) => (s.kind === 'lessons' ? [s.lessons] : [])) : []));
  const reasons = (lesson: LessonShown): readonly string[] =>
    lesson.boxes.find((box) => box.heading === 'Why here')?.text.split('\n') ?? [];

  it('teaches a reason once a page, unless it has no other', () => {
    for (const page of lessons) {
      const told = new Set<string>();
      for (const lesson of page) {
        const held = reasons(lesson).filter((reason) => reason.startsWith('After '));
        const again = held.filter((reason) => told.has(reason));
        expect([lesson.number, again.length === 0 || again.length === reasons(lesson).length]).toEqual([lesson.number, true]);
        for (const reason of held) told.add(reason);
      }
    }
  });
  it('says of each wrong order what comes of it, by the same numbers', () => {
    for (const lesson of lessons.flat()) {
      const wrong = lesson.boxes.find((box) => box.heading === 'What goes wrong otherwise')?.text.split('\n') ?? [];
      const numbers = wrong.flatMap((line) => line.match(/^Done before ([\d, ]+):/)?.[1] ?? []);
      const after = reasons(lesson).flatMap((line) => line.match(/^After ([\d, ]+):/)?.[1] ?? []);
      expect(numbers.filter((one) => !after.includes(one))).toEqual([]);
    }
  });
});
