/**
 * A groove between hold and free end leaves a neck, and what stands beyond it hangs on that: it may stand out no further than a bar of the neck's
 * diameter might. A thread's relief is none: what is beyond it is little wider. Before the neck is cut the hold serves as any other.
 */
import type { Len } from '../../base/units.ts';
import type { Feature } from '../../model/part.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { depthFrom, scaled } from '../context.ts';
import type { Work } from '../rule.ts';

/** With a centre in its free end the work does not hang on its neck. */
export function pastNecks(work: Work, grip: Grip): readonly (Grip | Refusal)[] {
  const slender = grip.centre === undefined ? work.c.part.features.flatMap((f) => slenderAt(work, grip, f) ?? []) : [];
  const worst = [...slender].sort((a, b) => a.most - b.most)[0];
  if (!worst) return [grip];
  const cut = work.operations.filter((k) => slender.some(({ feature }) => feature === k.feature)).map((k) => k.id);
  const figures = { has: worst.has, most: worst.most };
  return [
    { what: grip.id, because: { rule: 'neck-slender', grounds: {} }, ...figures, would: { grip } },
    {
      ...{ ...grip, id: `${grip.id}.before-neck`, gone: [...grip.gone, ...cut] },
      because: [...grip.because, { rule: 'held-before-neck', grounds: {} }],
    },
  ];
}

type Slender = { readonly feature: Feature['id']; readonly has: Len; readonly most: Len };
function slenderAt({ c }: Work, { out, from, to }: Grip, f: Feature): Slender | undefined {
  if (f.kind !== 'groove' || f.side !== 'outside' || f.serves) return undefined;
  const floor = c.cylinder(f.floor);
  if (out === 'first' ? floor.from >= from : floor.to <= to) return undefined;
  const has = depthFrom(out, out === 'first' ? floor.to : floor.from, c.part);
  const most = scaled(floor.size.target, 'grip.stick-out.most');
  return has > most ? { feature: f.id, has, most } : undefined;
}
