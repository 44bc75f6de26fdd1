/** What cannot work, found by recomputing it from the sizes alone. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { len, minus } from '../../base/units.ts';
import { spigotFor } from '../branch.ts';
import { endWalls, flangeSpigot } from '../ends.ts';
import { half, size } from '../limits.ts';
import { thinWall, type Wall } from '../strength.ts';
import { isClearOf, reliefOf } from '../threads.ts';
import { layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';
import { leastAcross } from './straight-cap.ts';

export function checkWalls(sizes: CheckValveSizes): readonly Diagnostic[] {
  const found: Diagnostic[] = wallsOf(sizes)
    .map(({ where, inside, outside }) => ({ where, has: half(minus(outside, inside)) }))
    .filter(({ has }) => has < size('wall.least'))
    .map(({ where, has }) => ({ code: 'design.wall-thin', severity: 'error', grounds: thinWall(where, has, size('wall.least')) }));
  if (!isClearOf(sizes.seat, sizes.chamber.hi)) {
    found.push({
      code: 'design.thread-under-chamber',
      severity: 'error',
      grounds: { which: 'seat', thread: sizes.seat.name, chamber: sizes.chamber.target, minor: sizes.seat.inside.minor.lo },
    });
  }
  return found;
}

/** The thinnest places. */
export function wallsOf(sizes: CheckValveSizes): readonly Wall[] {
  const { barrel } = layOutBody(sizes);
  const { stop, end, outlet } = sizes;
  const inlet = sizes.land?.inlet ?? sizes.bore;
  const coupled = len(stop && end.form === 'union' ? Math.max(inlet, outlet) : inlet);
  return [
    { where: 'coupling-relief', inside: coupled, outside: reliefOf(sizes.coupling.outside).floor.lo },
    { where: 'seat-relief', inside: inlet, outside: reliefOf(sizes.seat.outside).floor.lo },
    { where: 'body-flats', inside: sizes.seat.inside.major.lo, outside: minus(barrel, size('flats.under-rim')) },
    ...(stop
      ? capWalls(sizes)
      : [{ where: 'spigot', inside: outlet, outside: spigotFor(sizes.crossHole) }, ...endWalls(end.form, end.pipe)]),
  ];
}

/** Of a cap that the water goes through. */
function capWalls(sizes: CheckValveSizes): readonly Wall[] {
  const { cap, end, outlet } = sizes;
  const flanged = { where: 'flange-spigot', inside: outlet, outside: flangeSpigot(outlet).spigot };
  const plain = endWalls(end.form, end.pipe).map((wall) => ({ ...wall, outside: leastAcross(sizes) }));
  const thread = { where: 'cap-relief', inside: outlet, outside: reliefOf(cap.outside).floor.lo };
  return [thread, ...(end.form === 'flanged' ? [flanged] : []), ...plain];
}
