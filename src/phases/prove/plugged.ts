/** A thin wall under a hold: whether it gives, and whether what fills it does so where it has to. */
import { add, type Len, len, minus, mm } from '../../base/units.ts';
import { throughs } from '../../geometry/section/ask.ts';
import { at, TOUCH } from '../../geometry/section/lines.ts';
import type { Section } from '../../geometry/section.ts';
import { practice } from '../../handbook/practice.ts';
import type { Grip, GripKind } from '../../model/plan.ts';

/** Held by three or four jaws, or all round: under this part of the diameter the wall gives. */
const WALLS: Readonly<Partial<Record<GripKind, string>>> = {
  ...{ jaws: 'grip.wall.ratio', sleeve: 'grip.wall.ratio', 'four-jaw': 'grip.wall.ratio', hexagon: 'grip.wall.ratio' },
  ...{ collet: 'grip.wall.round', 'bored-jaws': 'grip.wall.round', 'threaded-sleeve': 'grip.wall.round' },
};

/**
 * 'thin': a wall under the hold gives, and nothing fills it; 'plug': what is to fill it is not there along it, or not of its size. `slack`: by
 * which what is held may differ in diameter from what the hold was set for.
 */
export function giving(section: Section, grip: Grip, slack: Len): 'thin' | 'plug' | '' {
  const thin = thinUnder(section, grip, slack);
  if (thin.length === 0) return '';
  if (!grip.plug) return 'thin';
  const { from, to, tooling } = grip.plug;
  const recess = mm(practice.value('plug.recess')) + TOUCH;
  const bare = Math.max(...thin.map((one) => Math.max(from - one.from, one.to - to)));
  if (bare > recess || to <= from || tooling.kind !== 'tube-plug') return 'plug';
  const plug = minus(tooling.bore.hi, mm(practice.value('plug.loose')));
  const most = add(len(plug), mm(practice.value('plug.loose.most')));
  return thin.every((one) => one.inner >= tooling.bore.lo - TOUCH && one.inner <= most) ? '' : 'plug';
}

/** What the hold does not touch, a groove or the step behind a shoulder, is not pressed. */
type Thin = { readonly from: number; readonly to: number; readonly inner: number };

function thinUnder(section: Section, grip: Grip, slack: Len): readonly Thin[] {
  const wall = WALLS[grip.kind];
  if (wall === undefined) return [];
  return throughs(section).flatMap(({ slab, inner, outer }): readonly Thin[] => {
    const [from, to] = [Math.max(slab.from, grip.from), Math.min(slab.to, grip.to)];
    if (!inner || to <= from) return [];
    const [in_, out] = [at(inner.line, (from + to) / 2), at(outer.line, (from + to) / 2)];
    if (Math.abs(out - grip.diameter) > slack) return [];
    return out - in_ < 2 * practice.value(wall) * out - TOUCH ? [{ from, to, inner: in_ }] : [];
  });
}
