/** Two hardened rollers on a rest, on which a file runs level and stops at its depth: there, to be made from silver steel, or to be done without. */
import { type Len, minus } from '../base/units.ts';
import type { SideFeature } from '../model/part.ts';
import type { Because, ToolingAsk, ToolUse, Verb } from '../model/plan.ts';
import { type Context, length, show } from './context.ts';

/** Verbs whose flats are to lie at one depth and parallel to the axis. */
export const GUIDED: readonly Verb[] = ['file-square', 'file-hexagon', 'file-half'];

export type Guide = { readonly tool?: Pick<ToolUse, 'made'>; readonly asks?: readonly ToolingAsk[]; readonly says: readonly Because[] };

export function guideFor(c: Context, f: SideFeature, verb: Verb): Guide {
  if (!GUIDED.includes(verb)) return { says: [] };
  const set: Because = { rule: 'filing-guide-set', grounds: { depth: show(depthOf(c, f)) } };
  if (c.workshop.tools.filingGuide) return { says: [set] };
  const roller = rodBetween(c, length('guide.roller.least'), length('guide.roller.most'));
  const pin = roller && rodBetween(c, undefined, roller, HALF);
  if (!roller || !pin || !c.workshop.tools.torch) return { says: [{ rule: 'filing-guide-missing', grounds: {} }] };
  return {
    tool: { made: { kind: 'guide-roller', across: roller } },
    asks: [{ kind: 'guide-pin', across: pin }],
    says: [{ rule: 'filing-guide-rest', grounds: {} }, set],
  };
}
const HALF = 2;

/** The thickest rod of silver steel in the rack and on the shelf; `times` it is to go into `most`. */
function rodBetween({ workshop }: Context, least: Len | undefined, most: Len, times = 1): Len | undefined {
  const there = (rod: Len): boolean => workshop.shelf.some((bar) => bar.material === ROD && bar.section === 'round' && bar.across === rod);
  return workshop.tools.silverSteel.filter((rod) => rod >= (least ?? 0) && rod * times <= most && there(rod)).sort((a, b) => b - a)[0];
}
const ROD = 'silver steel';

/** From the top of the round down to the flat. */
function depthOf(c: Context, f: SideFeature): Len {
  const on = c.surface(f.on);
  const across = on.shape === 'cylinder' ? on.size.target : (f.size?.target ?? (0 as Len));
  const off = minus(across, f.size?.target ?? across);
  return f.does === 'half-flat' ? off : ((off / 2) as Len);
}
