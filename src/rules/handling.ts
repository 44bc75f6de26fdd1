/** What a hold, a change of tool, a piece of tooling takes of time, by the workshop's own minutes of handling. */
import { holdLike, setting } from '../handbook/setting.ts';
import type { Grip, ToolingAsk, ToolUse } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';

/** Tenths of a minute, whole. */
export type Handling = {
  /** A handling by its id in handling.ts, or a row of setting.ts. */
  take(id: string): number;
  hold(grip: Pick<Grip, 'kind' | 'centre' | 'plug'>): number;
  change(tool: Pick<ToolUse, 'kind'>): number;
  make(ask: Pick<ToolingAsk, 'kind'>): number;
};

export function handlingOf({ handling }: Pick<Workshop, 'handling'>): Handling {
  const take = (id: string): number => Math.round((handling[id] ?? setting.value(id)) * TENTHS);
  return {
    take,
    hold: ({ kind, centre, plug }) => {
      const like = holdLike(kind);
      const besides = (centre === undefined ? 0 : take('hold.centre')) + (plug === undefined ? 0 : take('hold.plug'));
      return take(`hold.${kind}`) + besides + (like === undefined ? 0 : take(like));
    },
    change: ({ kind }) => take(IN_TAILSTOCK.includes(kind) ? 'tailstock-tool' : 'change-tool'),
    make: ({ kind }) => take(`make.${kind}`),
  };
}
export const TENTHS = 10;

const IN_TAILSTOCK: readonly string[] = ['centre-drill', 'drill', 'reamer', 'd-bit', 'tap', 'die'];
