/**
 * Every page of every spec that can be planned: no mark of a picture on another or outside its frame, no text of a page on another or
 * outside the margins, every balloon and the datum placed. Prints how far down the ladder the pictures had to go.
 */
import { afterAll, describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import type { RungUsed, StagePicture } from '../../src/drawing/stage.ts';
import { signedCautions, signsOf } from '../../src/handbook/signs.ts';
import type { PathItem, Picture } from '../../src/model/display.ts';
import type { GripPage } from '../../src/model/sheet.ts';
import { WISHES } from '../../src/model/wish.ts';
import { dangersOf } from '../../src/phases/sheet/dangers.ts';
import { type Drawn, sheet } from '../../src/phases/sheet.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { filled, headless, orphans } from '../drawing/sheet-fill.ts';
import { everyPlan, oneInThree } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

/** Share of a page's room. */
const LEAST_FILLED = 0.25;

const words = allWords();
const IN = { mm: everyPlan, inch: oneInThree(0) } as const;
const sheets = WISHES.units.flatMap((units) =>
  IN[units].map(({ spec, plan, stages }) => ({
    ...{ spec, units, plan },
    ...sheet(plan, stages, { words, advances: ADVANCES, language: 'en', units }),
  })),
);
const drawn: readonly (Drawn & { readonly spec: string })[] = sheets.flatMap(({ spec, drawn }) => drawn.map((d) => ({ ...d, spec })));
const named = (picture: Picture): readonly string[] => collisions(picture).map(([a, b]) => `${a.what} on ${b.what}`);

describe.each(sheets)('$spec, $units', ({ document, view, drawn, plan }) => {
  it('has its cautions on the cover, each with the signs that were chosen for it', () => {
    const cautions = dangersOf(plan).map(({ id }) => id);
    expect(cautions.filter((id) => !signedCautions.includes(id))).toEqual([]);
    const [shown = []] = view.pages.flatMap((page) =>
      page.kind === 'plain' ? page.sections.flatMap((s) => (s.kind === 'cautions' ? [s.cautions] : [])) : [],
    );
    expect(shown.map(({ signs }) => signs.map(({ id }) => id))).toEqual(cautions.map(signsOf));
    const alts = document.pages.flatMap((p) => p.items.flatMap((i) => (i.within ?? []).flatMap((m) => (m.is === 'figure' ? [m.alt] : []))));
    expect(alts).toEqual(expect.arrayContaining(shown.flatMap(({ signs }) => signs.map(({ name }) => name))));
  });

  it('has no text on another or outside the margins', () => {
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });

  it('has no page nearly empty but perhaps the last, no orphan heading, no table without its heads', () => {
    const { pages } = document;
    expect(pages.flatMap((page, i) => (filled(page) < LEAST_FILLED && i < pages.length - 1 ? [`${i + 1}: ${filled(page)}`] : []))).toEqual(
      [],
    );
    expect(pages.flatMap((page, i) => orphans(page).map((title) => `${i + 1}: ${title}`))).toEqual([]);
    expect(pages.flatMap((page, i) => headless(page).map((cell) => `${i + 1}: ${cell}`))).toEqual([]);
  });

  it('has a picture for every page of work, and nothing in it on anything else or outside its frame', () => {
    // tooling made in place is made again for each hold that it serves; bench work of its own page has its picture too
    expect(drawn.map(({ key }) => key)).toEqual(view.pages.flatMap((page) => (page.kind === 'grip' ? [page.key] : [])));
    expect(drawn.flatMap(({ key, picture }) => named(picture).map((fault) => `${key}: ${fault}`))).toEqual([]);
  });

  it('places every balloon and the datum, and every length by its value or its letter', () => {
    expect(drawn.flatMap(({ key, picture }) => picture.unplaced.map((id) => `${key}: ${id}`))).toEqual([]);
    for (const { asked, picture } of drawn) {
      const texts = picture.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
      const wanted = asked.lengths.flatMap((d) => (picture.lettered.includes(d.id) ? (d.letter ? [d.letter] : []) : [d.text[0] ?? '']));
      expect(texts).toEqual(expect.arrayContaining(wanted));
    }
  });

  it('has the letter of every face that a length of its picture is counted from', () => {
    const marks = drawn.map(({ picture }) => picture.boxes.flatMap(({ what }) => (what.includes(' origin-') ? [what.split('-')[1]] : [])));
    const asked = drawn.map(({ asked }) => (asked.origins ?? []).map(({ letter }) => letter));
    expect(marks.map((each) => [...new Set(each)].sort())).toEqual(asked.map((each) => [...each].sort()));
  });

  it('has every letter that a row of its page counts from or to', () => {
    const missing = drawn.flatMap(({ key, picture }) => {
      const page = view.pages.find((one): one is GripPage => one.kind === 'grip' && one.key === key);
      const said = (page?.blocks[0]?.rows ?? []).map((row) => `${row.sizes.map(({ after }) => after).join(' ')} ${row.under}`).join(' ');
      const letters = picture.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
      return [...said.matchAll(/\b(?:from|on|to) ([A-Z])\b/g)].flatMap(([, one = '']) => (letters.includes(one) ? [] : [`${key}: ${one}`]));
    });
    expect(missing).toEqual([]);
  });
});

describe('what is not of revolution', () => {
  const done = (key: string): readonly string[] =>
    (drawn.find((d) => d.spec === 'launch-feed-check-valve' && d.key === key)?.asked.stage.sides ?? []).map((s) => s.does);

  it.each([
    ['body/0', []],
    // under the drill: the hole that is being drilled is seen with it
    ['body/1', []],
    ['body/3', ['flats', 'cross-hole', 'branch']],
    ['body/4', ['flats', 'cross-hole', 'branch']],
    // filed at the bench when it is parted off, on the same page
    ['seat-piece/0', ['flats']],
    ['seat-piece/2', ['flats']],
  ])('%s shows what was made before it: %j', (key, sides) => {
    expect([...done(key)].sort()).toEqual([...sides].sort());
  });

  it('a picture with flats has the half of their diagonals that lies below the axis', () => {
    const one = drawn.find((d) => d.key === 'seat-piece/2');
    if (!one) throw new Error('the seat piece has no second grip');
    const slanting = (picture: StagePicture): readonly PathItem[] =>
      picture.items.filter((i): i is PathItem => {
        const [a, b] = i.kind === 'path' ? i.segments : [];
        return i.kind === 'path' && i.stroke?.ink === 'black' && a?.to === 'move' && b?.to === 'line' && a.x !== b.x && a.y > b.y;
      });
    const meet = slanting(one.picture).map((i) => i.segments[1]);
    const pairs = meet.filter(
      (p, i) => p && p.to === 'line' && meet.some((q, j) => j > i && q?.to === 'line' && q.x === p.x && q.y === p.y),
    );
    expect(pairs.length).toBe(1);
  });
});

describe('holds', () => {
  it('a mandrel of the plan is drawn as its own half-section, its register against the datum', () => {
    const held = drawn.filter((d) => d.asked.hold.kind === 'threaded-mandrel');
    expect(held.length).toBeGreaterThan(2);
    for (const { asked } of held) {
      const { tooling, datum } = asked.hold;
      expect(tooling?.outline.some((p) => p.z === datum?.z)).toBe(true);
      expect(tooling?.threads?.length).toBe(1);
    }
  });
});

afterAll(() => {
  const share = (is: (rung: RungUsed) => boolean): string => `${drawn.filter((d) => is(d.picture.rung)).length}`;
  const lines = [
    `${drawn.length} pictures of ${everyPlan.length} specs, in ${WISHES.units.join(' and ')}`,
    `all values: ${share((r) => r.step === 'whole')}, some as letters: ${share((r) => r.step === 'letters')}, only clear of each other: ${share((r) => r.step === 'clear')}`,
    `scales below the largest: ${[0, 1, 2, 3].map((n) => `${n} in ${share((r) => r.smaller === n)}`).join(', ')}`,
    `arrangements: ${[0, 1, 2, 3, 4, 5, 6].map((n) => `${n} in ${share((r) => r.arrangement === n)}`).join(', ')}`,
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
});
