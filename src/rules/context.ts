/** What a rule may look at: the part, the workshop, and plain questions about them. Nothing here decides. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { type Apart, apartIn } from '../geometry/apart.ts';
import { practice } from '../handbook/practice.ts';
import { unstated } from '../handbook/unstated.ts';
import type { End, SurfaceId } from '../model/ids.ts';
import { other } from '../model/ids.ts';
import type { Cone, Cylinder, Face, Feature, Part, Surface } from '../model/part.ts';
import type { Operation, ToolUse, Verb, Way } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';

export type Outside = Extract<Feature, { kind: 'outside' }>;
export type Hole = Extract<Feature, { kind: 'hole' }>;
export type ThreadFeature = Extract<Feature, { kind: 'thread' }>;
export type EndFeature = Extract<Feature, { kind: 'end' }>;
export type ConeFeature = Extract<Feature, { kind: 'cone' }>;

export type Context = {
  readonly part: Part;
  readonly workshop: Workshop;
  surface(id: SurfaceId): Surface;
  face(id: SurfaceId): Face;
  cylinder(id: SurfaceId): Cylinder;
  cone(id: SurfaceId): Cone;
  /** Outside sections and holes, first end first. */
  readonly outsides: readonly Outside[];
  readonly holes: readonly Hole[];
  readonly threads: readonly ThreadFeature[];
  end(which: End): EndFeature | undefined;
  /** z(b) - z(a) of two faces, at its least and at its most by the drawing. */
  readonly apart: Apart;
};

export function contextOf(part: Part, workshop: Workshop): Context {
  const byId = new Map(part.surfaces.map((s) => [s.id, s]));
  const surface = (id: SurfaceId): Surface => {
    const found = byId.get(id);
    if (!found) throw new Error(`${part.id}: no surface '${id}'`);
    return found;
  };
  const shaped =
    <S extends Surface['shape']>(shape: S) =>
    (id: SurfaceId): Extract<Surface, { shape: S }> => {
      const found = surface(id);
      if (found.shape !== shape) throw new Error(`'${id}' is no ${shape}`);
      return found as Extract<Surface, { shape: S }>;
    };
  const cylinder = shaped('cylinder');
  const along = (a: { readonly cylinder: SurfaceId }, b: { readonly cylinder: SurfaceId }): number =>
    cylinder(a.cylinder).from - cylinder(b.cylinder).from;
  let apart: Apart | undefined;
  return {
    part,
    workshop,
    surface,
    apart: (a, b) => {
      apart ??= apartIn(part, unstated);
      return apart(a, b);
    },
    cylinder,
    face: shaped('face'),
    cone: shaped('cone'),
    outsides: part.features.filter((f): f is Outside => f.kind === 'outside').sort(along),
    holes: part.features.filter((f): f is Hole => f.kind === 'hole').sort(along),
    threads: part.features.filter((f): f is ThreadFeature => f.kind === 'thread'),
    end: (which) => part.features.find((f): f is EndFeature => f.kind === 'end' && f.end === which),
  };
}

/** The same part in a shop that has something more: what a refusal would have been. */
export const asIf = (c: Context, tools: Partial<Workshop['tools']>): Context => ({
  ...c,
  workshop: { ...c.workshop, tools: { ...c.workshop.tools, ...tools } },
});

export const fact = (id: string): number => practice.value(id);
export const length = (id: string): Len => mm(practice.value(id));
export const scaled = (of: Len, id: string): Len => mm(toMm(of) * practice.value(id));
export const ENDS: readonly End[] = ['first', 'second'];

/** How far in from that end a place z lies. */
export function depthFrom(end: End, z: Len, part: Part): Len {
  return end === 'first' ? z : len(part.length - z);
}

/** The end of a stretch that is nearer to `end`, and the farther one. */
export function nearer(end: End, s: { readonly from: Len; readonly to: Len }): Len {
  return end === 'first' ? s.from : s.to;
}
export function farther(end: End, s: { readonly from: Len; readonly to: Len }): Len {
  return nearer(other(end), s);
}

/** Depth along z of a cone, from its mouth to the cylinder that it runs into. */
export const coneDepth = (cone: Cone, runsInto: Cylinder): Len => coneRun(cone, runsInto.size.target);

/** Length along z from a cone's mouth to where it has that diameter. */
export function coneRun(cone: Cone, diameter: Len): Len {
  const halfAngle = (cone.includedAngle * Math.PI) / (2 * fact('turn.half'));
  return mm(Math.abs(toMm(len(cone.mouth.target - diameter))) / (2 * Math.tan(halfAngle)));
}

/** Where a cylinder stands: in one stretch, or in several with grooves between them. */
export const stretchesOf = (cylinder: Cylinder): readonly { readonly from: Len; readonly to: Len }[] => cylinder.pieces ?? [cylinder];

/** Section diameter as the bar or the cutting leaves it. */
export const diameterOf = (c: Context, f: Outside): Len => c.cylinder(f.cylinder).size.target;

export type OpAsk = {
  readonly feature: string;
  readonly step: string;
  readonly verb: Verb;
  readonly tool: ToolUse;
  readonly ways: Operation['ways'];
  readonly light?: true;
  readonly asks?: Operation['asks'];
};
export function operation(ask: OpAsk, rules: Operation['because'], says: Operation['says'] = []): Operation {
  return {
    id: `${ask.feature}/${ask.step}`,
    feature: ask.feature,
    verb: ask.verb,
    tool: ask.tool,
    ways: ask.ways,
    light: ask.light ?? false,
    because: rules,
    says,
    ...(ask.asks && ask.asks.length > 0 ? { asks: ask.asks } : {}),
  };
}

/** One way from each end that has one. */
export function waysBy(make: (end: End) => Way | undefined): Operation['ways'] {
  const first = make('first');
  const second = make('second');
  return { ...(first ? { first } : {}), ...(second ? { second } : {}) };
}

export const show = (l: Len): string => {
  const text = String(toMm(l));
  return text.includes('.') ? text : `${text}`;
};

/** The end of the part that the thread comes out at. */
export function runsOutAt(c: Context, thread: ThreadFeature): EndFeature | undefined {
  const end = c.end(other(thread.start));
  return end && c.face(end.face).z === farther(thread.start, thread) ? end : undefined;
}

/** The same, where no chamfer opens it. */
export function comesOutAt(c: Context, thread: ThreadFeature): EndFeature | undefined {
  const end = runsOutAt(c, thread);
  const opened = end && c.part.surfaces.some((one) => one.shape === 'cone' && one.until === thread.on && one.at === end.face);
  return opened ? undefined : end;
}
