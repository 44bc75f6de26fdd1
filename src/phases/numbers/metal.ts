/** How the metal wants its tool: no rake in copper alloys that draw an edge in, no dwelling in what hardens. */
import { drawsEdgeIn, hardensUnderTool } from '../../handbook/machining.ts';
import { findMaterial } from '../../handbook/materials.ts';
import type { Say } from '../../model/part.ts';
import type { Figures, Verb } from '../../model/plan.ts';
import type { Asked } from './asked.ts';

const EDGED: readonly Verb[] = ['turn', 'bore', 'face', 'face-down'];

/** The same figures, with what the metal asks for said first. */
export function withMetal({ material, removal }: Asked, figures: Partial<Figures>): Partial<Figures> {
  const group = findMaterial(material)?.cutting;
  if (group === undefined) return figures;
  const { verb } = removal.operation;
  const says: readonly Say[] = [
    ...(drawsEdgeIn(group) && verb === 'drill' ? [{ id: 'say.lips', grounds: {} }] : []),
    ...(drawsEdgeIn(group) && EDGED.includes(verb) ? [{ id: 'say.rake', grounds: {} }] : []),
    ...(hardensUnderTool(group) && (EDGED.includes(verb) || verb === 'drill') ? [{ id: 'say.hardens', grounds: {} }] : []),
  ];
  return says.length > 0 ? { ...figures, says: [...says, ...(figures.says ?? [])] } : figures;
}
