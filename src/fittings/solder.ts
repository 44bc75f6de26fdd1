/** Soldered joints, reckoned: fit and overlap against published figures, and the shear that pressure puts on the solder. */
import { add, type Len, len, minus, toMm } from '../base/units.ts';
import { kindsPractice } from '../handbook/practice-kinds.ts';
import { boreArea } from '../handbook/valve-ball.ts';
import { type Book, note, warn } from './book.ts';
import { half, size, TENTH, tidy, times } from './limits.ts';
import { pipeBore, pipeOverlap } from './union.ts';

type Fit = { readonly lo: Len; readonly hi: Len };
export type SolderedJoint = {
  /** 'branch': a spigot in its hole; 'flange': one in the bore of its flange; 'pipe': a pipe in its socket. */
  readonly which: 'branch' | 'flange' | 'pipe';
  /** Outside of what goes in, its bore, and how deep it sits at the least. */
  readonly outside: Len;
  readonly bore: Len;
  readonly overlap: Len;
  /** Clearance on diameter. */
  readonly fit: Fit;
  /** bar gauge; nothing where it is not known */
  readonly pressure?: number;
};

/** Of a spigot that is turned to its hole as the drill left it. */
export const spigotFit = (): Fit => ({ lo: size('solder.fit.least'), hi: size('solder.fit.most') });
/** Of a flange's limits on the lathe, which a boring tool holds. */
export const flangeFit = (): Fit => ({ lo: size('solder.fit.least'), hi: add(size('solder.fit.most'), size('band.bore.seat')) });
export const pipeFit = (): Fit => ({ lo: size('pipe.fit'), hi: add(size('pipe.fit'), size('band.drilled')) });

/** As deep as three of its thinner wall and no deeper than solder runs; its fit inside what is printed for silver solder; the shear in it. */
export function noteSolder({ which, outside, bore, overlap, fit, pressure }: SolderedJoint, book: Book): void {
  const thin = len(Math.max(1, half(minus(outside, bore))));
  const wants = kindsPractice.row('solder.overlap.thin');
  const asks = times(thin, wants.value);
  const [l, t] = [toMm(overlap), toMm(thin)];
  note(book, `solder-overlap.${which}`, [l / (t * wants.value), 'times', 'l / (3 t)', { l, t }, wants.source]);
  if (overlap < asks) warn(book, 'design.overlap-short', { has: overlap, thin, least: tidy(asks, TENTH, 'up') });
  if (overlap > size('solder.run')) warn(book, 'design.overlap-long', { has: overlap, most: size('solder.run') });
  noteFit(which, fit, book);
  if (pressure === undefined) return;
  const D = toMm(outside);
  const F = (boreArea(D) * pressure) / 10;
  note(book, `solder-shear.${which}`, [F / (Math.PI * D * l), 'N/mm2', 'F / (pi D l)', { F, D, l }, NO_ALLOWABLE]);
}
const NO_ALLOWABLE = 'derived here; no published allowable stress for such a joint was found';

/** Room for the solder, the greatest, against the closest and the widest that are printed. */
function noteFit(which: string, { lo, hi }: Fit, book: Book): void {
  const [least, most] = [kindsPractice.row('solder.gap.least'), kindsPractice.row('solder.gap.most')];
  const inputs = { a: least.value, b: most.value, least: toMm(lo) };
  note(book, `solder-fit.${which}`, [toMm(hi), 'mm', 'a <= f <= b', inputs, most.source]);
}

/** A pipe in the tail of its nipple, or in the socket of a plain end. */
export function notePipeSolder(pipe: { readonly outside: Len; readonly wall: Len }, pressure: number | undefined, book: Book): void {
  const joint = { which: 'pipe' as const, outside: pipe.outside, bore: pipeBore(pipe), overlap: pipeOverlap(pipe), fit: pipeFit() };
  noteSolder(pressure === undefined ? joint : { ...joint, pressure }, book);
}
