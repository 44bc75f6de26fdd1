/** How much of a stretch a hold has at the worst limits that the drawing allows: what the proof finds when it replays them. */
import { type Len, len, minus } from '../../base/units.ts';
import type { SurfaceId } from '../../model/ids.ts';
import type { Grip } from '../../model/plan.ts';
import type { Context } from '../context.ts';
import type { Stretch } from './stretch.ts';

/**
 * The hold stands where its datum stands. `whole`: the stretch of the section between its faces; `plain`: as much of it as is there to hold,
 * clear of cones. Either end may come nearer to the other, or to the datum, by what the drawing leaves open.
 */
export function heldAtWorst(c: Context, grip: Grip, whole: Stretch, plain: Stretch = whole): Len {
  const [from, to] = [faceAt(c, whole.from), faceAt(c, whole.to)];
  const { datum } = grip;
  const late = datum && from ? c.apart(datum, from).hi - (whole.from - c.face(datum).z) : 0;
  const early = datum && to ? whole.to - c.face(datum).z - c.apart(datum, to).lo : 0;
  const short = from && to ? whole.to - whole.from - c.apart(from, to).lo : 0;
  const has = [minus(grip.to, grip.from), ...[plain.to - early - grip.from, grip.to - (plain.from + late), plain.to - plain.from - short]];
  return len(Math.max(0, Math.min(...has)));
}

const faceAt = (c: Context, z: Len): SurfaceId | undefined =>
  c.part.surfaces.find((one) => one.shape === 'face' && one.side === 'outside' && one.z === z)?.id;
