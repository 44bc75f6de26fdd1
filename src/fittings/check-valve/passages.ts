/** What the water passes on its way out through the cap, past the lifted ball and the stem that stops it: each as a share of the seat's bore. */
import { minus, toMm } from '../../base/units.ts';
import { boreArea, ringArea } from '../../handbook/valve-ball.ts';
import { type Book, note } from '../book.ts';
import { size } from '../limits.ts';
import { layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';
import type { LiftStop } from './stop.ts';

export function notePassages(sizes: CheckValveSizes, stop: LiftStop, book: Book): void {
  const [d, C] = [toMm(sizes.bore), toMm(sizes.chamber.target)];
  const S = toMm(stop.across) + toMm(size('band.clearance'));
  const { stopped, upper } = layOutBody(sizes);
  // over the rim of the chamber, past the nose: the frustum between the two edges
  const g = toMm(minus(stopped, upper));
  const rise = (Math.PI / 2) * (C + S) * Math.hypot(g, (C - S) / 2);
  const share = (area: number): number => (100 * area) / boreArea(d);
  note(book, 'stop-rise', [share(rise), '%', 'pi/2 (C + S) sqrt(g^2 + ((C - S)/2)^2) / (pi/4 d^2)', { C, S, g, d }]);
  const M = toMm(sizes.cap.inside.minor.lo);
  note(book, 'stop-ring', [share(ringArea(M, S)), '%', '(M^2 - S^2) / d^2', { M, S, d }]);
}
