/** Pictures of grips: nothing on anything else, nothing outside, tiers as ISO 129 asks, and what a turner looks for. */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import { drawStage, type StageView } from '../../src/drawing/stage.ts';
import type { Item, Picture, TextItem } from '../../src/model/display.ts';
import { anyPlan, viewOf } from './random-stages.ts';
import { ADVANCES, FIRST_GRIP, len, SECOND_GRIP } from './stages.ts';

const words = { alt: 'grip', headstock: 'headstock', legend: { made: 'new surface', taken: 'removed in this grip' } };
const frame = { width: 161, height: 85 };

const SECOND: StageView = {
  stage: SECOND_GRIP,
  hold: { kind: 'threaded-mandrel', from: len(3.6), to: len(8.2), diameter: len(12), datum: { z: len(10.4), letter: 'A' } },
  lengths: [
    { id: 'A-B', from: len(10.4), to: len(24.4), text: ['14.00', '±0.05'] },
    { id: 'A-C', from: len(10.4), to: len(15.4), text: ['5.00', '±0.05'] },
  ],
  diameters: [],
  balloons: [
    { text: '120', surface: 'B' },
    { text: '130', surface: 'C' },
    { text: '140', surface: 'relief' },
    { text: '150', surface: 'coupling-thread' },
    { text: '160', surface: 'bore' },
    { text: '170', surface: 'cone' },
    { text: '180', surface: 'bore' },
  ],
  frame,
  words,
  advances: ADVANCES,
};
const FIRST: StageView = {
  stage: FIRST_GRIP,
  hold: { kind: 'bar', from: len(32), to: len(62), diameter: len(18), datum: { z: len(0), letter: 'S' } },
  lengths: [
    { id: 'S-A', from: len(0), to: len(10.4), text: ['10.40', '+0.05', '−0.10'] },
    { id: 'S-N', from: len(0), to: len(3), text: ['3.0', '±0.1'] },
    { id: 'S-T', from: len(0), to: len(8.2), text: ['8.2', '±0.1'] },
    { id: 'S-R', from: len(0), to: len(15.9), text: ['15.9', '±0.2'] },
  ],
  diameters: [
    { id: 'D.nose', z: len(2), d: len(10.6), side: 'outside', text: ['Ø 10.60', '±0.05'] },
    { id: 'D.relief', z: len(9), d: len(10.4), side: 'outside', text: ['Ø 10.4', '+0', '−0.1'] },
    { id: 'D.pilot', z: len(5), d: len(4.2), side: 'inside', text: ['Ø 4.2'] },
  ],
  balloons: ['seat-face', 'pilot', 'rim', 'nose', 'seat-relief', 'lead', 'seat-thread', 'A'].map((surface, i) => ({
    text: String(10 * (i + 1)),
    surface,
  })),
  frame,
  words,
  advances: ADVANCES,
};

const named = (picture: Picture): readonly string[] => collisions(picture).map(([a, b]) => `${a.what} on ${b.what}`);
const texts = (picture: Picture): readonly TextItem[] => picture.items.filter((item) => item.kind === 'text');
const textAt = (picture: Picture, words: string): TextItem => {
  const found = texts(picture).find((item) => item.text === words);
  if (!found) throw new Error(`no '${words}' in the picture`);
  return found;
};
const count = (picture: Picture, has: (item: Item) => boolean): number => picture.items.filter(has).length;

describe.each([
  ['the second grip of a seat piece, on its mandrel', SECOND],
  ['its first grip, bar in the jaws', FIRST],
])('%s', (_, view) => {
  const picture = drawStage(view);

  it('has nothing on anything else and nothing outside its frame', () => {
    expect(named(picture)).toEqual([]);
  });

  it('shows every size, every balloon, the datum and the headstock', () => {
    expect(picture.lettered).toEqual([]);
    expect(picture.unplaced).toEqual([]);
    const shown = texts(picture).map((item) => item.text);
    const asked = [...view.lengths.flatMap((d) => d.text), ...view.diameters.flatMap((d) => d.text), ...view.balloons.map((b) => b.text)];
    expect([...shown].sort()).toEqual([...asked, view.hold.datum?.letter ?? '', 'headstock', 'new surface', 'removed in this grip'].sort());
  });

  it('has the shorter of two dimensions that overlap nearer the work', () => {
    const sorted = [...view.lengths].sort((p, q) => Math.abs(p.to - p.from) - Math.abs(q.to - q.from));
    const levels = sorted.map((d) => textAt(picture, d.text[0] ?? '').y);
    expect(levels).toEqual([...levels].sort((p, q) => q - p));
    expect(new Set(levels).size).toBe(levels.length);
  });

  it('has the headstock on the left, the scale of its drawing, and new surfaces wider than old ones', () => {
    expect(textAt(picture, 'headstock').x).toBeLessThan(40);
    expect(picture.scale).toBeGreaterThanOrEqual(2);
    const widths = (ink: string): readonly number[] =>
      picture.items.flatMap((i) => (i.kind === 'path' && i.stroke?.ink === ink ? [i.stroke.width] : []));
    expect(Math.min(...widths('new'))).toBeGreaterThan(2 * Math.max(...widths('black')));
    expect(count(picture, (i) => i.kind === 'path' && i.fill === 'taken')).toBeGreaterThan(0);
  });

  it('is the same picture every time', () => {
    expect(JSON.stringify(drawStage(view))).toBe(JSON.stringify(picture));
  });
});

describe('any grip', () => {
  const used = new Map<string, number>();
  it('has nothing on anything else, nothing outside, and leaders that do not meet', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const picture = drawStage(viewOf(plan));
        const rung = `${picture.rung.step}, ${picture.rung.smaller} scales down, arrangement ${picture.rung.arrangement}`;
        used.set(rung, (used.get(rung) ?? 0) + 1);
        expect(named(picture)).toEqual([]);
      }),
      { numRuns: 1000, seed: 17 },
    );
  }, 600_000);
  afterAll(() => {
    const lines = [...used].sort(([a], [b]) => (a < b ? -1 : 1)).map(([rung, times]) => `${rung}: ${times}`);
    process.stdout.write(`rungs of the ladder that any grip needed\n${lines.join('\n')}\n`);
  });
});

describe('what the picture cannot show is said', () => {
  it('gives the letter of a size that has no room, and its id', () => {
    const many = Array.from({ length: 14 }, (_, i) => ({
      id: `L${i}`,
      from: len(10.4),
      to: len(10.6 + i / 10),
      text: [`${(0.2 + i / 10).toFixed(2)}`, '±0.01'],
      letter: 'abcdefghijklmnop'[i] ?? '',
    }));
    const picture = drawStage({ ...SECOND, lengths: many, frame: { width: 100, height: 60 } });
    expect(named(picture)).toEqual([]);
    expect(picture.lettered.length).toBeGreaterThan(0);
    for (const id of many.map((d) => d.id).filter((id) => !picture.lettered.includes(id))) {
      expect(texts(picture).some((t) => t.text === many.find((d) => d.id === id)?.text[0])).toBe(true);
    }
  });

  it('names a balloon that has no surface to point at', () => {
    const picture = drawStage({ ...SECOND, balloons: [{ text: '999', surface: 'nowhere' }] });
    expect(picture.unplaced).toEqual(['999']);
  });
});
