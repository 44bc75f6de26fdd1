/**
 * The day at the lathe: set-ups of all parts and tooling in one order. Kept tooling first; then the parts, so that tooling which stays in the
 * chuck is made as seldom as may be (it is true only until it is taken out), then as few parts as may be are laid aside unfinished, then part
 * after part as they are listed. Tooling made in place stands right before the first hold that it serves; what is made to fit the work too, once.
 */
import { numbersTable } from '../handbook/numbers.ts';
import type { PartId } from '../model/ids.ts';
import type { Day, Sequence } from '../model/plan.ts';
import { blocksOf } from './sequence/blocks.ts';
import { partByPart } from './sequence/by-part.ts';
import { type FoundDay, leastDay } from './sequence/search.ts';
import { type Asking, type Sequenced, type Stop, stopsOf } from './sequence/stops.ts';

export type { Asking, Sequenced };
export type Sequencing = { readonly sequence: Sequence; readonly day: Day };

/** `states`: past so many the day is no longer proved best. Throws Error when parts wait for each other in a ring. */
export function sequence(planned: readonly Sequenced[], asking: Asking, states?: number): Sequencing {
  const laid: Laid = { entries: [], stands: undefined, parts: new Map(planned.map((one) => [one.part.id, one])) };
  const days = (['kept tooling', 'fitting'] as const).map((use) => {
    const group = planned.filter(({ part }) => part.use === use);
    const stops = stopsOf(group, planned, asking);
    const day = dayOf(group, stops, laid, states);
    for (const i of day.order) lay(laid, stops[i]);
    return day;
  });
  // asked for by itself: nothing here is held on it
  const alone = planned.filter(({ part }) => BY_ITS_HOLD.includes(part.use) && !laid.entries.some((entry) => entry.part === part.id));
  for (const { part, route } of alone) laid.entries.push(...route.setUps.map((_, setUp) => ({ part: part.id, setUp })));
  return { sequence: laid.entries, day: figuresOf(days) };
}

const BY_ITS_HOLD: readonly Sequenced['part']['use'][] = ['tooling made in place', 'tooling made to fit'];

function dayOf(group: readonly Sequenced[], stops: readonly Stop[], laid: Laid, states: number | undefined): FoundDay {
  const minutes = (made: PartId): number => Math.round((laid.parts.get(made)?.time?.whole ?? 0) / numbersTable.value('minute'));
  const asked = { stops, parts: blocksOf(stops), minutes, usual: partByPart(group, stops), start: laid.stands?.key };
  const found = leastDay(asked, states);
  if (!found) throw new Error(`parts wait for each other: ${group.map(({ part }) => part.id).join(', ')}`);
  return found;
}

// ---- laid down -----------------------------------------------------------------------------------------------------------
/** `stands`: what is in the spindle, and where in the day it was made there. */
type Laid = {
  readonly entries: Sequence[number][];
  stands: { readonly key: string; readonly since: number } | undefined;
  readonly parts: ReadonlyMap<PartId, Sequenced>;
};

function lay(laid: Laid, stop: Stop | undefined): void {
  if (!stop) return;
  const { part, setUp, on } = stop;
  for (const made of stop.fits) if (!laid.entries.some((entry) => entry.part === made)) make(laid, made);
  if (on && laid.stands?.key !== on.key) {
    laid.stands = { key: on.key, since: laid.entries.length };
    if (on.by !== undefined) make(laid, on.by, on.key);
  } else if (!on && !stop.off) laid.stands = undefined;
  laid.entries.push({ part, setUp, ...(on && laid.stands ? { on: laid.stands.since } : {}) });
}

/** Its own set-ups fill the chuck. */
function make(laid: Laid, made: PartId, key?: string): void {
  laid.stands = key === undefined ? undefined : { key, since: laid.entries.length };
  laid.entries.push(...(laid.parts.get(made)?.route.setUps ?? []).map((_, setUp) => ({ part: made, setUp })));
}

function figuresOf(days: readonly FoundDay[]): Day {
  const sum = (of: (day: FoundDay) => number): number => days.reduce((total, day) => total + of(day), 0);
  return {
    makings: sum((day) => day.cost.makings),
    atLeast: sum((day) => day.atLeast.makings),
    aside: sum((day) => day.cost.aside),
    proved: days.every((day) => day.exact) ? 'best' : 'best found within the limit',
    states: sum((day) => day.states),
  };
}
