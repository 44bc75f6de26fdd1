/** What adds up across the parts of a stop valve: the spindle's travel from shut to its back stop, and the gland's take-up. */
import { type Len, len, minus } from '../../base/units.ts';
import type { Chain, Part } from '../../model/part.ts';
import { atLeast, takeUpChains, travelChain } from '../chains.ts';
import { about, size, TENTH, tidy } from '../limits.ts';
import { drawn, packingLoose, packingPacked, ringTightened, stated } from '../links.ts';
import type { StopValveSizes } from './shared.ts';

/** Throws Error where a part is missing: our fault. */
export function chainsOf(sizes: StopValveSizes, parts: readonly Part[]): readonly Chain[] {
  const part = (id: string): Part => {
    const found = parts.find((one) => one.id === id);
    if (!found) throw new Error(`a stop valve without '${id}'`);
    return found;
  };
  return [travel(sizes, part), ...takeUp(sizes, part)];
}

type PartOf = (id: string) => Part;

/** From the plug's back to the bonnet's underside, shut: what is left of the room above the seat. More does no harm. */
function travel(sizes: StopValveSizes, part: PartOf): Chain {
  const circle = about(sizes.coneBelow, size('band.length'), 'cone');
  return travelChain({
    id: 'travel',
    housing: [drawn(part('body'), 'W', 'T', 1), ringTightened('joint-ring', 1, 'link.ring-of-bonnet'), drawn(part('bonnet'), 'N', 'A', -1)],
    moving: [
      drawn(part('spindle'), 'Q', 'B', -1),
      stated({ item: 'spindle', from: 'Q', to: 'circle', limits: circle, sign: 1, by: 'bench', says: 'link.tip-to-circle' }),
    ],
    asks: atLeast(leastTravel(sizes), 'full bore'),
    open: 'above',
    proof: 'proof.travel',
  });
}

/** To the whole bore, or as far as was asked less what the lengths may run out; no finer than it is measured. */
const leastTravel = ({ fullLift, travel }: StopValveSizes): Len =>
  len(Math.min(tidy(fullLift, TENTH, 'up'), minus(travel, size('stop.travel.over'))));

/** Pressed by what packing gives, the follower's flange still stands off the bonnet; over new packing its nose is in the box. */
function takeUp(sizes: StopValveSizes, part: PartOf): readonly Chain[] {
  const { rings, packing: width } = sizes;
  return takeUpChains({
    id: 'take-up',
    packed: packingPacked({ item: 'packing', rings, width, sign: 1, says: 'link.packing-pressed' }),
    loose: packingLoose({ item: 'packing', rings, width, sign: 1, says: 'link.packing-laid' }),
    nose: drawn(part('follower'), 'F', 'C', 1),
    box: drawn(part('bonnet'), 'X', 'U', -1),
    least: size('gland.left'),
    entry: size('gland.entry'),
  });
}
