/**
 * Forces and power of cutting: Kienzle's law for turning and parting, the published formula for twist drills (whose thrust counts the chisel
 * edge, which Kienzle's does not), tapping. Lengths mm, forces N, torques N m, power W. The constants kc are rows of numbers.ts.
 */
import type { Standing } from './fact.ts';
import type { CuttingGroup } from './materials.ts';
import { numbersTable } from './numbers.ts';
import { cite, type SourceId } from './sources.ts';
import type { Relation } from './valve-ball.ts';

/** N/mm2 at a chip `thick` mm thick. Fitted from 0.1 to 1 mm; thinner chips take more (row kc.thin). */
export function cuttingStress(group: CuttingGroup, thick: number): number {
  return kienzle(numbersTable.value(`kc.${group}`), numbersTable.value(`kc.${group}.exponent`), thick);
}

export function kienzle(kc11: number, exponent: number, thick: number): number {
  return kc11 * thick ** -exponent;
}

/** Force along the cut, for depth `ap` a side and feed `f`, an edge at 90 degrees. */
export function turningForce(group: CuttingGroup, ap: number, feed: number): number {
  return cuttingStress(group, feed) * ap * feed;
}

/** W at the tool for a force at `vc` m/min. */
export function powerOf(force: number, vc: number): number {
  return (force * vc) / 60;
}

/** N m on the spindle. */
export function torqueOf(force: number, diameter: number): number {
  return (force * diameter) / 2000;
}

/** W asked of a motor: ap f vc kc / (60 efficiency). */
export function motorPower(ap: number, feed: number, vc: number, kc: number, efficiency: number): number {
  return (ap * feed * vc * kc) / (60 * efficiency);
}

/** mm3/min taken off by turning from one diameter to another at `vf` mm/min. */
export function removalRate(from: number, to: number, vf: number): number {
  return (Math.PI / 4) * (from ** 2 - to ** 2) * vf;
}

export type DrillLoad = { readonly torque: number; readonly thrust: number; readonly source: string; readonly standing: Standing };

/** Of a drill of `diameter` at `feed` mm a turn. Nothing for a material without a constant. */
export function drillLoad(material: string, diameter: number, feed: number): DrillLoad | undefined {
  const row = DRILLED.find(([name]) => name === material);
  if (!row) return undefined;
  const [, constant, source, standing] = row;
  return { ...drillForces(constant, diameter, feed), source: cite(source), standing };
}

/** Tc = 570 K D f^0.85; Mc = K D² (0.630 + 16.84 f) / 100. */
export function drillForces(constant: number, diameter: number, feed: number): { readonly torque: number; readonly thrust: number } {
  return {
    thrust: 570 * constant * diameter * feed ** 0.85,
    torque: (constant * diameter ** 2 * (0.63 + 16.84 * feed)) / 100,
  };
}

/** W: K D² n (0.647 + 17.29 f) / 1000. */
export function drillPower(constant: number, diameter: number, feed: number, turns: number): number {
  return (constant * diameter ** 2 * turns * (0.647 + 17.29 * feed)) / 1000;
}

/** N m to drive a tap: P² D kc / 8000. From memory; good to a quarter. */
export function tapTorque(pitch: number, diameter: number, kc: number): number {
  return (pitch ** 2 * diameter * kc) / 8000;
}

const DRILLED: readonly (readonly [material: string, constant: number, source: SourceId, standing: Standing])[] = [
  ['cast iron', 1, 'tungaloy', 'standard'],
  ['aluminium', 1.01, 'tungaloy', 'standard'],
  ['S20C', 2.22, 'tungaloy', 'standard'],
  ['SUM32', 1.42, 'tungaloy', 'standard'],
  ['SMn438', 1.45, 'tungaloy', 'standard'],
  ['SNC236', 2.02, 'tungaloy', 'standard'],
  ['SCM430', 2.1, 'tungaloy', 'standard'],
  ['SCM440', 2.41, 'tungaloy', 'standard'],
  // scaled with the cutting force from aluminium and free-cutting steel
  ['mild steel', 1.42, 'drill-rest', 'derived'],
  ['brass', 0.7, 'drill-rest', 'derived'],
  ['gunmetal', 0.9, 'drill-rest', 'derived'],
  ['bronze', 1.4, 'drill-rest', 'derived'],
  ['303', 2, 'drill-rest', 'derived'],
  ['316', 2.4, 'drill-rest', 'derived'],
  ['silver steel', 2.1, 'drill-rest', 'derived'],
];

export const forceRelations: readonly Relation[] = [
  { id: 'kienzle', formula: 'Fc = kc1.1 b h^(1 − mc)', unit: 'N', source: cite('iscar-kc'), standing: 'standard' },
  { id: 'motor', formula: 'P = ap f vc kc / (60 η)', unit: 'W', source: cite('mitsubishi'), standing: 'standard' },
  { id: 'drill-torque', formula: 'M = K D² (0.630 + 16.84 f) / 100', unit: 'N m', source: cite('tungaloy'), standing: 'standard' },
  { id: 'drill-thrust', formula: 'T = 570 K D f^0.85', unit: 'N', source: cite('tungaloy'), standing: 'standard' },
  { id: 'tap-torque', formula: 'M = P² D kc / 8000', unit: 'N m', source: cite('kc-rest'), standing: 'from memory' },
];
