/**
 * What a shut valve may leak when it is tested with water, by the standards for valves of industrial size. Scaling them to a bore of a few
 * millimetres is this project's own convention: none of them speaks of valves so small.
 */
import { type FactTable, factTable, type Standing } from './fact.ts';

const ISO_5208 = 'ISO 5208, table of rates for liquid, as printed at valvespecifications.com';
const API_598 = 'API 598, seat leakage, metal-seated check valve, as printed at piping-world.com (3 cm3/min for each inch of size)';

/** Of ISO 5208, in mm3/s for each mm of nominal size; rate A is no visible leak. */
const RATES: readonly (readonly [rate: string, liquid: number])[] = [
  ['A', 0],
  ['AA', 0.006],
  ['B', 0.01],
  ['C', 0.03],
  ['CC', 0.08],
  ['D', 0.1],
  ['E', 0.3],
  ['EE', 0.39],
  ['F', 1],
  ['G', 2],
];

const row = (id: string, value: number, unit: string, source: string, what: string, standing: Standing = 'standard') => ({
  ...{ id, value, unit, source, what, standing },
});
export const leakFacts: FactTable = factTable([
  ...RATES.map(([rate, liquid]) => row(`leak.${rate}`, liquid, 'mm3/s', ISO_5208, `leak of water at rate ${rate}, for each mm of size`)),
  row('leak.check', 3, 'ml/min', API_598, 'leak of water of a metal-seated check valve, for each inch of size'),
  row('leak.drop', 1 / 16, 'ml', 'ISO 5208: 16 drops to the millilitre', 'one drop'),
]);

/** ml a minute through a seat of `bore` mm at a rate of ISO 5208. Throws Error on a rate that is none. */
export function leakAt(rate: string, bore: number): number {
  return (leakFacts.value(`leak.${rate}`) * bore * SECONDS) / CUBIC;
}

/** ml a minute that API 598 would leave a metal-seated check valve of `bore` mm. */
export function leakOfCheck(bore: number): number {
  return (leakFacts.value('leak.check') * bore) / INCH;
}
const SECONDS = 60;
/** mm3 in a ml; mm in an inch. */
const CUBIC = 1000;
const INCH = 25.4;
