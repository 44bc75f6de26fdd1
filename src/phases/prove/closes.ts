/** Does what holds the work close on it, as it has come out by then? A collet and a sleeve are of one size; jaws follow the work. */
import { mm } from '../../base/units.ts';
import type { Step } from '../../geometry/replay.ts';
import { throughs } from '../../geometry/section/ask.ts';
import { at } from '../../geometry/section/lines.ts';
import { practice } from '../../handbook/practice.ts';
import type { Claim, Grip } from '../../model/plan.ts';
import { type Case, claim, short, show, whole } from './claims.ts';
import type { Corners } from './corners.ts';
import { cornerText } from './end.ts';

/** A claim for every set-up that is held by something of one size; what is under the hold is measured when the work goes in, at its worst corners. */
export function closesClaims(asked: Case, corners: Corners): readonly Claim[] {
  const { steps } = corners.base.run;
  const opening = steps.flatMap((step, i) => (step.setUp.no === steps[i - 1]?.setUp.no ? [] : [i]));
  return opening.flatMap((i): readonly Claim[] => {
    const { grip } = steps[i]?.setUp ?? {};
    const span = grip && spanOf(asked, grip);
    if (!grip || !span) return [];
    const across = acrossOnce();
    const low = corners.least((_, run) => across(run.steps[i])?.least);
    const high = corners.most((_, run) => across(run.steps[i])?.most);
    if (low.lo === undefined || high.hi === undefined) return [];
    const [lo, hi] = [whole(low.lo), whole(high.hi)];
    const failing = lo < span.least ? low.at : hi > span.most ? high.at : {};
    const sizes = { lo: show(lo), hi: show(hi), least: show(span.least), most: show(span.most) };
    const grounds = { hold: short(asked.part.id, grip.id), kind: grip.kind, ...sizes, there: span.there };
    const holds = span.there && lo >= span.least && hi <= span.most;
    return [claim('fits its hold', grip.id, holds, { ...grounds, corner: cornerText(asked.part, failing) })];
  });
}

/** `there`: it is in the workshop, or made. */
type Span = { readonly least: number; readonly most: number; readonly there: boolean };

/** Nothing for a hold that is set, or bored, to the work as it came out. */
function spanOf({ workshop }: Case, { kind, takes, tooling }: Grip): Span | undefined {
  const under = (size: number, slack: string, there: boolean): Span => ({ least: size - mm(practice.value(slack)), most: size, there });
  if (kind === 'collet')
    return under(
      takes?.hi ?? 0,
      'collet.slack',
      workshop.holding.collets.some((size) => size === takes?.hi),
    );
  if (kind !== 'sleeve') return undefined;
  if (tooling?.kind !== 'split-sleeve') {
    const kept = workshop.holding.keptSleeves ?? [];
    return under(
      takes?.hi ?? 0,
      'sleeve.slack',
      kept.some((size) => size === takes?.hi),
    );
  }
  if (tooling.to) return undefined;
  // it goes over the largest at its smallest, and closes on the smallest at its largest
  const { least } = under(tooling.work + mm(practice.value('sleeve.over')), 'sleeve.slack', true);
  return { least, most: tooling.work, there: true };
}

type Across = { readonly least: number; readonly most: number };
/** What the hold lies on, its narrowest and its widest diameter; of what replays share, measured once. */
function acrossOnce(): (step: Step | undefined) => Across | undefined {
  const known = new Map<Step, Across | undefined>();
  return (step) => {
    if (!step) return undefined;
    if (!known.has(step)) known.set(step, acrossOf(step));
    return known.get(step);
  };
}

function acrossOf({ before, setUp: { grip } }: Step): Across | undefined {
  const under = throughs(before).flatMap(({ slab, outer }) => {
    const [from, to] = [Math.max(slab.from, grip.from), Math.min(slab.to, grip.to)];
    return to > from && grip.on.some((id) => id === outer.mark.surface) ? [at(outer.line, (from + to) / 2)] : [];
  });
  return under.length === 0 ? undefined : { least: Math.min(...under), most: Math.max(...under) };
}
