/** The centre hole that may stay in an end: the largest of the drawer whose mouth leaves a rim standing. */
import { add, type Len } from '../base/units.ts';
import { coneDepth } from '../handbook/centre-drills.ts';
import type { Workshop } from '../model/workshop.ts';
import { about, ratio, size, times } from './limits.ts';
import type { EndAsk } from './outline.ts';

/** For an end that is `across`; where no centre drill of the drawer is small enough, how wide the mouth might be at most. */
export function centreFor(workshop: Workshop, across: Len): Pick<EndAsk, 'centre' | 'centreUnder'> {
  const most = times(across, ratio('centre.mouth.most'));
  const drill = [...workshop.tools.centreDrills].filter((c) => c.mouth <= most).sort((a, b) => b.mouth - a.mouth)[0];
  if (!drill) return { centreUnder: most };
  const depth = add(coneDepth(drill.pilot, drill.mouth), drill.pilot);
  const band = size('band.centre');
  return { centre: { pilot: about(drill.pilot, band, 'centre'), mouth: about(drill.mouth, band, 'centre'), depth } };
}
