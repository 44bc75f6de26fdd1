/**
 * What is to run true to one another and cannot be cut from one end is cut in holds that are true enough: where none but the centres is,
 * both are cut between them.
 */
import { type Len, len } from '../../base/units.ts';
import type { Truth } from '../../model/part.ts';
import type { Grip, Operation, Refusal } from '../../model/plan.ts';
import { type Context, ENDS, length } from '../context.ts';
import type { Work } from '../rule.ts';

/** Truths of the part whose two surfaces no one end reaches. */
export function twoEnded(c: Context, operations: readonly Operation[]): readonly Truth[] {
  const from = (id: string) => ENDS.filter((end) => cutting(c, operations, id).some((o) => o.ways[end] !== undefined));
  return (c.part.truths ?? []).filter(({ a, b }) => from(b).length > 0 && !from(a).some((end) => from(b).includes(end)));
}

const cutting = (c: Context, operations: readonly Operation[], surface: string): readonly Operation[] => {
  const feature = c.surface(surface).feature;
  return operations.filter((o) => o.feature === feature || c.threads.some((t) => t.on === surface && t.id === o.feature));
};

/** The holds, each without the cuts for which it is not true enough; and what is so refused, each as it would be if it ran true. */
export function trueEnough(work: Work, grips: readonly Grip[]): { readonly grips: readonly Grip[]; readonly refused: readonly Refusal[] } {
  const truths = twoEnded(work.c, work.operations);
  const best = len(Math.min(...OTHERS.map((id) => length(id))));
  const cutsOf = ({ a, b }: Truth): readonly string[] =>
    [...cutting(work.c, work.operations, a), ...cutting(work.c, work.operations, b)].map((o) => o.id);
  const spoiltBy = (g: Grip): readonly Truth[] =>
    truths.filter(({ asks }) => (asks < best ? g.kind !== 'between-centres' : !onBar(g) && g.runout > asks));
  const held = grips.map((g) => {
    const spoilt = spoiltBy(g);
    const hides = [...new Set([...g.hides, ...spoilt.flatMap(cutsOf)])];
    return {
      grip: { ...g, hides },
      refused: hides.length > g.hides.length ? spoilt.filter(({ asks }) => asks >= best).map((t) => runsOut(g, t)) : [],
    };
  });
  return {
    grips: held.map(({ grip }) => grip),
    refused: [...truths.filter(({ asks }) => asks < best).map((t): Refusal => refusal(t, best)), ...held.flatMap(({ refused }) => refused)],
  };
}

const runsOut = (g: Grip, { asks }: Truth): Refusal => ({
  what: g.id,
  because: { rule: 'hold-runs-out', grounds: {} },
  ...{ has: g.runout, most: asks },
  would: { grip: { ...g, id: `${g.id}.true`, runout: asks } },
});

/** Re-grips, apart from the centres, with the least run-out. */
const OTHERS = ['runout.collet', 'runout.bored-jaws', 'runout.four-jaw'] as const;
const onBar = (g: Grip): boolean => g.kind === 'bar' || g.kind === 'bar-and-centre' || g.kind === 'stub';

const refusal = ({ id, asks }: Truth, best: Len): Refusal => ({
  what: id,
  because: { rule: 'true-between-centres', grounds: {} },
  has: best,
  most: asks,
});
