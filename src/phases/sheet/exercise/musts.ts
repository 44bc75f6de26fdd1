/** What must come before what in a part, as someone who orders its operations is judged by: rules, holds, and what is measured from what. */

import type { Ordering, Pair } from '../../../base/orders.ts';
import type { OpId } from '../../../model/ids.ts';
import type { Because, Before, SetUp } from '../../../model/plan.ts';
import { isOffLathe } from '../../../model/work.ts';
import type { Desk } from '../lookup.ts';

export type Must = { readonly first: OpId; readonly then: OpId; readonly because: Because };
/** `ops`: in the plan's order; numbers in `ordering` count through it. Each hold is one group, each work at the bench its own. */
export type Puzzle = {
  readonly ops: readonly OpId[];
  readonly musts: readonly Must[];
  readonly ordering: Ordering;
  readonly holds: readonly (SetUp | undefined)[];
};

export function puzzleOf(desk: Desk): Puzzle {
  const { setUps } = desk.planned.route;
  const ops = setUps.flatMap((setUp) => setUp.operations);
  const place = new Map(ops.map((op, i) => [op, i]));
  const musts = distinct([...ruled(desk), ...setUps.flatMap((setUp) => held(desk, setUp)), ...measured(desk, ops)]);
  const blocks = setUps.flatMap((setUp): readonly { readonly ops: readonly OpId[]; readonly hold?: SetUp }[] =>
    isOffLathe(setUp.grip) ? setUp.operations.map((op) => ({ ops: [op] })) : [{ ops: setUp.operations, hold: setUp }],
  );
  return {
    ops,
    musts,
    holds: blocks.map((block) => block.hold),
    ordering: {
      count: ops.length,
      groups: blocks.map((block) => block.ops.map((op) => place.get(op) ?? 0)),
      pairs: musts.map((must): Pair => [place.get(must.first) ?? 0, place.get(must.then) ?? 0]),
    },
  };
}

/** One reason a pair: the first that is given. */
function distinct(musts: readonly Must[]): readonly Must[] {
  const seen = new Map<string, Must>();
  for (const must of musts) {
    const key = `${must.first} ${must.then}`;
    if (must.first !== must.then && !seen.has(key)) seen.set(key, must);
  }
  return [...seen.values()];
}

/** Strict befores that bind at the ends from which this plan works. */
function ruled(desk: Desk): readonly Must[] {
  const { befores, setUps } = desk.planned.route;
  const holdOf = (op: OpId): SetUp | undefined => setUps.find((setUp) => setUp.operations.includes(op));
  const binds = ({ first, then, when }: Before): boolean => {
    if (!holdOf(first) || !holdOf(then)) return false;
    if (!when) return true;
    const hold = holdOf(when.op);
    return hold !== undefined && !isOffLathe(hold.grip) && hold.grip.out === when.from;
  };
  return befores.filter((b) => b.force === 'strict' && binds(b)).map(({ first, then, because }) => ({ first, then, because }));
}

const LEAVES = ['part-off', 'saw-off'];
const FREES = [...LEAVES, 'cut-stub'];
const IN_BAR = ['bar', 'bar-and-centre', 'stub'];

/** What is held must be there, what ends the hold comes last in it, and nothing is done at the bench while the part is on the bar. */
function held(desk: Desk, { grip, operations }: SetUp): readonly Must[] {
  const all = desk.planned.route.setUps.flatMap((setUp) => setUp.operations);
  const isThere = (op: OpId): boolean => all.includes(op);
  const verbs = (which: readonly string[]): readonly OpId[] => all.filter((op) => which.includes(desk.operation(op).verb));
  const must = (rule: string, firsts: readonly OpId[], thens: readonly OpId[]): readonly Must[] =>
    firsts.flatMap((first) => thens.map((then) => ({ first, then, because: { rule, grounds: {} } })));
  const others = (of: readonly OpId[]): readonly OpId[] => of.filter((op) => !operations.includes(op));
  if (isOffLathe(grip))
    return [
      ...must('order-off-the-bar', others(verbs(LEAVES)), operations),
      ...must('order-hold-ready', others(grip.ready.filter(isThere)), operations),
    ];
  const ends = grip.gone.filter(isThere);
  return [
    ...(IN_BAR.includes(grip.kind) ? [] : must('order-off-the-bar', others(verbs(FREES)), operations)),
    ...must('order-hold-ready', others(grip.ready.filter(isThere)), operations),
    ...must(
      'order-hold-ends',
      operations.filter((op) => !ends.includes(op)),
      ends,
    ),
  ];
}

/** A length is measured from a face that is there: by the last operation before it that makes that face. */
function measured(desk: Desk, ops: readonly OpId[]): readonly Must[] {
  const { working } = desk.planned.chart;
  return working.flatMap((one): readonly Must[] => {
    const makers = working.filter((w) => w.makes === one.from && w.op !== one.op && ops.indexOf(w.op) < ops.indexOf(one.op));
    const last = makers.reduce<OpId | undefined>(
      (best, w) => (best === undefined || ops.indexOf(w.op) > ops.indexOf(best) ? w.op : best),
      undefined,
    );
    return last === undefined ? [] : [{ first: last, then: one.op, because: { rule: 'order-datum-there', grounds: {} } }];
  });
}
