/** Pitches of threads and wheels that are made to the inch. */
import { inch, type Len } from '../base/units.ts';

/** Coarsest and finest that are looked for. */
const LEAST = 3;
const MOST = 80;

/**
 * 8 for 3.175 mm, 40 for 0.635 mm; nothing where the pitch is no whole number an inch. No metric and no BA pitch of the handbook is taken
 * for one: a test holds them all against it.
 */
export function perInch(pitch: Len): number | undefined {
  const count = Math.round(inch(1) / pitch);
  return count >= LEAST && count <= MOST && inch(1 / count) === pitch ? count : undefined;
}

/** '8 tpi', '8 per inch'; nothing for a text that is no such thing. */
export function pitchNamed(word: string): Len | undefined {
  const match = /^(\d{1,2}(?:\.\d)?) ?(?:tpi|per inch|threads per inch)$/i.exec(word.trim());
  const count = Number(match?.[1] ?? 0);
  return count > 0 ? inch(1 / count) : undefined;
}

/** '24 DP': teeth of a wheel to the inch of its pitch circle; one tooth's share of it. Nothing for a text that is no such thing. */
export function moduleNamed(word: string): Len | undefined {
  const match = /^(\d{1,2}) ?dp$/i.exec(word.trim());
  const count = Number(match?.[1] ?? 0);
  return count > 0 ? inch(1 / count) : undefined;
}
