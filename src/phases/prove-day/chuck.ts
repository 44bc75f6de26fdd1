/** What stands in the spindle, entry by entry: each hold that trusts what was made there finds it, whole, and not put out since. */
import type { PartId } from '../../model/ids.ts';
import type { Claim, PlannedPart, SetUp } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import type { ProvedDay } from './asked.ts';
import { claim } from './claim.ts';

type Entry = ProvedDay['sequence'][number];
/** `made`: how many of its set-ups are done; `out`: what was held since it was put out. */
type Spindle = { key: string; since: number; made: number; readonly out: Map<string, PartId> };

export function chuckClaims(day: ProvedDay): readonly Claim[] {
  const spindle: Spindle = { key: '', since: 0, made: 0, out: new Map() };
  return day.sequence.flatMap((entry, i) => {
    const planned = day.parts.find(({ part }) => part.id === entry.part);
    const setUp = planned?.route.setUps[entry.setUp];
    if (!planned || !setUp) return [];
    if (planned.part.use === 'tooling made in place') {
      begin(spindle, planned, entry, i);
      return [];
    }
    return isOffLathe(setUp.grip) ? [] : held(day, spindle, entry, i, setUp);
  });
}

/** Tooling in the making: the next of its set-ups, or begun anew. */
function begin(spindle: Spindle, { part }: Pick<PlannedPart, 'part'>, { setUp }: Entry, i: number): void {
  if (setUp === 0) put(spindle, part.id, i, part.id);
  spindle.made = spindle.key === part.id && spindle.made === setUp ? setUp + 1 : -1;
}

function put(spindle: Spindle, key: string, since: number, by: PartId): void {
  if (spindle.key !== '') spindle.out.set(spindle.key, by);
  Object.assign(spindle, { key, since, made: 0 });
}

function held(day: ProvedDay, spindle: Spindle, entry: Entry, i: number, setUp: SetUp): readonly Claim[] {
  const tooling = day.holds(setUp).find((id) => partOf(day, id)?.part.use === 'tooling made in place');
  const key = tooling ?? day.bored(setUp.grip) ?? '';
  const boredHere = tooling === undefined && (key === '' || entry.on === i);
  const whole = tooling === undefined || spindle.made === partOf(day, tooling)?.route.setUps.length;
  const stands = spindle.key === key && spindle.since === entry.on && whole;
  const out = spindle.key === key ? '' : (spindle.out.get(key) ?? '');
  if (boredHere || !stands) put(spindle, boredHere ? key : '', i, entry.part);
  if (boredHere) return [];
  const id = setUp.grip.id;
  const hold = id.startsWith(`${entry.part}/`) ? id.slice(entry.part.length + 1) : id;
  return [claim('stays in the chuck', id, stands, { part: entry.part, hold, tooling: key, out }, setUp.operations[0])];
}

const partOf = (day: ProvedDay, id: PartId): ProvedDay['parts'][number] | undefined => day.parts.find(({ part }) => part.id === id);
