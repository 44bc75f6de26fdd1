/** Every method rule, in the order in which they are asked. */
import type { Feature } from '../../model/part.ts';
import type { Method, Refusal } from '../../model/plan.ts';
import type { Context } from '../context.ts';
import type { MethodRule } from '../rule.ts';
import { faceOnce, faceTwice, leavingBar } from './ends.ts';
import { faceDown } from './face-down.ts';
import { counterbored, flatDBit, flatDBitWanted } from './flat-floors.ts';
import { bored, centreHole, drilled, reamed, reamerRefused, seatBored, seatByDBit } from './holes.ts';
import { cones, groove, leftAsBar, turnSection } from './outside.ts';
import { pointedRefused } from './point-holes.ts';
import { formed, formedInside, stepped } from './radii.ts';
import { recess } from './recess.ts';
import { atTheBench, knurl } from './side.ts';
import { dieOutside, screwCutInside, screwCutOutside, tapInside } from './threads.ts';

export const METHOD_RULES: readonly MethodRule[] = [
  faceOnce,
  faceTwice,
  turnSection,
  faceDown,
  leftAsBar,
  groove,
  recess,
  cones,
  formed,
  stepped,
  formedInside,
  screwCutOutside,
  dieOutside,
  tapInside,
  screwCutInside,
  drilled,
  pointedRefused,
  bored,
  counterbored,
  flatDBit,
  flatDBitWanted,
  seatBored,
  seatByDBit,
  reamerRefused,
  atTheBench,
  knurl,
  reamed,
  centreHole,
];

export type Offered = { readonly feature: string; readonly any: readonly Method[]; readonly refused: readonly Refusal[] };

export function methodsFor(c: Context, feature: Feature, rules: readonly MethodRule[] = METHOD_RULES): Offered {
  const offers = rules.map((rule) => rule.offer(c, feature));
  return { feature: feature.id, any: offers.flatMap((o) => o.methods ?? []), refused: offers.flatMap((o) => o.refused ?? []) };
}
export { leavingBar };
