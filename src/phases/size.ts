/** The reasoning of a fitting alone: every figure, the next size of what was chosen with what it would change, or one size taken through many. */
import type { Reasoning, Sizing } from '../fittings/sizings.ts';
import type { Vary } from '../fittings/vary.ts';
import type { Derivation } from '../model/part.ts';
import type { Change, NextSize, SizeFigure, SizeView, VaryRow, VaryView } from '../model/size.ts';
import type { Job } from '../model/workshop.ts';

export function size(job: Job, sizing: Sizing): SizeView {
  const now = sizing.reason(job.asked, job.workshop);
  const figures = now.derivations.map((one): SizeFigure => ({ ...one, next: nextOf(one, now, job, sizing) }));
  return { title: titleOf(job), kind: job.fitting, figures, vary: namesOf(sizing) };
}

/** Whatever a size that can be varied may be called. */
export const namesOf = (sizing: Sizing): readonly string[] =>
  sizing.vary.flatMap((v) => (v.also === undefined ? [v.key] : [v.key, v.also]));

/** Nothing where there is no such figure in this fitting as it is asked for. */
export function vary(job: Job, sizing: Sizing, key: string): VaryView | undefined {
  const way = sizing.vary.find((v) => v.key === key || v.also === key);
  const now = sizing.reason(job.asked, job.workshop);
  const figures = figuresOf(now);
  const value = way && figures[way.of];
  if (!way || value === undefined) return undefined;
  const values = [...new Set([value, ...way.values(value, job.asked, job.workshop)])].sort((a, b) => a - b);
  const tried = values.map((v) => ({ v, got: v === value ? now : reasonWith(way, v, figures, job, sizing) }));
  const columns = way.shows.flatMap((of) => {
    const unit = tried.flatMap(({ got }) => got.derivations.filter((d) => d.of === of))[0]?.unit;
    return unit === undefined ? [] : [{ of, unit }];
  });
  const rows = tried.map(({ v, got }): VaryRow => {
    const has = figuresOf(got);
    return {
      value: v,
      now: v === value,
      figures: columns.map(({ of }) => has[of]),
      refused: codes(got, 'error'),
      warned: codes(got, 'warning'),
    };
  });
  return { title: titleOf(job), key, of: way.of, unit: way.unit, columns, rows };
}

const reasonWith = (way: Vary<unknown>, value: number, figures: Readonly<Record<string, number>>, job: Job, sizing: Sizing): Reasoning =>
  sizing.reason(way.with(job.asked, value, figures), job.workshop);

const titleOf = ({ asked }: Job): string => (asked as { readonly title: string }).title;

const figuresOf = ({ derivations }: Reasoning): Readonly<Record<string, number>> =>
  Object.fromEntries(derivations.map((d) => [d.of, d.value]));

const codes = ({ found }: Reasoning, severity: 'error' | 'warning'): readonly string[] => [
  ...new Set(found.filter((d) => d.severity === severity).map((d) => d.code)),
];

function nextOf(one: Derivation, now: Reasoning, job: Job, sizing: Sizing): readonly NextSize[] {
  const way = sizing.vary.find((v) => v.of === one.of);
  if (!way) return [];
  const figures = figuresOf(now);
  const values = [...way.values(one.value, job.asked, job.workshop)].sort((a, b) => a - b);
  const [down, up] = [values.filter((v) => v < one.value).at(-1), values.find((v) => v > one.value)];
  const ways = [
    ...(down === undefined ? [] : [{ way: 'down' as const, value: down }]),
    ...(up === undefined ? [] : [{ way: 'up' as const, value: up }]),
  ];
  return ways.map(({ way: which, value }) => ({
    ...{ way: which, value, unit: way.unit },
    ...differenceOf(now, reasonWith(way, value, figures, job, sizing), way),
  }));
}

/** What tells most of the change, and what would be refused or warned of that is not now. */
function differenceOf(now: Reasoning, then: Reasoning, way: Vary<unknown>): Pick<NextSize, 'changes' | 'refused' | 'warned'> {
  const [before, after] = [figuresOf(now), figuresOf(then)];
  const changes = way.shows.flatMap((of): readonly Change[] => {
    const [from, to] = [before[of], after[of]];
    const unit = now.derivations.find((d) => d.of === of)?.unit ?? '';
    return from === undefined || to === undefined || from === to ? [] : [{ of, from, to, unit }];
  });
  const fresh = (severity: 'error' | 'warning') => codes(then, severity).filter((code) => !codes(now, severity).includes(code));
  return { changes, refused: fresh('error'), warned: fresh('warning') };
}
