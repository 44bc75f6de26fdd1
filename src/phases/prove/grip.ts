/** What a hold holds: the stretches of the work at its diameter, and whether they are there, long enough and not to be marked. */
import { type Len, len, mm, toMm } from '../../base/units.ts';
import { isMetal, throughs } from '../../geometry/section/ask.ts';
import { at } from '../../geometry/section/lines.ts';
import type { Pieces } from '../../geometry/section/pieces.ts';
import { type Bound, isSolid, type Section, type Slab } from '../../geometry/section.ts';
import { practice } from '../../handbook/practice.ts';
import type { End, FeatureId, SurfaceId } from '../../model/ids.ts';
import type { SideFeature } from '../../model/part.ts';
import type { Claim, Grip, Operation } from '../../model/plan.ts';
import { isByThread, isOffLathe } from '../../model/work.ts';
import { type Case, claim, figure, short, show } from './claims.ts';
import { giving } from './plugged.ts';
import { standsOut } from './stands-out.ts';

/** A stretch of the work that the hold touches: how long, and the number of its piece. */
type Held = { readonly length: number; readonly piece: number; readonly surface: SurfaceId | '' };

export function heldStretches(asked: Case, section: Section, pieces: Pieces, grip: Grip): readonly Held[] {
  const inside = holdsInside(asked, grip);
  return touchedBy(asked, section, grip).map(({ slab, length, surface }) => {
    const cell = inside ? slab.paints.findIndex(isSolid) : slab.paints.findLastIndex(isSolid);
    return { length, surface, piece: pieces.of[section.slabs.indexOf(slab)]?.[cell] ?? -1 };
  });
}

type Touched = { readonly slab: Slab; readonly length: number; readonly surface: SurfaceId | '' };
function touchedBy(asked: Case, section: Section, grip: Grip): readonly Touched[] {
  const slack = slackFor(asked, grip);
  const inside = holdsInside(asked, grip);
  return throughs(section).flatMap((through): readonly Touched[] => {
    const { slab } = through;
    const bound: Bound | undefined = inside ? through.inner : through.outer;
    const [from, to] = [Math.max(slab.from, grip.from), Math.min(slab.to, grip.to)];
    if (!bound || to <= from || Math.abs(at(bound.line, (from + to) / 2) - grip.diameter) > slack) return [];
    return [{ slab, length: to - from, surface: bound.mark.surface }];
  });
}

/** What the drawing leaves open of the diameter that is held, or the usual where that is less: jaws are set, or bored, to the work as it came out. */
function slackFor({ part }: Case, { on }: Grip): Len {
  const held = part.surfaces.flatMap((one) => (one.shape === 'cylinder' && on.includes(one.id) ? [one.size] : []));
  return len(Math.max(figure('proof.grip.slack'), ...held.map(({ lo, hi, target }) => Math.max(hi - target, target - lo))));
}

/** How much of the work the hold touches, as long as it is at its diameter. */
export function heldLength(asked: Case, section: Section, grip: Grip): number {
  return touchedBy(asked, section, grip).reduce((sum, one) => sum + one.length, 0);
}

export const holdsInside = (asked: Case, grip: Grip): boolean =>
  grip.on.some((id) => asked.part.surfaces.some((surface) => surface.id === id && surface.side === 'inside'));

type Reason = 'thin' | 'plug' | 'nothing' | 'hole' | 'no-centre' | 'kept' | 'no-thread' | 'unscrews' | 'heavy' | 'short' | 'far-out' | '';

/** At the beginning of the set-up. `under`: what was drilled into the work, or stands out of it, where the hold closes; none: ''. */
export function gripClaim(
  asked: Case,
  section: Section,
  pieces: Pieces,
  grip: Grip,
  operations: readonly Operation[],
  under: FeatureId | '' = '',
): Claim {
  const { part } = asked;
  const held = heldStretches(asked, section, pieces, grip);
  const has = held.reduce((sum, one) => sum + one.length, 0);
  const light = operations.every((operation) => operation.light);
  const far = standsOut(asked, section, grip);
  const wants = grip.seated ? seatedHold(far.has) : leastHold(asked, grip, light ? 'light' : 'heavy');
  const kept = isByThread(grip) ? undefined : held.find((one) => isKept(asked, section, one.surface));
  const reason = reasonOf();
  return claim('grip', grip.id, reason === '', {
    hold: short(part.id, grip.id),
    kind: grip.kind,
    has: show(has),
    wants: show(wants),
    diameter: show(grip.diameter),
    surface: short(part.id, kept?.surface ?? under),
    out: show(far.has),
    most: show(far.most),
    reason,
    corner: '',
  });

  function reasonOf(): Reason {
    if (has === 0) return 'nothing';
    if (!isCentred(asked, section, grip)) return 'no-centre';
    if (kept) return 'kept';
    if (under !== '') return 'hole';
    const thread = byThread(asked, section, grip);
    if (thread) return thread;
    if ((grip.lightOnly || grip.kind === 'stub-mandrel') && !operations.every((one) => one.light || bornBySpigot(asked, grip, one)))
      return 'heavy';
    if (has < wants) return 'short';
    const gives = giving(section, grip, slackFor(asked, grip));
    if (gives) return gives;
    return far.has > far.most + figure('proof.stick-out.slack') ? 'far-out' : '';
  }
}

/** An outside cone that is small at the free end: its cut goes toward the spigot's shoulder. */
const bornBySpigot = ({ part }: Case, { kind, out, lightOnly }: Grip, { verb, feature }: Operation): boolean =>
  kind === 'stub-mandrel' &&
  !lightOnly &&
  verb === 'cone' &&
  part.surfaces.some((one) => one.shape === 'cone' && one.feature === feature && one.side === 'outside' && one.into !== out);

/** Pressed back against the jaws, it is levered by what stands out, and not by its diameter. */
const seatedHold = (out: number): number => Math.max(out * practice.value('grip.seated.ratio'), mm(practice.value('grip.least')));

function leastHold(asked: Case, grip: Grip, work: 'light' | 'heavy'): number {
  const threads = isByThread(grip) ? pitchOf(asked, grip) * practice.value('mandrel.pitches') : 0;
  if (grip.kind === 'threaded-mandrel') return threads;
  if (grip.kind === 'stub-mandrel')
    return Math.max(
      mm(toMm(grip.diameter) * practice.value(work === 'light' ? 'grip.spigot.ratio' : 'grip.spigot.cone')),
      mm(practice.value('grip.least')),
    );
  if (grip.kind === 'between-centres') return mm(practice.value('dog.least'));
  if (grip.kind === 'vee-block') return Math.max(mm(toMm(grip.diameter) * practice.value('vee.ratio')), mm(practice.value('vee.least')));
  if (grip.kind === 'bored-jaws' && work === 'light') return mm(practice.value('grip.least'));
  return Math.max(mm(toMm(grip.diameter) * practice.value(`grip.${work}.ratio`)), mm(practice.value('grip.least')), threads);
}

function pitchOf(asked: Case, { tooling, on }: Grip): number {
  if (tooling && 'thread' in tooling) return tooling.thread.pitch;
  const thread = asked.part.features.find((feature) => feature.kind === 'thread' && on.includes(feature.on));
  return thread?.kind === 'thread' ? thread.thread.pitch : 0;
}

/** Is there a centre hole in every end that runs on a centre? */
function isCentred(asked: Case, section: Section, grip: Grip): boolean {
  const all = throughs(section);
  const holes = asked.part.features.flatMap((feature) => (feature.kind === 'hole' && feature.centre ? [feature.id] : []));
  const centred = (one: (typeof all)[number] | undefined): boolean =>
    asked.part.surfaces.some((surface) => surface.id === one?.inner?.mark.surface && holes.includes(surface.feature));
  const needs = (end: End): boolean => grip.kind === 'between-centres' || (grip.centre !== undefined && grip.out === end);
  return (!needs('first') || centred(all[0])) && (!needs('second') || centred(all.at(-1)));
}

/** A thread that is cut, or a seat or sealing surface that is finished. */
export function isKept(asked: Case, section: Section, id: SurfaceId | ''): boolean {
  const surface = asked.part.surfaces.find((one) => one.id === id);
  if (surface?.role === 'seat' || surface?.role === 'sealing')
    return throughs(section).some((one) => one.outer.mark.surface === id && one.outer.mark.stage === 'final');
  return threadsOn(asked, [id]).some((thread) => hasBand(section, thread));
}

/** Why the work's own thread does not hold it, where that is what holds. */
function byThread(asked: Case, section: Section, grip: Grip): 'no-thread' | 'unscrews' | '' {
  if (!isByThread(grip)) return '';
  if (!isThreaded(asked, section, grip)) return 'no-thread';
  return grip.kind === 'threaded-mandrel' && isLeftHanded(asked, grip) ? 'unscrews' : '';
}

/** The thread is cut, and is the one that the tooling was made for. */
const isThreaded = (asked: Case, section: Section, { on, tooling }: Grip): boolean =>
  threadsOn(asked, on, tooling && 'thread' in tooling ? tooling.thread.name : undefined).some((thread) => hasBand(section, thread));

/** The cut would turn it backward off its mandrel. */
const isLeftHanded = ({ part }: Case, { on }: Grip): boolean =>
  part.features.some((feature) => feature.kind === 'thread' && on.includes(feature.on) && feature.thread.hand === 'left');

const threadsOn = (asked: Case, ids: readonly string[], name?: string): readonly string[] =>
  asked.part.features.flatMap((feature) =>
    feature.kind === 'thread' && ids.includes(feature.on) && (name === undefined || feature.thread.name === name) ? [feature.id] : [],
  );

const hasBand = (section: Section, thread: string): boolean =>
  section.slabs.some((slab) => slab.paints.some((paint) => paint.state === 'partial' && paint.thread === thread));

/** Holes right across and what stands out of the work: jaws neither close on their edge nor over them. */
const UNDER_JAWS: readonly string[] = ['cross-hole', 'branch', 'flange'];

/** The first of them that is there, of those that were done before, where a hold on the lathe closes on the outside. */
export function sideUnder({ part }: Case, grip: Grip, done: ReadonlySet<FeatureId>): FeatureId | '' {
  if (isOffLathe(grip)) return '';
  const meets = ({ at, half }: SideFeature): boolean => at - half < grip.to && at + half > grip.from;
  const found = part.features.find(
    (one) => one.kind === 'side' && UNDER_JAWS.includes(one.does) && done.has(one.id) && grip.on.includes(one.on) && meets(one),
  );
  return found?.id ?? '';
}

/** Thinnest difference of outside and inside diameter between two cylinders; threads count by their roots. */
export function thinnest(section: Section): { readonly wall: number; readonly z: number } | undefined {
  const shortest = figure('proof.wall.shortest');
  const walls = throughs(section, isMetal).flatMap(({ slab, inner, outer }) => {
    const level = outer.line.slope === 0 && (inner?.line.slope ?? 0) === 0;
    if (!level || slab.to - slab.from < shortest) return [];
    return [{ wall: outer.line.d - (inner?.line.d ?? 0), z: (slab.from + slab.to) / 2 }];
  });
  return walls.reduce<{ readonly wall: number; readonly z: number } | undefined>(
    (least, one) => (least && least.wall <= one.wall ? least : one),
    undefined,
  );
}
