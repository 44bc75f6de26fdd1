/** How far the work stands out of its hold when it comes into it, and how far it may. */
import { throughs } from '../../geometry/section/ask.ts';
import { at } from '../../geometry/section/lines.ts';
import type { Section } from '../../geometry/section.ts';
import { practice } from '../../handbook/practice.ts';
import type { Grip } from '../../model/plan.ts';
import type { Case } from './claims.ts';

/**
 * In whole units: from the hold to the end that the drawing gives the work, and so many diameters of the widest of it, with a centre in that end
 * or without. Between centres nothing stands out, and under a drill nothing is pushed aside.
 */
export function standsOut(asked: Case, section: Section, grip: Grip): { readonly has: number; readonly most: number } {
  const first = grip.out === 'first';
  const front = frontOf(asked, grip);
  const beyond = throughs(section).filter(({ slab }) => (first ? slab.from < front : slab.to > front));
  const ratio = practice.value(grip.centre === undefined ? 'grip.stick-out.most' : 'centre.ratio');
  if (grip.kind === 'between-centres' || grip.kind === 'vee-block' || beyond.length === 0) return { has: 0, most: grip.diameter * ratio };
  const end = first ? Math.max(0, Math.min(...beyond.map(({ slab }) => slab.from))) : lastOf(asked, beyond);
  const widest = Math.max(grip.diameter, ...beyond.flatMap(({ slab, outer }) => [at(outer.line, slab.from), at(outer.line, slab.to)]));
  const most = grip.seated ? grip.diameter * practice.value('grip.seated.out') : widest * ratio;
  return { has: Math.abs(front - end), most };
}

type Throughs = ReturnType<typeof throughs>;
const lastOf = ({ part }: Case, beyond: Throughs): number => Math.min(part.length, Math.max(...beyond.map(({ slab }) => slab.to)));

/** Work on a mandrel stands against its shoulder. */
function frontOf({ part }: Case, grip: Grip): number {
  const onTooling = grip.kind === 'threaded-mandrel' || grip.kind === 'stub-mandrel';
  const datum = part.surfaces.find((one) => one.id === grip.datum);
  if (onTooling && datum?.shape === 'face') return datum.z;
  return grip.out === 'first' ? grip.from : grip.to;
}
