/** The land of a seat: how much of its bore is finished to size. Behind it the bore is opened wider by a drill. */
import { add, type Len, len, minus, toMm } from '../../base/units.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, note, refuse } from '../book.ts';
import { half, MM, ratio, size, tidy, times } from '../limits.ts';
import { reliefOf } from '../threads.ts';
import type { CheckValveAsked } from './asked.ts';
import { pieceLength } from './seat-piece.ts';
import type { CheckValveSizes } from './sizes.ts';

/** Nothing where the whole bore is finished: that is the rule, as long as the drawer has a drill to go before so deep a bore. */
export function chooseLand(asked: CheckValveAsked, sizes: CheckValveSizes, workshop: Workshop, book: Book): CheckValveSizes['land'] {
  const { bore } = sizes;
  if (asked.land === undefined && !asksForLand(sizes, workshop)) return undefined;
  const usual = tidy(times(bore, ratio('seat.land')), half(MM), 'up');
  const land = asked.land ?? usual;
  const [least, length] = [times(bore, ratio('single-lip.bore.least')), pieceLength(sizes)];
  if (land < least) refuse(book, 'design.land-short', { land, least, usual });
  if (land > minus(length, usual)) refuse(book, 'design.land-long', { land, length });
  const inlet = inletOf(sizes, workshop, book);
  note(book, 'land', [toMm(land), 'mm', 'l = 2 d, to a half', { d: toMm(bore) }, CUSTOM], asked.land);
  if (inlet === undefined) return undefined;
  note(book, 'inlet', [toMm(inlet), 'mm', 'i >= d + 0.5, in the drawer', { d: toMm(bore) }, CUSTOM]);
  return { length: land, inlet };
}

/** A bore deeper than four diameters wants 0.3 to 0.4 left for its D-bit; a drawer with drills for 0.1 to 0.2 only has them for a land. */
function asksForLand(sizes: CheckValveSizes, { tools }: Workshop): boolean {
  const { bore } = sizes;
  const byDBit = tools.silverSteel.includes(bore) || tools.dBits.includes(bore);
  const deep = pieceLength(sizes) > times(bore, ratio('single-lip.deep'));
  const leaves = (least: string, most: string): boolean => tools.drills.some((d) => bore - d >= size(least) && bore - d <= size(most));
  return (
    byDBit &&
    deep &&
    !leaves('single-lip.stock.deep', 'single-lip.stock.deep.most') &&
    leaves('single-lip.stock.short', 'single-lip.stock.short.most')
  );
}

/** The smallest drill that is clearly wider, and leaves a wall under the threads. */
function inletOf({ bore, seat, coupling }: CheckValveSizes, { tools }: Workshop, book: Book): Len | undefined {
  const floor = len(Math.min(reliefOf(seat.outside).floor.lo, reliefOf(coupling.outside).floor.lo));
  const most = minus(floor, add(size('wall.least'), size('wall.least')));
  const least = add(bore, size('seat.inlet.over'));
  const found = [...tools.drills].sort((a, b) => a - b).find((d) => d >= least && d <= most);
  if (found === undefined) refuse(book, 'design.no-inlet', { least, most });
  return found;
}
