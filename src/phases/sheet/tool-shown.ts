/** Which form of tool an operation's picture shows; none for work at the bench and for what no edge of the half-section tells. */
import type { ToolShown } from '../../drawing/stage.ts';
import type { Operation, Way } from '../../model/plan.ts';

/** By the tool's kind. */
const POSTED: Readonly<Record<string, ToolShown>> = {
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
};

const TAILSTOCK: readonly ToolShown['form'][] = ['drill', 'centre', 'tap', 'die'];
export const isInTailstock = ({ form }: ToolShown): boolean => TAILSTOCK.includes(form);

export function toolShown({ verb, tool }: Operation, way: Way): ToolShown | undefined {
  const shown = POSTED[tool.kind];
  if (!shown) return undefined;
  const sweep = way.sweeps[0];
  if (sweep?.take === 'face') return { ...shown, form: 'facing' };
  if (sweep?.take === 'part') return { ...shown, wide: sweep.kerf };
  if (shown.form === 'centre') return { ...shown, ...(tool.size === undefined ? {} : { diameter: tool.size }) };
  if (shown.form === 'tap' || shown.form === 'die' || sweep?.take !== 'bore' || verb === 'bore') return shown;
  return { ...shown, diameter: sweep.diameter, ...(sweep.point === undefined ? {} : { point: sweep.point }) };
}
