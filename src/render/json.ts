/** A plan as JSON text: plain records, keys by code unit, so that two plans can be compared line by line. */
import type { Plan } from '../model/plan.ts';

/** Ends with a line feed. Throws Error on a number that JSON has no word for. */
export function writeJson(plan: Plan): string {
  return `${JSON.stringify(ordered(plan), undefined, 2)}\n`;
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`a plan holds ${value}, which is no number for JSON`);
  if (typeof value !== 'object' || value === null) return Object.is(value, -0) ? 0 : value;
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([key, item]) => [key, ordered(item)]));
}
