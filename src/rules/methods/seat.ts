/** What makes a hole a seat, and the drill that goes before it. */
import { type Len, minus } from '../../base/units.ts';
import { held } from '../../handbook/capability.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import { type Context, type Hole, length, scaled } from '../context.ts';
import { drillUnder } from '../tools.ts';

const ZERO = 0 as Len;

export const isHole = (f: { readonly kind: string }): f is Hole => f.kind === 'hole';

export type Seat = { readonly f: Hole; readonly edge: End; readonly far: End; readonly size: Len };
export function seatGrounds(c: Context, f: { readonly kind: string }): Seat | undefined {
  if (!isHole(f) || f.role !== 'seat' || !f.edge) return undefined;
  const edge = c.face(f.edge).air;
  return { f, edge, far: other(edge), size: c.cylinder(f.cylinder).size.target };
}

/** A short land whose far side is opened wider by a drill: only the land is finished to size. */
export const isLand = (c: Context, f: Hole): boolean => wideBehind(c, f) !== undefined;

/** The wider hole, ended by its drill's point, that a hole runs into. */
export function wideBehind(c: Context, f: Hole): Hole | undefined {
  const mine = c.cylinder(f.cylinder);
  return c.holes.find((h) => {
    const one = c.cylinder(h.cylinder);
    return h.blind && one.size.target > mine.size.target && (one.from === mine.to || one.to === mine.from);
  });
}

/** The drill that goes before; it begins at an end of the part, and goes right through where the hole opens both ways. */
export function seatPilot(c: Context, f: Hole): Len | undefined {
  const { size, from, to } = c.cylinder(f.cylinder);
  const through = f.opens.length > 1 ? c.part.length : f.opens[0] === 'first' ? to : minus(c.part.length, from);
  const deep = (isLand(c, f) ? minus(to, from) : through) > scaled(size.target, 'single-lip.deep');
  const most = minus(size.target, length(deep ? 'single-lip.stock.deep' : 'single-lip.stock.short'));
  // a drill cuts over its size: metal is left for the finishing tool all the same
  return drillUnder(c.workshop, most, ZERO, (d) => d + held('drill', 'diameter', 'rough', d) < size.lo);
}
