/** A speed that this lathe has, with what bound it; and how deep a cut its motor bears. */
import { type Len, len, mm } from '../base/units.ts';
import { type CuttingData, surfaceSpeed, turnsAMinute } from '../handbook/cutting.ts';
import { findMaterial } from '../handbook/materials.ts';
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

export type DepthAsk = { readonly data: CuttingData; readonly material: string; readonly vc: number; readonly motor: number };

/**
 * Deepest cut a side that tool and motor bear, at this speed; undefined where the tables give neither depth nor feed. Drawn in to the
 * hundredth, and never under one.
 */
export function deepestCut({ data, material, vc, motor }: DepthAsk): Len | undefined {
  if (data.ap === undefined || data.feed === undefined) return undefined;
  const force = cuttingForce(material, data.feed);
  if (force === undefined) return data.ap;
  const watts = motor * numbersTable.value('power.share') * numbersTable.value('power.efficiency');
  // P[W] = ap[mm] x f[mm] x kc[N/mm2] x vc[m/min] / 60
  const most = (watts * numbersTable.value('minute')) / (data.feed * force * vc);
  const fine = mm(numbersTable.value('tidy.fine'));
  return len(Math.max(fine, Math.min(data.ap, Math.floor(mm(most) / fine) * fine)));
}

/** Specific cutting force at this feed, N/mm2 (Kienzle, edge square to the axis). */
export function cuttingForce(material: string, feed: number): number | undefined {
  const group = findMaterial(material)?.cutting;
  if (group === undefined) return undefined;
  return numbersTable.value(`kc.${group}`) * feed ** -numbersTable.value(`kc.${group}.exponent`) * numbersTable.value('kc.thin');
}
