/** Long thin work in the strip from bar to part: plain stretches are left out (ISO 128-3), so that ends and steps read; nothing else is. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brokenAt, brokenScale, foldAt, plainStretches } from '../../src/drawing/interrupted.ts';
import { sketchOf } from '../../src/drawing/sketch.ts';
import { drawStrip, drawTiny } from '../../src/drawing/tiny.ts';
import { windowOf } from '../../src/drawing/window.ts';
import type { Picture } from '../../src/model/display.ts';
import type { Stage } from '../../src/model/stage.ts';
import { type Corner, len, outline } from './stages.ts';

const stage = (corners: readonly Corner[], sides: Stage['sides'] = []): Stage => ({
  ...{ out: 'second', outlines: [outline(corners)], threads: [], taken: [], before: [], sides },
});
const HOLD = { kind: 'bench', from: len(0), to: len(0), diameter: len(0) } as const;
const stretches = (of: Stage) => plainStretches(sketchOf(of), windowOf(sketchOf(of), HOLD), of);

/** 100 long, 8 across: a cone, 60 plain, a neck, 30 plain. */
const SPINDLE = stage([
  [0, 0],
  [0, 4],
  [8, 8],
  [68, 8],
  [68, 6, 'neck', 'neck'],
  [70, 6, 'neck', 'neck'],
  [70, 8],
  [100, 8],
  [100, 0],
]);
const NUT = stage([
  [0, 10],
  [0, 18],
  [8, 18],
  [8, 10],
  [0, 10],
]);

describe('what may be left out', () => {
  it('is where the work is as thick all along, the longest first', () => {
    expect(stretches(SPINDLE)).toEqual([
      { from: 8, to: 68 },
      { from: 70, to: 100 },
    ]);
  });
  it('is not a cone, nor what is short and thick', () => {
    expect(stretches(NUT)).toEqual([]);
    expect(
      stretches(
        stage([
          [0, 0],
          [0, 4],
          [90, 8],
          [90, 0],
        ]),
      ),
    ).toEqual([]);
  });
  it('is not what is made from the side', () => {
    const rod: readonly Corner[] = [
      [0, 0],
      [0, 8],
      [100, 8],
      [100, 0],
    ];
    const hole = { does: 'cross-hole', z: len(50), half: len(2), on: len(8), made: 'here' } as const;
    expect([...stretches(stage(rod, [hole]))].sort((a, b) => a.from - b.from)).toEqual([
      { from: 0, to: 48 },
      { from: 52, to: 100 },
    ]);
  });
});

/** What the height of a picture leaves at most. */
const LARGEST = 5;

it('what is left has its places in order, as far apart as before outside the gaps, and fits', () => {
  const anyWork = fc.array(fc.double({ min: 1, max: 80, noNaN: true }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(anyWork, fc.double({ min: 12, max: 60, noNaN: true }), (lengths, width) => {
      const ends = lengths.map((_, i) => lengths.slice(0, i + 1).reduce((sum, each) => sum + each, 0));
      const long = ends.at(-1) ?? 0;
      const all = ends.map((to, i) => ({ from: ends[i - 1] ?? 0, to })).filter((_, i) => i % 2 === 0);
      const sorted = [...all].sort((a, b) => b.to - b.from - (a.to - a.from));
      const scale = Math.min(brokenScale(long, sorted, width), LARGEST);
      const broken = brokenAt(long, sorted, width, scale);
      const fold = foldAt(broken, scale);
      expect(scale).toBeGreaterThanOrEqual(Math.min(width / long, LARGEST));
      expect(scale * (fold(long) - fold(0))).toBeLessThanOrEqual(width + 1e-6);
      for (const [i, to] of ends.entries()) {
        const from = ends[i - 1] ?? 0;
        const left = fold(to) - fold(from);
        if (broken.some((each) => each.from === from)) expect(left).toBeLessThan(to - from);
        else expect(left).toBeCloseTo(to - from, 6);
      }
    }),
  );
});

describe('the strip', () => {
  const view = (of: Stage) => ({ stage: of, frame: { width: 26, height: 6 }, words: { alt: '' } });
  /** On paper, the new neck: so long. */
  const neck = ({ items }: Picture): number => {
    const xs = items.flatMap((item) =>
      item.kind === 'path' && item.stroke?.ink === 'new' ? item.segments.flatMap((s) => (s.to === 'close' ? [] : [s.x])) : [],
    );
    return Math.max(...xs) - Math.min(...xs);
  };

  it('shows a step of long thin work more than twice as large as on the whole', () => {
    const whole = drawTiny(view(SPINDLE));
    const [broken] = drawStrip([view(SPINDLE)]);
    if (!broken) throw new Error('no picture');
    expect(neck(broken)).toBeGreaterThan(2 * neck(whole));
  });
  it('stays in its frame, and draws two freehand lines a gap', () => {
    const [{ items } = { items: [] }] = drawStrip([view(SPINDLE)]);
    const points = items.flatMap((item) => (item.kind === 'path' ? item.segments.flatMap((s) => (s.to === 'close' ? [] : [s])) : []));
    for (const { x, y } of points) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(26);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(6);
    }
    const waves = items.filter((item) => item.kind === 'path' && item.segments.length === 6 && item.fill === undefined);
    expect(waves.length).toBe(4);
  });
  it('leaves short work whole', () => {
    expect(drawStrip([view(NUT)])[0]?.items).toEqual(drawTiny(view(NUT)).items);
  });
});
