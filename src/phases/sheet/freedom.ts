/**
 * Where the order is habit the page says so. A run of neighbours is free when no before binds two of them, none is measured from
 * what another makes, and none takes a surface that another takes. Said of runs of two and more; anything doubtful counts as bound.
 */
import type { OpId } from '../../model/ids.ts';
import type { SetUp } from '../../model/plan.ts';
import { type Desk, wayOf } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** '40 and 50, 60 to 80'; '' where every order is bound. */
export function freeSaid(desk: Desk, setUp: SetUp, words: SheetWords): string {
  const runs = freeRuns(desk, setUp).filter((run) => run.length > 1);
  const named = runs.map((run) =>
    words.say('free.run', { from: desk.number(run[0] ?? ''), to: desk.number(run.at(-1) ?? ''), count: run.length }),
  );
  return named.length === 0 ? '' : words.say('free', { runs: named.join(', ') });
}

export function freeRuns(desk: Desk, setUp: SetUp): readonly (readonly OpId[])[] {
  const runs: OpId[][] = [];
  for (const op of setUp.operations) {
    const run = runs.at(-1);
    if (run?.every((earlier) => !bound(desk, setUp, earlier, op))) run.push(op);
    else runs.push([op]);
  }
  return runs;
}

function bound(desk: Desk, setUp: SetUp, earlier: OpId, later: OpId): boolean {
  // what ends the hold is bound to all that is done in it
  if (setUp.grip.gone.includes(earlier) || setUp.grip.gone.includes(later)) return true;
  const { befores } = desk.planned.route;
  if (befores.some((b) => (b.first === earlier && b.then === later) || (b.first === later && b.then === earlier))) return true;
  if (desk.workings(later).some((w) => makes(desk, setUp, earlier).includes(w.from))) return true;
  const touched = touches(desk, setUp, later);
  return touches(desk, setUp, earlier).some((surface) => touched.includes(surface));
}

function makes(desk: Desk, setUp: SetUp, op: OpId): readonly string[] {
  return (wayOf(desk.operation(op), setUp)?.cuts ?? []).map((cut) => cut.makes);
}

/** Surfaces that an operation makes or that bound its sweeps. */
function touches(desk: Desk, setUp: SetUp, op: OpId): readonly string[] {
  const operation = desk.operation(op);
  const sweeps = (wayOf(operation, setUp)?.sweeps ?? []).flatMap((sweep): readonly string[] => {
    if (sweep.take === 'turn' || sweep.take === 'bore') return [sweep.cylinder, sweep.to.face];
    if (sweep.take === 'groove') return [sweep.floor, sweep.first, sweep.second];
    if (sweep.take === 'cone') return [sweep.cone];
    if (sweep.take === 'arc') return [sweep.arc];
    return 'face' in sweep ? [sweep.face] : [];
  });
  return [...makes(desk, setUp, op), ...sweeps];
}
