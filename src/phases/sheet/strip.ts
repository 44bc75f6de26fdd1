/** From bar to part: a little half-section for each operation, or for a run of them where there are more than the strip has room for. */
import { isSlender, MOST_CELLS } from '../../drawing/sheet/strip.ts';
import type { Hold } from '../../drawing/stage.ts';
import { drawStrip, type Frame } from '../../drawing/tiny.ts';
import type { Picture } from '../../model/display.ts';
import type { SetUp } from '../../model/plan.ts';
import type { StripCell, StripShown } from '../../model/sheet.ts';
import type { Point, Stage } from '../../model/stage.ts';
import { partName } from './names.ts';
import type { SheetWords } from './said.ts';
import type { Steps } from './steps.ts';

/** `title`: the words for an operation under its number; '' for the number alone. */
export function stripOf(steps: Steps, words: SheetWords, title: (op: string) => string, most = MOST_CELLS): StripShown {
  const part = partName(steps.desk.part, words);
  const bar: StripCell = { label: words.say('strip.bar'), text: '', alt: words.say('strip.bar.alt', { part }) };
  const cells = runsOf(steps, most - 1).map((run): StripCell => {
    const [from, to] = [steps.desk.number(steps.op(run.first)), steps.desk.number(steps.op(run.last))];
    return {
      label: from === to ? from : words.say('strip.run', { from, to }),
      text: title(steps.op(run.last)),
      alt: words.say('strip.alt', { part, number: to }),
      steps: run,
    };
  });
  return { title: words.say('strip.title'), cells: [bar, ...cells], ...(isLongAndThin(steps) ? { slender: true } : {}) };
}

function isLongAndThin({ desk }: Steps): boolean {
  const zs = desk.part.surfaces.flatMap((s) => (s.shape === 'face' ? [s.z] : []));
  const across = desk.part.surfaces.flatMap((s) => (s.shape === 'cylinder' && s.side === 'outside' ? [s.size.target] : []));
  return zs.length > 0 && isSlender(Math.max(...zs) - Math.min(...zs), Math.max(0, ...across));
}

/** Its pictures, all at one scale. `holdOf`: the hold as it is drawn. */
export function drawCells(strip: StripShown, steps: Steps, frame: Frame, holdOf: (setUp: SetUp, stage: Stage) => Hold): readonly Picture[] {
  return drawStrip(
    strip.cells.map((cell) => {
      const setUp = steps.setUp(cell.steps?.last ?? 0);
      const stage = cell.steps ? steps.over(cell.steps.first, cell.steps.last) : steps.bar();
      return { stage, hold: holdOf(setUp, stage), frame, words: { alt: cell.alt } };
    }),
  );
}

type Run = { readonly first: number; readonly last: number };

/** One operation a run; while there are too many, the neighbours of one hold that together change the half-section least are joined. */
function runsOf(steps: Steps, most: number): readonly Run[] {
  let runs: readonly (Run & { readonly taken: number })[] = Array.from({ length: steps.count }, (_, i) => ({
    first: i,
    last: i,
    taken: 0,
  }));
  if (runs.length <= most) return runs;
  runs = runs.map((run) => ({ ...run, taken: areaTaken(steps, run) }));
  while (runs.length > most) {
    const at = leastPair(runs, steps);
    const [a, b] = [runs[at], runs[at + 1]];
    if (!a || !b) break;
    runs = [...runs.slice(0, at), { first: a.first, last: b.last, taken: a.taken + b.taken }, ...runs.slice(at + 2)];
  }
  return runs;
}

/** The earlier one's index; past the end where no two neighbours share a hold. */
function leastPair(runs: readonly (Run & { readonly taken: number })[], steps: Steps): number {
  let best = runs.length;
  let least = Number.POSITIVE_INFINITY;
  runs.slice(1).forEach((b, i) => {
    const a = runs[i];
    if (!a || steps.setUp(a.last) !== steps.setUp(b.first) || a.taken + b.taken >= least) return;
    best = i;
    least = a.taken + b.taken;
  });
  return best;
}

function areaTaken(steps: Steps, { first, last }: Run): number {
  return steps.over(first, last).taken.reduce((sum, { polygon }) => sum + areaOf(polygon), 0);
}

/** By the corners, one after the other. */
function areaOf(points: readonly Point[]): number {
  const twice = points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    return sum + p.z * q.d - q.z * p.d;
  }, 0);
  return Math.abs(twice) / 2;
}
