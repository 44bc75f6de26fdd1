/** What a movement is on a dial: whole turns and divisions, from where the dial was set to nought. */
import { type Len, len } from '../base/units.ts';
import type { Figures, Reading } from '../model/plan.ts';
import type { Dial, Workshop } from '../model/workshop.ts';

export type DialRead = Reading;
export type Dials = Workshop['lathe']['dials'];

/** `change` of diameter as the cross slide's dial counts it. */
export function readCross(dials: Dials, change: Len): Reading {
  const { cross } = dials;
  return { which: 'cross', ...count(cross, cross.reads === 'diameter' ? change : radialOf(change)) };
}

/** `travel` along the axis; a carriage without a dial leaves its work to the top slide. */
export function readAlong(dials: Dials, which: 'top' | 'carriage' | 'tailstock', travel: Len): Reading {
  const dial = dials[which];
  return dial ? { which, ...count(dial, travel) } : { which: 'top', ...count(dials.top, travel) };
}

/** The cross slide's dial after each pass a side; the last one is the whole change. */
export function crossReadings(dials: Dials, passes: readonly Len[], change: Len): readonly Reading[] {
  return sums(passes).map((done, i) => readCross(dials, i === passes.length - 1 ? change : len(2 * done)));
}

/** The same along the axis. */
export function alongReadings(dials: Dials, which: 'top' | 'carriage' | 'tailstock', passes: readonly Len[]): readonly Reading[] {
  return sums(passes).map((done) => readAlong(dials, which, done));
}

/** Of a cut that is fed outward: the lost motion of the cross slide in divisions of its dial, up to a whole one. */
export function outwardBy({ cross: { backlash = len(0), division } }: Dials): Pick<Figures, 'outward' | 'slack'> {
  return { outward: true, ...(backlash > 0 ? { slack: Math.ceil(backlash / division) } : {}) };
}

/** The same of a top slide that is wound back and fed again. */
export function topSlack({ top: { backlash = len(0), division } }: Dials): { readonly slack?: number } {
  return backlash > 0 ? { slack: Math.ceil(backlash / division) } : {};
}

/** What one division of the cross slide takes a side. */
export function crossUnit({ cross }: Dials): Len {
  return len(Math.max(1, cross.reads === 'diameter' ? Math.floor(cross.division / 2) : cross.division));
}

/** A side, of a change on diameter; half a unit is let go. */
export function radialOf(change: Len): Len {
  return len(Math.floor(change / 2));
}

function sums(passes: readonly Len[]): readonly Len[] {
  return passes.map((_, i) => len(passes.slice(0, i + 1).reduce((sum, pass) => sum + pass, 0)));
}

/** turns x turn + divisions x division = total; a part of a division is left to the eye. */
function count(dial: Dial, total: Len): { readonly turns: number; readonly divisions: number; readonly total: Len } {
  const turns = Math.floor(total / dial.turn);
  return { turns, divisions: (total - turns * dial.turn) / dial.division, total };
}
