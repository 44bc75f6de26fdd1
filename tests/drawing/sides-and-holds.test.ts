/** What is not of revolution, holds that need more than plain jaws, and the enlarged detail, on pictures of one small bush. */
import { describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import { drawStage, type Hold, type StageView } from '../../src/drawing/stage.ts';
import type { PathItem, Picture } from '../../src/model/display.ts';
import type { SideShown } from '../../src/model/stage.ts';
import { ADVANCES, FIRST_GRIP, len, SECOND_GRIP } from './stages.ts';

const frame = { width: 184, height: 100 };
const HOLD: Hold = { kind: 'bar', from: len(32), to: len(62), diameter: len(18) };
const VIEW: StageView = {
  ...{ stage: FIRST_GRIP, hold: HOLD, lengths: [], diameters: [], balloons: [], frame },
  words: { alt: 'grip', headstock: 'headstock' },
  advances: ADVANCES,
};
const named = (picture: Picture): readonly string[] => collisions(picture).map(([a, b]) => `${a.what} on ${b.what}`);
const paths = (picture: Picture): readonly PathItem[] => picture.items.filter((i) => i.kind === 'path');
const side = (does: SideShown['does'], more: Partial<SideShown> = {}): SideShown => ({
  ...{ does, z: len(12), half: len(2), on: len(18), size: len(14), made: 'before' },
  ...more,
});
/** Paths that the side feature adds to the same picture without it. */
const added = (one: SideShown): readonly PathItem[] => {
  const without = new Set(paths(drawStage(VIEW)).map((p) => JSON.stringify(p)));
  const picture = drawStage({ ...VIEW, stage: { ...FIRST_GRIP, sides: [one] } });
  expect(named(picture)).toEqual([]);
  return paths(picture).filter((p) => !without.has(JSON.stringify(p)));
};
const ys = (items: readonly PathItem[]): readonly number[] =>
  items.flatMap((i) => i.segments.flatMap((s) => (s.to === 'close' ? [] : [s.y])));
const axisOf = (picture: Picture): number => {
  const axis = paths(picture).find((p) => p.stroke?.dash !== undefined && p.segments.length === 2 && p.stroke.ink === 'black');
  const [start] = axis?.segments ?? [];
  if (start?.to !== 'move') throw new Error('no centre line');
  return start.y;
};

describe('side features, on the outside view only', () => {
  // chord of a circle: half width of a flat = sqrt(r^2 - s^2), s half of what is measured across; of a hexagon's flat = s / sqrt 3
  it.each([
    ['flats, 14 across on 18', side('flats'), Math.sqrt(9 ** 2 - 7 ** 2)],
    ['a square, 12 across on 18', side('square', { size: len(12) }), Math.sqrt(9 ** 2 - 6 ** 2)],
    ['a hexagon, 15 across on 18', side('hexagon', { size: len(15) }), 7.5 / Math.sqrt(3)],
    ['a half flat, 9 left of 18', side('half-flat', { size: len(9) }), 9],
    ['a hole of 7', side('cross-hole', { size: len(7) }), 3.5],
    ['knurling on 18', { ...side('knurl'), size: 0 }, 9],
  ])('%s', (_, one, deep) => {
    const picture = drawStage(VIEW);
    const marks = ys(added(one));
    expect(Math.min(...marks)).toBeGreaterThanOrEqual(axisOf(picture) - 0.01);
    expect(Math.abs(Math.max(...marks) - axisOf(picture) - deep * picture.scale)).toBeLessThan(0.4);
  });

  it('a branch stands out below the barrel and hides the hole under it', () => {
    const picture = drawStage(VIEW);
    const branch = added(side('branch', { half: len(4) }));
    expect(Math.max(...ys(branch))).toBeGreaterThan(axisOf(picture) + 9 * picture.scale + 4);
    const both = drawStage({ ...VIEW, stage: { ...FIRST_GRIP, sides: [side('cross-hole'), side('branch', { half: len(4) })] } });
    expect(paths(both).length).toBe(paths(picture).length + branch.length);
  });

  it('hardening leaves no mark', async () => {
    const { sideShown } = await import('../../src/drawing/sides.ts');
    const hard = { kind: 'side', id: 'p/h', role: 'free', does: 'harden', on: 'p/s', at: len(1), half: len(1), size: undefined } as const;
    const { size: _, ...feature } = hard;
    expect(sideShown(feature, len(18), 'before')).toBeUndefined();
  });
});

describe('holds', () => {
  it('a tailstock centre has its point of 60 degrees right of the work', () => {
    const plain = drawStage(VIEW);
    const picture = drawStage({ ...VIEW, hold: { ...HOLD, kind: 'bar-and-centre', centre: true } });
    expect(named(picture)).toEqual([]);
    const blocks = (p: Picture): number => paths(p).filter((i) => i.fill === 'pale').length;
    expect(blocks(picture)).toBe(blocks(plain) + 2);
    const cone =
      paths(picture)
        .filter((i) => i.fill === 'pale')
        .at(-1)?.segments ?? [];
    const [tip, shoulder] = cone;
    if (tip?.to !== 'move' || shoulder?.to !== 'line') throw new Error('no cone');
    const slope = Math.atan2(Math.abs(shoulder.y - tip.y), shoulder.x - tip.x);
    expect((slope * 180) / Math.PI).toBeCloseTo(30, 0);
  });

  it('bored jaws have a step that the end of the work stands against', () => {
    const held: Hold = { kind: 'bored-jaws', from: len(0), to: len(8), diameter: len(12) };
    const corners = (kind: Hold['kind']): number => {
      const picture = drawStage({ ...VIEW, stage: SECOND_GRIP, hold: { ...held, kind } });
      expect(named(picture)).toEqual([]);
      return Math.max(
        ...paths(picture)
          .filter((i) => i.fill === 'pale')
          .map((i) => i.segments.filter((s) => s.to !== 'close').length),
      );
    };
    expect(corners('jaws')).toBe(4);
    expect(corners('bored-jaws')).toBe(6);
  });
});

describe('an enlarged detail', () => {
  const letters = (picture: Picture): readonly string[] =>
    picture.items.flatMap((i) => (i.kind === 'text' && i.text.startsWith('Z') ? [i.text] : []));

  it('stands beside a picture so small that new edges come out under 2 mm, and nowhere else', () => {
    const small = drawStage({ ...VIEW, frame: { width: 184, height: 50 } });
    expect(named(small)).toEqual([]);
    expect(letters(small).length).toBe(2);
    const scale = Number(/\((\d+(?:\.\d+)?):1\)/.exec(letters(small).join(' '))?.[1]);
    expect(scale).toBeGreaterThanOrEqual(2 * small.scale);
    expect(letters(drawStage({ ...VIEW, frame: { width: 60, height: 50 } }))).toEqual([]);
  });
});
