/** All the reasoning of a stop valve, before any part is drawn: its sizes, its walls, its strength, the hand at its wheel. */
import { findMaterial, type Material } from '../../handbook/materials.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, newBook, refuse, refused } from '../book.ts';
import { noteEnd } from '../ends.ts';
import { ratio } from '../limits.ts';
import { notePipeSolder, noteSolder, spigotFit } from '../solder.ts';
import { engagedOver, noteHeatOf, noteRubbing, noteStrength } from '../strength.ts';
import type { StopValveAsked } from './asked.ts';
import { checkStopValve, wallsOf } from './checks.ts';
import { layOutBody } from './layout.ts';
import type { StopValveSizes } from './shared.ts';
import { sizeStopValve } from './sizes.ts';
import { noteStopWorking } from './working.ts';

export type Reasoned = {
  readonly book: Book;
  readonly sizes?: StopValveSizes;
  readonly material?: Material;
  readonly spindle?: Material;
};

export function reasonStopValve(asked: StopValveAsked, workshop: Workshop): Reasoned {
  const book = newBook();
  const material = findMaterial(asked.material);
  const spindle = findMaterial(asked.spindleMaterial);
  if (!material) refuse(book, 'design.material-unknown', { material: asked.material });
  if (!spindle) refuse(book, 'design.material-unknown', { material: asked.spindleMaterial });
  const sizes = sizeStopValve(asked, workshop, book);
  if (!sizes || !material || !spindle) return { book };
  checkStopValve(sizes, asked, book);
  if (refused(book)) return { book };
  noteStopWorking(asked, sizes, book);
  const pressure = asked.duty.pressure;
  noteEnds(sizes, pressure, book);
  const screwed = ratio('seat-piece.engagement');
  noteStrength(
    {
      ...{ pressure, material, pipe: asked.pipe, soldered: 'yes' },
      walls: wallsOf(sizes, asked),
      joints: [
        { which: 'bonnet', pair: sizes.bonnet, engaged: engagedOver(sizes.bonnet, screwed) },
        { which: 'coupling', pair: sizes.coupling, engaged: engagedOver(sizes.coupling, ratio('coupling.engagement')) },
      ],
    },
    book,
  );
  const at = layOutBody(sizes);
  noteSolder({ which: 'branch', outside: at.spigot, bore: sizes.outlet, overlap: at.overlap, fit: spigotFit(), pressure }, book);
  notePipeSolder(asked.pipe, pressure, book);
  noteHeatOf('packing', book);
  noteRubbing(spindle, material, book);
  return { book, sizes, material, spindle };
}

/** Each form of end once. */
function noteEnds({ ends, coupling, outlet }: StopValveSizes, pressure: number, book: Book): void {
  for (const form of new Set([ends.inlet, ends.outlet])) noteEnd({ form, pipe: ends.pipe, coupling, bore: outlet }, pressure, book);
}
