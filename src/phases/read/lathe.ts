/** The keys of `lathe` made the record that the phases work with; what is absent is taken as a small bench lathe has it, and listed. */
import { present } from '../../base/asking.ts';
import { type Len, mm, toMm } from '../../base/units.ts';
import { perInch } from '../../handbook/pitches.ts';
import { usual } from '../../handbook/reading.ts';
import type { Banjo, Dial, PowerRange, Workshop } from '../../model/workshop.ts';
import type { LatheKeys } from './lathe-schema.ts';
import { stepsOrRange } from './speeds.ts';
import type { Taker } from './taken.ts';

type Lathe = Workshop['lathe'];
const LENGTH = 'mm';

/** A screwed nose is the careful guess: such a chuck may come off in reverse. Without gears no thread is cut with the leadscrew. */
export function latheOf(keys: LatheKeys, take: Taker): Lathe {
  const centreHeight = take('lathe.centre-height', keys['centre-height'], mm(usual('lathe.centre-height')), LENGTH);
  const speeds = speedsOf(keys, take);
  const leadscrew = take('lathe.leadscrew', keys.leadscrew, mm(usual('lathe.leadscrew')), LENGTH);
  return {
    centreHeight,
    overSlide: take('lathe.over-slide', keys['over-slide'], shareOf(centreHeight, 'lathe.over-slide'), LENGTH),
    betweenCentres: take('lathe.between-centres', keys['between-centres'], mm(usual('lathe.between-centres')), LENGTH),
    spindleBore: take('lathe.spindle-bore', keys['spindle-bore'], mm(usual('lathe.spindle-bore')), LENGTH),
    nose: take<Lathe['nose']>('lathe.nose', keys.nose, 'screwed'),
    speeds,
    motor: take('lathe.motor', keys.motor, usual('lathe.motor'), 'W'),
    torque: torqueOf(keys, speeds, take),
    leadscrew,
    gears: gearsOf(keys.gears ?? []),
    halfNuts: take('lathe.half-nuts', keys['half-nuts'], true),
    reverse: take('lathe.reverse', keys.reverse, true),
    ...present({ leadscrewPerInch: perInch(leadscrew), banjo: banjoOf(keys, take), tumbler: keys.tumbler }),
    ...(typeof keys['threading-dial'] === 'object' ? { threadingDial: keys['threading-dial'] } : {}),
    dials: dialsOf(keys.dials ?? {}, take),
    travel: travelOf(keys.travel ?? {}, centreHeight, take),
    tailstockTaper: take('lathe.tailstock-taper', keys['tailstock-taper'], 'MT2'),
    toolPost: take<Lathe['toolPost']>('lathe.tool-post', keys['tool-post'], 'quick-change'),
    jawClearance: take('lathe.jaw-clearance', keys['jaw-clearance'], mm(usual('jaw-clearance')), LENGTH),
    slideClearance: take('lathe.slide-clearance', keys['slide-clearance'], mm(usual('slide-clearance')), LENGTH),
  };
}

/** A share of another length, to a whole tenth of a millimetre. */
const shareOf = (whole: Len, id: string): Len => mm(Math.round(toMm(whole) * usual(id) * 10) / 10);

function speedsOf({ speeds }: LatheKeys, take: Taker): Lathe['speeds'] {
  const [from, to] = [usual('lathe.speed.from'), usual('lathe.speed.to')];
  const said = speeds && stepsOrRange(speeds);
  return take.whole<Lathe['speeds']>('lathe.speeds', said, { from, to }, `${from}-${to}`, '/min');
}

/** Pulleys let the motor run at its own speed whatever the spindle does; an electronic drive does not. */
function torqueOf({ torque }: LatheKeys, speeds: Lathe['speeds'], take: Taker): readonly PowerRange[] {
  if (!torque && 'steps' in speeds) return [];
  const fastest = 'steps' in speeds ? Math.max(...speeds.steps) : speeds.to;
  const said = torque && [torque].flat().map((one) => ({ to: one['up-to'] ?? fastest, fullFrom: one['full-power-from'] }));
  const fullFrom = Math.round(fastest * usual('lathe.full-power'));
  const ranges = take.whole('lathe.torque', said, [{ to: fastest, fullFrom }], fullFrom, '/min');
  return [...ranges].sort((a, b) => a.to - b.to || a.fullFrom - b.fullFrom);
}

function gearsOf(gears: NonNullable<LatheKeys['gears']>): readonly number[] {
  const each = gears.flatMap((one) => (typeof one === 'number' ? [one] : Array.from({ length: one.count ?? 1 }, () => one.teeth)));
  return each.sort((a, b) => a - b);
}

/** Of a banjo that was not measured the published trains tell what goes. */
function banjoOf({ banjo }: LatheKeys, take: Taker): Banjo | undefined {
  return take.whole<Banjo | undefined>('lathe.banjo', banjo, undefined, '');
}

type DialName = 'cross' | 'top' | 'tailstock' | 'carriage';
function dialsOf(keys: NonNullable<LatheKeys['dials']>, take: Taker): Lathe['dials'] {
  const dial = (name: DialName): Dial => dialOf(name, keys[name] ?? {}, take);
  const carriage = keys.carriage && dial('carriage');
  return { cross: dial('cross'), top: dial('top'), tailstock: dial('tailstock'), ...present({ carriage }) };
}

type DialKeys = NonNullable<NonNullable<LatheKeys['dials']>[DialName]>;
function dialOf(name: DialName, keys: DialKeys, take: Taker): Dial {
  const key = `lathe.dials.${name}`;
  const division = take(`${key}.division`, keys.division, mm(usual(`dial.${name}.division`)), LENGTH);
  return {
    reads: take<Dial['reads']>(`${key}.reads`, keys.reads, name === 'cross' ? 'diameter' : 'travel'),
    division,
    turn: take(`${key}.turn`, keys.turn, mm(usual(`dial.${name}.turn`)), LENGTH),
    units: keys.units ?? (division % mm(usual('dial.metric')) === 0 ? 'mm' : 'in'),
    ...present({ backlash: keys.backlash }),
  };
}

function travelOf(keys: NonNullable<LatheKeys['travel']>, centreHeight: Len, take: Taker): Lathe['travel'] {
  return {
    cross: take('lathe.travel.cross', keys.cross, shareOf(centreHeight, 'lathe.travel.cross'), LENGTH),
    top: take('lathe.travel.top', keys.top, mm(usual('lathe.travel.top')), LENGTH),
    tailstock: take('lathe.travel.tailstock', keys.tailstock, mm(usual('lathe.travel.tailstock')), LENGTH),
  };
}
