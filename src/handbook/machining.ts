/** What bounds a cut on a small lathe besides speed and tool: torque, give of work and bar, the least cut, the hand on the tailstock. */
import { type FactTable, factTable, type Standing } from './fact.ts';
import type { CuttingGroup } from './materials.ts';
import { cite } from './sources.ts';

/** Metals that harden under a tool that rubs. */
export function hardensUnderTool(group: CuttingGroup): boolean {
  return group === '303' || group === '316';
}

/** mm a side: shallower, and the tool rubs; and mm a turn. */
export function leastCut(group: CuttingGroup): { readonly depth: number; readonly feed: number } {
  const kind = hardensUnderTool(group) ? 'stainless' : 'usual';
  return { depth: machining.value(`least.depth.${kind}`), feed: machining.value(`least.feed.${kind}`) };
}

/** Copper alloys whose chip draws a raked edge in: no rake, the lips of a drill stoned. */
export function drawsEdgeIn(group: CuttingGroup): boolean {
  return group === 'brass' || group === 'gunmetal' || group === 'bronze';
}

const CUSTOM = cite('custom');
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];
const ROWS: readonly Row[] = [
  // force and give
  ['force.radial', 0.3, 'ratio', 'radial force, of the cutting force (0.25 to 0.30)', cite('eisc')],
  ['give.share', 4, 'ratio', 'a cut that makes the size may push the work aside by this part of its band on diameter'],
  ['give.rough', 2, 'ratio', 'a roughing cut may push the work aside by this part of what is left for the last cut'],
  ['give.spring', 2, 'ratio', 'spring passes are asked for from this part of the give that is allowed'],
  ['spring.passes', 1, 'count', 'passes taken again at the same setting where work or bar gives'],
  ['steel.modulus', 206_000, 'MPa', 'modulus of a steel bar', cite('isakov')],
  ['bar.clear', 3, 'mm', 'a boring bar stands out this much more than the hole is deep'],
  ['close.band', 0.1, 'mm', 'a diameter with a band up to this has its last two cuts alike, so that both give alike'],
  // least cuts
  ['least.depth.stainless', 0.1, 'mm', 'least cut a side in stainless: under it the metal is rubbed hard'],
  ['least.feed.stainless', 0.05, 'mm/rev', 'least feed in stainless'],
  ['least.depth.usual', 0.02, 'mm', 'least cut a side elsewhere'],
  ['least.feed.usual', 0.02, 'mm/rev', 'least feed elsewhere'],
  // drilling by hand
  ['drill.thrust.hand', 1000, 'N', 'thrust that the wheel of a small tailstock gives without forcing'],
  ['drill.least.feed', 0.02, 'mm/rev', 'least feed at which a drill still cuts'],
  ['centre.pilot', 1.25, 'ratio', "length of a centre drill's pilot, of its diameter, where the standard has no such drill"],
  // tapping by hand
  ['tap.clear', 1, 'ratio', 'room under the tap in a blind hole, in pitches'],
  ['tap.share.most', 95, 'percent', 'share of thread above which a hand tap is hard work; of 5/8 H'],
  ['blade.feed.step', 0.005, 'mm/rev', 'feeds of a blade are told apart no finer'],
  ['blade.clear', 1, 'mm', 'a parting blade stands out this much more than it goes in'],
  // tool heights
  ['height.small', 0.1, 'mm', 'a blade or a facing tool this much off the centre leaves a pip, or rubs', cite('zcc-parting')],
];

/** Lengths are in mm. */
export const machining: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = CUSTOM, standing = 'common practice']) => ({ id, value, unit, what, source, standing })),
);
