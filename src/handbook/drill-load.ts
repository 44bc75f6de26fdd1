/**
 * Torque and thrust of a drill by the factors of Machinery's Handbook: a second opinion beside the formula of cutting-force.ts, with its own
 * tables of feed and diameter. SI: mm, mm a turn, N, N m, kW. The work-material factor is given by whoever asks: its table was not read.
 */
import { cite } from './sources.ts';
import type { Relation } from './valve-ball.ts';

export type DrillAsk = {
  /** Work-material factor. */
  readonly kd: number;
  readonly diameter: number;
  readonly feed: number;
  /** Chisel edge over diameter; 0.18 is a drill of standard design. */
  readonly chisel: Chisel;
  /** Wear: 1 for a sharp drill. */
  readonly wear: number;
};

/** Ff of table 8. */
export const feedFactor = (feed: number): number => feed ** EXPONENT;
/** FT of table 9. */
export const thrustFactor = (diameter: number): number => diameter ** EXPONENT;
/** FM of table 9. */
export const torqueFactor = (diameter: number): number => diameter ** (1 + EXPONENT);
const EXPONENT = 0.8;

export function factoredThrust({ kd, diameter, feed, chisel, wear }: DrillAsk): number {
  const { b, j } = CHISEL[chisel];
  return 0.05 * kd * feedFactor(feed) * thrustFactor(diameter) * b * wear + 0.007 * kd * diameter ** 2 * j * wear;
}

export function factoredTorque({ kd, diameter, feed, chisel, wear }: DrillAsk): number {
  return 0.000025 * kd * feedFactor(feed) * torqueFactor(diameter) * CHISEL[chisel].a * wear;
}

/** kW at the drill: M n / 9550. */
export const powerOfTorque = (torque: number, turns: number): number => (torque * turns) / 9550;

/** Table 7: torque factor A, thrust factors B and J, by c/d; web thickness over diameter beside it in print. */
export type Chisel = 0.03 | 0.18 | 0.2;
const CHISEL: Readonly<Record<Chisel, { readonly a: number; readonly b: number; readonly j: number }>> = {
  0.03: { a: 1, b: 1.1, j: 0.001 },
  0.18: { a: 1.085, b: 1.355, j: 0.03 },
  0.2: { a: 1.105, b: 1.38, j: 0.04 },
};

export const drillLoadRelations: readonly Relation[] = [
  { id: 'factored-torque', formula: 'M = 0.000025 Kd Ff FM A W', unit: 'N m', source: cite('mh31-drill'), standing: 'standard' },
  {
    id: 'factored-thrust',
    formula: 'T = 0.05 Kd Ff FT B W + 0.007 Kd D² J W',
    unit: 'N',
    source: cite('mh31-drill'),
    standing: 'standard',
  },
];
