/** Finished parts beside each other, so that their sizes compare: all at one scale, but for those that are much too large for it. */
import type { Picture } from '../model/display.ts';
import { shownScale } from './arrange.ts';
import { drawPart, type PartView, partExtent } from './finished.ts';
import { SCALES } from './stage.ts';

/** `scale` as it is printed (ISO 5455). */
export type ShownPart = { readonly picture: Picture; readonly scale: string };

/** Leaving one out pays where the others are then drawn this many times as large; of all, one in so many at the most. */
const PAYS = 2;
const ONE_IN = 4;

/**
 * In the order given, each in its own frame: at the largest usual scale at which they fit; the few that would hold all the others back at a
 * second one. `enlarged`: how many times as large as it is laid out all is printed: printed scales are the usual ones.
 */
export function drawParts(views: readonly PartView[], enlarged = 1): readonly ShownPart[] {
  const usual = SCALES.map((scale) => scale / enlarged);
  const bySize = views.map((view) => ({ view, fits: fitsAt(view, usual) })).sort((a, b) => a.fits - b.fits);
  let out = 0;
  // all of them fit at what the largest, which comes first, fits at
  const scaleFrom = (from: number): number => bySize[from]?.fits ?? usual[0] ?? 1;
  while (out + 1 <= views.length / ONE_IN && scaleFrom(out + 1) >= PAYS * scaleFrom(out)) out += 1;
  const [common, second] = [scaleFrom(out), scaleFrom(0)];
  const apart = new Set(bySize.slice(0, out).map(({ view }) => view));
  return views.map((view) => {
    const scale = apart.has(view) ? second : common;
    return { picture: drawPart({ ...view, scale }), scale: shownScale(scale, { enlarged }) };
  });
}

/** The largest of the scales at which the part fits its frame; the last where it fits at none. */
function fitsAt({ part, frame }: PartView, scales: readonly number[]): number {
  const extent = partExtent(part);
  const fits = (scale: number): boolean => {
    const { width, height } = extent(scale);
    return width <= frame.width && height <= frame.height;
  };
  return scales.find(fits) ?? scales.at(-1) ?? 1;
}
