/**
 * A part described as a turner would say it over the bench: sections along the outside from one end to the other, holes from either
 * end, cones, and what is done from the side. Gives the Part with its surfaces, ring, features and dimensions.
 */
import type { SurfaceId } from '../model/ids.ts';
import type { Dimension, Face, Limits, Part, SideFeature, Surface, Truth } from '../model/part.ts';
import type { OutlineAsk, Side } from './outline/ask.ts';
import { addEnds, type Bench, named, newBench, surfaceOf } from './outline/bench.ts';
import { addCentre, addHole } from './outline/inside.ts';
import { addSection } from './outline/outside.ts';
import { truthsOf } from './outline/truths.ts';

export type { ArcAsk, Chamfer, EndAsk, Hole, HoleArc, OutlineAsk, Recess, Section, Side, ThreadAsk } from './outline/ask.ts';

/** Throws Error when the description hangs together wrongly (two faces of one letter, a length to a face that is not there). */
export function partFrom(ask: OutlineAsk): Part {
  const made = newBench(ask);
  addEnds(made);
  ask.sections.forEach((section, i) => {
    addSection(made, section, i);
  });
  for (const hole of ask.holes ?? []) addHole(made, hole);
  addCentre(made, 'first');
  addCentre(made, 'second');
  for (const side of ask.sides ?? []) made.features.push(sideFeature(made, side));
  const part: Part = {
    id: ask.id,
    kind: ask.kind,
    quantity: ask.quantity,
    use: ask.use,
    stock: ask.stock,
    ring: ringOf(made),
    surfaces: [...made.surfaces.values()],
    features: made.features,
    dimensions: ask.lengths.map((l) => dimension(made, l)),
    length: made.length,
    ...(ask.second ? {} : { staysInChuck: true as const }),
    waitsFor: (ask.waitsFor ?? []).map((w) => ({ ...w, feature: `${ask.id}/${w.feature}` })),
  };
  const truths = [...truthsOf(part), ...(ask.truths ?? []).map((t) => stated(made, t))];
  return truths.length === 0 ? part : { ...part, truths };
}

function stated(made: Bench, { a, b, asks }: NonNullable<OutlineAsk['truths']>[number]): Truth {
  // of a taper that takes its whole section the cone is all there is
  const left = (name: string): SurfaceId => {
    const whole = made.ask.sections.some((section) => section.name === name && section.cone?.whole);
    return named(made, whole ? `${name}.cone` : name);
  };
  return { id: named(made, `coaxial.${a}-${b}`), a: left(a), b: left(b), asks, from: { kind: 'stated', as: 'coaxial' } };
}

function sideFeature(made: Bench, side: Side): SideFeature {
  const { name, on, spoils, facing, ...rest } = side;
  return {
    ...rest,
    kind: 'side',
    id: named(made, name),
    on: surfaceOf(made, made.ask.sections.find((one) => one.name === on) ?? { name: on }),
    ...(facing ? { facing: { ...facing, other: named(made, facing.other) } } : {}),
    ...(spoils ? { spoils: spoils.map((s) => named(made, s)) } : {}),
  };
}

function dimension(made: Bench, ask: { readonly from: string; readonly to: string; readonly limits: Limits }): Dimension {
  const face = (letter: string): Face => {
    const found = made.surfaces.get(named(made, letter));
    if (found?.shape !== 'face') throw new Error(`${made.ask.id}: a length to '${letter}', which is no face`);
    return found;
  };
  const [a, b] = [face(ask.from), face(ask.to)].sort((p, q) => p.z - q.z);
  if (!a || !b) throw new Error('two faces are needed');
  return { id: `${a.id}-${b.letter ?? b.id.slice(made.ask.id.length + 1)}`, a: a.id, b: b.id, limits: ask.limits };
}

/** Along the outside from the first end to the second, then back along the inside. */
function ringOf(made: Bench): readonly SurfaceId[] {
  const outside = [...made.surfaces.values()]
    .filter((s) => s.side === 'outside' && !(s.shape === 'cylinder' && s.blank))
    .flatMap((s) => places(made, s).map((z) => ({ s, z, d: height(made, s) })));
  const inside = [...made.surfaces.values()]
    .filter((s) => s.side === 'inside')
    .flatMap((s) => places(made, s).map((z) => ({ s, z, d: height(made, s) })));
  outside.sort((p, q) => p.z - q.z);
  inside.sort((p, q) => q.z - p.z);
  return [...outside, ...inside].map(({ s }) => s.id);
}

const height = (made: Bench, s: Surface): number =>
  s.shape === 'cylinder' ? s.size.target : s.shape === 'cone' ? s.mouth.target : made.length;

/** Once for each stretch in which it stands. */
const places = (made: Bench, s: Surface): readonly number[] =>
  s.shape === 'cylinder' && s.pieces ? s.pieces.map((one) => (one.from + one.to) / 2) : [middle(made, s)];

/** A place along z that orders surfaces round the ring: cones and arcs a hair inside the face that they start from. */
function middle(made: Bench, s: Surface): number {
  if (s.shape === 'face') return s.z;
  if (s.shape === 'cylinder') return (s.from + s.to) / 2;
  return (made.surfaces.get(s.at) as Face).z + (s.into === 'second' ? 1 : -1);
}
