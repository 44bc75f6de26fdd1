/**
 * The split sleeve between jaws and a finished diameter: one from the drawer, or one to be made to the work's own size, bored in place and
 * slit. It is no longer than it can be bored, and than the work needs.
 */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Limits } from '../../model/part.ts';
import type { Grip, Refusal, ToolingAsk } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Context, length, scaled } from '../context.ts';
import { boringFor, drillUnder } from '../tools.ts';
import { bearing, takenBy } from './closing.ts';

/** The hold as far as a sleeve reaches, with the sleeve that it asks for; or why there is none. */
export function inSleeve(c: Context, grip: Grip, size: Limits): Grip | Refusal {
  const kept = keptFor(c, size);
  if (kept !== undefined) return { ...grip, takes: takenBy(kept) };
  const { bar, wants, thickest } = sleeveBar(c.workshop, size.hi);
  if (!bar) return { what: grip.id, because: { rule: 'sleeve-no-bar', grounds: {} }, has: thickest, wants, would: { grip } };
  const most = boredTo(c, size.hi);
  if (most === undefined) return { what: grip.id, because: { rule: 'sleeve-not-bored', grounds: {} }, would: { grip } };
  const asked = Math.max(scaled(size.target, 'sleeve.length.ratio'), length('sleeve.length.least'));
  const long = len(Math.min(minus(grip.to, grip.from), asked, most));
  const ask = { kind: 'split-sleeve', work: size.hi, length: long, material: bar.material, across: bar.across } as const;
  return shortened(grip, closesOn(size) ? ask : { ...ask, work: size.target, to: { serves: c.part.id, fits: size } });
}

/** Would a sleeve that takes the largest of them close on the smallest? */
const closesOn = ({ lo, hi }: Limits): boolean => minus(add(hi, length('sleeve.over')), lo) <= length('sleeve.slack');

/** The bore of a sleeve of that size in the drawer: it closes on work up to so much under it. */
const keptFor = (c: Context, { target }: Limits): Len | undefined =>
  (c.workshop.holding.keptSleeves ?? []).find((bore) => bore >= target && minus(bore, target) <= length('sleeve.slack'));

type SleeveBar = { readonly material: string; readonly across: Len };
/** The smallest bar that leaves a wall round work of that size; how thick it has to be, and the thickest that there is. */
export function sleeveBar(workshop: Workshop, size: Len): { readonly bar?: SleeveBar; readonly wants: Len; readonly thickest: Len } {
  const wants = add(size, add(length('sleeve.wall'), length('sleeve.wall')));
  const bars = barsOf(workshop);
  const bar = bars.find(({ across }) => across >= wants);
  return { ...(bar ? { bar } : {}), wants, thickest: bars.at(-1)?.across ?? len(0) };
}

/** Smallest first; of one size, what marks the work least. */
const barsOf = ({ shelf }: Workshop): readonly SleeveBar[] =>
  shelf
    .filter((bar) => bar.section === 'round' && SLEEVE_METALS.includes(bar.material))
    .sort((a, b) => a.across - b.across || SLEEVE_METALS.indexOf(a.material) - SLEEVE_METALS.indexOf(b.material));
/** Brass and bronze do not mark the work; free-cutting steel does as well where they lack. */
const SLEEVE_METALS: readonly string[] = ['CW614N', 'PB102', '230M07'];

/** How long a hole of that size can be made true here: bored as far as a tool reaches. */
function boredTo(c: Context, size: Len): Len | undefined {
  const start = drillUnder(c.workshop, minus(size, length('drill.for-bore')));
  const { best } = start === undefined ? {} : boringFor(c.workshop, start, len(0));
  const most = best && minus(best.reach, length('bore.past'));
  return most !== undefined && most >= length('grip.least') ? most : undefined;
}

/** The sleeve stands flush with the jaws on the side of the tool; behind it the work is free. */
const shortened = (grip: Grip, ask: Extract<ToolingAsk, { kind: 'split-sleeve' }>): Grip => ({
  ...bearing(grip, ask.length),
  tooling: ask,
});
