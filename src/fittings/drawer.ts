/** A hole that anything near will do for is made with a drill that there is. */
import { add, type Len } from '../base/units.ts';
import type { Limits } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { between, size } from './limits.ts';

/** The smallest drill of the rack from `wanted` to `over` more, with what a drill cuts over its size; else `wanted` itself. */
export function drilledHole(wanted: Len, workshop: Workshop, over: Len = size('drill.over-wanted')): Limits {
  const most = add(wanted, over);
  const drill = workshop.tools.drills.filter((d) => d >= wanted && d <= most).sort((a, b) => a - b)[0] ?? wanted;
  return between(drill, add(drill, size('band.drilled')), drill, 'drilled');
}
