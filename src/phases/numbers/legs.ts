/**
 * A large diameter that is turned far down is roughed in legs. What the work bears is asked anew as it grows thinner: the drive bears a deeper
 * cut on less diameter, and the work gives no more than it does there, not as it will when it is finished; its speed is set anew when it is
 * half as thick.
 */
import { type Len, len, mm } from '../../base/units.ts';
import { type CuttingData, surfaceSpeed } from '../../handbook/cutting.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { Figures } from '../../model/plan.ts';
import { show } from '../../rules/context.ts';
import type { Depth, Speed } from '../../rules/cutting.ts';
import { radialOf } from '../../rules/dials.ts';
import { type Asked, isFinal, speedOf } from './asked.ts';

/** `left`: a side, for the cuts that end on size, from the diameter `across` at `rpm`. */
export type Legs = {
  readonly passes: readonly Len[];
  readonly bound?: string;
  readonly faster: readonly Faster[];
  readonly left: Len;
  readonly across: Len;
  readonly rpm: Speed;
};
export type Faster = NonNullable<Figures['faster']>[number];
/** Deepest cut a side at that speed, on work of that diameter, as thick as `thin` where the leg ends. */
export type DeepestAt = (speed: Speed, thin: Len) => Depth | undefined;

/** `ends`: a side, what the cuts that end on size take. */
export type LegsAsk = { readonly first: Speed; readonly deepestAt: DeepestAt; readonly ends: Len };

/** All that comes before the last leg; nothing where there is but one, or no turning to size. */
export function roughLegs(asked: Asked, data: CuttingData, { first, deepestAt, ends }: LegsAsk): Legs | undefined {
  const { operation, stock, touch } = asked.removal;
  if (operation.verb !== 'turn' || !isFinal(asked.removal) || stock?.measures !== 'diameter' || !touch) return undefined;
  const target = touch - stock.amount;
  let legs: Legs = { passes: [], faster: [], left: radialOf(stock.amount), across: touch, rpm: first };
  let set: Len = touch;
  for (let to = thinner(legs.across); to > target; to = thinner(to)) {
    const again = legs.across <= set * numbersTable.value('leg.speed');
    const rpm = again ? speedOf(at(asked, legs.across), data, []) : slowed(legs.rpm, legs.across);
    const depth = rpm && deepestAt(rpm, to);
    if (!depth) return undefined;
    if (again) set = legs.across;
    legs = taken(legs, rpm, depth, { to, ends });
  }
  return legs.passes.length > 0 ? lastSpeed(asked, data, legs, set) : undefined;
}

/** Enough cuts are saved, or made at a higher speed, to be worth a closer look at the dial. */
export function isWorthIt({ faster }: Legs, inLegs: readonly Len[], plain: readonly Len[]): boolean {
  const saved = plain.length - inLegs.length;
  const quicker = inLegs.length - (faster[0]?.after ?? inLegs.length);
  return saved >= 0 && Math.max(saved, quicker) >= numbersTable.value('leg.saves');
}

const thinner = (across: Len): Len => mm(Math.floor((across * numbersTable.value('leg.share')) / mm(1)));
const at = (asked: Asked, diameter: Len): Asked => ({ ...asked, removal: { ...asked.removal, diameter } });
const slowed = (rpm: Speed, across: Len): Speed => ({ ...rpm, vc: surfaceSpeed(rpm.value, across) });

/** As many whole cuts as bring it near that diameter, and leave one more before those that end on size. */
function taken(legs: Legs, rpm: Speed, { most, bound }: Depth, { to, ends }: { readonly to: Len; readonly ends: Len }): Legs {
  const count = Math.floor(Math.min((legs.across - to) / 2, legs.left - ends - most) / most);
  if (count <= 0) return { ...legs, rpm, faster: fasterAt(legs, rpm) };
  return {
    passes: [...legs.passes, ...Array<Len>(count).fill(most)],
    bound: legs.bound ?? bound,
    faster: fasterAt(legs, rpm),
    left: len(legs.left - count * most),
    across: len(legs.across - 2 * count * most),
    rpm,
  };
}

/** Where the speed is another than before. */
function fasterAt({ passes, faster, across, rpm }: Legs, now: Speed): readonly Faster[] {
  return now.value === rpm.value || passes.length === 0 ? faster : [...faster, { across, after: passes.length, rpm: now.value }];
}

function lastSpeed(asked: Asked, data: CuttingData, legs: Legs, set: Len): Legs {
  const again = legs.across <= set * numbersTable.value('leg.speed');
  const rpm = (again ? speedOf(at(asked, legs.across), data, []) : undefined) ?? slowed(legs.rpm, legs.across);
  return { ...legs, rpm, faster: fasterAt(legs, rpm) };
}

/** Where the speed is set anew, in words. */
export const fasterSaid = (faster: readonly Faster[]): NonNullable<Figures['says']> =>
  faster.map(({ across, after, rpm }) => ({ id: 'say.turn.faster', grounds: { across: show(across), after, rpm } }));
