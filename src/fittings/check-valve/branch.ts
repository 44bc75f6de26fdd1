/** The branch: spigot to be soldered into the body, collar, coupling. Finished before it is soldered. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { couplingCone, couplingLength, couplingSection } from '../coupling.ts';
import { spannerFlats } from '../flats.ts';
import { about, between, general, half, size, TENTH, tidy } from '../limits.ts';
import { type OutlineAsk, partFrom, type Section } from '../outline.ts';
import { reliefOf } from '../threads.ts';
import { branchCollar, layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';

export function branch(sizes: CheckValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutBody(sizes);
  // From the barrel's outside to the finished chamber, and a little proud: the chamber's last cut trims it.
  const spigot = tidy(add(half(minus(at.barrel, sizes.chamber.target)), size('solder.proud')), TENTH, 'up');
  const collar = branchCollar(sizes);
  const thick = size('branch.collar');
  const length = add(add(spigot, thick), couplingLength(sizes.coupling));
  return partFrom({
    id: 'branch',
    kind: 'branch',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'branch', material, section: 'round', across: collar, turned: true }, workshop, found),
    first: { letter: 'K', role: 'clearance' },
    second: { letter: 'E', role: 'sealing' },
    sections: sectionsOf(sizes, spigot, collar),
    holes: [
      {
        name: 'bore',
        role: 'clearance',
        size: between(sizes.outlet, add(sizes.outlet, size('band.drilled')), sizes.outlet, 'drilled'),
        from: len(0),
        to: length,
        opens: ['first', 'second'],
        cone: couplingCone(sizes.coupling, 'second'),
      },
    ],
    // A spanner holds the branch while its union is tightened, so that the solder is not twisted.
    sides: [spannerFlats('collar', collar, add(spigot, half(thick)), half(thick))],
    lengths: lengthsOf(sizes, spigot, length),
  });
}

function sectionsOf(sizes: CheckValveSizes, spigot: Len, collar: Len): readonly Section[] {
  const at = layOutBody(sizes);
  const thick = size('branch.collar');
  return [
    {
      name: 'spigot',
      role: 'register',
      size: between(minus(at.hole, size('solder.fit.most')), minus(at.hole, size('solder.fit.least')), at.spigot, 'solder fit'),
      length: spigot,
      shoulder: { letter: 'C', role: 'register' },
    },
    { name: 'collar', role: 'free', size: general(collar), length: thick, shoulder: { letter: 'D', role: 'free' } },
    couplingSection(sizes.coupling, 'second'),
  ];
}

function lengthsOf(sizes: CheckValveSizes, spigot: Len, length: Len): OutlineAsk['lengths'] {
  const band = size('band.length');
  const thick = size('branch.collar');
  return [
    { from: 'K', to: 'C', limits: about(spigot, band, 'proud in the bore') },
    { from: 'C', to: 'D', limits: general(thick) },
    { from: 'C', to: 'E', limits: general(minus(length, spigot)) },
    { from: 'D', to: 'coupling.wall', limits: reliefOf(sizes.coupling.outside).width },
  ];
}
