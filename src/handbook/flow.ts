/**
 * Flow of water and of saturated steam through small openings. Pressures are absolute, in bar, but for differences; areas mm2, densities
 * kg/m3. Each relation says where it holds; outside nothing is given.
 */
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';
import type { Relation } from './valve-ball.ts';

/** m3/h of water through an opening: Cd A sqrt(2 dp / rho). `drop` in bar. */
export function orificeFlow(coefficient: number, area: number, drop: number, density: number): number {
  return coefficient * area * 1e-6 * Math.sqrt((2 * drop * 1e5) / density) * 3600;
}

/** Its inverse: the area that passes `flow` m3/h. */
export function orificeArea(coefficient: number, flow: number, drop: number, density: number): number {
  return flow / orificeFlow(coefficient, 1, drop, density);
}

/** Kv (m3/h of cold water at 1 bar) of an opening, by the definition of Kv. */
export function kvOfArea(coefficient: number, area: number): number {
  return orificeFlow(coefficient, area, 1, 1000);
}

/** Kv that passes `flow` m3/h at a difference of `drop` bar: Q sqrt((rho / 1000) / dp). */
export function kvForWater(flow: number, drop: number, density: number): number {
  return flow * Math.sqrt(density / 1000 / drop);
}

/** Greatest difference in bar that still adds flow: FL² (p1 − FF pv), FF = 0.96 − 0.28 sqrt(pv / pc). */
export function chokedWaterDrop(recovery: number, p1: number, vapour: number, critical: number = WATER_CRITICAL): number {
  return recovery ** 2 * (p1 - vapourFactor(vapour, critical) * vapour);
}

export function vapourFactor(vapour: number, critical: number = WATER_CRITICAL): number {
  return 0.96 - 0.28 * Math.sqrt(vapour / critical);
}

/** kg/h of dry saturated steam by Napier: p A / 70 in lb/s, psi and in2. Nothing where the outlet is above 0.58 of the inlet. */
export function napier(p1: number, area: number, p2: number = 0): number | undefined {
  return p2 <= NAPIER_RATIO * p1 ? NAPIER * p1 * area : undefined;
}

/** Outlet to inlet pressure at which a gas of this exponent chokes: (2 / (k + 1))^(k / (k − 1)). */
export function criticalRatio(k: number): number {
  return (2 / (k + 1)) ** (k / (k - 1));
}

/** kg/(h mm2) of a choked nozzle from inlet pressure (bar) and specific volume (m3/kg). */
export function chokedFlux(k: number, p1: number, volume: number): number {
  return Math.sqrt(k * (2 / (k + 1)) ** ((k + 1) / (k - 1)) * ((p1 * 1e5) / volume)) * 3600 * 1e-6;
}

/** kg/h of vapour by IEC 60534-2-1. `share`: xT of the valve; `k` the exponent; `density` at the inlet. */
export function vapourFlow(kv: number, p1: number, p2: number, density: number, k: number, share: number): number {
  const limit = (k / 1.4) * share;
  const x = Math.min((p1 - p2) / p1, limit);
  const expansion = 1 - x / (3 * limit);
  return 31.6 * kv * expansion * Math.sqrt(x * p1 * density);
}

/** Kv by a maker's formula for saturated steam, G/461 sqrt(T / (dp p2)), T from 100 p^0.25 °C (inferred from its worked example). */
export function makersSteamKv(flow: number, p1: number, p2: number): number {
  const kelvin = 100 * p1 ** 0.25 + 273.15;
  return (flow / 461) * Math.sqrt(kelvin / ((p1 - p2) * p2));
}

/** kg/(m2 h) from cubic feet an hour on so many square feet, at a density. */
export function evaporationRate(cubicFeet: number, squareFeet: number, density: number): number {
  return (cubicFeet * FOOT ** 3 * density) / (squareFeet * FOOT ** 2);
}

/** m/s of steam in a pipe: kg/h, mm2, m3/kg. */
export function pipeSpeed(flow: number, area: number, volume: number): number {
  return (flow * volume) / 3600 / (area * 1e-6);
}

const FOOT = 0.3048;
/** bar */
const WATER_CRITICAL = 220.64;
const PSI = 0.0689475729316836;
const SQUARE_INCH = 645.16;
/** p A / 70 lb/s with psi and in2, in kg/h, bar and mm2. */
const NAPIER = (0.45359237 * 3600) / 70 / PSI / SQUARE_INCH;
const NAPIER_RATIO = 0.58;

export const flowFacts: FactTable = factTable([
  fact('cd.sharp', 0.62, 'sharp-edged orifice', 'britannica', 'common practice'),
  fact('cd.mouthpiece', 0.82, 'cylindrical mouthpiece', 'britannica', 'common practice'),
  fact('k.saturated', 1.135, 'exponent of dry saturated steam', 'water-data', 'from memory'),
  fact('cv', 0.865, 'Kv of one Cv', 'iec-60534', 'standard'),
  fact('bourne', 33.8, 'evaporation of flue surface, kg/(m² h): 1 cubic foot an hour on 9 square feet', 'bourne', 'common practice'),
]);

function fact(id: string, value: number, what: string, source: SourceId, standing: Standing) {
  return { id, value, unit: 'ratio', what, source: cite(source), standing };
}

const ROWS: readonly (readonly [id: string, formula: string, unit: string, source: SourceId, standing: Standing])[] = [
  ['orifice', 'Q = Cd A sqrt(2 Δp / ρ)', 'm³/h', 'britannica', 'derived'],
  ['kv', 'Kv = Q sqrt((ρ / 1000) / Δp)', 'm³/h', 'iec-60534', 'standard'],
  ['choked-water', 'Δp ≤ FL² (p1 − FF pv), FF = 0.96 − 0.28 sqrt(pv / pc)', 'bar', 'iec-60534', 'standard'],
  ['napier', 'G = 0.5244 p A', 'kg/h', 'napier', 'from memory'],
  ['critical', '(2 / (k + 1))^(k / (k − 1))', 'ratio', 'here', 'derived'],
  ['choked', 'sqrt(k (2 / (k + 1))^((k + 1) / (k − 1)) p / v)', 'kg/(h mm²)', 'here', 'derived'],
  ['vapour', 'W = 31.6 Kv Y sqrt(x p1 ρ1), Y = 1 − x / (3 Fγ xT)', 'kg/h', 'iec-60534', 'standard'],
  ['makers-kv', 'Kv = G / 461 sqrt(T / (Δp p2))', 'm³/h', 'mankenberg', 'derived'],
];
export const flowRelations: readonly Relation[] = ROWS.map(([id, formula, unit, source, standing]) => ({
  id,
  formula,
  unit,
  source: cite(source),
  standing,
}));
