/** Boring by a single point, and the D-bit that a start bore of its own size steers. */
import { add, type Len, len } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Arc } from '../../model/part.ts';
import type { Bound, Cut, Operation, Way } from '../../model/plan.ts';
import { type Context, coneDepth, depthFrom, farther, type Hole, length, operation, scaled } from '../context.ts';
import { type Boring, boringFor, boringTool } from '../tools.ts';
import type { Seat } from './seat.ts';

const ZERO = 0 as Len;

/** To the floor; past a far side that is open; or, where a cone is to come, as far as the cone will not take away. */
export function boreTo(c: Context, f: Hole, end: End): Bound | undefined {
  if (f.floor) return { face: f.floor };
  const cone = coneAt(c, f, other(end));
  const last = c.part.surfaces
    .filter((s) => s.shape === 'face')
    .map((s) => c.face(s.id))
    .find((s) => s.z === farther(end, c.cylinder(f.cylinder)));
  return last && { face: last.id, beyond: cone > 0 ? len(length('bore.past') - cone) : length('bore.past') };
}

export function reachFor(c: Context, f: Hole, end: End): Len {
  const to = boreTo(c, f, end);
  return add(depthFrom(end, farther(end, c.cylinder(f.cylinder)), c.part), to?.beyond ?? ZERO);
}

export function boreWay(c: Context, f: Hole, end: End, start: Len): Way | undefined {
  const to = boreTo(c, f, end);
  const reach = reachFor(c, f, end);
  if (!to || !boringFor(c.workshop, start, reach).tool) return undefined;
  const fillet = filletAt(c, f);
  const floor: readonly Cut[] = f.floor ? [{ makes: f.floor, stage: 'final', measures: 'length', leaves: ZERO }] : [];
  return {
    cuts: [{ makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO }, ...floor],
    sweeps: [
      { take: 'bore', cylinder: f.cylinder, diameter: c.cylinder(f.cylinder).size.target, to, ...(fillet ? { spares: fillet.id } : {}) },
    ],
    reach,
  };
}

/** The fillet at its floor, if one is left there. */
export const filletAt = (c: Context, f: Hole): Arc | undefined =>
  c.part.surfaces.find((s): s is Arc => s.shape === 'arc' && s.bends === 'fillet' && s.until === f.cylinder);

/** Right through, past the far side. */
export function reamWay(c: Context, f: Hole, end: End, reamer: Len): Way | undefined {
  const to = boreTo(c, f, end);
  return (
    to && {
      cuts: [{ makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO }],
      sweeps: [{ take: 'bore', cylinder: f.cylinder, diameter: reamer, to }],
    }
  );
}

export function toolOf(c: Context, f: Hole, start: Len): Boring | undefined {
  const reaches = f.opens.map((end) => reachFor(c, f, end)).sort((a, b) => a - b);
  for (const reach of [...reaches].reverse()) {
    const { tool } = boringFor(c.workshop, start, reach);
    if (tool) return tool;
  }
  return undefined;
}

/** Depth of a cone that opens this hole at that end; 0 where there is none. */
export function coneAt(c: Context, f: Hole, end: End): Len {
  const cone = c.part.features.find(
    (k) => k.kind === 'cone' && k.from === end && c.cone(k.cone).side === 'inside' && c.cone(k.cone).until === f.cylinder,
  );
  return cone?.kind === 'cone' ? coneDepth(c.cone(cone.cone), c.cylinder(f.cylinder)) : ZERO;
}

export function startBore(c: Context, g: Seat, tool: Boring, depth: Len): Operation {
  const face = c.end(g.far)?.face;
  if (!face) throw new Error(`${g.f.id}: no far end`);
  const way: Way = {
    cuts: [{ makes: g.f.cylinder, stage: 'rough', measures: 'diameter', leaves: ZERO }],
    sweeps: [{ take: 'bore', cylinder: g.f.cylinder, diameter: g.size, to: { face, beyond: depth } }],
    reach: depth,
  };
  return operation(
    { feature: g.f.id, step: 'bore-start', verb: 'bore-start', tool: boringTool(tool, c.workshop), ways: { [g.far]: way } },
    [{ rule: 'start-bore', grounds: {} }],
  );
}

/** It reaches through all that lies before the edge, whatever of that is opened wider afterwards. */
export function dBitFor(c: Context, { f, far, size }: Seat): Operation['tool'] | undefined {
  const base = { kind: 'd-bit', key: `d-bit-${size}`, size, material: 'silver steel' as const };
  if (c.workshop.tools.dBits.includes(size)) return base;
  if (!c.workshop.tools.silverSteel.includes(size)) return undefined;
  const reach = depthFrom(far, farther(far, c.cylinder(f.cylinder)), c.part);
  return { ...base, made: { kind: 'd-bit', diameter: size, length: add(reach, length('d-bit.shank')) } };
}

export function dBit(g: Seat, tool: Operation['tool'], guide: Len): Operation {
  const edge = g.f.edge ?? '';
  const way: Way = {
    cuts: [{ makes: g.f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO }],
    sweeps: [{ take: 'bore', cylinder: g.f.cylinder, diameter: g.size, to: { face: edge, beyond: length('bore.past') } }],
    guide: { diameter: g.size, least: len(Math.min(guide, scaled(g.size, 'single-lip.guide.least'))) },
  };
  return operation(
    { feature: g.f.id, step: 'd-bit', verb: 'd-bit', tool, ways: { [g.far]: way } },
    [{ rule: 'seat-from-far-side', grounds: {} }],
    [{ rule: 'd-bit-stop', grounds: {} }],
  );
}

export const stone = (f: Hole): Operation =>
  operation(
    {
      feature: f.id,
      step: 'stone',
      verb: 'stone',
      tool: { kind: 'stone', key: 'bench-stone', material: 'none' },
      ways: { bench: { cuts: [], sweeps: [] } },
      light: true,
    },
    [{ rule: 'stone-the-burr', grounds: {} }],
  );
