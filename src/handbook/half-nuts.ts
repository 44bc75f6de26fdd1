/** How the tool comes back to its own groove: half-nuts dropped in anywhere, by the threading dial, or never opened. */
import { gcd, type Lead, ratioOf } from './trains.ts';

export type DialSizes = { readonly wheels: readonly number[]; readonly marks: number };
/** `by: dial`: its worm wheel, every how many lines of the dial, and on how many of them in all. */
export type HalfNuts =
  | { readonly by: 'anywhere' }
  | { readonly by: 'dial'; readonly wheel: number; readonly every: number; readonly lines: number; readonly marks: number }
  | { readonly by: 'closed' };
export type NutsAsk = {
  readonly leadscrew: Lead;
  readonly pitch: Lead;
  /** Does the train give this pitch exactly? */
  readonly exact: boolean;
  readonly dial?: DialSizes;
  readonly halfNuts?: boolean;
};

/**
 * Anywhere where the leadscrew's pitch is a whole multiple of the thread's. With n turns of the leadscrew a whole number of threads goes by
 * only where n is a multiple of the ratio's denominator: the dial serves where its wheel's teeth are. A pitch that is only nearly right
 * never meets its groove again.
 */
export function halfNutsFor({ leadscrew, pitch, exact, dial, halfNuts }: NutsAsk): HalfNuts {
  if (!exact || halfNuts === false) return { by: 'closed' };
  const { under } = ratioOf(leadscrew, pitch);
  if (under === 1) return { by: 'anywhere' };
  const served = (dial?.wheels ?? [])
    .filter((wheel) => wheel % under === 0)
    .map((wheel) => dialOf(wheel, dial?.marks ?? 1, under))
    .sort((a, b) => b.lines - a.lines || a.wheel - b.wheel);
  return served[0] ?? { by: 'closed' };
}

/** Lines stand wheel / marks teeth apart: every so many of them are a whole multiple of `turns` teeth on. */
function dialOf(wheel: number, marks: number, turns: number): HalfNuts & { readonly by: 'dial' } {
  const every = (marks * turns) / gcd(wheel, marks * turns);
  return { by: 'dial', wheel, every, lines: marks / every, marks };
}
