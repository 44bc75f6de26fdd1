/** How deep a cut the work bears in its grip, and a boring bar in the hole, before it is pushed aside too far. */
import { type Len, toMm } from '../base/units.ts';
import { giveBetween, giveOf, giveOnCentre, type Length } from '../handbook/bending.ts';
import { machining } from '../handbook/machining.ts';
import { findMaterial } from '../handbook/materials.ts';
import { cantilever } from '../handbook/stiffness.ts';
import { cuttingForce, type DepthBound } from './cutting.ts';

/** The work from the jaws outward, in mm: where the tool pushes, and where a centre holds. */
export type Beam = {
  readonly lengths: readonly Length[];
  readonly at: number;
  readonly centre?: number /** so far apart are the two centres that it turns between */;
  readonly between?: number;
};

/** Aside, in mm, for a cut 1 mm deep a side at this feed; 0 where the metal is not known. */
export function workGive(beam: Beam, material: string, feed: number): number {
  const [force, modulus] = [radialForce(material, feed), (findMaterial(material)?.modulus ?? 0) * 1000];
  if (force === 0 || modulus === 0) return 0;
  const give = givingOf(beam, modulus, force);
  // beside a centre nothing gives: what is left there is of the arithmetic
  return give > NOTHING ? give : 0;
}
const NOTHING = 1e-9;

function givingOf({ lengths, at, centre, between }: Beam, modulus: number, force: number): number {
  if (between !== undefined) return giveBetween(lengths, at, between, modulus, force);
  return centre === undefined ? giveOf(lengths, at, modulus, force) : giveOnCentre(lengths, at, centre, modulus, force);
}

/** The same of a boring bar so thick for a hole so deep: it stands out a little more. */
export function barGive(shank: Len, depth: Len, material: string, feed: number): number {
  const out = toMm(depth) + machining.value('bar.clear');
  return cantilever(radialForce(material, feed), out, toMm(shank), machining.value('steel.modulus'));
}

/** N for a cut 1 mm deep. */
function radialForce(material: string, feed: number): number {
  return (cuttingForce(material, feed) ?? 0) * feed * machining.value('force.radial');
}

/** Deepest final cut, so that the diameter keeps three quarters of its band for all else: aside, and so twice on diameter. */
export function finishBound(give: number, band: Len, bound: string): readonly DepthBound[] {
  return give > 0 ? [{ most: toMm(band) / machining.value('give.share') / 2 / give, bound }] : [];
}

/** Deepest roughing cut: what it leaves behind is well within the last cut. */
export function roughBound(give: number, finish: Len, bound: string): readonly DepthBound[] {
  return give > 0 ? [{ most: toMm(finish) / machining.value('give.rough') / give, bound }] : [];
}

/** Does the last cut, so deep, push aside so much that it is worth taking again? */
export function springs(give: number, last: Len, band: Len): boolean {
  return 2 * give * toMm(last) * machining.value('give.spring') > toMm(band) / machining.value('give.share');
}
