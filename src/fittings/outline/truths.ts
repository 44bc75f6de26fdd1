/** What must run true to what in a part, by the roles of its surfaces: a seat or a sealing cone to the surface that locates the part. */
import { mm } from '../../base/units.ts';
import { proving } from '../../handbook/proving.ts';
import type { Cylinder, Part, Surface, Truth } from '../../model/part.ts';

/** Empty where the part has no seat of revolution, or nothing that locates it. */
export function truthsOf(part: Part): readonly Truth[] {
  const short = (id: string): string => id.slice(part.id.length + 1);
  const row = proving.row('truth.seat');
  const locating = locatingOf(part);
  const sealing = part.surfaces.filter((one) => !locating.includes(one) && isSeat(one));
  return sealing.flatMap((one) =>
    locating.map(
      (to): Truth => ({
        ...{ id: `${part.id}/true.${short(to.id)}-${short(one.id)}`, a: to.id, b: one.id, asks: mm(row.value) },
        from: { kind: 'role', as: row.source, fact: row.id },
      }),
    ),
  );
}

const isSeat = (one: Surface): boolean =>
  (one.shape === 'cone' && (one.role === 'sealing' || one.role === 'seat')) || (one.shape === 'cylinder' && one.role === 'seat');

/** Registers and running fits; where there are none, threads that end at a face which locates. */
function locatingOf(part: Part): readonly Surface[] {
  const cylinders = part.surfaces.filter((one): one is Cylinder => one.shape === 'cylinder' && one.side === 'outside');
  const fits = cylinders.filter((one) => one.role === 'register' || one.role === 'running');
  if (fits.length > 0) return fits;
  return cylinders.filter((one) => {
    const feature = part.features.find((each) => each.kind === 'outside' && each.cylinder === one.id);
    if (feature?.kind !== 'outside' || one.role !== 'thread') return false;
    const shoulders = [feature.shoulder.first, feature.shoulder.second];
    return part.surfaces.some((face) => shoulders.includes(face.id) && face.role === 'register');
  });
}
