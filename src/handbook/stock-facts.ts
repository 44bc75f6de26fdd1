/** Bar as it is cut up and put through a spindle: sections, and how far it may stand out behind. */
import type { Len } from '../base/units.ts';
import { toMm } from '../base/units.ts';
import { type FactTable, factTable } from './fact.ts';
import { cite } from './sources.ts';

/** mm². Hexagon: √3/2 of its flats squared. */
export function barArea(section: 'round' | 'hexagon', across: Len): number {
  const d = toMm(across);
  return section === 'round' ? (Math.PI / 4) * d ** 2 : (Math.sqrt(3) / 2) * d ** 2;
}

export const stockFacts: FactTable = factTable([
  {
    id: 'whip.share',
    value: 3,
    unit: 'ratio',
    what: 'speed at which a bar that stands free behind the spindle would whirl, over the speed at which it runs',
    source: cite(
      'here',
      'a third of the whirling speed; a bar 0.9 m long behind the spindle bent and killed a man (Washington State FACE, 2010)',
    ),
    standing: 'derived',
  },
  {
    id: 'hexagon.corners',
    value: 2 / Math.sqrt(3),
    unit: 'ratio',
    what: 'across corners of a sharp hexagon, of its flats',
    source: cite('here'),
    standing: 'derived',
  },
  {
    id: 'cut-list.exact',
    value: 10,
    unit: 'count',
    what: 'pieces up to which every way of cutting them is tried',
    source: cite('here'),
    standing: 'derived',
  },
]);
