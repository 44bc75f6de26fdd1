/** How long each operation, each set-up, each part and the whole pack take: cutting from the numbers, the rest by the workshop's handling. */

import { toMm } from '../base/units.ts';
import { numbersTable } from '../handbook/numbers.ts';
import { setting } from '../handbook/setting.ts';
import type { Part } from '../model/part.ts';
import type { Chart, Figures, PlannedPart, Route, Sequence, Verb } from '../model/plan.ts';
import type { OpTime, PackTime, PartTime } from '../model/time.ts';
import { isOffLathe } from '../model/work.ts';
import type { Workshop } from '../model/workshop.ts';
import { cutsOf, cuttingTime, threadLength } from '../rules/cutting-time.ts';
import { type Handling, handlingOf, TENTHS } from '../rules/handling.ts';
import { type Removal, walkRemoval } from '../rules/removal.ts';

type Asked = { readonly part: Part; readonly route: Route; readonly chart: Chart; readonly figures: readonly Figures[] };
/** Between two operations: the tool in hand, the change wheels that are on, whether a thread is still to come. */
type Hand = { tool: string; wheels: string };

export function times(asked: Asked, workshop: Pick<Workshop, 'handling'>): PartTime {
  const { part, route, chart } = asked;
  const takes = handlingOf(workshop);
  const hand: Hand = { tool: '', wheels: '' };
  const removals = walkRemoval(part, route, chart);
  const last = removals.findLast((r) => r.operation.verb === 'screw-cut');
  const operations = removals.map((removal) => opTime(asked, removal, hand, takes, removal === last));
  const byOp = new Map(operations.map((o) => [o.op, o.cutting + o.handling]));
  const setUps = route.setUps.map((setUp) => {
    const hold = seconds(takes.hold(setUp.grip));
    return { hold, whole: hold + sum(setUp.operations.map((op) => byOp.get(op) ?? 0)) };
  });
  return {
    operations,
    setUps,
    hold: sum(setUps.map((s) => s.hold)),
    cutting: sum(operations.map((o) => o.cutting)),
    handling: sum(operations.map((o) => o.handling)),
    whole: sum(setUps.map((s) => s.whole)),
  };
}

/** `packs`: of how many of the fitting; its tooling is made once for all of them. */
export function packTimes(parts: readonly PlannedPart[], day: Sequence, packs: number, workshop: Pick<Workshop, 'handling'>): PackTime {
  const rows = parts.flatMap(({ part, time }) => {
    if (!time) return [];
    const begun = day.filter((entry) => entry.part === part.id && entry.setUp === 0).length;
    const count = part.use === 'fitting' ? part.quantity * packs : Math.max(1, begun);
    return [{ part: part.id, times: count, each: time.whole, all: time.whole * count }];
  });
  const clean = seconds(handlingOf(workshop).take('clean-down'));
  return { parts: rows, clean, whole: sum(rows.map((row) => row.all)) + clean };
}

const sum = (all: readonly number[]): number => all.reduce((total, one) => total + one, 0);
const seconds = (tenths: number): number => Math.round((tenths * numbersTable.value('minute')) / TENTHS);

function opTime({ part, chart, figures }: Asked, removal: Removal, hand: Hand, takes: Handling, lastThread: boolean): OpTime {
  const { operation, setUp } = removal;
  const own = figures.find((f) => f.op === operation.id) ?? { op: operation.id };
  const cutting = cuttingTime(part, removal, own);
  const measured = chart.working.filter((w) => w.op === operation.id && w.stage === 'final').length;
  const parts = [
    isOffLathe(setUp.grip) ? 0 : changeTime(removal, hand, takes),
    wheelTime(own, hand, takes, lastThread),
    own.dial || own.depth !== undefined ? takes.take('touch-off') : 0,
    operation.verb === 'cone' ? takes.take('set-over') : 0,
    measured * takes.take('measure'),
    Math.max(0, (own.pecks?.length ?? 1) - 1) * takes.take('peck'),
    byHand(part, removal, takes),
  ];
  return { op: operation.id, cutting, handling: seconds(sum(parts)) + between(removal, own, takes, cutting) };
}

function changeTime({ operation }: Removal, hand: Hand, takes: Handling): number {
  const same = hand.tool === operation.tool.key || operation.tool.kind === 'none';
  if (!same) hand.tool = operation.tool.key;
  return same ? 0 : takes.change(operation.tool);
}

/** Put on where others are on; the plain feed put back after the last thread. */
function wheelTime({ wheels }: Figures, hand: Hand, takes: Handling, last: boolean): number {
  if (!wheels) return 0;
  const now = [...wheels.drivers, ...wheels.driven].join();
  const anew = now !== hand.wheels;
  hand.wheels = now;
  return (anew ? takes.take('change-wheels') : 0) + (last ? takes.take('feed-wheels') : 0);
}

/** Seconds from one pass to the next. What is reckoned for a pass of a thread holds its cutting too. */
function between({ operation }: Removal, own: Figures, takes: Handling, cutting: number): number {
  const cuts = cutsOf(own);
  if (operation.verb === 'screw-cut') return Math.max(0, seconds(cuts * takes.take('thread-pass')) - cutting);
  return seconds((cuts - 1) * takes.take('pass'));
}

const TAPPED: readonly Verb[] = ['tap', 'die'];
const WORKED: readonly Verb[] = [
  ...(['stone', 'knurl', 'saw-off', 'file-flats', 'file-square', 'file-hexagon'] as const),
  ...(['file-half', 'slit', 'saw-slot', 'cross-drill', 'cross-ream', 'drill-bolt-holes', 'solder', 'harden', 'gauge'] as const),
];

function byHand(part: Part, { operation }: Removal, takes: Handling): number {
  const { verb } = operation;
  if (verb === 'deburr') return takes.take('deburr');
  if (TAPPED.includes(verb)) {
    const share = toMm(threadLength(part, operation.feature)) / setting.value('hand-tap.length');
    return Math.ceil(takes.take('hand-tap') * share);
  }
  const side = part.features.find((f) => f.id === operation.feature);
  const count = side?.kind === 'side' ? (side.count ?? 1) : 1;
  return WORKED.includes(verb) ? takes.take(`work.${verb}`) * count : 0;
}
