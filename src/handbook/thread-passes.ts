/**
 * Infeed of a screw-cutting tool by the modified schedule: depth after pass n is depth × sqrt(q / (N − 1)) with q = 0.3, 1, 2, 3 …, so that
 * each pass takes about the same area and the first is held back. (Sandvik, threading manual p. 114; WIDIA 2017 p. 685.)
 */
import { type Len, len, mm } from '../base/units.ts';
import { type FactTable, factTable } from './fact.ts';
import type { CuttingGroup } from './materials.ts';
import { cite } from './sources.ts';
import { toolTable } from './thread-tool.ts';

/**
 * The passes that cut a thread in this metal, none deeper than the one before it, each a whole number of `step`; they add up to `depth`, a
 * side, which is a whole number of steps too. Metal that hardens gets them lighter and more of them, and none so fine that it rubs: where the
 * schedule would end under the least pass, what is left is shared out in passes of no less.
 */
export function passesFor(group: CuttingGroup, side: 'outside' | 'inside', depth: Len, step: Len): readonly Len[] {
  const [first, least] = [firstPass(group, side), leastPass(group)];
  const count = hardens(group) ? countFrom(depth, first) : passCount(depth, first, least);
  const passes = [...modifiedInfeed(depth, count, step)].sort((a, b) => b - a);
  return hardens(group) ? notUnder(passes, { first, least }, step) : passes;
}

function notUnder(passes: readonly Len[], { first, least }: { readonly first: Len; readonly least: Len }, step: Len): readonly Len[] {
  const floor = Math.max(1, Math.round(least / step)) * step;
  const kept = passes.filter((pass) => pass >= floor);
  let rest = passes.reduce((sum, pass) => (pass < floor ? sum + pass : sum), 0);
  const most = (): number => rest / Math.max(1, Math.floor(rest / floor));
  while (rest > 0 && kept.length > 0 && (rest < floor || most() > first)) rest += kept.pop() ?? 0;
  return rest === 0 ? kept : [...kept, ...shared(rest, Math.max(1, Math.floor(rest / floor)), step)].sort((a, b) => b - a);
}

/** In so many passes of whole steps, as even as they come. */
function shared(whole: number, count: number, step: Len): readonly Len[] {
  const each = Math.floor(whole / count / step) * step;
  const over = Math.round((whole - each * count) / step);
  return Array.from({ length: count }, (_, i) => len(each + (i < over ? step : 0)));
}

/** How many passes keep the first no deeper than `first`. */
const countFrom = (depth: Len, first: Len): number => Math.max(1, Math.ceil(1 + HELD * (depth / first) ** 2));

/** How many passes keep the first no deeper than `first`, without any under `least`; the least rules. Depths are a side. */
export function passCount(depth: Len, first: Len, least: Len): number {
  let count = countFrom(depth, first);
  while (count > 1 && lastPass(depth, count) < least) count -= 1;
  return count;
}

/** The passes, each a whole number of `step`; they add up to `depth` exactly, and a pass that rounding empties is left out. */
export function modifiedInfeed(depth: Len, count: number, step: Len): readonly Len[] {
  const reached = Array.from({ length: count }, (_, i) => (i === count - 1 ? depth : Math.round((depth * share(i, count)) / step) * step));
  return reached.map((to, i) => len(to - (reached[i - 1] ?? 0))).filter((pass) => pass > 0);
}

/** Depth after pass `n` of `count` where every pass takes the same area: depth × sqrt(n / count). The older rule; its first pass is deep. */
export function equalAreaDepth(depth: Len, n: number, count: number): Len {
  return len(Math.round(depth * Math.sqrt(n / count)));
}

/** Deepest first pass a side, by what is cut; less on the springy bar of an inside tool. */
export function firstPass(group: CuttingGroup, side: 'outside' | 'inside' = 'outside'): Len {
  const outside = mm(threading.value(`first.${FIRST[group]}`));
  return side === 'outside' ? outside : len(Math.round(outside * toolTable.value('inside.first')));
}

/** What rubs where it should cut hardens the metal under it. */
const hardens = (group: CuttingGroup | undefined): boolean => group !== undefined && FIRST[group] === 'stainless';

/** Least pass a side; metal that hardens is never shaved. */
export const leastPass = (group: CuttingGroup): Len => mm(threading.value(hardens(group) ? 'least.hardens' : 'least'));

/** Passes without infeed at the end. */
export const springPasses = (group: CuttingGroup | undefined): number => threading.value(hardens(group) ? 'spring.hardens' : 'spring');

const FIRST: Readonly<Record<CuttingGroup, string>> = {
  brass: 'brass',
  gunmetal: 'brass',
  aluminium: 'brass',
  bronze: 'steel',
  copper: 'steel',
  'mild steel': 'steel',
  'silver steel': 'steel',
  303: 'stainless',
  316: 'stainless',
};
/** What stands for the first pass's number, less one. */
const HELD = 0.3;

export const threading: FactTable = factTable([
  { id: 'first.brass', value: 0.2, unit: 'mm', what: 'first pass a side in brass', source: cite('here'), standing: 'derived' },
  { id: 'first.steel', value: 0.15, unit: 'mm', what: 'first pass a side in steel and bronze', source: cite('here'), standing: 'derived' },
  {
    id: 'first.stainless',
    value: 0.1,
    unit: 'mm',
    what: 'first pass a side in stainless: with it a thread takes two to three times the passes of the table for steel',
    source: cite('mitsubishi', 'stainless: two to three times the passes of its tables'),
    standing: 'derived',
  },
  {
    id: 'least',
    value: 0.03,
    unit: 'mm',
    what: 'least pass of a sharp HSS tool; a tipped one wants 0.05',
    source: cite('widia', '0.05 with carbide; 0.03 derived here'),
    standing: 'derived',
  },
  {
    id: 'least.hardens',
    value: 0.05,
    unit: 'mm',
    what: 'least pass in metal that hardens when it is rubbed',
    source: cite('mitsubishi', 'the last pass of its tables'),
    standing: 'standard',
  },
  {
    id: 'spring.hardens',
    value: 1,
    unit: 'count',
    what: 'passes without infeed in metal that hardens when it is rubbed: the fewest of 1 to 2',
    source: cite('custom'),
    standing: 'common practice',
  },
  {
    id: 'spring',
    value: 2,
    unit: 'count',
    what: 'passes without infeed at the end (1 to 2)',
    source: cite('custom'),
    standing: 'common practice',
  },
]);

/** Deepest as a share of the whole, after pass `i` (from nought). */
function share(i: number, count: number): number {
  return Math.sqrt((i === 0 ? HELD : i) / (count - 1));
}

function lastPass(depth: Len, count: number): number {
  return depth * (1 - share(count - 2, count));
}
