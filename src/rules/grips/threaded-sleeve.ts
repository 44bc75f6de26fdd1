/**
 * Held by its outside thread in a sleeve that is tapped to it and slit: jaws close the sleeve, and the threads grip all round without being
 * crushed. It wants no shoulder to screw up to and no spanner: opened, it lets go. Where a mandrel takes the thread, that runs truer.
 */
import { add, type Len, len, minus, mm, toMm } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { type Context, diameterOf, ENDS, fact, length, nearer, type Outside, scaled, stretchesOf, type ThreadFeature } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { nutMinor, tapFor, threadingFor } from '../tools.ts';
import { wheelsFor } from '../wheels.ts';
import { bearing } from './closing.ts';
import { takenByMandrel } from './mandrel.ts';
import { steady } from './overhang.ts';
import { cannotEnter, thinWall, tooSlight } from './refuse.ts';
import { sleeveBar } from './sleeve.ts';
import { hiddenBehind, makes, plainOf, type Stretch, sorted } from './stretch.ts';
import { heldAtWorst } from './worst.ts';

export const inThreadedSleeve: GripRule = {
  id: 'in-threaded-sleeve',
  source: CUSTOM,
  offer: (work) => {
    const { part, threads } = work.c;
    if (part.staysInChuck || part.use !== 'fitting') return sorted([]);
    const held = threads.filter((t) => t.side === 'outside' && !takenByMandrel(work, t));
    return sorted(held.flatMap((t) => placesOf(work.c, t).flatMap((place) => ENDS.flatMap((out) => sleeveGrips(work, place, out)))));
  },
};

/** A thread, or one of its stretches where a groove parts it. */
type Place = { readonly t: ThreadFeature; readonly o: Outside; readonly whole: Stretch; readonly name: string };

function placesOf(c: Context, t: ThreadFeature): readonly Place[] {
  const o = c.outsides.find((one) => one.cylinder === t.on);
  if (!o) return [];
  return stretchesOf(c.cylinder(t.on)).map((one, i): Place => {
    const whole = { from: len(Math.max(one.from, t.from)), to: len(Math.min(one.to, t.to)) };
    return { t, o, whole, name: i === 0 ? t.id : `${t.id}.${i + 1}` };
  });
}

function sleeveGrips(work: Work, place: Place, out: End): readonly (Grip | Refusal)[] {
  const bare = gripOn(work, place, out, 'jaw.clearance');
  const refused = refusedFor(work, place, bare);
  if (refused) return [{ ...refused, what: bare.id }];
  return asLongAs(work, place, out, bare).flatMap((one) => ('kind' in one ? steady(work, one, nearer(out, one)) : [one]));
}

/** Long enough for heavy work, or for light work alone; where that is not sure at the limits, both. */
function asLongAs(work: Work, place: Place, out: End, grip: Grip): readonly (Grip | Refusal)[] {
  const close = gripOn(work, place, out, 'jaw.clearance.light');
  const [heavy, light] = [leastOf(place, 'grip.heavy.ratio'), leastOf(place, 'grip.light.ratio')];
  const [has, room] = [heldLength(work.c, place, grip), heldLength(work.c, place, close)];
  if (has >= heavy) return [grip];
  const short: Refusal = { what: grip.id, because: { rule: 'threads-short', grounds: {} }, has, wants: heavy, would: { grip } };
  if (room < light) return [{ ...short, has: room, wants: light }];
  return [short, { ...close, id: `${grip.id}.light`, lightOnly: true, because: [...grip.because, { rule: 'light-grip', grounds: {} }] }];
}

/** As long as any hold of that diameter, and no fewer threads than on a mandrel. */
const leastOf = ({ t }: Place, ratio: string): Len =>
  len(Math.max(scaled(t.thread.major.target, ratio), length('grip.least'), mm(toMm(t.thread.pitch) * fact('mandrel.pitches'))));

const heldLength = (c: Context, { t, whole }: Place, grip: Grip): Len =>
  heldAtWorst(c, grip, whole, plainOf(c, t.on, whole, c.cylinder(t.on).size.hi));

function gripOn(work: Work, { t, whole, name }: Place, out: End, clearance: string): Grip {
  const c = work.c;
  const plain = plainOf(c, t.on, whole, c.cylinder(t.on).size.hi);
  const room = length(clearance);
  const free = out === 'first' ? { from: add(plain.from, room), to: plain.to } : { from: plain.from, to: minus(plain.to, room) };
  const datum = c.end(other(out))?.face;
  const grip: Grip = {
    ...{ id: `${name}.threaded-sleeve.${out}`, kind: 'threaded-sleeve', out, on: [t.on] },
    ...(datum ? { datum } : {}),
    ...{ from: free.from, to: len(Math.max(free.from, free.to)), diameter: t.thread.major.target },
    ready: work.operations.filter((k) => k.feature === t.id || (datum !== undefined && makes(k, datum))).map((k) => k.id),
    gone: [],
    hides: hiddenBehind(work, out, nearer(out, free)),
    lightOnly: false,
    runout: length('runout.threaded-sleeve'),
    because: [{ rule: 'threaded-sleeve', grounds: { thread: t.thread.name } }],
  };
  return withSleeve(c, t, grip);
}

/** Flush with the jaws on the side of the tool, and no longer than it need be. */
function withSleeve({ workshop }: Context, { thread }: ThreadFeature, grip: Grip): Grip {
  const asked = len(Math.max(scaled(grip.diameter, 'sleeve.length.ratio'), length('sleeve.length.least')));
  const held = bearing(grip, asked);
  const { bar } = sleeveBar(workshop, thread.major.hi);
  if (!bar) return held;
  const whole = minus(held.to, held.from);
  const long = minus(whole, len(whole % mm(1 / 10)));
  const tooling = { kind: 'threaded-sleeve', thread, length: long, material: bar.material, across: bar.across } as const;
  return { ...bearing(held, long), tooling };
}

function refusedFor(work: Work, { t, o }: Place, grip: Grip): Refusal | undefined {
  const { c } = work;
  const grounds = { thread: t.thread.name };
  const what = grip.id;
  if (!c.workshop.holding.sleeves) return { what, because: { rule: 'threaded-sleeves-not-made', grounds }, would: { grip } };
  const { bar, wants, thickest } = sleeveBar(c.workshop, t.thread.major.hi);
  if (!bar) return { what, because: { rule: 'sleeve-no-bar', grounds: {} }, has: thickest, wants };
  if (!isCutHere(c, t, grip))
    return { what, because: { rule: 'sleeve-not-tapped', grounds }, lacks: `tap-${t.thread.name}`, would: { grip } };
  if (!ENDS.some((end) => goesOn(c, t, end))) return { what, because: { rule: 'sleeve-not-on', grounds } };
  return cannotEnter(work, o, grip) ?? tooSlight(work, grip) ?? thinWall(work, o, grip.out, 'round');
}

/** From that end: all that it has to pass is thinner than its own thread is inside. */
function goesOn(c: Context, t: ThreadFeature, end: End): boolean {
  const i = c.outsides.findIndex((o) => o.cylinder === t.on);
  const passed = end === 'first' ? c.outsides.slice(0, i) : c.outsides.slice(i + 1);
  return passed.every((o) => diameterOf(c, o) < nutMinor(t.thread));
}

/** By a tap, or with the single point where that goes in and so far, and wheels come near. */
function isCutHere({ workshop }: Context, { thread }: ThreadFeature, { tooling }: Grip): boolean {
  if (tapFor(workshop, thread)) return true;
  const long = tooling?.kind === 'threaded-sleeve' ? tooling.length : len(0);
  if (!threadingFor(workshop, nutMinor(thread), long).tool) return false;
  return 'wheels' in wheelsFor(workshop.lathe, { thread, length: long });
}
