/**
 * Flat floors without a boring tool: a counterbore steered by its pilot in the smaller hole that goes on, or a D-bit with a flat end,
 * steered by a drilled hole of its own size. Both reach where a boring tool cannot enter.
 */
import { add, type Len, minus } from '../../base/units.ts';
import { held } from '../../handbook/capability.ts';
import type { Operation, Refusal, Way } from '../../model/plan.ts';
import { type Context, type Hole, length, operation, scaled, waysBy } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { type Drilling, drilling, drillOp, pilotHole, pointRoom, startOf } from './drilling.ts';
import { isHole } from './seat.ts';
import { filletAt } from './single-lip.ts';

const ZERO = 0 as Len;
/** Neither is true to anything but the hole that steers it: no fit is made so. */
const TRUE_ROLES: readonly string[] = ['seat', 'running', 'register'];

/** Each leaves a sharp corner at the floor: where a fillet is to be, a boring tool leaves its metal. */
const isFloored = (c: Context, f: Parameters<MethodRule['offer']>[1]): f is Hole =>
  isHole(f) && f.floor !== undefined && !TRUE_ROLES.includes(f.role) && filletAt(c, f) === undefined;

export const counterbored: MethodRule = methodRule({
  id: 'counterbore',
  source: CUSTOM,
  when: (c, f) => {
    const pilot = isFloored(c, f) ? pilotHole(c, f) : undefined;
    return isFloored(c, f) && pilot && (c.workshop.tools.counterbores ?? []).length > 0 ? { f, pilot } : undefined;
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

/** The drill is of the D-bit's own size, so that what it leaves steers the D-bit: the wall is as the drill made it, the floor is the D-bit's. */
export const flatDBit: MethodRule = methodRule({
  id: 'flat-d-bit',
  source: CUSTOM,
  when: (c, f) => {
    if (!isFloored(c, f)) return undefined;
    const { size, from, to } = c.cylinder(f.cylinder);
    const { flatDBits = [], silverSteel, drills } = c.workshop.tools;
    const steered = (d: Len): boolean =>
      d >= size.lo && d <= size.target && d + held('drill', 'diameter', 'final', d) <= size.hi && drills.includes(d);
    const guided = (d: Len): boolean => minus(to, from) >= pointRoom(d) + length('drill.short') + scaled(d, 'flat-d-bit.guide');
    const best = [...flatDBits, ...silverSteel].filter((d) => steered(d) && guided(d)).sort((a, b) => b - a)[0];
    return best === undefined ? undefined : { f, size: best, made: !flatDBits.includes(best) };
  },
  then: ({ f, size, made }, c) => {
    const { from, to } = c.cylinder(f.cylinder);
    const ask = { kind: 'd-bit' as const, end: 'flat' as const, diameter: size, length: add(minus(to, from), length('d-bit.shank')) };
    const tool: Operation['tool'] = {
      ...{ kind: 'flat-d-bit', key: `flat-d-bit-${size}`, size, material: 'silver steel' },
      ...(made ? { made: ask } : {}),
    };
    const guide = { diameter: size, least: scaled(size, 'flat-d-bit.guide'), slack: held('drill', 'diameter', 'final', size) };
    const ways = waysBy((end) => flatWay(f, end, { size, guide }));
    const because = { rule: 'flat-d-bit', grounds: {} };
    const op = operation(
      { feature: f.id, step: 'flat-d-bit', verb: 'd-bit', tool, ways },
      [because],
      [{ rule: 'd-bit-stop', grounds: {} }],
    );
    const before = pilotHole(c, f)
      ? [drillOp(c, f, 'drill-for-d-bit', size, 'rough', 'small-drill-first')]
      : drilling(c, f, size, FOR_D_BIT);
    return { methods: [{ feature: f.id, name: 'flat-d-bit', because, operations: [...before, op], rank: 2 + 1 }] };
  },
});
