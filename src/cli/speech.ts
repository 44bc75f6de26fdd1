/** The words of a command, in the language that was asked for. */
import { type Words, words } from '../base/words.ts';
import { FIRST_LANGUAGE } from '../files.ts';
import type { Assets } from '../model/assets.ts';
import { readyIn } from './ready.ts';

/** `files`: as they were loaded for that language. */
export function speech(files: Assets['words'], language = FIRST_LANGUAGE): Words {
  return words(files, readyIn(language));
}
