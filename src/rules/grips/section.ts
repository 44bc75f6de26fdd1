/** Held on an outside section: collet, sleeve, jaws (three, four, or bored in place), or on a hexagon. */
import { add, type Len, len, minus, mm, toMm } from '../../base/units.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { type Context, diameterOf, ENDS, farther, length, nearer, type Outside, scaled, stretchesOf } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { bearing, colletFor } from './closing.ts';
import { pastNecks } from './neck.ts';
import { steady } from './overhang.ts';
import { withPlug } from './plug.ts';
import { cannotEnter, protectedSurface, thinWall, tooSlight } from './refuse.ts';
import { seatedGrip } from './seated.ts';
import { inSleeve } from './sleeve.ts';
import { hiddenBehind, makes, plainOf, type Stretch, sorted } from './stretch.ts';
import { clearOfThin } from './thin.ts';
import { heldAtWorst } from './worst.ts';

export const onSection: GripRule = {
  id: 'on-section',
  source: CUSTOM,
  offer: (work) =>
    sorted(work.c.part.staysInChuck ? [] : work.c.outsides.flatMap((o) => ENDS.flatMap((out) => sectionGrips(work, o, out)))),
};

function sectionGrips(work: Work, o: Outside, out: End): readonly (Grip | Refusal)[] {
  const offered = placesOn(work.c, o, out).flatMap((on) => gripsAt(work, on, out));
  return offered.some((one) => 'kind' in one) ? offered : [...offered, ...besideSides(work, o, out, offered.length > 0)];
}

function gripsAt(work: Work, on: On, out: End): readonly (Grip | Refusal)[] {
  const kind = holdKind(work.c, on.o, out);
  const thin = thinWall(work, on.o, out, 'jaws');
  const bored = thin && kind !== 'bored-jaws' && work.c.workshop.holding.softJaws ? gripsOf(work, on, out, 'bored-jaws') : [];
  const first = gripsOf(work, on, out, kind);
  const instead = insteadOf(kind, on.o, work.c, first);
  return [...first, ...bored, ...(instead && !(thin && instead === 'bored-jaws') ? gripsOf(work, on, out, instead) : [])];
}

/**
 * A section, or one of its stretches where a groove parts it: jaws close on that one, within `free`, as much of it as lies between two of the
 * things that jaws keep off.
 */
type On = { readonly o: Outside; readonly stretch: Stretch; readonly free: Stretch; readonly name: string };

/** Every place on a section where jaws can close; of a stretch the innermost first, which leaves most of the work free. */
function placesOn(c: Context, o: Outside, out: End): readonly On[] {
  return stretchesOf(c.cylinder(o.cylinder)).flatMap((stretch, i) => {
    const name = i === 0 ? o.id : `${o.id}.${i + 1}`;
    const free = clearOfSides(c, stretch, o);
    const inward = out === 'first' ? [...free].reverse() : free;
    return inward
      .filter((one) => entersChuck(c, o, one, out))
      .map((one, k): On => ({ o, stretch, free: one, name: k === 0 ? name : `${name}.beyond${k === 1 ? '' : `-${k}`}` }));
  });
}

/** Where no sleeve can be made, what else is gentle with a finished diameter; for a rim too short for one, jaws with a step behind it. */
function insteadOf(kind: Hold, o: Outside, c: Context, offered: readonly (Grip | Refusal)[]): Hold | undefined {
  const { holding } = c.workshop;
  const refusedBy = (rule: string): boolean => offered.some((one) => 'what' in one && one.because.rule.startsWith(rule));
  const isRim = ROUND.includes(kind) && c.outsides.every((other) => diameterOf(c, other) <= diameterOf(c, o));
  const short = isRim && refusedBy('grip-short') && !offered.some((one) => 'kind' in one);
  if (!refusedBy('sleeve-')) return short && holding.softJaws ? 'bored-jaws' : undefined;
  return holding.softJaws ? 'bored-jaws' : holding.fourJaw ? 'four-jaw' : undefined;
}
const ROUND: readonly Hold[] = ['sleeve', 'collet'];

/** Where holes and branches leave no place to hold by: why not, if that is not told yet; and the whole section until its first hole is drilled. */
function besideSides(work: Work, o: Outside, out: End, told: boolean): readonly (Grip | Refusal)[] {
  const { c } = work;
  const sides = c.part.features.flatMap((f) => (f.kind === 'side' && f.on === o.cylinder && BEFORE_HOLDING.includes(f.does) ? [f] : []));
  if (sides.length === 0) return [];
  const covered = told ? [] : [underHold(c, o, out)];
  if (sides.some((f) => f.does !== 'cross-hole')) return covered;
  const gone = work.operations.flatMap((k) => (sides.some((f) => f.id === k.feature) ? [k.id] : []));
  const until = (grip: Grip): Grip => ({ ...grip, gone, because: [...grip.because, { rule: 'held-before-holes', grounds: {} }] });
  const whole = stretchesOf(c.cylinder(o.cylinder)).flatMap((stretch, i) =>
    gripsAt(work, { o, stretch, free: stretch, name: `${o.id}.undrilled${i === 0 ? '' : `-${i + 1}`}` }, out),
  );
  return [...covered, ...whole.map((one) => ('kind' in one ? until(one) : { ...one, ...withGrip(one, until) }))];
}

const withGrip = ({ would }: Refusal, change: (grip: Grip) => Grip): Pick<Refusal, 'would'> =>
  would && 'grip' in would ? { would: { grip: change(would.grip) } } : {};

/** The longest place between what jaws keep off, with room at the side where tools work, against the least of any hold. */
function underHold(c: Context, o: Outside, out: End): Refusal {
  const places = placesOn(c, o, out).map((on) => roomOn(c, on, out, 'jaw.clearance.light'));
  const has = len(Math.max(0, ...places.map(({ from, to }) => to - from)));
  const wants = atLeast(scaled(c.cylinder(o.cylinder).size.target, 'grip.light.ratio'));
  return { what: `${o.id}.${holdKind(c, o, out)}.${out}`, because: { rule: 'holes-under-hold', grounds: {} }, has, wants };
}

function gripsOf(work: Work, place: On, out: End, kind: Hold): readonly (Grip | Refusal)[] {
  const { o } = place;
  const round = kind === 'collet' || kind === 'bored-jaws';
  const on = { ...place, free: clearOfThin(work.c, o, place.free, out, round ? 'grip.wall.round' : 'grip.wall.ratio') };
  const bare = sectionGrip(work, on, out, kind, 'jaw.clearance');
  if (!bare) return [];
  const refused = protectedSurface(work, o, bare) ?? tooSlight(work, bare) ?? cannotEnter(work, o, bare);
  if (refused) return [{ ...refused, what: bare.id, ...(refused.would ? { would: { grip: bare } } : {}) }];
  const thin = thinWall(work, o, out, round ? 'round' : 'jaws');
  const offered = asLongAs(work, on, out, kind, bare);
  if (!thin) return offered;
  const { grips, refused: others } = sorted(offered);
  const plugged = grips.flatMap((grip) => withPlug(work, o, grip));
  return [{ ...thin, what: bare.id, would: { grip: bare } }, ...(grips.length > 0 ? plugged : others)];
}

/** Long enough for heavy work, or for light work alone; with the sleeve and the centre that it asks for. */
function asLongAs(work: Work, on: On, out: End, kind: Hold, bare: Grip): readonly (Grip | Refusal)[] {
  const { o } = on;
  const through = (grip: Grip): Grip | Refusal => (kind === 'sleeve' ? inSleeve(work.c, grip, work.c.cylinder(o.cylinder).size) : grip);
  const grip = through(bare);
  if (!('kind' in grip)) return [grip];
  const heavy = atLeast(scaled(grip.diameter, 'grip.heavy.ratio'));
  // a light facing cut never passes the jaws: less room is enough
  const close = through(sectionGrip(work, on, out, kind, 'jaw.clearance.light') ?? bare);
  const long = minus(grip.to, grip.from) >= heavy;
  const plain = clearOfCones(work.c, o, on.stretch);
  const asked = 'kind' in close ? lightGrips(grip, close, heavy) : [close];
  // what may come out too short at the limits is offered for light work besides
  const sure = heldAtWorst(work.c, grip, on.stretch, plain) >= heavy;
  const seated = sure ? [] : seatedGrip(work.c, grip, on.stretch, plain);
  const offered = sure ? [grip] : [...(long ? [grip, ...asked.filter((one) => 'kind' in one)] : asked), ...seated];
  const steadied = offered.flatMap((one) => ('kind' in one ? steady(work, one, nearer(out, one)) : [one]));
  return steadied.flatMap((one) => ('kind' in one ? pastNecks(work, one) : [one]));
}

function lightGrips(grip: Grip, close: Grip, heavy: Len): readonly (Grip | Refusal)[] {
  const [has, room] = [minus(grip.to, grip.from), minus(close.to, close.from)];
  const light = grip.kind === 'bored-jaws' ? length('grip.least') : atLeast(scaled(grip.diameter, 'grip.light.ratio'));
  const short: Refusal = { what: grip.id, because: { rule: 'grip-short', grounds: {} }, has, wants: heavy, would: { grip } };
  if (room < light) return [{ ...short, has: room, wants: light }];
  return [short, { ...close, id: `${grip.id}.light`, lightOnly: true, because: [...grip.because, { rule: 'light-grip', grounds: {} }] }];
}

const atLeast = (l: Len): Len => len(Math.max(l, length('grip.least')));

/** The whole section but for room at the side where tools work. Nothing is left where `to` is not beyond `from`. */
function roomOn(c: Context, { o, stretch, free }: On, out: End, clearance: string): Stretch {
  const room = length(clearance);
  const plain = clearOfCones(c, o, stretch);
  const clear = out === 'first' ? { from: add(plain.from, room), to: plain.to } : { from: plain.from, to: minus(plain.to, room) };
  return { from: len(Math.max(clear.from, free.from)), to: len(Math.min(clear.to, free.to)) };
}

function sectionGrip(work: Work, on: On, out: End, kind: Hold, clearance: string): Grip | undefined {
  const c = work.c;
  const { o, stretch: whole, name } = on;
  const cyl = c.cylinder(o.cylinder);
  const stretch = roomOn(c, on, out, clearance);
  if (stretch.to <= stretch.from) return undefined;
  const datum = datumBehind(c, whole, out, kind);
  const knurls = knurlsOn(c, o);
  const grip: Grip = {
    id: `${name}.${kind}.${out}`,
    kind,
    out,
    on: [o.cylinder],
    from: stretch.from,
    to: stretch.to,
    diameter: cyl.size.target,
    ...(datum ? { datum } : {}),
    ...(knurls.length > 0 ? { knurled: true as const } : {}),
    ready: work.operations
      .filter((k) => k.feature === o.id || knurls.includes(k.feature) || (datum !== undefined && makes(k, datum)))
      .map((k) => k.id),
    gone: [],
    hides: hiddenBehind(work, out, nearer(out, stretch)),
    lightOnly: false,
    runout: length(RUNOUT[kind]),
    because: [{ rule: `in-${kind}`, grounds: {} }],
  };
  const takes = kind === 'collet' ? colletFor(c.workshop, cyl.size) : undefined;
  return takes ? bearing({ ...grip, takes }, length('collet.bears')) : grip;
}
type Hold = 'collet' | 'bored-jaws' | 'four-jaw' | 'sleeve' | 'jaws' | 'hexagon';
const RUNOUT: Readonly<Record<Hold, string>> = {
  collet: 'runout.collet',
  'bored-jaws': 'runout.bored-jaws',
  'four-jaw': 'runout.four-jaw',
  sleeve: 'runout.sleeve',
  jaws: 'runout.three-jaw',
  hexagon: 'runout.three-jaw',
};

/** On a hexagon a cone reaches farthest along the corners. */
function clearOfCones(c: Context, o: Outside, stretch: Stretch): Stretch {
  const { hi } = c.cylinder(o.cylinder).size;
  return plainOf(c, o.cylinder, stretch, o.section === 'hexagon' ? mm(toMm(hi) * numbersTable.value('hexagon.corners')) : hi);
}

/** Jaws keep off cross holes and branches: what lies between them, from the first end to the second. */
function clearOfSides(c: Context, whole: Stretch, o: Outside): readonly Stretch[] {
  const room = length('jaw.clearance');
  const sides = c.part.features.flatMap((f) => (f.kind === 'side' && f.on === o.cylinder && BEFORE_HOLDING.includes(f.does) ? [f] : []));
  return sides.reduce<readonly Stretch[]>(
    (left, f) => {
      const [from, to] = [minus(minus(f.at, f.half), room), add(add(f.at, f.half), room)];
      return left.flatMap((one) =>
        to <= one.from || from >= one.to
          ? [one]
          : [
              { from: one.from, to: from },
              { from: to, to: one.to },
            ].filter((piece) => piece.to > piece.from),
      );
    },
    [whole],
  );
}

/** What stands out of the work cannot go into the jaws behind the hold; a hole can. */
const entersChuck = (c: Context, o: Outside, hold: Stretch, out: End): boolean =>
  !c.part.features.some(
    (f) =>
      f.kind === 'side' &&
      f.on === o.cylinder &&
      (f.does === 'branch' || f.does === 'flange') &&
      (out === 'first' ? f.at > hold.to : f.at < hold.from),
  );

/** Side features that stand when the work is held again; what is filed comes after. */
const BEFORE_HOLDING: readonly string[] = ['cross-hole', 'branch', 'flange'];

function holdKind(c: Context, o: Outside, out: End): Hold {
  if (o.section === 'hexagon') return 'hexagon';
  // a knurl is held gently all round, by what is bored to it, or not at all
  if (knurlsOn(c, o).length > 0) return 'bored-jaws';
  if (colletFor(c.workshop, c.cylinder(o.cylinder).size)) return 'collet';
  if (c.cylinder(o.cylinder).asStock) return 'jaws';
  const { softJaws, fourJaw, sleeves } = c.workshop.holding;
  const truth = wantsTruth(c, out);
  if (softJaws && truth) return 'bored-jaws';
  if (fourJaw && (truth || !sleeves)) return 'four-jaw';
  return sleeves ? 'sleeve' : 'jaws';
}

const knurlsOn = (c: Context, o: Outside): readonly string[] =>
  c.part.features.flatMap((f) => (f.kind === 'side' && f.does === 'knurl' && f.on === o.cylinder ? [f.id] : []));

/** Running bores from both ends that must agree: jaws bored in place, or four set by the indicator, run truer than a sleeve. */
function wantsTruth(c: Context, out: End): boolean {
  const running = c.holes.filter((h) => h.role === 'running' && h.opens.length === 1);
  return running.some((h) => h.opens.includes(out)) && running.some((h) => !h.opens.includes(out));
}

/** The face at the inner end of the hold, or the part's far end: pushed against jaws or stop, lengths are read from it. */
function datumBehind(c: Context, stretch: Stretch, out: End, kind: Hold): SurfaceId | undefined {
  // inside a collet or sleeve only a stop in the spindle can reach: the part's own end
  if (kind === 'collet' || kind === 'sleeve') return c.end(other(out))?.face;
  const z = farther(out, stretch);
  const face = c.part.surfaces.find((s) => s.shape === 'face' && s.side === 'outside' && s.z === z && s.air === other(out));
  return face?.id ?? c.end(other(out))?.face;
}
