/** A branch: spigot to be silver-soldered into a barrel, collar, coupling. Finished before it is soldered. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len, len, minus } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor } from './bar.ts';
import { couplingCone, couplingLength, couplingSection } from './coupling.ts';
import { spannerFlats } from './flats.ts';
import { about, between, general, half, MM, size, TENTH, tidy } from './limits.ts';
import { type OutlineAsk, partFrom, type Section, type Side } from './outline.ts';
import { reliefOf, type ThreadPair } from './threads.ts';

export type BranchAsk = {
  /** What the part is called; 'branch' when absent. */
  readonly id?: string;
  readonly coupling: ThreadPair;
  /** Bore of the branch, its spigot, and the cross hole of the barrel that the spigot enters. */
  readonly outlet: Len;
  readonly spigot: Len;
  readonly hole: Len;
  /** From the barrel's outside to the chamber that it opens into. */
  readonly wall: Len;
  readonly quantity: number;
  readonly material: string;
};

export function branchPart(ask: BranchAsk, workshop: Workshop, found: Diagnostic[]): Part {
  // A little proud: the chamber's last cut trims it.
  const spigot = tidy(add(ask.wall, size('solder.proud')), TENTH, 'up');
  const collar = collarOf(ask.coupling);
  const thick = size('branch.collar');
  const length = add(add(spigot, thick), couplingLength(ask.coupling));
  const id = ask.id ?? 'branch';
  return partFrom({
    id,
    kind: id,
    quantity: ask.quantity,
    use: 'fitting',
    stock: barFor({ part: id, material: ask.material, section: 'round', across: collar, turned: true }, workshop, found),
    first: { letter: 'K', role: 'clearance' },
    second: { letter: 'E', role: 'sealing' },
    sections: sectionsOf(ask, spigot, collar),
    holes: [
      {
        name: 'bore',
        role: 'clearance',
        size: between(ask.outlet, add(ask.outlet, size('band.drilled')), ask.outlet, 'drilled'),
        from: len(0),
        to: length,
        opens: ['first', 'second'],
        cone: couplingCone(ask.coupling, 'second'),
      },
    ],
    // A spanner holds the branch while its union is tightened, so that the solder is not twisted.
    sides: [spannerFlats('collar', collar, add(spigot, half(thick)), half(thick))],
    lengths: lengthsOf(ask, spigot, length),
  });
}

export function collarOf(coupling: ThreadPair): Len {
  return tidy(add(coupling.outside.major.hi, size('branch.collar.over')), MM, 'near');
}

/** What the barrel has for one branch: the cross hole and the soldered joint. */
export function branchSides(
  ask: Pick<BranchAsk, 'coupling' | 'hole'>,
  on: string,
  names: { readonly hole: string; readonly branch: string },
  at: Len,
): readonly Side[] {
  return [
    {
      name: names.hole,
      does: 'cross-hole',
      on,
      role: 'register',
      at,
      half: half(ask.hole),
      size: between(ask.hole, add(ask.hole, size('band.bore.seat')), ask.hole, 'solder fit'),
    },
    {
      name: names.branch,
      does: 'branch',
      on,
      role: 'sealing',
      at,
      half: half(collarOf(ask.coupling)),
      joins: { part: 'branch', by: 'silver-solder' },
    },
  ];
}

function sectionsOf(ask: BranchAsk, spigot: Len, collar: Len): readonly Section[] {
  const thick = size('branch.collar');
  return [
    {
      name: 'spigot',
      role: 'register',
      size: between(minus(ask.hole, size('solder.fit.most')), minus(ask.hole, size('solder.fit.least')), ask.spigot, 'solder fit'),
      length: spigot,
      shoulder: { letter: 'C', role: 'register' },
    },
    { name: 'collar', role: 'free', size: general(collar), length: thick, shoulder: { letter: 'D', role: 'free' } },
    couplingSection(ask.coupling, 'second'),
  ];
}

function lengthsOf(ask: BranchAsk, spigot: Len, length: Len): OutlineAsk['lengths'] {
  const thick = size('branch.collar');
  return [
    { from: 'K', to: 'C', limits: about(spigot, size('band.length'), 'proud in the bore') },
    { from: 'C', to: 'D', limits: general(thick) },
    { from: 'C', to: 'E', limits: general(minus(length, spigot)) },
    { from: 'D', to: 'coupling.wall', limits: reliefOf(ask.coupling.outside).width },
  ];
}
