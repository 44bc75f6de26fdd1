/** What the rows say of fillets and of radii that are turned in steps. */
import { len } from '../../base/units.ts';
import type { Operation, SetUp } from '../../model/plan.ts';
import { stairsOf } from '../../rules/methods/radii.ts';
import { type Desk, wayOf } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** Side of the square that the turning tool leaves in a corner. */
export function squareOf(desk: Desk, setUp: SetUp, operation: Operation, words: SheetWords): string {
  const sweep = wayOf(operation, setUp)?.sweeps.find((one) => (one.take === 'turn' || one.take === 'bore') && one.spares !== undefined);
  const arc = (sweep?.take === 'turn' || sweep?.take === 'bore') && sweep.spares !== undefined ? desk.surface(sweep.spares) : undefined;
  return arc?.shape === 'arc' ? words.short(len(arc.across.hi / 2)) : '';
}

/** How far and how deep each step of a radius is turned. */
export function stairsSaid(desk: Desk, operation: Operation, words: SheetWords): readonly string[] {
  const feature = desk.feature(operation.feature);
  const arc = operation.verb === 'steps' && feature?.kind === 'arc' ? desk.surface(feature.arc) : undefined;
  if (arc?.shape !== 'arc') return [];
  const stairs = stairsOf(desk.part, arc).map(({ far, diameter }) =>
    words.say('cuts.stair', { far: words.short(far), diameter: words.size(diameter) }),
  );
  return [words.say('cuts.steps', { does: arc.bends, stairs: stairs.join(', ') })];
}
