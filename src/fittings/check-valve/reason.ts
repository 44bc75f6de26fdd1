/** All the reasoning of a check valve, before any part is drawn: its sizes, its walls, its strength. */
import { minus } from '../../base/units.ts';
import { findMaterial, type Material } from '../../handbook/materials.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, newBook, refuse } from '../book.ts';
import { spigotFor } from '../branch.ts';
import { flangeSpigot } from '../ends.ts';
import { half, ratio } from '../limits.ts';
import { flangeFit, notePipeSolder, noteSolder, spigotFit } from '../solder.ts';
import { engagedOver, noteStrength } from '../strength.ts';
import type { CheckValveAsked } from './asked.ts';
import { layOutBody } from './body.ts';
import { checkWalls, wallsOf } from './checks.ts';
import { chooseLand } from './land.ts';
import { notePassages } from './passages.ts';
import { type CheckValveSizes, sizeCheckValve } from './sizes.ts';

export type Reasoned = { readonly book: Book; readonly sizes?: CheckValveSizes; readonly material?: Material };

export function reasonCheckValve(asked: CheckValveAsked, workshop: Workshop): Reasoned {
  const book = newBook();
  const sized = sizeCheckValve(asked, workshop, book);
  const land = sized && chooseLand(asked, sized, workshop, book);
  const sizes = sized && land ? { ...sized, land } : sized;
  const material = findMaterial(asked.material);
  if (!material) refuse(book, 'design.material-unknown', { material: asked.material });
  if (!sizes || !material) return { book };
  book.found.push(...checkWalls(sizes));
  if (sizes.stop) notePassages(sizes, sizes.stop, book);
  const screwed = ratio('seat-piece.engagement');
  noteStrength(
    {
      ...{ pressure: asked.duty.pressure, material, pipe: asked.pipe, soldered: 'yes' },
      walls: wallsOf(sizes),
      joints: [
        { which: 'seat', pair: sizes.seat, engaged: engagedOver(sizes.seat, screwed) },
        { which: 'cap', pair: sizes.cap, engaged: engagedOver(sizes.cap, screwed) },
        { which: 'coupling', pair: sizes.coupling, engaged: engagedOver(sizes.coupling, ratio('coupling.engagement')) },
      ],
    },
    book,
  );
  noteSoldered(sizes, asked, book);
  return { book, sizes, material };
}

function noteSoldered(sizes: CheckValveSizes, asked: CheckValveAsked, book: Book): void {
  const pressure = asked.duty.pressure;
  const bore = sizes.outlet;
  if (!sizes.stop) {
    const overlap = half(minus(layOutBody(sizes).barrel, sizes.chamber.target));
    noteSolder({ which: 'branch', outside: spigotFor(sizes.crossHole), bore, overlap, fit: spigotFit(), pressure }, book);
  } else if (sizes.end.form === 'flanged') {
    const { spigot, length } = flangeSpigot(bore);
    noteSolder({ which: 'flange', outside: spigot, bore, overlap: length, fit: flangeFit(), pressure }, book);
  }
  notePipeSolder(asked.pipe, pressure, book);
}
