/** A speed that this lathe has, with what bound it; and how deep a cut its motor bears. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { type CuttingData, surfaceSpeed, turnsAMinute } from '../handbook/cutting.ts';
import { leastCut } from '../handbook/machining.ts';
import { findMaterial } from '../handbook/materials.ts';
import { powerAt, torque } from '../handbook/motor.ts';
import { numbersTable } from '../handbook/numbers.ts';
import type { Figures } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';

export type Speeds = Workshop['lathe']['speeds'];
/** `bound` is the words' id of what sets `most`. */
export type SpeedBound = { readonly most: number; readonly bound: string };
export type Speed = NonNullable<Figures['rpm']>;
/** `vc` in m/min at `diameter`, the largest that is cut; `bounds`: what else allows no more. */
export type SpeedAsk = { readonly vc: number; readonly diameter: Len; readonly speeds: Speeds; readonly bounds: readonly SpeedBound[] };

/** Rounded down to a speed that there is; the lathe's slowest where all that is wanted is slower still, and then it says so. */
export function chooseSpeed({ vc, diameter, speeds, bounds }: SpeedAsk): Speed {
  const wanted: readonly SpeedBound[] = [
    { most: turnsAMinute(vc, diameter), bound: 'bound.cutting-speed' },
    ...bounds,
    { most: fastest(speeds), bound: 'bound.lathe-fastest' },
  ];
  const binding = wanted.reduce((least, one) => (one.most < least.most ? one : least));
  const value = roundDown(binding.most, speeds);
  if (value === undefined) return { value: slowest(speeds), vc: surfaceSpeed(slowest(speeds), diameter), bound: 'bound.lathe-slowest' };
  return { value, vc: surfaceSpeed(value, diameter), bound: binding.bound };
}

/** Does this lathe have that speed? A range has every whole one. */
export function hasSpeed(speeds: Speeds, value: number): boolean {
  return 'steps' in speeds ? speeds.steps.includes(value) : Number.isInteger(value) && value >= speeds.from && value <= speeds.to;
}

function roundDown(most: number, speeds: Speeds): number | undefined {
  if ('steps' in speeds) {
    const below = speeds.steps.filter((step) => step <= most);
    return below.length === 0 ? undefined : Math.max(...below);
  }
  if (most < speeds.from) return undefined;
  const step = numbersTable.value(most > numbersTable.value('rpm.tidy.change') ? 'rpm.tidy.high' : 'rpm.tidy.low');
  return Math.max(Math.ceil(speeds.from), Math.floor(most / step) * step);
}

const fastest = (speeds: Speeds): number => ('steps' in speeds ? Math.max(...speeds.steps) : Math.floor(speeds.to));
const slowest = (speeds: Speeds): number => ('steps' in speeds ? Math.min(...speeds.steps) : Math.ceil(speeds.from));

/** What turns the spindle. */
export type Drive = Pick<Workshop['lathe'], 'motor' | 'torque'>;

/** W at the tool that this drive gives at that speed: what a cut may ask of its rating, less below the speed from which it falls off. */
export function wattsAt({ motor, torque }: Drive, turns: number): number {
  return powerAt(motor, torque, turns) * numbersTable.value('power.share') * numbersTable.value('power.efficiency');
}

/** N m on the spindle at that speed. */
export function torqueOn(drive: Drive, turns: number): number {
  return turns > 0 ? torque(wattsAt(drive, turns), turns) : 0;
}

/** The same for a plunge or a drill: it is short, and may ask for the motor's whole rating. */
export function shortTorque(drive: Drive, turns: number): number {
  return torqueOn(drive, turns) / numbersTable.value('power.share');
}

/** Words' id of what the drive lacks at that speed: where its power has fallen off, it is torque. */
export const driveBound = (drive: Drive, turns: number): string =>
  powerAt(drive.motor, drive.torque, turns) < drive.motor ? 'bound.torque' : 'bound.power';

/** `most` in mm a side. */
export type DepthBound = { readonly most: number; readonly bound: string };
export type DepthAsk = {
  readonly data: CuttingData;
  readonly material: string;
  readonly speed: Pick<Speed, 'value' | 'vc'>;
  readonly drive: Drive;
  /** Give of work and bar. */
  readonly gives: readonly DepthBound[];
  /** A side, of one division of the dial: depths are drawn in to it. */
  readonly unit: Len;
};
export type Depth = { readonly most: Len; readonly bound: string };

/**
 * Deepest cut a side, with what binds it; undefined where the tables give neither depth nor feed. Never under the least cut of the metal:
 * where that is more than something bears, it is what binds.
 */
export function deepestCut({ data, material, speed, drive, gives, unit }: DepthAsk): Depth | undefined {
  if (data.ap === undefined || data.feed === undefined) return undefined;
  const force = cuttingForce(material, data.feed);
  const group = findMaterial(material)?.cutting;
  if (force === undefined || group === undefined) return { most: data.ap, bound: 'bound.tool' };
  // P[W] = ap[mm] x f[mm] x kc[N/mm2] x vc[m/min] / 60
  const power = (wattsAt(drive, speed.value) * numbersTable.value('minute')) / (data.feed * force * speed.vc);
  const bounds: readonly DepthBound[] = [
    { most: toMm(data.ap), bound: 'bound.tool' },
    { most: power, bound: driveBound(drive, speed.value) },
    ...gives,
  ];
  const binding = bounds.reduce((least, one) => (one.most < least.most ? one : least));
  const least = leastCut(group).depth;
  if (binding.most < least) return { most: mm(least), bound: 'bound.least-cut' };
  const whole = len(Math.floor(mm(binding.most) / unit) * unit);
  return { most: len(Math.max(whole, mm(least))), bound: binding.bound };
}

/** Specific cutting force at this feed, N/mm2 (Kienzle, edge square to the axis). */
export function cuttingForce(material: string, feed: number): number | undefined {
  const group = findMaterial(material)?.cutting;
  if (group === undefined) return undefined;
  return numbersTable.value(`kc.${group}`) * feed ** -numbersTable.value(`kc.${group}.exponent`) * numbersTable.value('kc.thin');
}
