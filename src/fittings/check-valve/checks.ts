/** What cannot work, found by recomputing it from the sizes alone. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, minus } from '../../base/units.ts';
import { half, size } from '../limits.ts';
import { reliefOf } from '../threads.ts';
import type { CheckValveAsked } from './asked.ts';
import { layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';

export function checkWalls(sizes: CheckValveSizes, asked: CheckValveAsked): readonly Diagnostic[] {
  const at = layOutBody(sizes);
  const flats = minus(at.barrel, size('flats.under-rim'));
  const walls: readonly (readonly [string, Len])[] = [
    ['coupling-relief', wall(reliefOf(sizes.coupling.outside).floor.lo, sizes.bore)],
    ['seat-relief', wall(reliefOf(sizes.seat.outside).floor.lo, sizes.bore)],
    ['body-flats', wall(flats, sizes.seat.inside.major.lo)],
    ['spigot', wall(at.spigot, sizes.outlet)],
  ];
  const found: Diagnostic[] = walls
    .filter(([, has]) => has < size('wall.least'))
    .map(([where, has]) => ({ code: 'design.wall-thin', severity: 'error', grounds: { where, has, wants: size('wall.least') } }));
  if (sizes.seat.inside.minor.lo <= add(sizes.chamber.hi, size('wall.least'))) {
    found.push({
      code: 'design.thread-under-chamber',
      severity: 'error',
      grounds: { thread: sizes.seat.name, chamber: sizes.chamber.target, minor: sizes.seat.inside.minor.lo },
    });
  }
  if (asked.duty.pressure <= 0) found.push({ code: 'design.pressure', severity: 'error', grounds: { pressure: asked.duty.pressure } });
  return found;
}

const wall = (outside: Len, inside: Len): Len => half(minus(outside, inside));
