/**
 * A plug in a thin tube: a wall that jaws would press in lies on metal, as if the work were solid under its hold. It is turned to this bore,
 * goes in by hand from the end that stands in the chuck, and fills the bore as far as the hold reaches. It steers nothing: the work runs as
 * true as what closes on its outside.
 */
import { add, type Len, len, minus, mm, toMm } from '../../base/units.ts';
import { tapping } from '../../handbook/tapping-torque.ts';
import type { Cylinder } from '../../model/part.ts';
import type { Grip, Refusal, ToolingAsk } from '../../model/plan.ts';
import { type Context, diameterOf, farther, type Hole, length, nearer, type Outside, scaled } from '../context.ts';
import type { Work } from '../rule.ts';

/** All tooling that a hold asks for: what it is held on or in, and what fills it. */
export const toolingOf = ({ tooling, plug }: Pick<Grip, 'tooling' | 'plug'>): readonly ToolingAsk[] => [
  ...(tooling ? [tooling] : []),
  ...(plug ? [plug.tooling] : []),
];

/** The same hold with a plug in the bore under it, or why there is none; nothing where no thin wall lies under it. */
export function withPlug(work: Work, o: Outside, grip: Grip): readonly (Grip | Refusal)[] {
  const thin = thinUnder(work.c, o, grip);
  const [bore, another] = thin;
  if (!bore) return [];
  const id = `${grip.id}.plugged`;
  if (another) return [{ what: id, because: { rule: 'plug-two-bores', grounds: {} } }];
  const plugged = gripOn(work, bore, { ...grip, id });
  return [refusedFor(work.c, bore, plugged) ?? plugged];
}

/** Holes under the hold that leave a wall which gives in three jaws. */
function thinUnder(c: Context, o: Outside, grip: Grip): readonly Hole[] {
  const walls = add(scaled(grip.diameter, 'grip.wall.ratio'), scaled(grip.diameter, 'grip.wall.ratio'));
  return c.holes.filter((h) => {
    const { from, to, size } = c.cylinder(h.cylinder);
    return from < grip.to && to > grip.from && minus(diameterOf(c, o), size.target) < walls;
  });
}

function gripOn(work: Work, h: Hole, grip: Grip): Grip {
  const c = work.c;
  const bore = c.cylinder(h.cylinder);
  const [from, to] = filled(bore, grip, runsOn(c, bore, grip));
  const tooling: ToolingAsk = { kind: 'tube-plug', bore: bore.size, length: minus(to, from), serves: c.part.id };
  const makes = work.operations.filter((k) => k.feature === h.id).map((k) => k.id);
  return {
    ...noFartherThan(grip, { from, to }),
    plug: { from, to, bore: h.cylinder, tooling },
    ready: [...new Set([...grip.ready, ...makes])],
    hides: [...new Set([...grip.hides, ...inTheWay(work, from, to)])],
    because: [...grip.because, { rule: 'and-plug', grounds: {} }],
  };
}

/** From a little behind the end that is pushed home to as far as the hold reaches, or as the bore does, less what runs on into it. */
function filled(bore: Cylinder, grip: Grip, past: Len): readonly [from: Len, to: Len] {
  const front = nearer(grip.out, grip);
  const recess = length('plug.recess');
  const short = len(Math.max(recess, past));
  return grip.out === 'second'
    ? [add(bore.from, recess), len(Math.min(front, minus(bore.to, short)))]
    : [len(Math.max(front, add(bore.from, short))), minus(bore.to, recess)];
}

/** A tap that comes from the out end and right through its thread runs on by its lead. */
function runsOn(c: Context, bore: Cylinder, grip: Grip): Len {
  const floor = grip.out === 'second' ? bore.to : bore.from;
  const leads = c.threads.flatMap((t) => {
    const lead = mm(toMm(t.thread.pitch) * tapping.value('tap.lead.second'));
    const far = Math.abs(farther(grip.out, t) - floor);
    return t.side === 'inside' && far < lead ? [lead - far] : [];
  });
  return len(Math.max(0, ...leads));
}

/** Jaws close on no more than is filled. */
function noFartherThan(grip: Grip, plug: { readonly from: Len; readonly to: Len }): Grip {
  const recess = length('plug.recess');
  return grip.out === 'second'
    ? { ...grip, to: len(Math.min(grip.to, add(plug.to, recess))) }
    : { ...grip, from: len(Math.max(grip.from, minus(plug.from, recess))) };
}

/** What is cut inside where the plug stands, or so near that its tool would run on into it. */
function inTheWay(work: Work, from: Len, to: Len): readonly string[] {
  const [near, far] = [minus(from, length('drill.past')), add(to, length('drill.past'))];
  const inside = work.c.part.surfaces.filter((s) => s.side === 'inside' && s.shape === 'cylinder' && s.to > near && s.from < far);
  const threads = work.c.threads.filter((t) => inside.some((s) => s.id === t.on)).map((t) => t.id);
  const features = new Set([...inside.map((s) => s.feature), ...threads]);
  return work.operations.filter((k) => features.has(k.feature)).map((k) => k.id);
}

function refusedFor(c: Context, h: Hole, grip: Grip): Refusal | undefined {
  const what = grip.id;
  const bore = c.cylinder(h.cylinder);
  const open = grip.out === 'second' ? bore.from === 0 : bore.to === c.part.length;
  if (!open) return { what, because: { rule: 'plug-not-in', grounds: {} } };
  if (c.threads.some((t) => t.on === h.cylinder)) return { what, because: { rule: 'plug-on-thread', grounds: {} } };
  if (h.role === 'seat' || h.role === 'sealing') return { what, because: { rule: 'kept-surface', grounds: {} } };
  const band = minus(bore.size.hi, bore.size.lo);
  const most = length('plug.band.most');
  if (band > most) return { what, because: { rule: 'plug-bore-loose', grounds: {} }, has: band, most, would: { grip } };
  const has = minus(grip.to, grip.from);
  const ratio = scaled(grip.diameter, grip.lightOnly ? 'grip.light.ratio' : 'grip.heavy.ratio');
  const wants = len(Math.max(grip.lightOnly && grip.kind === 'bored-jaws' ? 0 : ratio, length('grip.least')));
  return has < wants ? { what, because: { rule: 'plug-short', grounds: {} }, has, wants } : undefined;
}
