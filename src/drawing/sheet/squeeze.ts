/** A picture made lower where nothing stands in it from edge to edge: what is over such a band and under it comes nearer, and all keeps its size. */
import type { Item, Picture } from '../../model/display.ts';
import { moved, textBox } from '../display.ts';

type Extent = { readonly top: number; readonly bottom: number };

/** White that is left over the topmost thing and under the lowest, and at most between two, mm. */
const WHITE = { edge: 0.5, between: 2.5 } as const;

export function squeezed({ items }: Picture): { readonly height: number; readonly items: readonly Item[] } {
  const extents = items.map(extentOf);
  const bands = bandsOf(extents);
  let low = 0;
  let end: number = WHITE.edge;
  const shifts = bands.map(({ top, bottom }, i) => {
    const white = i === 0 ? WHITE.edge : Math.min(WHITE.between, top - low);
    const shift = (i === 0 ? 0 : end) + white - top;
    low = bottom;
    end = bottom + shift;
    return shift;
  });
  const shiftAt = (y: number): number => shifts[bands.findIndex(({ top, bottom }) => y >= top && y <= bottom)] ?? 0;
  return { height: end + WHITE.edge, items: items.flatMap((item, i) => moved([item], 0, shiftAt(extents[i]?.top ?? 0))) };
}

/** Where something stands, from the top: what overlaps counts as one. */
function bandsOf(extents: readonly Extent[]): readonly Extent[] {
  const bands: Extent[] = [];
  for (const { top, bottom } of [...extents].sort((a, b) => a.top - b.top)) {
    const last = bands.at(-1);
    if (last && top <= last.bottom) bands[bands.length - 1] = { top: last.top, bottom: Math.max(last.bottom, bottom) };
    else bands.push({ top, bottom });
  }
  return bands;
}

function extentOf(item: Item): Extent {
  if (item.kind === 'text') {
    const { y, h } = textBox(item);
    return { top: y, bottom: y + h };
  }
  const ys = item.segments.flatMap((s) => (s.to === 'close' ? [] : [s.y]));
  const half = (item.stroke?.width ?? 0) / 2;
  return { top: Math.min(...ys) - half, bottom: Math.max(...ys) + half };
}
