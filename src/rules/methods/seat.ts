/** What makes a hole a seat, and the drill that goes before it. */
import { type Len, minus } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import { type Context, type Hole, length, scaled } from '../context.ts';
import { drillUnder } from '../tools.ts';

export const isHole = (f: { readonly kind: string }): f is Hole => f.kind === 'hole';

export type Seat = { readonly f: Hole; readonly edge: End; readonly far: End; readonly size: Len };
export function seatGrounds(c: Context, f: { readonly kind: string }): Seat | undefined {
  if (!isHole(f) || f.role !== 'seat' || !f.edge) return undefined;
  const edge = c.face(f.edge).air;
  return { f, edge, far: other(edge), size: c.cylinder(f.cylinder).size.target };
}

/** The drill that goes before; it begins at an end of the part, and goes right through where the hole opens both ways. */
export function seatPilot(c: Context, f: Hole): Len | undefined {
  const { size, from, to } = c.cylinder(f.cylinder);
  const depth = f.opens.length > 1 ? c.part.length : f.opens[0] === 'first' ? to : minus(c.part.length, from);
  const deep = depth > scaled(size.target, 'single-lip.deep');
  return drillUnder(c.workshop, minus(size.target, length(deep ? 'single-lip.stock.deep' : 'single-lip.stock.short')));
}
