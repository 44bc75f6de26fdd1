/**
 * Steam through a relief valve by API 520-I: area = 190.5 W / (P1 Kd Kb Kc KN KSH), kg/h and kPa absolute, mm2. Kept as a second opinion
 * beside Napier; the superheat table is cut to the pressures that small plants and the standard's own example ask for.
 */
import { cite } from './sources.ts';
import type { Relation } from './valve-ball.ts';

/** mm2 of nozzle for W kg/h. `kelvin`: of the steam; nothing for a temperature or a pressure outside the table. */
export function reliefArea(flow: number, p1: number, kelvin: number, coefficient: number): number | undefined {
  const heat = superheatFactor(p1, kelvin);
  return heat === undefined ? undefined : (190.5 * flow) / (p1 * coefficient * highPressureFactor(p1) * heat);
}

/** KN: 1 to 10 339 kPa. */
export function highPressureFactor(p1: number): number {
  return p1 <= 10_339 ? 1 : (0.02764 * p1 - 1000) / (0.03324 * p1 - 1061);
}

/** KSH, linear between rows and columns of the 7th edition; 1 at saturation. */
export function superheatFactor(p1: number, kelvin: number): number | undefined {
  const psig = p1 / PSI - ATMOSPHERE;
  const fahrenheit = (kelvin - 273.15) * 1.8 + 32;
  const row = between(PRESSURES, psig);
  const column = between(TEMPERATURES, fahrenheit);
  if (!row || !column) return undefined;
  const at = (r: number): number => {
    const cells = FACTORS[r] ?? [];
    return (cells[column.at] ?? 0) * (1 - column.share) + (cells[column.at + 1] ?? cells[column.at] ?? 0) * column.share;
  };
  return at(row.at) * (1 - row.share) + (row.share > 0 ? at(row.at + 1) * row.share : 0);
}

const PSI = 6.894757;
const ATMOSPHERE = 14.696;
/** psi gauge. */
const PRESSURES: readonly number[] = [15, 60, 100, 140, 200, 300, 1500, 1750, 2000];
const TEMPERATURES: readonly number[] = [300, 400, 500, 600, 700, 800];
const FACTORS: readonly (readonly number[])[] = [
  [1, 0.98, 0.93, 0.88, 0.84, 0.8],
  [1, 0.99, 0.93, 0.88, 0.84, 0.81],
  [1, 0.99, 0.94, 0.89, 0.84, 0.81],
  [1, 0.99, 0.94, 0.89, 0.85, 0.81],
  [1, 0.99, 0.95, 0.89, 0.85, 0.81],
  [1, 1, 0.96, 0.9, 0.85, 0.81],
  [1, 1, 1, 1, 0.93, 0.86],
  [1, 1, 1, 1, 0.94, 0.86],
  [1, 1, 1, 1, 0.95, 0.86],
];
/** Between these two rows of the cut table nothing is given. */
const GAP = { from: 300, to: 1500 } as const;

function between(steps: readonly number[], value: number): { readonly at: number; readonly share: number } | undefined {
  const at = steps.findLastIndex((step) => step <= value);
  const [low, high] = [steps[at], steps[at + 1]];
  if (low === undefined) return undefined;
  if (value === low) return { at, share: 0 };
  if (high === undefined || (steps === PRESSURES && low === GAP.from && high === GAP.to)) return undefined;
  return { at, share: (value - low) / (high - low) };
}

export const reliefRelations: readonly Relation[] = [
  { id: 'relief', formula: 'A = 190.5 W / (P1 Kd KN KSH)', unit: 'mm²', source: cite('api-520'), standing: 'standard' },
];
