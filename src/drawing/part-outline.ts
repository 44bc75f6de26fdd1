/** The finished part as its drawing asks for it, as a stage that nothing was cut in: corners where neighbours of its ring meet. */
import { len, minus } from '../base/units.ts';
import { pointedOver } from '../geometry/nominal.ts';
import { sharpRing, withArcs } from '../geometry/section/arc.ts';
import { pointLength } from '../handbook/drills.ts';
import type { End } from '../model/ids.ts';
import type { Cone, Cylinder, Face, Feature, Part, Surface } from '../model/part.ts';
import type { Edge, Point, Stage } from '../model/stage.ts';

/** Nominal sizes (targets). Throws Error where the ring names a surface that the part lacks. */
export function finishedStage(part: Part, out: Stage['out']): Stage {
  return { outlines: [outlineOf(part)], threads: part.features.flatMap((f) => bandOf(part, f)), taken: [], before: [], out };
}

type Line = { readonly z: number; readonly d: number; readonly of: number };
/** z * x + d * y = of. */
type Sharp = Face | Cylinder | Cone;
function lineOf(part: Part, s: Sharp): Line {
  if (s.shape === 'face') return { z: 1, d: 0, of: s.z };
  if (s.shape === 'cylinder') return { z: 0, d: 1, of: s.size.target };
  const face = surfaceOf(part, s.at);
  const at = face.shape === 'face' ? face.z : 0;
  const slope = slopeOf(s);
  return { z: -slope, d: 1, of: s.mouth.target - slope * at };
}

/** Diameter gained a length toward the second end. */
function slopeOf(s: Cone): number {
  const steep = 2 * Math.tan((s.includedAngle * Math.PI) / 360);
  const grows = (s.side === 'outside') === (s.into === 'second');
  return grows ? steep : -steep;
}

function outlineOf(part: Part): readonly Edge[] {
  const ring = sharpRing(part).flatMap((id): readonly Sharp[] => {
    const s = surfaceOf(part, id);
    return s.shape === 'arc' ? [] : [s];
  });
  const joints = ring.map((s, i) => between(part, s, ring[(i + 1) % ring.length] ?? s));
  const sharp = ring.flatMap((s, i): readonly Edge[] => {
    const from = joints[(i + ring.length - 1) % ring.length]?.at(-1);
    const to = joints[i] ?? [];
    if (!from || !to[0]) return [];
    // between two joint points lies the axis, or a step that the ring does not name
    const rest = to.slice(1).map((b, k) => edge(to[k] ?? b, b, ''));
    return [edge(from, to[0], s.id), ...rest];
  });
  return withArcs(part, sharp);
}

function edge(a: Point, b: Point, surface: string): Edge {
  return { a, b, surface, stage: 'final', by: '' };
}

/** What leads from one to the next: by way of the axis where a hole ends in the drill's point. */
function between(part: Part, s: Sharp, t: Sharp): readonly Point[] {
  const [left, met] = [pointOf(part, s, 'second'), pointOf(part, t, 'first')];
  if (left && isStep(left)) return left;
  if (met && isStep(met)) return [...met].reverse();
  const before = left ?? (s.shape === 'face' ? [{ z: s.z, d: 0 }] : undefined);
  const after = met ? [...met].reverse() : t.shape === 'face' ? [{ z: t.z, d: 0 }] : undefined;
  return (left || met) && before && after ? [...before, ...after] : jointOf(part, s, t);
}

/** Of a hole that is open at that end alone: where its full diameter ends, then the tip, or where the point runs out in a smaller hole that goes on. */
function pointOf(part: Part, s: Sharp, opens: End): readonly Point[] | undefined {
  if (s.shape !== 'cylinder') return undefined;
  const hole = part.features.find((f) => f.kind === 'hole' && f.cylinder === s.id && f.blind && f.opens.includes(opens));
  if (!hole) return undefined;
  const z = opens === 'second' ? s.from : s.to;
  const least = pointedOver(part, hole)?.narrow.size.target ?? len(0);
  const tip = pointLength(minus(s.size.target, least));
  return [
    { z, d: s.size.target },
    { z: opens === 'second' ? z - tip : z + tip, d: least },
  ];
}

/** It runs out in a smaller hole, not at the axis. */
const isStep = (point: readonly Point[]): boolean => (point.at(-1)?.d ?? 0) > 0;

/** One point where they cross; two where both are faces (by way of the axis) or both are cylinders (a step). */
function jointOf(part: Part, s: Sharp, t: Sharp): readonly Point[] {
  const [p, q] = [lineOf(part, s), lineOf(part, t)];
  const det = p.z * q.d - q.z * p.d;
  if (Math.abs(det) > 1e-9) return [{ z: (p.of * q.d - q.of * p.d) / det, d: (p.z * q.of - q.z * p.of) / det }];
  if (s.shape === 'face' && t.shape === 'face') return axisWalk(s, t);
  if (s.shape === 'cylinder' && t.shape === 'cylinder') return stepBetween(s, t);
  throw new Error(`'${s.id}' and '${t.id}' stand side by side in the ring but do not meet`);
}

function axisWalk(s: Face, t: Face): readonly Point[] {
  return [
    { z: s.z, d: 0 },
    { z: t.z, d: 0 },
  ];
}

function stepBetween(s: Cylinder, t: Cylinder): readonly Point[] {
  const z = s.from <= t.from ? Math.max(s.from, Math.min(s.to, t.from)) : Math.max(t.from, Math.min(t.to, s.from));
  return [
    { z, d: s.size.target },
    { z, d: t.size.target },
  ];
}

/** The band between crest and root along the full thread. */
function bandOf(part: Part, f: Feature): Stage['threads'] {
  if (f.kind !== 'thread') return [];
  const on = surfaceOf(part, f.on);
  const crest = on.shape === 'cylinder' ? on.size.target : f.side === 'outside' ? f.thread.major.target : f.thread.minor.target;
  const root = f.side === 'outside' ? f.thread.minor.target : f.thread.major.target;
  const [low, high] = [Math.min(crest, root), Math.max(crest, root)];
  const metal = outlineOf(part).map((e) => e.a);
  return [{ polygon: clipped(metal, f.from, f.to, low, high), side: f.side, surface: f.on }];
}

/** A polygon inside a box, side after side (Sutherland and Hodgman 1974): a chamfer takes its corner off the thread. */
function clipped(points: readonly Point[], from: number, to: number, low: number, high: number): readonly Point[] {
  const sides: readonly ((p: Point) => number)[] = [(p) => p.z - from, (p) => to - p.z, (p) => p.d - low, (p) => high - p.d];
  return sides.reduce((ring, depth) => ring.flatMap((p, i) => kept(p, ring[(i + 1) % ring.length] ?? p, depth)), points);
}

function kept(p: Point, q: Point, depth: (p: Point) => number): readonly Point[] {
  const [a, b] = [depth(p), depth(q)];
  const t = a / (a - b);
  const meet = a >= 0 !== b >= 0 ? [{ z: p.z + (q.z - p.z) * t, d: p.d + (q.d - p.d) * t }] : [];
  return a >= 0 ? [p, ...meet] : meet;
}

export function surfaceOf(part: Part, id: string): Surface {
  const found = part.surfaces.find((s) => s.id === id);
  if (!found) throw new Error(`part '${part.id}' has no surface '${id}'`);
  return found;
}
