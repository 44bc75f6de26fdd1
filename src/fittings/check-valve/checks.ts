/** What cannot work, found by recomputing it from the sizes alone. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, minus } from '../../base/units.ts';
import { endWalls } from '../ends.ts';
import { half, size } from '../limits.ts';
import type { Wall } from '../strength.ts';
import { reliefOf } from '../threads.ts';
import { layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';

export function checkWalls(sizes: CheckValveSizes): readonly Diagnostic[] {
  const found: Diagnostic[] = wallsOf(sizes)
    .map(({ where, inside, outside }) => ({ where, has: half(minus(outside, inside)) }))
    .filter(({ has }) => has < size('wall.least'))
    .map(({ where, has }) => ({ code: 'design.wall-thin', severity: 'error', grounds: { where, has, wants: size('wall.least') } }));
  if (sizes.seat.inside.minor.lo <= add(sizes.chamber.hi, size('wall.least'))) {
    found.push({
      code: 'design.thread-under-chamber',
      severity: 'error',
      grounds: { thread: sizes.seat.name, chamber: sizes.chamber.target, minor: sizes.seat.inside.minor.lo },
    });
  }
  return found;
}

/** The thinnest places. */
export function wallsOf(sizes: CheckValveSizes): readonly Wall[] {
  const at = layOutBody(sizes);
  return [
    { where: 'coupling-relief', inside: sizes.land?.inlet ?? sizes.bore, outside: reliefOf(sizes.coupling.outside).floor.lo },
    { where: 'seat-relief', inside: sizes.land?.inlet ?? sizes.bore, outside: reliefOf(sizes.seat.outside).floor.lo },
    { where: 'body-flats', inside: sizes.seat.inside.major.lo, outside: minus(at.barrel, size('flats.under-rim')) },
    { where: 'spigot', inside: sizes.outlet, outside: at.spigot },
    ...endWalls(sizes.end.form, sizes.end.pipe),
  ];
}
