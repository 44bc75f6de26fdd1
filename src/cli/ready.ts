/**
 * What was read when the command was built: templates, and the package's own workshop. Nothing here: the program in one file has those of every
 * language in this file's place (tests/programs/build.mjs), so that no run reads again what is the same every time. What was changed since is
 * read as ever.
 */
import type { Ready } from '../base/words.ts';
import type { Workshop } from '../model/workshop.ts';

export function readyIn(_language: string): Ready {
  return new Map();
}

/** What the workshop of this very text says. */
export function readyWorkshop(_text: string): Workshop | undefined {
  return undefined;
}
