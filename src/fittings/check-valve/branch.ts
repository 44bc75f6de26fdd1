/** The outlet branch of the check valve. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { minus } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { branchPart, spigotFor } from '../branch.ts';
import { half } from '../limits.ts';
import { layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';

export function branch(sizes: CheckValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const { barrel } = layOutBody(sizes);
  const hole = sizes.crossHole;
  const wall = half(minus(barrel, sizes.chamber.target));
  return branchPart(
    {
      ...{ coupling: sizes.coupling, end: sizes.end, outlet: sizes.outlet, spigot: spigotFor(hole), hole, wall, quantity: 1, material },
      into: { part: 'body', holes: ['outlet'] },
    },
    workshop,
    found,
  );
}
