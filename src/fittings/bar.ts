/** The bar that a part is made from: off the shelf, one size up where the outside is turned. */

import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len } from '../base/units.ts';
import type { Stock } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { size } from './limits.ts';

export type BarAsk = {
  readonly part: string;
  readonly material: string;
  readonly section: 'round' | 'hexagon';
  readonly across: Len;
  readonly turned: boolean;
  /** The description names this bar, though all its outside is turned. */
  readonly named?: boolean;
};

/** Where the design leaves the size open upward: the smallest on the shelf that is large enough, else just that. */
export function nextBar(ask: Pick<BarAsk, 'material' | 'section'>, least: Len, workshop: Workshop): Len {
  const sizes = workshop.shelf
    .filter((bar) => bar.material === ask.material && bar.section === ask.section && bar.across >= least)
    .map((bar) => bar.across);
  return sizes.sort((a, b) => a - b)[0] ?? least;
}

/** Smallest bar on the shelf that cleans up (`turned`) or has just that size (left as bar). Adds 'design.no-bar' when there is none. */
export function barFor(ask: BarAsk, workshop: Workshop, found: Diagnostic[]): Stock {
  const least = ask.turned ? add(ask.across, size('bar.clean-up')) : ask.across;
  const fits = workshop.shelf
    .filter((bar) => bar.material === ask.material && bar.section === ask.section)
    .filter((bar) => (ask.turned ? bar.across >= least : bar.across === least))
    .sort((a, b) => a.across - b.across)[0];
  if (!fits) found.push({ code: 'design.no-bar', severity: 'error', grounds: lacking(ask, least, workshop) });
  return {
    from: 'bar',
    section: ask.section,
    across: fits?.across ?? least,
    material: ask.material,
    ...(ask.turned ? {} : { asStock: true as const }),
  };
}

/** What it wants, and the thickest of its kind on the shelf: 0 where there is none. */
function lacking({ part, material, section, turned, named = false }: BarAsk, across: Len, { shelf }: Workshop): Diagnostic['grounds'] {
  const most = Math.max(0, ...shelf.filter((bar) => bar.material === material && bar.section === section).map((bar) => bar.across));
  return { part, material, section, across, turned, named, most };
}
