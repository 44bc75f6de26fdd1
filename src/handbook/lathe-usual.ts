/** What is taken of tools where a workshop says nothing: bars of boring tools, noses, what an instrument shows. No source. */
import { type Len, len, mm } from '../base/units.ts';
import { usual } from './reading.ts';

/** Thickness of a boring tool's bar, of the smallest hole that it enters. */
export function usualShank(smallest: Len): Len {
  return len(Math.round(smallest * usual('shank')));
}

/** A tool of high-speed steel is stoned by hand; a tip comes with its radius. */
export function usualNose(material: 'HSS' | 'carbide'): Len {
  return mm(usual(`nose.${material}`));
}

/** The least that an instrument shows, by a word in its name; nothing for one that is not known. */
export function usualResolution(name: string): Len | undefined {
  const known = INSTRUMENTS.find(([word]) => name.toLowerCase().includes(word));
  return known && mm(known[1]);
}

/** mm. */
const INSTRUMENTS: readonly (readonly [word: string, resolution: number])[] = [
  ['micrometer', 0.01],
  ['depth gauge', 0.02],
  ['depth-gauge', 0.02],
  ['vernier', 0.02],
  ['caliper', 0.02],
  ['dial indicator', 0.01],
  ['dial gauge', 0.01],
  ['small-hole gauge', 0.02],
  ['telescopic', 0.02],
  ['rule', 0.5],
];
