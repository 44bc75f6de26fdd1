/** Questions to a painted section. Places and diameters in units; areas in units of z times units of diameter. */
import type { OpId, SurfaceId } from '../../model/ids.ts';
import { type Bound, isSolid, METAL, type Paint, type Section, type Slab } from '../section.ts';
import { at, TOUCH } from './lines.ts';
import { type Inside, paintAt, standsAt } from './outline.ts';

export function isMetalAt(section: Section, z: number, d: number): boolean {
  const paint = paintAt(slabAt(section, z), z, d);
  return paint !== undefined && isSolid(paint);
}

/** Whether anything of that face stands between metal and air. */
export function faceStands(section: Section, z: number, surface: SurfaceId | ''): boolean {
  return standsAt(section, z, surface, isSolid);
}

/** Area of all cells that count; exact for faces and cylinders, and for cones as exact as a double. */
export function areaOf(section: Section, counts: Inside): number {
  let sum = 0;
  for (const slab of section.slabs)
    for (let k = 0; k < slab.bounds.length; k += 1) {
      const over = slab.bounds[k];
      const paint = slab.paints[k];
      if (over && paint && counts(paint)) sum += cellArea(slab, slab.bounds[k - 1], over);
    }
  return sum;
}

/**
 * Volume of revolution of all cells that count, in cubic units: frustums, exact as a double for cylinders and cones. The second axis is the
 * diameter, hence the quarter.
 */
export function volumeOf(section: Section, counts: Inside): number {
  let sum = 0;
  for (const slab of section.slabs)
    slab.paints.forEach((paint, k) => {
      const [under, over] = [slab.bounds[k - 1], slab.bounds[k]];
      if (over && counts(paint)) sum += frustum(slab, over) - (under ? frustum(slab, under) : 0);
    });
  return sum;
}

function frustum({ from, to }: Slab, { line }: Bound): number {
  const [a, b] = [at(line, from), at(line, to)];
  return ((Math.PI / 4) * (to - from) * (a * a + a * b + b * b)) / 3;
}

export const isTakenBy =
  (by: OpId) =>
  (paint: Paint): boolean =>
    paint.state === 'taken' && paint.by === by;

function cellArea(slab: Slab, under: Bound | undefined, over: Bound): number {
  const height = (z: number): number => at(over.line, z) - (under ? at(under.line, z) : 0);
  return ((height(slab.from) + height(slab.to)) / 2) * (slab.to - slab.from);
}

/** What a caliper would find: lowest line under metal and highest over it, by slabs in which there is metal. */
export type Through = { readonly slab: Slab; readonly inner?: Bound; readonly outer: Bound };
export function throughs(section: Section, inside: Inside = isSolid): readonly Through[] {
  const found: Through[] = [];
  for (const slab of section.slabs) {
    const low = slab.paints.findIndex(inside);
    if (low < 0) continue;
    const [inner, outer] = [slab.bounds[low - 1], slab.bounds[slab.paints.findLastIndex(inside)]];
    if (outer) found.push(inner ? { slab, outer, inner } : { slab, outer });
  }
  return found;
}

/** Place of the outermost metal toward that end; undefined where there is none. */
export function metalEnds(section: Section): { readonly first: number; readonly second: number } | undefined {
  const hasMetal = ({ paints, bounds }: Slab): boolean => bounds[paints.findLastIndex(isSolid)] !== undefined;
  const [a, b] = [section.slabs.find(hasMetal), section.slabs.findLast(hasMetal)];
  return a && b && { first: a.from, second: b.to };
}

function slabAt(section: Section, z: number): Slab | undefined {
  return section.slabs.find((slab) => slab.from - TOUCH <= z && z <= slab.to + TOUCH);
}

export const isMetal = (paint: Paint): boolean => paint === METAL || paint.state === 'metal';
