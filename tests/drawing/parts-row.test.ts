/** Parts beside each other: at one scale, or two, so that what is longer is drawn longer. */
import { describe, expect, it } from 'vitest';
import { toMm } from '../../src/base/units.ts';
import { drawParts } from '../../src/drawing/parts-row.ts';
import type { Part } from '../../src/model/part.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES } from './stages.ts';

const frame = { width: 42, height: 30 } as const;
const views = (parts: readonly Part[]) => parts.map((part) => ({ part, frame, words: { alt: part.id }, advances: ADVANCES }));
/** '1:2' is a half. */
const times = (scale: string): number => {
  const [drawn = 1, real = 1] = scale.split(':').map(Number);
  return drawn / real;
};
const fittings = everyPlan.filter(({ spec, plan }) => !spec.includes('/') && plan.parts.length > 3);

describe.each(fittings)('the parts of $spec', ({ plan }) => {
  const parts = plan.parts.map(({ part }) => part).filter(({ use }) => use === 'fitting');
  it.each([1, 1.25])('stand in their order, at no more than two scales, enlarged %d', (enlarged) => {
    const shown = drawParts(views(parts), enlarged);
    expect(shown.map(({ picture }) => picture.alt)).toEqual(parts.map(({ id }) => id));
    expect(new Set(shown.map(({ scale }) => scale)).size).toBeLessThanOrEqual(2);
  });
  it('are drawn as long as their scale says', () => {
    for (const [i, { picture, scale }] of drawParts(views(parts)).entries()) {
      const part = parts[i];
      const solid = picture.items.flatMap((item) => (item.kind === 'path' && item.fill === 'white' ? item.segments : []));
      const xs = solid.flatMap((s) => (s.to === 'close' ? [] : [s.x]));
      const drawn = Math.max(...xs) - Math.min(...xs);
      expect(drawn).toBeCloseTo(toMm(part?.length ?? (0 as Part['length'])) * times(scale), 0);
      expect(Math.min(...xs)).toBeGreaterThan(0);
      expect(Math.max(...xs)).toBeLessThan(picture.width);
    }
  });
});
