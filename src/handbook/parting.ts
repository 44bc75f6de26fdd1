/** Parting blades: how wide for which diameter, how deep a width goes, how fast they are fed. */
import { type Len, len, mm } from '../base/units.ts';
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite } from './sources.ts';

export type Blade = { readonly width: Len; readonly source: string; readonly standing: Standing };

/** Width of blade for parting a bar right through; nothing over the largest diameter that a bench lathe parts. */
export function partingBlade(diameter: Len): Blade | undefined {
  const row = WIDTHS.find(([to]) => diameter <= mm(to));
  return row && { width: mm(row[1]), source: cite('here', `${cite('ingersoll')}: depth to eight widths`), standing: 'derived' };
}

/** How far in a blade of this width may go. */
export function partingDepth(width: Len): Len {
  return len(Math.floor(width * parting.value('part.depth')));
}

export const parting: FactTable = factTable([
  {
    id: 'part.depth',
    value: 8,
    unit: 'ratio',
    what: 'deepest cut of a parting blade, in widths',
    source: cite('ingersoll'),
    standing: 'common practice',
  },
  {
    id: 'part.largest',
    value: 30,
    unit: 'mm',
    what: 'largest diameter that a bench lathe parts in comfort',
    source: cite('custom'),
    standing: 'common practice',
  },
  {
    id: 'part.feed',
    value: 0.05,
    unit: 'mm/rev',
    what: 'feed of a parting blade (0.002 in)',
    source: cite('od1645', 'TM 1-420 gives the same'),
    standing: 'common practice',
  },
  {
    id: 'part.face',
    value: 0.3,
    unit: 'mm',
    what: 'left by the parting blade for facing (0.2 to 0.3)',
    source: cite('custom'),
    standing: 'common practice',
  },
  { id: 'saw.kerf', value: 1.5, unit: 'mm', what: 'kerf of a hacksaw (1 to 1.5)', source: cite('custom'), standing: 'common practice' },
  {
    id: 'saw.square',
    value: 1,
    unit: 'mm',
    what: 'a sawn end is out of square by up to this',
    source: cite('custom'),
    standing: 'common practice',
  },
]);

/** mm: diameter up to; width. */
const WIDTHS: readonly (readonly [to: number, width: number])[] = [
  [12, 1.5],
  [25, 2],
  [30, 2.5],
];
