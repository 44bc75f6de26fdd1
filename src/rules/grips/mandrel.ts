/** Held by a thread, on a mandrel made for it. */
import { type Len, len, mm, toMm } from '../../base/units.ts';
import { reliefWidth } from '../../handbook/practice.ts';
import type { SurfaceId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { type Context, depthFrom, fact, farther, length, nearer, type ThreadFeature } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { steady } from './overhang.ts';
import { hiddenBehind, makes, plainOf, sorted } from './stretch.ts';
import { heldAtWorst } from './worst.ts';

export const onMandrel: GripRule = {
  id: 'on-threaded-mandrel',
  source: CUSTOM,
  offer: (work) =>
    sorted(work.c.part.staysInChuck || work.c.part.use !== 'fitting' ? [] : work.c.threads.flatMap((t) => mandrelGrips(work, t))),
};

function mandrelGrips(work: Work, t: ThreadFeature): readonly (Grip | Refusal)[] {
  const c = work.c;
  const datum = t.side === 'outside' ? shoulderOf(c, t) : c.end(t.start)?.face;
  if (!datum) return [{ what: `${t.id}.mandrel`, because: { rule: 'mandrel-needs-a-shoulder', grounds: {} } }];
  const grip = gripOn(work, t, datum);
  const refused = refusedFor(c, t, grip);
  return refused ? [refused] : steady(work, grip, c.face(datum).z);
}

/** Whether a mandrel holds work by that thread. */
export const takenByMandrel = (work: Work, t: ThreadFeature): boolean => mandrelGrips(work, t).some((one) => 'kind' in one);

function refusedFor(c: Context, t: ThreadFeature, grip: Grip): Refusal | undefined {
  // the cut turns work backward out of it
  if (t.thread.hand === 'left') return { what: grip.id, because: { rule: 'mandrel-unscrews', grounds: { thread: t.thread.name } } };
  const hexagon = c.outsides.some((o) => o.section === 'hexagon');
  if (spannerHolds(c).length === 0 && !hexagon)
    return { what: grip.id, because: { rule: 'mandrel-needs-a-spanner', grounds: {} }, would: { grip } };
  if (!c.workshop.holding.mandrels)
    return { what: grip.id, because: { rule: 'no-mandrels', grounds: { thread: t.thread.name } }, would: { grip } };
  const [has, wants] = [len(Math.min(threadsHeld(c, t, grip), ownThread(t, grip))), mm(toMm(t.thread.pitch) * fact('mandrel.pitches'))];
  return has < wants ? { what: grip.id, because: { rule: 'mandrel-short', grounds: {} }, has, wants } : undefined;
}

/** A mandrel that is screwed into a thread fills it: cones at its ends are cut before. */
function inItsMouths(work: Work, t: ThreadFeature): readonly string[] {
  const cones = work.c.part.surfaces.filter((s) => s.shape === 'cone' && s.until === t.on).map((s) => s.feature);
  return work.operations.filter((k) => cones.includes(k.feature)).map((k) => k.id);
}

/** Full threads, clear of their chamfers and of a relief, at the worst limits. */
function threadsHeld(c: Context, t: ThreadFeature, grip: Grip): Len {
  const { size, from, to } = c.cylinder(t.on);
  const whole = { from: len(Math.max(from, t.from)), to: len(Math.min(to, t.to)) };
  return heldAtWorst(c, grip, whole, plainOf(c, t.on, whole, t.side === 'outside' ? size.hi : size.lo));
}

/** What the mandrel's own relief, at its shoulder, and its start leave of the thread that goes into the work. */
function ownThread({ side, thread }: ThreadFeature, { tooling }: Grip): Len {
  if (side === 'outside' || tooling?.kind !== 'threaded-mandrel') return len(Number.MAX_SAFE_INTEGER);
  const relief = reliefWidth(thread.pitch) + 2 * length('band.chamfer');
  const start = (thread.major.hi - thread.minor.lo) / 2 + length('thread.chamfer.clear');
  return len(Math.max(0, Math.floor(tooling.depth - relief - start)));
}

/** What a spanner, or a hand, can hold while the work is screwed on and off. */
const SPANNER: readonly string[] = ['flats', 'branch', 'square', 'hexagon', 'knurl'];

const spannerHolds = (c: Context): readonly string[] =>
  c.part.features.flatMap((f) => (f.kind === 'side' && SPANNER.includes(f.does) ? [f.id] : []));

function gripOn(work: Work, t: ThreadFeature, datum: SurfaceId): Grip {
  const c = work.c;
  const out = other(t.start);
  const front = c.face(datum).z;
  const start = nearer(t.start, t);
  return {
    id: `${t.id}.mandrel.${out}`,
    kind: 'threaded-mandrel',
    out,
    on: [t.on],
    datum,
    from: len(Math.min(start, farther(t.start, t))),
    to: len(Math.max(start, farther(t.start, t))),
    diameter: t.side === 'outside' ? t.thread.major.target : t.thread.minor.target,
    tooling: {
      kind: 'threaded-mandrel',
      side: t.side === 'outside' ? 'inside' : 'outside',
      thread: t.thread,
      depth: depthOn(c, t, front),
      rim: rimAt(c, front),
      clears: c.part.length,
      serves: c.part.id,
    },
    ready: readyFor(work, t, datum, spannerHolds(c)),
    gone: [],
    hides: t.side === 'outside' ? hiddenBehind(work, out, front) : inItsMouths(work, t),
    lightOnly: false,
    runout: length('runout.mandrel'),
    because: [{ rule: 'threaded-mandrel', grounds: { thread: t.thread.name } }],
  };
}

const shoulderOf = (c: Context, t: ThreadFeature): SurfaceId | undefined =>
  c.outsides.find((o) => o.cylinder === t.on)?.shoulder[other(t.start)];

/** How far the work goes into (or over) the mandrel: from the datum to the work's end, or to the end of the thread. */
function depthOn(c: Context, t: ThreadFeature, front: Len): Len {
  if (t.side === 'outside') return depthFrom(t.start, front, c.part);
  return depthFrom(t.start, farther(t.start, t), c.part);
}

function rimAt(c: Context, front: Len): Len {
  return (
    c.outsides
      .map((o) => c.cylinder(o.cylinder))
      .filter((k) => k.from <= front && front <= k.to)
      .map((k) => k.size.target)
      .sort((a, b) => b - a)[0] ?? len(0)
  );
}

/** Thread, its shoulder or face, and something for a spanner. */
function readyFor(work: Work, t: ThreadFeature, datum: SurfaceId, spanner: readonly string[]): readonly string[] {
  return work.operations.filter((k) => k.feature === t.id || spanner.includes(k.feature) || makes(k, datum)).map((k) => k.id);
}
