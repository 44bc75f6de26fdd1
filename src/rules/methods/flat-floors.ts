/**
 * Flat floors without a boring tool: a counterbore steered by its pilot in the smaller hole that goes on, or a D-bit with a flat end,
 * steered by a drilled hole of its own size. Both reach where a boring tool cannot enter.
 */
import { add, type Len, minus } from '../../base/units.ts';
import { held } from '../../handbook/capability.ts';
import type { Method, Operation, Refusal, Way } from '../../model/plan.ts';
import { type Context, type Hole, length, operation, scaled, show, waysBy } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { type Drilling, drilling, drillOp, pilotHole, pointRoom, startOf } from './drilling.ts';
import { isHole } from './seat.ts';
import { filletAt, toolOf } from './single-lip.ts';

const ZERO = 0 as Len;
/** Neither is true to anything but the hole that steers it: no fit is made so. */
const TRUE_ROLES: readonly string[] = ['seat', 'running'];

/** Each leaves a sharp corner at the floor: where a fillet is to be, a boring tool leaves its metal. */
const isFloored = (c: Context, f: Parameters<MethodRule['offer']>[1]): f is Hole =>
  isHole(f) && f.floor !== undefined && !TRUE_ROLES.includes(f.role) && filletAt(c, f) === undefined;

export const counterbored: MethodRule = methodRule({
  id: 'counterbore',
  source: CUSTOM,
  when: (c, f) => {
    const pilot = isFloored(c, f) ? pilotHole(c, f) : undefined;
    return isFloored(c, f) && f.role !== 'register' && pilot && (c.workshop.tools.counterbores ?? []).length > 0 ? { f, pilot } : undefined;
  },
  then: ({ f, pilot }, c) => {
    const { size } = c.cylinder(f.cylinder);
    const start = startOf(c, pilot);
    const cutters = (c.workshop.tools.counterbores ?? []).filter(
      (b) => b.size >= size.lo && b.size + held('counterbore', 'diameter', 'final', b.size) <= size.hi,
    );
    const [cutter] = cutters;
    const fits =
      start === undefined ? undefined : cutters.find((b) => b.pilot <= start && widest(start) - b.pilot <= length('counterbore.slack'));
    if (!cutter || start === undefined) return {};
    if (!fits) return { refused: [pilotRefused(f, cutter.pilot, start)] };
    const tool = { kind: 'counterbore', key: `counterbore-${fits.size}`, size: fits.size, material: 'HSS' as const };
    const guide = { diameter: fits.pilot, least: scaled(fits.pilot, 'counterbore.guide'), slack: length('counterbore.slack') };
    const ways = waysBy((end) => flatWay(f, end, { size: fits.size, guide }));
    const because = { rule: 'counterbore', grounds: {} };
    const op = operation({ feature: f.id, step: 'counterbore', verb: 'counterbore', tool, ways }, [because]);
    return { methods: [{ feature: f.id, name: 'counterbore', because, operations: [op], rank: 0 }] };
  },
});

/** Too thick to enter, or too thin to be steered. */
function pilotRefused(f: Hole, has: Len, start: Len): Refusal {
  const refused = { what: `${f.id}/counterbore`, because: { rule: 'counterbore-pilot', grounds: {} }, has };
  return has > start ? { ...refused, most: start } : { ...refused, wants: minus(widest(start), length('counterbore.slack')) };
}

/** As wide as a drill of that size may leave its hole. */
const widest = (start: Len): Len => add(start, held('drill', 'diameter', 'rough', start));

const FOR_D_BIT: Drilling = { step: 'drill-for-d-bit', stage: 'rough' };

type Flat = { readonly size: Len; readonly guide: NonNullable<Way['guide']> };
function flatWay(f: Hole, end: 'first' | 'second', { size, guide }: Flat): Way | undefined {
  if (!f.floor || !f.opens.includes(end)) return undefined;
  return {
    cuts: [
      { makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO },
      { makes: f.floor, stage: 'final', measures: 'length', leaves: ZERO },
    ],
    sweeps: [{ take: 'bore', cylinder: f.cylinder, diameter: size, to: { face: f.floor } }],
    guide,
  };
}

/** Sizes of which a drill leaves the wall as it may stay, and so deep that a D-bit of its size is steered by it; nearest to the size aimed at first. */
function steering(c: Context, f: Hole, sizes: readonly Len[]): readonly Len[] {
  const { size, from, to } = c.cylinder(f.cylinder);
  const stays = (d: Len): boolean =>
    d >= size.lo && d + held('drill', 'diameter', 'final', d) <= size.hi && c.workshop.tools.drills.includes(d);
  const guided = (d: Len): boolean => minus(to, from) >= pointRoom(d) + length('drill.short') + scaled(d, 'flat-d-bit.guide');
  const off = (d: Len): number => Math.abs(d - size.target);
  return sizes.filter((d) => stays(d) && guided(d)).sort((a, b) => off(a) - off(b) || a - b);
}

/** Of those that are there, or that can be made. */
const flatFor = (c: Context, f: Hole): Len | undefined => {
  const { flatDBits = [], silverSteel } = c.workshop.tools;
  return steering(c, f, [...flatDBits, ...silverSteel]).find((d) => d <= c.cylinder(f.cylinder).size.target);
};

/** The drill is of the D-bit's own size, so that what it leaves steers the D-bit: the wall is as the drill made it, the floor is the D-bit's. */
export const flatDBit: MethodRule = methodRule({
  id: 'flat-d-bit',
  source: CUSTOM,
  when: (c, f) => {
    const size = isFloored(c, f) ? flatFor(c, f) : undefined;
    if (!isFloored(c, f) || size === undefined) return undefined;
    return { f, size, made: !(c.workshop.tools.flatDBits ?? []).includes(size) };
  },
  then: (flat, c) => ({ methods: [squared(flat, c)] }),
});

/** Where no boring tool goes in and no such D-bit is there, a drill of the drawer whose end is ground flat would do. */
export const flatDBitWanted: MethodRule = methodRule({
  id: 'no-flat-d-bit',
  source: CUSTOM,
  when: (c, f) => {
    if (!isFloored(c, f) || flatFor(c, f) !== undefined || bores(c, f)) return undefined;
    const [size] = steering(c, f, c.workshop.tools.drills);
    return size === undefined ? undefined : { f, size };
  },
  then: ({ f, size }, c) => {
    const because = { rule: 'no-flat-d-bit', grounds: { size: show(size) } };
    const method = squared({ f, size, made: false }, c);
    return { refused: [{ what: `${f.id}/flat-d-bit`, because, lacks: `flat-d-bit-${size}`, would: { method } }] };
  },
});

const bores = (c: Context, f: Hole): boolean => {
  const start = pilotHole(c, f);
  const hole = start ? startOf(c, start) : c.cylinder(f.cylinder).size.lo;
  return hole !== undefined && toolOf(c, f, hole) !== undefined;
};

type Squaring = { readonly f: Hole; readonly size: Len; readonly made: boolean };
function squared({ f, size, made }: Squaring, c: Context): Method {
  const { from, to } = c.cylinder(f.cylinder);
  const ask = { kind: 'd-bit' as const, end: 'flat' as const, diameter: size, length: add(minus(to, from), length('d-bit.shank')) };
  const tool: Operation['tool'] = {
    ...{ kind: 'flat-d-bit', key: `flat-d-bit-${size}`, size, material: 'silver steel' },
    ...(made ? { made: ask } : {}),
  };
  const guide = { diameter: size, least: scaled(size, 'flat-d-bit.guide'), slack: held('drill', 'diameter', 'final', size) };
  const ways = waysBy((end) => flatWay(f, end, { size, guide }));
  const because = { rule: 'flat-d-bit', grounds: {} };
  const op = operation({ feature: f.id, step: 'flat-d-bit', verb: 'd-bit', tool, ways }, [because], [{ rule: 'd-bit-stop', grounds: {} }]);
  const before = pilotHole(c, f) ? [drillOp(c, f, 'drill-for-d-bit', size, 'rough', 'small-drill-first')] : drilling(c, f, size, FOR_D_BIT);
  return { feature: f.id, name: 'flat-d-bit', because, operations: [...before, op], rank: 2 + 1 };
}
