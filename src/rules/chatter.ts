/** Wide edges set to the work all at once: how near to its hold the work wants to be for them. */
import { type Len, len, mm } from '../base/units.ts';
import { radii, radiusFigure } from '../handbook/radii.ts';
import type { Beam } from './give.ts';
import type { Removal } from './removal.ts';

/** How far out the cut stands, and how far it should at most; nothing where the edge is narrow, the work stout, or a centre holds it. */
export function farForEdge({ operation, beam }: Removal): { readonly out: Len; readonly most: Len } | undefined {
  const edge = operation.tool.size;
  if (!beam || edge === undefined || edge <= radiusFigure('form.width.narrow')) return undefined;
  if (beam.centre !== undefined || beam.between !== undefined) return undefined;
  const thin = thinnest(beam);
  const [out, most] = [mm(beam.at), mm(thin * radii.value('form.stick-out.most'))];
  return out > most ? { out, most: len(most) } : undefined;
}

/** Between the hold and the cut. */
function thinnest({ lengths, at }: Beam): number {
  let from = 0;
  return Math.min(
    ...lengths.map(({ long, outside }) => {
      const before = from;
      from += long;
      return before < at ? outside : Number.POSITIVE_INFINITY;
    }),
  );
}
