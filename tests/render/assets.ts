/** The package's own fonts, advances and words, read once for the tests. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Words, words } from '../../src/base/words.ts';
import type { FontFiles } from '../../src/model/assets.ts';
import type { Advances, Font } from '../../src/model/display.ts';
import { FACES } from '../../src/render/inks.ts';

const templates = fileURLToPath(new URL('../../templates/', import.meta.url));

export const ADVANCES = JSON.parse(readFileSync(`${templates}fonts/advances.json`, 'utf8')) as Advances;
const font = (name: Font): Uint8Array => new Uint8Array(readFileSync(`${templates}fonts/${FACES[name].file}`));
export const FONTS: FontFiles = {
  text: font('text'),
  'text-bold': font('text-bold'),
  narrow: font('narrow'),
  'narrow-bold': font('narrow-bold'),
};

/** Every block of templates/en, and what a test adds. */
export function allWords(more = ''): Words {
  const names = readdirSync(`${templates}en`).sort();
  return words({
    ...Object.fromEntries(names.map((name) => [name, readFileSync(`${templates}en/${name}`, 'utf8')])),
    'of-the-test.hbs': more,
  });
}
