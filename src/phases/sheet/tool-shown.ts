/** Which tool a picture shows, and in what form; of work at the bench, files and saws. What no edge of the half-section tells is told by its feature. */
import { add, len, minus } from '../../base/units.ts';
import { pointedAt } from '../../drawing/sides.ts';
import type { StageView, ToolShown } from '../../drawing/stage.ts';
import { centreDrills } from '../../handbook/centre-drills.ts';
import type { Operation, SetUp, Way } from '../../model/plan.ts';
import type { GripPage } from '../../model/sheet.ts';
import { type Desk, wayOf } from './lookup.ts';
import { sideOf } from './sides-shown.ts';

/**
 * Of all that a grip does, the tool of what its panel is about. What the tailstock holds is always shown; other tools where a place is left, for
 * many numbers and letters want to stand round the work.
 */
export function weightiestTool(desk: Desk, setUp: SetUp, page: GripPage): Pick<StageView, 'tool' | 'toolIfFree'> {
  const row = page.blocks.flatMap((block) => block.rows).find(({ panel }) => panel);
  const tool = row && setUp.operations.includes(row.op) ? toolOf(desk, setUp, row.op) : undefined;
  if (!row || !tool) return {};
  const on = wayOf(desk.operation(row.op), setUp)?.cuts.map((cut) => cut.makes) ?? [];
  const shown = { ...tool, on, number: desk.number(row.op) };
  return ALWAYS.includes(shown.form) ? { tool: shown } : { toolIfFree: shown };
}

const ALWAYS: readonly ToolShown['form'][] = ['drill', 'centre', 'tap', 'die'];

/** Of one operation. */
export function toolOf(desk: Desk, setUp: SetUp, op: string): ToolShown | undefined {
  const operation = desk.operation(op);
  const way = wayOf(operation, setUp);
  const shown = way && toolShown(operation, way);
  if (shown?.form === 'wheel') return { ...shown, ...rolledBy(desk, operation.feature) };
  // what a file takes off an edge is not shown
  return shown && (shown.form === 'file' || way?.sweeps[0]?.take === 'side') ? onSide(desk, operation, way, shown) : shown;
}

const BY_KIND: Readonly<Record<string, ToolShown>> = {
  turning: { form: 'knife', side: 'outside' },
  boring: { form: 'knife', side: 'inside' },
  'boring-nosed': { form: 'knife', side: 'inside' },
  grooving: { form: 'blade', side: 'outside' },
  parting: { form: 'blade', side: 'outside' },
  chamfer: { form: 'bevel', side: 'outside' },
  'chamfer-inside': { form: 'bevel', side: 'inside' },
  'threading-outside': { form: 'vee', side: 'outside' },
  'threading-inside': { form: 'vee', side: 'inside' },
  drill: { form: 'drill', side: 'inside' },
  'd-bit': { form: 'drill', side: 'inside' },
  'flat-d-bit': { form: 'drill', side: 'inside' },
  reamer: { form: 'drill', side: 'inside' },
  counterbore: { form: 'drill', side: 'inside' },
  'centre-drill': { form: 'centre', side: 'inside' },
  tap: { form: 'tap', side: 'inside' },
  die: { form: 'die', side: 'outside' },
  knurling: { form: 'wheel', side: 'outside' },
  file: { form: 'file', side: 'outside' },
  saw: { form: 'saw', side: 'outside' },
};

/** Where a knurl stands, and on what. */
function rolledBy(desk: Desk, id: string): Pick<ToolShown, 'rolls'> {
  const knurl = desk.feature(id);
  const on = knurl?.kind === 'side' ? desk.part.surfaces.find((one) => one.id === knurl.on) : undefined;
  if (knurl?.kind !== 'side' || on?.shape !== 'cylinder') return {};
  return { rolls: { from: minus(knurl.at, knurl.half), to: add(knurl.at, knurl.half), diameter: on.size.target } };
}

const ON_SIDE: readonly ToolShown['form'][] = ['file', 'saw'];

/** A file on its flat, a saw in its slit: where these face the eye. */
function onSide(desk: Desk, { feature }: Operation, way: Way | undefined, shown: ToolShown): ToolShown | undefined {
  const side = way?.sweeps[0]?.take === 'side' && ON_SIDE.includes(shown.form) ? sideOf(desk, feature, 'here') : undefined;
  if (!side) return undefined;
  const [from, to] = [len(side.z - side.half), len(side.z + side.half)];
  const wide = side.does === 'slot' && side.size !== undefined ? { wide: len(side.size) } : {};
  return { ...shown, ...wide, rolls: { from, to, diameter: len(pointedAt(side).at.d) } };
}

function toolShown({ verb, tool }: Operation, way: Way): ToolShown | undefined {
  const shown = BY_KIND[tool.kind];
  if (!shown) return undefined;
  const sweep = way.sweeps[0];
  if (sweep?.take === 'face') return { ...shown, form: 'facing' };
  if (sweep?.take === 'part') return { ...shown, wide: sweep.kerf };
  if (shown.form === 'centre') {
    const known = centreDrills.find(({ pilot }) => pilot === tool.size);
    return { ...shown, ...(known ? { diameter: known.shank } : {}) };
  }
  if (shown.form === 'tap' || shown.form === 'die' || sweep?.take !== 'bore' || verb === 'bore') return shown;
  return { ...shown, diameter: sweep.diameter, ...(sweep.point === undefined ? {} : { point: sweep.point }) };
}
