/**
 * Held by its bore on a spigot turned for it and not disturbed, a face against the shoulder: thin rings, tubes and bushes that jaws would
 * spring, and faces that have to be square to the bore. The spigot holds by friction alone, so only light cuts are taken on it: a face, and,
 * where it is long enough, a cone, which the top slide takes toward the shoulder in cuts as thin as need be.
 */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Cylinder } from '../../model/part.ts';
import type { Grip, Operation, Refusal } from '../../model/plan.ts';
import { type Context, coneDepth, diameterOf, ENDS, type EndFeature, type Hole, length, scaled } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { steady } from './overhang.ts';
import { makes, sorted } from './stretch.ts';

export const onStubMandrel: GripRule = {
  id: 'on-stub-mandrel',
  source: CUSTOM,
  offer: (work) => {
    const { part, holes } = work.c;
    if (part.staysInChuck || part.use !== 'fitting') return sorted([]);
    return sorted(holes.filter((h) => fits(work.c, h)).flatMap((h) => ENDS.flatMap((end) => spigotGrip(work, h, end))));
  },
};

/** A bore made to fit something fits a spigot, and so does one whose limits are as close; others are as the drill left them. */
function fits(c: Context, h: Hole): boolean {
  if (h.centre || h.role === 'seat' || h.role === 'sealing') return false;
  const { lo, hi } = c.cylinder(h.cylinder).size;
  return FITS.includes(h.role) || minus(hi, lo) <= length('spigot.band.most');
}
const FITS: readonly string[] = ['running', 'register'];

/** `end`: the end that goes against the shoulder. */
function spigotGrip(work: Work, h: Hole, end: End): readonly (Grip | Refusal)[] {
  const face = work.c.end(end);
  const bore = work.c.cylinder(h.cylinder);
  const reaches = end === 'first' ? bore.from === 0 : bore.to === work.c.part.length;
  if (!face || !reaches || work.c.threads.some((t) => t.on === h.cylinder)) return [];
  const grip = gripOn(work, h, end, face);
  const refused = refusedFor(work, bore, grip);
  return refused ? [refused] : steady(work, grip, work.c.face(face.face).z);
}

function gripOn(work: Work, h: Hole, end: End, face: EndFeature): Grip {
  const c = work.c;
  const bore = c.cylinder(h.cylinder);
  const [from, to] = held(c, bore, end);
  const cones = minus(to, from) < scaled(bore.size.target, 'grip.spigot.cone') ? [] : conesFrom(work, other(end));
  const heavy = work.operations.filter((k) => !k.light && k.ways[other(end)] !== undefined && !cones.includes(k.id));
  return {
    id: `${h.id}.stub-mandrel.${other(end)}`,
    kind: 'stub-mandrel',
    out: other(end),
    on: [h.cylinder],
    datum: face.face,
    from,
    to,
    diameter: bore.size.target,
    tooling: {
      kind: 'stub-mandrel',
      bore: bore.size,
      depth: end === 'first' ? to : minus(c.part.length, from),
      rim: rimAt(c, end),
      serves: c.part.id,
    },
    ready: work.operations.filter((k) => k.feature === h.id || makes(k, face.face)).map((k) => k.id),
    gone: [],
    hides: [...(cones.length > 0 ? heavy : []), ...work.operations.filter((k) => isFilled(c, k, from, to))].map((k) => k.id),
    lightOnly: cones.length === 0,
    runout: length('runout.stub-mandrel'),
    because: [
      { rule: 'stub-mandrel', grounds: {} },
      { rule: cones.length > 0 ? 'cone-on-spigot' : 'light-grip', grounds: {} },
    ],
  };
}

/** Outside cones that are small at that end: cut from there they push the work against the shoulder. */
const conesFrom = ({ c, operations }: Work, out: End): readonly string[] =>
  operations
    .filter((k) => k.verb === 'cone' && k.ways[out] !== undefined)
    .filter((k) =>
      c.part.surfaces.some((s) => s.shape === 'cone' && s.side === 'outside' && s.feature === k.feature && s.into === other(out)),
    )
    .map((k) => k.id);

/** From behind the cone in its mouth, where there is one, to a little short of the other end: the tool may pass over the bore. */
function held(c: Context, bore: Cylinder, end: End): readonly [from: Len, to: Len] {
  const depth = (into: End): Len =>
    len(
      c.part.surfaces.reduce(
        (most, s) => (s.shape === 'cone' && s.until === bore.id && s.into === into ? Math.max(most, coneDepth(s, bore)) : most),
        0,
      ),
    );
  const short = length('jaw.clearance.light');
  const [near, far] = [depth('second'), depth('first')];
  return end === 'first'
    ? [add(bore.from, near), minus(bore.to, len(Math.max(far, short)))]
    : [add(bore.from, len(Math.max(near, short))), minus(bore.to, far)];
}

/** The section that ends there: the shoulder behind it is no smaller. */
function rimAt(c: Context, end: End): Len {
  const at = end === 'first' ? c.outsides[0] : c.outsides.at(-1);
  return at ? diameterOf(c, at) : len(0);
}

/** A hole where the spigot stands cannot be worked in, and what it stops short of it would be drilled into it. */
function isFilled(c: Context, k: Operation, from: Len, to: Len): boolean {
  return c.part.surfaces.some(
    (s) => s.feature === k.feature && s.side === 'inside' && s.shape === 'cylinder' && s.to > from && s.from < to,
  );
}

function refusedFor(work: Work, bore: Cylinder, grip: Grip): Refusal | undefined {
  const { outsides, workshop } = work.c;
  const would = { grip };
  if (!workshop.holding.mandrels) return { what: grip.id, because: { rule: 'stub-mandrels-not-made', grounds: {} }, would };
  const band = minus(bore.size.hi, bore.size.lo);
  const most = length('spigot.band.most');
  if (band > most) return { what: grip.id, because: { rule: 'bore-loose', grounds: {} }, has: band, most, would };
  const widest = len(Math.max(0, ...outsides.map((o) => diameterOf(work.c, o))));
  const share = scaled(widest, 'grip.share');
  if (grip.diameter < share) return { what: grip.id, because: { rule: 'spigot-slight', grounds: {} }, has: grip.diameter, wants: share };
  const has = minus(grip.to, grip.from);
  const least = len(Math.max(scaled(grip.diameter, 'grip.spigot.ratio'), length('grip.least')));
  return has < least ? { what: grip.id, because: { rule: 'spigot-short', grounds: {} }, has, wants: least } : undefined;
}
