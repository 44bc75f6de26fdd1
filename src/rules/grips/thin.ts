/**
 * A hold keeps off what is thin under it for a short way only: a mouth that is opened wide, a groove in a bore. What is in the chuck was cut
 * before; what opens at the free end may still be to come.
 */
import { type Len, len, minus, mm } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { type Context, coneRun, diameterOf, type Outside, scaled } from '../context.ts';
import type { Stretch } from './stretch.ts';

/** The longest piece of the stretch that is left beside them. `wall`: the ratio to the diameter under which a wall gives in that hold. */
export function clearOfThin(c: Context, o: Outside, free: Stretch, out: End, wall: string): Stretch {
  const walls = 2 * scaled(c.cylinder(o.cylinder).size.target, wall);
  const isThin = ({ inner }: Wide): boolean => minus(diameterOf(c, o), inner) < walls;
  const pieces = widened(c, out)
    .filter(isThin)
    .reduce<readonly Stretch[]>((left, thin) => left.flatMap((piece) => without(piece, thin)), [free]);
  return pieces.reduce((most, one) => (one.to - one.from > most.to - most.from ? one : most), { from: free.from, to: free.from });
}

type Wide = Stretch & { readonly inner: Len };

/** Where a hole is wider for a while, in what stands in the chuck, at the limits at which that is most. */
function widened(c: Context, out: End): readonly Wide[] {
  const mouths = c.part.surfaces.flatMap((one): readonly Wide[] => {
    if (one.shape !== 'cone' || one.side !== 'inside' || one.into !== out) return [];
    const hole = c.cylinder(one.until).size;
    const at = c.face(one.at).z;
    const deep = upToTenth(coneRun({ ...one, mouth: { ...one.mouth, target: one.mouth.hi } }, hole.lo));
    const inner = one.mouth.hi;
    return [out === 'second' ? { from: at, to: len(at + deep), inner } : { from: len(at - deep), to: at, inner }];
  });
  const grooves = c.part.features.flatMap((f): readonly Wide[] => {
    if (f.kind !== 'groove' || f.side !== 'inside') return [];
    const { from, to, size } = c.cylinder(f.floor);
    const opens = c.holes.some((h) => c.cylinder(h.cylinder).from < to && c.cylinder(h.cylinder).to > from && h.opens.includes(out));
    return opens ? [] : [{ from, to, inner: size.hi }];
  });
  return [...mouths, ...grooves];
}

const upToTenth = (l: Len): Len => len(Math.ceil(l / mm(1 / 10)) * mm(1 / 10));

function without(piece: Stretch, { from, to }: Stretch): readonly Stretch[] {
  if (to <= piece.from || from >= piece.to) return [piece];
  const beside: readonly Stretch[] = [
    { from: piece.from, to: from },
    { from: to, to: piece.to },
  ];
  return beside.filter((one) => one.to > one.from);
}
