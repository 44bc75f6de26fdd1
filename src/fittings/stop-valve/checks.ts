/** What cannot work in a stop valve, found by recomputing it from the sizes alone. */
import { add, type Len, minus } from '../../base/units.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { type Book, refuse, warn } from '../book.ts';
import { half, size } from '../limits.ts';
import { reliefOf } from '../threads.ts';
import type { StopValveAsked } from './asked.ts';
import { layOutBody, layOutSpindle, roomAboveSeat } from './layout.ts';
import type { StopValveSizes } from './sizes.ts';

export function checkStopValve(sizes: StopValveSizes, asked: StopValveAsked, book: Book): void {
  checkWalls(sizes, asked, book);
  const land = minus(minus(roomAboveSeat(sizes), sizes.travel), sizes.coneAbove);
  if (land < size('stop.land.least'))
    refuse(book, 'design.plug-has-no-land', {
      takes: add(add(sizes.travel, sizes.coneAbove), size('stop.land.least')),
      travel: sizes.travel,
      room: roomAboveSeat(sizes),
    });
  if (layOutSpindle(sizes).stem <= 0)
    refuse(book, 'design.stem-lost', { stem: layOutSpindle(sizes).stem, threaded: layOutSpindle(sizes).thread });
  if (findMaterial(asked.material) === findMaterial(asked.spindleMaterial)) warn(book, 'design.same-metal', { material: asked.material });
}

function checkWalls(sizes: StopValveSizes, asked: StopValveAsked, book: Book): void {
  const at = layOutBody(sizes);
  const flats = minus(at.barrel, size('flats.under-rim'));
  const bored = asked.pattern === 'angle' ? sizes.bore : sizes.outlet;
  const walls: readonly (readonly [string, Len])[] = [
    ['coupling-relief', wall(reliefOf(sizes.coupling.outside).floor.lo, bored)],
    ['body-flats', wall(flats, sizes.bonnet.inside.major.lo)],
    ['spigot', wall(at.spigot, sizes.outlet)],
    ['bonnet-relief', wall(reliefOf(sizes.bonnet.outside).floor.lo, sizes.spindle.inside.major.hi)],
  ];
  for (const [where, has] of walls)
    if (has < size('wall.least')) refuse(book, 'design.wall-thin', { where, has, wants: size('wall.least') });
}

const wall = (outside: Len, inside: Len): Len => half(minus(outside, inside));
