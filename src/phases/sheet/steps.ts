/** A part's operations one by one as pictures want them: the half-section before and after each, what was made from the side, the hold. */

import { type Replay, replay, stageAtStart, stageOver } from '../../geometry/replay.ts';
import type { OpId } from '../../model/ids.ts';
import type { SetUp } from '../../model/plan.ts';
import type { SideShown, Stage } from '../../model/stage.ts';
import type { Desk } from './lookup.ts';
import { sidesShown } from './sides-shown.ts';

/** `count`: operations, those at the bench among them; they are counted from 0 in the order of work. */
export type Steps = {
  readonly desk: Desk;
  readonly count: number;
  op(step: number): OpId;
  setUp(step: number): SetUp;
  /** What the steps from `first` to `last` made is new; `before` is the outline that they found. */
  over(first: number, last: number): Stage;
  bar(): Stage;
};

export function stepsOf(desk: Desk): Steps {
  const order = desk.planned.route.setUps.flatMap((setUp) => setUp.operations.map((op) => ({ op, setUp })));
  const at = (step: number): (typeof order)[number] => {
    const found = order[step];
    if (!found) throw new Error(`'${desk.part.id}' has no operation ${step}`);
    return found;
  };
  let known: Replay | undefined;
  const run = (): Replay => {
    known ??= replay(desk.part, desk.planned.route, desk.planned.chart);
    return known;
  };
  const features = (from: number, to: number): ReadonlySet<string> =>
    new Set(order.slice(from, to).map(({ op }) => desk.operation(op).feature));
  const sidesBy = (before: ReadonlySet<string>, here: ReadonlySet<string>): readonly SideShown[] =>
    sidesShown(desk, (id) => (here.has(id) ? 'here' : before.has(id) ? 'before' : undefined));
  return {
    desk,
    count: order.length,
    op: (step) => at(step).op,
    setUp: (step) => at(step).setUp,
    over: (first, last) => ({
      ...stageOver(run(), first, last),
      sides: sidesBy(features(0, first), features(first, last + 1)),
    }),
    bar: () => stageAtStart(run()),
  };
}
