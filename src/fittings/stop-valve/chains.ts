/** What adds up across the parts of a stop valve: the spindle's travel from shut to its back stop. */
import { minus } from '../../base/units.ts';
import type { Chain } from '../../model/part.ts';
import { about, between, ratio, size, times } from '../limits.ts';
import { layOutBody, layOutSpindle, screwedLength } from './layout.ts';
import type { StopValveSizes } from './sizes.ts';

export function chainsOf(sizes: StopValveSizes): readonly Chain[] {
  return [travelChain(sizes)];
}

/** From the plug's back to the bonnet's underside, shut: what is left of the room above the seat. */
function travelChain(sizes: StopValveSizes): Chain {
  const at = layOutBody(sizes);
  const ring = size('joint.ring.tight');
  const band = size('band.length');
  return {
    id: 'travel',
    links: [
      { part: 'body', a: 'body/W', b: 'body/T', nominal: minus(at.length, at.seat), sign: 1 },
      {
        ...{ part: 'joint-ring', a: 'joint-ring/under', b: 'joint-ring/over', nominal: ring, sign: 1, says: 'link.ring-tightened' },
        limits: about(ring, band, 'as tightened'),
      },
      { part: 'bonnet', a: 'bonnet/N', b: 'bonnet/A', nominal: screwedLength(sizes.bonnet), sign: -1 },
      { part: 'spindle', a: 'spindle/Q', b: 'spindle/B', nominal: layOutSpindle(sizes).plug, sign: -1 },
      {
        ...{ part: 'spindle', a: 'spindle/Q', b: 'spindle/circle', nominal: sizes.coneBelow, sign: 1, says: 'link.tip-to-circle' },
        limits: about(sizes.coneBelow, band, 'cone'),
      },
    ],
    asks: between(sizes.fullLift, times(sizes.fullLift, ratio('stop.travel.most')), sizes.travel, 'full bore'),
    how: 'blind',
  };
}
