/** The exercise of every spec: strips and answers on paper, and orders marked. */
import { describe, expect, it } from 'vitest';
import { isRight } from '../../src/base/orders.ts';
import { exerciseOf, exercisePages, markOrder, readOrder } from '../../src/phases/sheet/exercise.ts';
import { writeText } from '../../src/render/text.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { filled, headless, orphans } from '../drawing/sheet-fill.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

const words = allWords();
const means = { words, advances: ADVANCES, language: 'en' };
const parts = everyPlan.flatMap(({ spec, plan }) => plan.parts.map(({ part }) => ({ spec, plan, part: part.id })));

describe.each(everyPlan)('$spec', ({ plan }) => {
  const ids = plan.parts.map(({ part }) => part.id);
  const { document, view } = exercisePages(plan, ids, means);

  it('has strips and answers with nothing on anything else or outside the margins', () => {
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });

  it('wastes no paper: every sheet of strips but the last is filled, none has a heading with nothing under it', () => {
    const sheets = document.pages.filter((page) => page.items.some((item) => item.kind === 'text' && item.text === 'Put in order'));
    expect(sheets.length).toBeGreaterThan(0);
    for (const sheet of sheets.slice(0, -1)) expect(filled(sheet)).toBeGreaterThan(0.8);
    expect(document.pages.flatMap((page) => [...orphans(page), ...headless(page)])).toEqual([]);
  });

  it('has no letter twice in a part, and every operation on a strip', () => {
    for (const { part, route } of plan.parts) {
      const { strips } = exerciseOf(plan, part.id, words);
      expect(new Set(strips.map((s) => s.letter)).size).toBe(strips.length);
      expect(strips.map((s) => s.op).sort()).toEqual(route.setUps.flatMap((s) => s.operations).sort());
    }
  });

  it('has its sizes in inches where that is asked for, and the same letters on the same operations', () => {
    const inches = plan.parts.flatMap(({ part }) => exerciseOf(plan, part.id, words, 'inch').strips);
    const metric = plan.parts.flatMap(({ part }) => exerciseOf(plan, part.id, words).strips);
    expect(inches.map(({ letter, op }) => [letter, op])).toEqual(metric.map(({ letter, op }) => [letter, op]));
    const sized = metric.flatMap((strip, i) => (/\d\.\d\d/.test(strip.size) ? [[strip.size, inches[i]?.size ?? '']] : []));
    expect(sized.length).toBeGreaterThan(0);
    for (const [mm, inch] of sized) expect(inch).not.toBe(mm);
  });

  it('says the same as text, and keeps the answers apart', () => {
    const text = writeText(view, document);
    expect(text.indexOf('Answers')).toBeGreaterThan(text.lastIndexOf('Put in order'));
    const said = document.pages.map((page) => page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join('\n'));
    expect(said.filter((sheet) => sheet.includes('Put in order') && sheet.includes('right orders'))).toEqual([]);
  });
});

describe('marking', () => {
  it.each(parts)("$spec, $part: the plan's own order is right, and nothing is to be moved", ({ plan, part }) => {
    const { puzzle, strips } = exerciseOf(plan, part, words);
    const order = [...strips].sort((a, b) => a.place - b.place);
    expect(markOrder(puzzle, strips, order)).toMatchObject({ right: true, broken: [], interrupted: [], move: [] });
  });

  it.each(parts.slice(0, 40))('$spec, $part: the shuffled order is mended by what is told', ({ plan, part }) => {
    const { puzzle, strips } = exerciseOf(plan, part, words);
    const marked = markOrder(puzzle, strips, strips);
    const put = marked.mended.map((s) => s.place);
    expect(isRight(puzzle.ordering, put)).toBe(true);
    expect(marked.right).toBe(marked.move.length === 0);
    expect(marked.mended.filter((s) => !marked.move.includes(s))).toEqual(strips.filter((s) => !marked.move.includes(s)));
  });

  const demo = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve');
  if (!demo) throw new Error('the demo is not planned');
  const seat = exerciseOf(demo.plan, 'seat-piece', words);
  const inOrder = [...seat.strips].sort((a, b) => a.place - b.place);
  const named = (verb: string) => inOrder.filter((s) => seat.desk.operation(s.op).verb === verb);

  it.each([
    ['the last facing cut before the drill that it is there to mend', 'face', 'drill', 'seat-face-after-drill'],
    ['the D-bit before the start that guides it', 'd-bit', 'bore-start', 'start-bore-before-d-bit'],
  ])('%s is told with its rule', (_, late, early, rule) => {
    const [a, b] = [named(late).find((s) => s.title.includes('seat')) ?? named(late)[0], named(early)[0]];
    if (!a || !b) throw new Error('no such operations');
    const swapped = inOrder.map((s) => (s === a ? b : s === b ? a : s));
    const marked = markOrder(seat.puzzle, seat.strips, swapped);
    expect(marked.right).toBe(false);
    expect(marked.broken.map((x) => x.because.rule)).toContain(rule);
    expect(marked.move.length).toBeLessThanOrEqual(2);
  });

  it('a hold that is left and come back to is told', () => {
    const [bench] = inOrder.filter((s) => s.hold === 'At the bench');
    if (!bench) throw new Error('no bench work');
    const others = inOrder.filter((s) => s !== bench);
    const marked = markOrder(seat.puzzle, seat.strips, [others[0] ?? bench, bench, ...others.slice(1)]);
    expect(marked.interrupted.length).toBe(1);
    expect(marked.move).toEqual([bench]);
  });

  it('reads letters a line or several, and tells every mistake with its place', () => {
    const letters = seat.strips.map((s) => s.letter);
    expect(readOrder(letters.join(' '), 'o', seat.strips).value).toEqual(seat.strips);
    expect(readOrder(seat.strips.map((s) => `${s.letter.toLowerCase()}. ${s.title}`).join('\n'), 'o', seat.strips).value).toEqual(
      seat.strips,
    );
    const { found } = readOrder('# mine\nA\n7\nA', 'o', seat.strips);
    expect(found.map((d) => [d.code, d.place?.line])).toEqual([
      ['order.unknown-strip', 3],
      ['order.strip-twice', 4],
      ['order.strips-missing', undefined],
    ]);
  });
  it('names each letter that is mistyped on a line of letters, and takes the others as they stand', () => {
    const { found } = readOrder(`A B 7\n?, C`, 'o', seat.strips);
    expect(found.filter((d) => d.code === 'order.unknown-strip').map((d) => [d.grounds.word, d.place?.line, d.place?.col])).toEqual([
      ['7', 1, 5],
      ['?', 2, 1],
    ]);
    const missing = found.find((d) => d.code === 'order.strips-missing');
    expect(missing?.grounds.missing).not.toMatch(/\b[ABC]\b/);
  });
});
