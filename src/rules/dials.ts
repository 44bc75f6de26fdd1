/** What a movement is on a dial: whole turns and divisions. */
import { type Len, len } from '../base/units.ts';
import type { Figures } from '../model/plan.ts';
import type { Dial, Workshop } from '../model/workshop.ts';

export type DialRead = NonNullable<Figures['dial']>;

/** `change` of diameter as the cross slide's dial counts it. */
export function readCross(dials: Workshop['lathe']['dials'], change: Len): DialRead {
  const { cross } = dials;
  return { which: 'cross', ...count(cross, cross.reads === 'diameter' ? change : radialOf(change)) };
}

/** `travel` along the axis; a carriage without a dial leaves its work to the top slide. */
export function readAlong(dials: Workshop['lathe']['dials'], which: 'top' | 'carriage' | 'tailstock', travel: Len): DialRead {
  const dial = dials[which];
  return dial ? { which, ...count(dial, travel) } : { which: 'top', ...count(dials.top, travel) };
}

/** A side, of a change on diameter; half a unit is let go. */
export function radialOf(change: Len): Len {
  return len(Math.floor(change / 2));
}

/** turns x turn + divisions x division = total; a part of a division is left to the eye. */
function count(dial: Dial, total: Len): { readonly turns: number; readonly divisions: number; readonly total: Len } {
  const turns = Math.floor(total / dial.turn);
  return { turns, divisions: (total - turns * dial.turn) / dial.division, total };
}
