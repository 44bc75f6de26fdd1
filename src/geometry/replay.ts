/**
 * The route carried out again on the painted half-section, told only each cut's from what, by how much, which way, and each grip.
 * It shares no sum with the chart: a surface lies where the face that it is measured from lies now, plus the working dimension.
 */

import { mm } from '../base/units.ts';
import { practice } from '../handbook/practice.ts';
import type { DimId, End, SurfaceId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Chart, Cut, Operation, Route, SetUp, Way, Working } from '../model/plan.ts';
import type { Stage } from '../model/stage.ts';
import { isOffLathe } from '../model/work.ts';
import { type Nominal, nominalOf } from './nominal.ts';
import { type Bench, barEndOf, type Here, type Lack, type Places, placeCuts, workingKey, workingOf } from './replay/places.ts';
import { stageOf } from './replay/stages.ts';
import { sweepRegions } from './replay/sweeps.ts';
import { areaOf } from './section/ask.ts';
import { type Mark, type Paint, paint, type Section, startBar } from './section.ts';

/** One operation, with the half-section before and after it. */
export type Step = {
  readonly setUp: SetUp;
  readonly operation: Operation;
  readonly way: Way;
  readonly out: End;
  readonly before: Section;
  readonly after: Section;
  readonly placesBefore: Places;
  readonly places: Places;
  /** The half-section after each of its sweeps. */
  readonly sweeps: readonly Section[];
  readonly lacks: readonly Lack[];
};
export type Replay = {
  readonly nominal: Nominal;
  readonly start: Section;
  readonly steps: readonly Step[];
  readonly end: Section;
  readonly places: Places;
};

/** Steps whose working dimensions are at target, to begin other replays from. */
type Known = { readonly bench: Bench; readonly start: Section; readonly plan: readonly Planned[] };
type Planned = Pick<Step, 'setUp' | 'operation' | 'way' | 'out'> & Pick<Here, 'working' | 'makes' | 'stages'>;

/**
 * `values`: working dimensions by id that are at another value than their target. Throws Error when route, chart and part do not speak
 * of the same operations and surfaces: our fault. What is asked for in vain while cutting stands in each step's `lacks`.
 */
export function replay(part: Part, route: Route, chart: Chart, values: Readonly<Record<DimId, number>> = {}): Replay {
  return replayer(part, route, chart)(values);
}

type AtTarget = { readonly part: Part; readonly chart: Chart; readonly known: Known; readonly run: Replay };
const atTargets = new WeakMap<Route, AtTarget>();

/** Proof, pictures and pages begin with the same replay: a route's last one is kept as long as the route. */
function atTarget(part: Part, route: Route, chart: Chart): AtTarget {
  const before = atTargets.get(route);
  if (before && before.part === part && before.chart === chart) return before;
  const known = prepare(part, route, chart);
  const found = { part, chart, known, run: run(known, {}, []) };
  atTargets.set(route, found);
  return found;
}

/** The same for many sets of values: what goes as it went before, from the beginning up to the first that differs, is not done again. */
export function replayer(part: Part, route: Route, chart: Chart): (values: Readonly<Record<DimId, number>>) => Replay {
  const { known, run: target } = atTarget(part, route, chart);
  const changesOf = changesBy(known, chart);
  const runs = new Map<string, Begun>([['', { steps: target.steps, good: target.steps.length }]]);
  return (values) => {
    const changes = changesOf(values);
    if (changes.length === 0) return target;
    const made = run(known, values, begun(runs, changes));
    let name = '';
    for (const [i, change] of changes.entries()) {
      name += change.name;
      const good = changes[i + 1]?.step ?? made.steps.length;
      if (good > (runs.get(name)?.good ?? 0)) runs.set(name, { steps: made.steps, good });
    }
    return made;
  };
}

/** A working dimension that is not at its target, and the step that cuts it. */
type Change = { readonly step: number; readonly name: string };
/** The steps up to `good` go so with any values that begin so. */
type Begun = { readonly steps: readonly Step[]; readonly good: number };

/** In the order of the steps; what no step cuts changes nothing, nor does a limit that is the target. */
function changesBy(known: Known, chart: Chart): (values: Readonly<Record<DimId, number>>) => readonly Change[] {
  const steps = new Map(known.plan.map((one, i) => [one.operation.id, i]));
  const order = chart.working
    .flatMap(({ id, op, limits }) => {
      const step = steps.get(op);
      return step === undefined ? [] : [{ id, step, target: limits.target }];
    })
    .sort((a, b) => a.step - b.step);
  return (values) => {
    const changes: Change[] = [];
    for (const [i, { id, step, target }] of order.entries()) {
      const value = values[id];
      if (value !== undefined && value !== target) changes.push({ step, name: `${i}=${value};` });
    }
    return changes;
  };
}

/** The longest beginning that is known. */
function begun(runs: ReadonlyMap<string, Begun>, changes: readonly Change[]): readonly Step[] {
  let [name, best] = ['', [] as readonly Step[]];
  for (let i = 0; i <= changes.length; i += 1) {
    const found = runs.get(name);
    const good = Math.min(found?.good ?? 0, changes[i]?.step ?? Number.POSITIVE_INFINITY);
    if (found && good >= best.length) best = found.steps.slice(0, good);
    name += changes[i]?.name ?? '';
  }
  return best;
}

/** The half-section at the end of the step with that number (from 0), as pictures want it: what the set-up took so far is tinted. */
export function stageAfter(run: Replay, step: number): Stage {
  const last = run.steps[step];
  if (!last) throw new Error(`the route has no step ${step}`);
  return stageOver(
    run,
    run.steps.findIndex((one) => one.setUp === last.setUp),
    step,
  );
}

/** The same, with what the steps from `first` to `last` (from 0) took and made; what was there before them is the outline before. */
export function stageOver(run: Replay, first: number, last: number): Stage {
  const steps = run.steps.slice(first, last + 1);
  const [begins, ends] = [steps[0], steps.at(-1)];
  if (!begins || !ends) throw new Error(`the route has no steps from ${first} to ${last}`);
  const ops = steps.filter((one) => one.setUp === ends.setUp).map((one) => one.operation.id);
  return stageOf(run.nominal, ops, begins.before, ends.after, ends.out);
}

/** The bar before anything is cut, as the first hold has it. */
export function stageAtStart(run: Replay): Stage {
  return stageOf(run.nominal, [], run.start, run.start, run.steps[0]?.out ?? 'second');
}

/** The half-section at the end of a set-up. */
export function stageAtEnd(run: Replay, setUp: SetUp): Stage {
  return stageAfter(
    run,
    run.steps.findLastIndex((one) => one.setUp === setUp),
  );
}

function prepare(part: Part, route: Route, chart: Chart): Known {
  const nominal = nominalOf(part);
  const plan = planOf(route, workingOf(chart));
  const cuts = new Map(
    plan.flatMap(({ operation, way }) => way.cuts.map((cut): [string, Cut] => [workingKey(operation.id, cut.makes), cut])),
  );
  const out = plan.find((one) => !isOffLathe(one.setUp.grip))?.out ?? 'first';
  const barEnd = barEndOf(nominal, chart, cuts, out, mm(practice.value('bar.allowance')));
  return { bench: { nominal, values: {}, barEnd }, start: barOf(nominal, route, barEnd, out), plan };
}

/** `charted`: working dimensions by `<operation> <surface>`. */
function planOf(route: Route, charted: ReadonlyMap<string, Working>): readonly Planned[] {
  const byId = new Map(route.chosen.flatMap((method) => method.operations.map((operation) => [operation.id, operation] as const)));
  let out: End = 'first';
  return route.setUps.flatMap((setUp) => {
    out = isOffLathe(setUp.grip) ? out : setUp.grip.out;
    const facing = out;
    return setUp.operations.map((id): Planned => {
      const operation = byId.get(id);
      if (!operation) throw new Error(`the route names '${id}', which no chosen method makes`);
      const way = isOffLathe(setUp.grip) ? operation.ways.bench : operation.ways[facing];
      if (!way) throw new Error(`'${id}' has no way in set-up ${setUp.no}`);
      const makes = new Set(way.cuts.filter((cut) => cut.measures === 'length').map((cut) => cut.makes));
      const stages = new Map<SurfaceId | '', Cut['stage']>(way.cuts.map((cut) => [cut.makes, cut.stage]));
      const working = way.cuts.map((cut) => charted.get(workingKey(id, cut.makes)));
      return { setUp, operation, way, out: facing, working, makes, stages };
    });
  });
}

/** From its raw end to as far as any grip reaches, and a diameter more. Its skin is named where a surface is left as it was bought. */
function barOf(nominal: Nominal, route: Route, barEnd: number, out: End): Section {
  const { part } = nominal;
  if (part.stock.from !== 'bar') throw new Error(`'${part.id}' is not made from bar`);
  const { across } = part.stock;
  const holds = route.setUps.filter((setUp) => !isOffLathe(setUp.grip)).flatMap((setUp) => [setUp.grip.from, setUp.grip.to]);
  const far = out === 'first' ? Math.max(part.length, ...holds) + across : Math.min(0, ...holds) - across;
  const bare: Mark = { surface: '', stage: 'bar', by: '' };
  const start = startBar(Math.min(barEnd, far), Math.max(barEnd, far), across, bare);
  return nameSkin(nominal, start);
}

/** Each stretch of the skin belongs to the nearest surface that is left as it was. */
function nameSkin(nominal: Nominal, bar: Section): Section {
  const left = nominal.part.surfaces
    .flatMap((one) => (one.shape === 'cylinder' && one.asStock ? [one] : []))
    .sort((a, b) => a.from - b.from);
  const whole = bar.slabs[0];
  const skin = whole?.bounds[0];
  if (!whole || !skin || left.length === 0) return bar;
  const ends = left.map((one, i) => (i + 1 < left.length ? (one.to + (left[i + 1]?.from ?? one.to)) / 2 : whole.to));
  const slabs = left.map((one, i) => ({
    ...whole,
    from: i === 0 ? whole.from : (ends[i - 1] ?? whole.from),
    to: ends[i] ?? whole.to,
    bounds: [{ ...skin, mark: { ...skin.mark, surface: one.id } }],
  }));
  return { ...bar, slabs };
}

function run(known: Known, values: Readonly<Record<DimId, number>>, done: readonly Step[]): Replay {
  const bench: Bench = { ...known.bench, values };
  const steps = [...done];
  const none: Places = { faces: new Map(), sizes: new Map() };
  for (const planned of known.plan.slice(done.length)) {
    const last = steps.at(-1);
    steps.push(carryOut(bench, planned, last?.after ?? known.start, last?.places ?? none));
  }
  const last = steps.at(-1);
  return { nominal: bench.nominal, start: known.start, steps, end: last?.after ?? known.start, places: last?.places ?? none };
}

function carryOut(bench: Bench, planned: Planned, before: Section, placesBefore: Places): Step {
  const { operation, way, setUp, out, working, makes, stages } = planned;
  const asked: Here = { bench, op: operation.id, setUp, way, out, section: before, places: placesBefore, working, makes, stages };
  const placed = placeCuts(asked);
  const lacks: Lack[] = [...placed.lacks];
  const sweeps: Section[] = [];
  let section = before;
  for (const sweep of way.sweeps) {
    const here: Here = { ...asked, places: placed.places, section };
    const swept = placed.lacks.length > 0 ? { regions: [], lacks: [] } : sweepRegions(here, sweep);
    lacks.push(...swept.lacks);
    section = swept.regions.reduce(paint, section);
    sweeps.push(section);
  }
  return { setUp, operation, way, out, before, after: section, placesBefore, places: placed.places, sweeps, lacks };
}

/** Metal that each sweep of the step found to take, or to thread; in units of z times units of diameter. */
export function tookOf(step: Step): readonly number[] {
  const isWork = (one: Paint): boolean => (one.state === 'taken' || one.state === 'partial') && one.by === step.operation.id;
  let last = areaOf(step.before, isWork);
  return step.sweeps.map((section) => {
    const area = areaOf(section, isWork);
    const took = area - last;
    last = area;
    return took;
  });
}
