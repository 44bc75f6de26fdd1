/** A hole that anything near will do for is made with a drill that there is. */
import { add, type Len } from '../base/units.ts';
import { held } from '../handbook/capability.ts';
import type { Limits } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { between, size } from './limits.ts';

/** A pocket that a pipe is soldered into; aimed at the size of a drill whose like has its end ground flat, where the drawer has one that fits. */
export function pipePocket(outside: Len, { tools }: Workshop): Limits {
  const least = add(outside, size('pipe.fit'));
  const most = add(least, size('band.drilled'));
  const fits = (d: Len): boolean => d >= least && add(d, held('drill', 'diameter', 'final', d)) <= most && tools.drills.includes(d);
  const flat = (tools.flatDBits ?? []).filter(fits).sort((a, b) => a - b)[0];
  return between(least, most, flat ?? least, 'solder fit');
}

/** The smallest drill of the rack from `wanted` to `over` more, with what a drill cuts over its size; else `wanted` itself. */
export function drilledHole(wanted: Len, workshop: Workshop, over: Len = size('drill.over-wanted')): Limits {
  const most = add(wanted, over);
  const drill = workshop.tools.drills.filter((d) => d >= wanted && d <= most).sort((a, b) => a - b)[0] ?? wanted;
  return between(drill, add(drill, size('band.drilled')), drill, 'drilled');
}
