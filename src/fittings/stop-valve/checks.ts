/** What cannot work in a stop valve, found by recomputing it from the sizes alone. */
import { add, minus } from '../../base/units.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { type Book, refuse, warn } from '../book.ts';
import { endWalls } from '../ends.ts';
import { half, size } from '../limits.ts';
import { thinWall, type Wall } from '../strength.ts';
import { reliefOf } from '../threads.ts';
import type { StopValveAsked } from './asked.ts';
import { inletAcross, layOutBody, roomAboveSeat } from './layout.ts';
import type { StopValveSizes } from './shared.ts';

export function checkStopValve(sizes: StopValveSizes, asked: StopValveAsked, book: Book): void {
  checkWalls(sizes, asked, book);
  const land = minus(minus(roomAboveSeat(sizes), sizes.travel), sizes.coneAbove);
  if (land < size('stop.land.least'))
    refuse(book, 'design.plug-has-no-land', {
      takes: add(add(sizes.travel, sizes.coneAbove), size('stop.land.least')),
      travel: sizes.travel,
      room: roomAboveSeat(sizes),
    });
  if (findMaterial(asked.material) === findMaterial(asked.spindleMaterial)) warn(book, 'design.same-metal', { material: asked.material });
}

function checkWalls(sizes: StopValveSizes, asked: StopValveAsked, book: Book): void {
  for (const { where, inside, outside } of wallsOf(sizes, asked)) {
    const has = half(minus(outside, inside));
    if (has < size('wall.least')) refuse(book, 'design.wall-thin', thinWall(where, has, size('wall.least')));
  }
}

/** The thinnest places. */
export function wallsOf(sizes: StopValveSizes, asked: StopValveAsked): readonly Wall[] {
  const at = layOutBody(sizes);
  return [
    {
      where: 'coupling-relief',
      inside: asked.pattern === 'angle' ? inletAcross(sizes) : sizes.outlet,
      outside: reliefOf(sizes.coupling.outside).floor.lo,
    },
    { where: 'body-flats', inside: sizes.bonnet.inside.major.lo, outside: minus(at.barrel, size('flats.under-rim')) },
    { where: 'spigot', inside: sizes.outlet, outside: at.spigot },
    ...[...new Set([sizes.ends.inlet, sizes.ends.outlet])].flatMap((form) => endWalls(form, sizes.ends.pipe)),
    { where: 'bonnet-relief', inside: sizes.spindle.inside.major.hi, outside: reliefOf(sizes.bonnet.outside).floor.lo },
  ];
}
