/** The piece of bar that is left on a part to hold it by, until heat and heavy work are over. */
import { add, type Len, len } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { ToolUse } from '../model/plan.ts';
import { length, scaled } from './context.ts';

/** Its length beyond what is left when it is cut away: as usual, or as much longer as a wide blade takes of what a heavy cut asks to be held. */
export function stubLength({ stock }: Part, blade: ToolUse): Len {
  if (stock.from !== 'bar') return len(0);
  const beside = add(blade.size ?? length('saw.kerf'), length('jaw.clearance'));
  return len(Math.max(scaled(stock.across, 'grip.stub.ratio'), add(scaled(stock.across, 'grip.heavy.ratio'), beside)));
}
