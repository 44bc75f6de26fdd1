/**
 * In a vee-block under the drill press, by a plain stretch of its own outside: round work whose side is drilled. Where it lies it is finished
 * and long enough not to rock; the clamp goes on it there, so that no finished thread, seat or sealing face lies under it.
 */
import { type Len, len, minus } from '../../base/units.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { type Context, diameterOf, length, type Outside, scaled, stretchesOf } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { sorted } from './stretch.ts';

export const inVee: GripRule = {
  id: 'in-vee',
  source: CUSTOM,
  offer: (work) => sorted(work.operations.some((o) => o.lies) ? [steadiest(work)] : []),
};

type Lying = { readonly on: Outside; readonly from: Len; readonly to: Len; readonly spare: number };

/** Of all stretches the one with most to spare; refused with its figures where that is too short. */
function steadiest(work: Work): Grip | Refusal {
  const { c } = work;
  const what = `${c.part.id}/vee`;
  const [best] = lying(c).sort((a, b) => b.spare - a.spare);
  if (!best) return { what, because: { rule: 'vee-short', grounds: {} }, wants: length('vee.least') };
  const grip = gripOn(work, best);
  const has = minus(best.to, best.from);
  return best.spare < 0
    ? { what: grip.id, because: { rule: 'vee-short', grounds: {} }, has, wants: leastIn(diameterOf(c, best.on)), would: { grip } }
    : grip;
}

/** Plain, and nothing kept. */
function lying(c: Context): Lying[] {
  const plain = c.outsides.filter((o) => !KEPT.includes(o.role) && !c.threads.some((t) => t.on === o.cylinder));
  return plain.flatMap((on) =>
    stretchesOf(c.cylinder(on.cylinder)).map(({ from, to }) => ({ on, from, to, spare: to - from - leastIn(diameterOf(c, on)) })),
  );
}
const KEPT: readonly string[] = ['seat', 'sealing'];

const leastIn = (diameter: Len): Len => len(Math.max(scaled(diameter, 'vee.ratio'), length('vee.least')));

function gripOn(work: Work, { on, from, to }: Lying): Grip {
  return {
    id: `${on.id}.vee`,
    kind: 'vee-block',
    out: 'first',
    on: [on.cylinder],
    from,
    to,
    diameter: diameterOf(work.c, on),
    ready: work.operations.filter((k) => k.feature === on.id).map((k) => k.id),
    gone: [],
    hides: work.operations.filter((k) => !k.lies).map((k) => k.id),
    lightOnly: false,
    runout: length('runout.vee'),
    because: [{ rule: 'vee-block', grounds: {} }],
  };
}
