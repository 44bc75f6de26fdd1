/** A branch: spigot to be silver-soldered into a barrel, collar, and the end that meets the pipe. Finished before it is soldered. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len, len, minus } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor } from './bar.ts';
import { drilledHole } from './drawer.ts';
import { type EndForm, type EndOutline, type EndSizes, endOf, flangeSide } from './ends.ts';
import { spannerFlats } from './flats.ts';
import { about, between, general, half, MM, ratio, size, TENTH, tidy, times } from './limits.ts';
import { type OutlineAsk, partFrom, type Section, type Side } from './outline.ts';
import { spigotFit } from './solder.ts';
import type { ThreadPair } from './threads.ts';

export type BranchAsk = {
  /** What the part is called; 'branch' when absent. */
  readonly id?: string;
  readonly coupling: ThreadPair;
  /** How it meets the pipe; a union where nothing is said. What is no union is asked with its pipe. */
  readonly end?: { readonly form: EndForm; readonly pipe: EndSizes['pipe'] };
  /** Bore of the branch, its spigot, and the cross hole of the barrel that the spigot enters. */
  readonly outlet: Len;
  readonly spigot: Len;
  readonly hole: Len;
  /** That barrel and its holes, where it is made here too. */
  readonly into?: { readonly part: string; readonly holes: readonly string[] };
  /** From the barrel's outside to the chamber that it opens into. */
  readonly wall: Len;
  readonly quantity: number;
  readonly material: string;
};

export function branchPart(ask: BranchAsk, workshop: Workshop, found: Diagnostic[]): Part {
  // A little proud: the chamber's last cut trims it.
  const spigot = tidy(add(ask.wall, size('solder.proud')), TENTH, 'up');
  const end = endOf(endSizes(ask), 'D');
  const collar = collarFor(ask, end);
  const thick = collarLength(ask.end?.form ?? 'union', collar);
  const length = add(add(spigot, thick), end.length);
  const id = ask.id ?? 'branch';
  return partFrom({
    id,
    kind: id,
    quantity: ask.quantity,
    use: 'fitting',
    stock: barFor({ part: id, material: ask.material, section: 'round', across: collar, turned: true }, workshop, found),
    first: { letter: 'K', role: 'clearance' },
    second: end.end,
    sections: sectionsOf(ask, { spigot, collar, thick }, end),
    holes: [
      {
        name: 'bore',
        role: 'clearance',
        size: between(ask.outlet, add(ask.outlet, size('band.drilled')), ask.outlet, 'drilled'),
        from: len(0),
        to: minus(length, end.socket ?? len(0)),
        opens: ['first', 'second'],
        ...(end.cone ? { cone: end.cone } : {}),
      },
      ...end.holes(length, workshop),
    ],
    // A spanner holds the branch while its union is tightened, so that the solder is not twisted.
    sides: end.cone ? [spannerFlats('collar', collar, add(spigot, half(thick)), half(thick))] : [],
    lengths: [...lengthsOf(spigot, length, end, thick), ...end.lengths],
  });
}

const UNION_PIPE = { outside: len(0), wall: len(0) };
/** A union's own outline asks for neither pipe nor bore. */
const endSizes = (ask: Pick<BranchAsk, 'coupling' | 'end'> & { readonly outlet?: Len }): EndSizes => ({
  ...{ form: ask.end?.form ?? 'union', pipe: ask.end?.pipe ?? UNION_PIPE, coupling: ask.coupling, bore: ask.outlet ?? len(0) },
});

/** For a spanner behind a union; a plain end is one collar to its end; behind a flange there is room for nuts, and for jaws. */
function collarLength(form: EndForm, collar: Len): Len {
  if (form === 'plain') return len(0);
  if (form === 'union') return size('branch.collar');
  const held = add(times(collar, ratio('grip.heavy.ratio')), size('jaw.clearance'));
  return tidy(len(Math.max(size('flange.neck'), held)), half(MM), 'up');
}

/** The barrel's hole for a spigot round such a bore: with the next drill that there is; the spigot is turned to it, its wall so much thicker. */
export function crossHoleFor(outlet: Len, workshop: Workshop): Len {
  const spigot = tidy(add(outlet, add(size('branch.wall'), size('branch.wall'))), TENTH, 'near');
  return drilledHole(add(spigot, TENTH), workshop, size('cross-hole.over-wanted')).target;
}

export const spigotFor = (hole: Len): Len => minus(hole, TENTH);

/** Least barrel round what a branch opens into: on either side as deep a joint as three walls of its spigot. */
export function barrelFor(opens: Len, { crossHole, outlet }: { readonly crossHole: Len; readonly outlet: Len }): Len {
  const overlap = times(half(minus(spigotFor(crossHole), outlet)), ratio('solder.overlap.thin'));
  return tidy(add(opens, add(overlap, overlap)), MM, 'up');
}

/** What lies against the barrel: over the spigot by a shoulder, whatever the end needs. */
const collarFor = (ask: Pick<BranchAsk, 'spigot'>, end: EndOutline): Len =>
  len(Math.max(end.collar, tidy(add(ask.spigot, size('end.shoulder')), TENTH, 'up')));

/** What the barrel has for one branch: the cross hole and the soldered joint, and its flange where it has one: '<branch>-flange'. */
export function branchSides(
  ask: Pick<BranchAsk, 'id' | 'coupling' | 'hole' | 'end' | 'wall'> & { readonly outlet?: Len },
  on: string,
  names: { readonly hole: string; readonly branch: string; readonly opposite?: string },
  at: Len,
): readonly Side[] {
  const facing = names.opposite === undefined ? {} : { facing: { other: names.opposite, degrees: ratio('turn.half') } };
  const collar = collarFor({ spigot: minus(ask.hole, TENTH) }, endOf(endSizes(ask), 'D'));
  return [
    {
      name: names.hole,
      does: 'cross-hole',
      on,
      role: 'register',
      at,
      half: half(ask.hole),
      size: between(ask.hole, add(ask.hole, size('band.drilled')), ask.hole, 'drilled'),
      ...facing,
    },
    {
      name: names.branch,
      does: 'branch',
      on,
      role: 'sealing',
      at,
      half: half(collar),
      joins: { part: ask.id ?? 'branch', by: 'silver-solder', fit: spigotFit(), overlap: ask.wall },
      ...facing,
    },
    ...(ask.end?.form === 'flanged' ? [flangeSide(`${names.branch}-flange`, on, at, collar)] : []),
  ];
}

const holesOf = ({ part, holes }: NonNullable<BranchAsk['into']>) => ({ part, holes: holes.map((hole) => `${part}/${hole}`) });

type Stretch = { readonly spigot: Len; readonly collar: Len; readonly thick: Len };

/** With a plain end, the collar runs on to the end of the pipe's socket. */
function sectionsOf(ask: BranchAsk, { spigot, collar, thick }: Stretch, end: EndOutline): readonly Section[] {
  const clear = spigotFit();
  const limits = between(minus(ask.hole, clear.hi), minus(add(ask.hole, size('band.drilled')), clear.lo), ask.spigot, 'solder fit');
  const madeTo = { clear, ...(ask.into ? { by: holesOf(ask.into) } : {}) };
  const whole = end.sections.length === 0 ? add(thick, end.length) : thick;
  return [
    { name: 'spigot', role: 'register', size: limits, length: spigot, madeTo, shoulder: { letter: 'C', role: 'register' } },
    {
      ...{ name: 'collar', role: 'free', size: general(collar), length: whole },
      ...(end.sections.length === 0 ? {} : { shoulder: { letter: 'D', role: 'free' as const } }),
    },
    ...end.sections,
  ];
}

function lengthsOf(spigot: Len, length: Len, end: EndOutline, thick: Len): OutlineAsk['lengths'] {
  return [
    { from: 'K', to: 'C', limits: about(spigot, size('band.length'), 'proud in the bore') },
    ...(end.sections.length === 0 ? [] : [{ from: 'C', to: 'D', limits: general(thick) }]),
    { from: 'C', to: 'E', limits: general(minus(length, spigot)) },
  ];
}
