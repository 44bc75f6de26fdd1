/** Templates as the build has them compiled, and words made from them; the package's own workshop as it was read then. */
import { describe, expect, it } from 'vitest';
import { blocksIn, hasFields, stretchesOf } from '../../src/base/blocks.ts';
import { type Ready, type Words, words } from '../../src/base/words.ts';
import { languages, loadAssets, loadWords } from '../../src/files.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { readyModule } from './ready.ts';

const PATIENCE = 60_000;
const { readyIn, readyWorkshop } = (await import(/* @vite-ignore */ `data:text/javascript,${encodeURIComponent(readyModule())}`)) as {
  readonly readyIn: (language: string) => Ready;
  readonly readyWorkshop: (text: string) => Workshop | undefined;
};

describe('templates compiled beforehand', () => {
  it.each(languages())('are all there in %s', (language) => {
    const bodies = Object.entries(loadWords(language)).flatMap(([name, text]) => blocksIn(name, text).map(([, body]) => body));
    const ready = readyIn(language);
    expect(ready.size).toBeGreaterThan(200);
    expect(bodies.filter((body) => hasFields(body) && !stretchesOf(body) && !ready.has(body))).toEqual([]);
  });

  it('are none in a language that the package does not have', () => expect(readyIn('tlh').size).toBe(0));

  it.each(languages())('say the same in %s as those that are read when they are said', { timeout: PATIENCE }, (language) => {
    const files = loadWords(language);
    const own = words(files);
    const before = words(files, readyIn(language));
    const blocks = Object.entries(files).flatMap(([name, text]) => blocksIn(name, text));
    const said = blocks.filter(([, body]) => hasFields(body)).map(([id, body]) => [id, saidBy(own, id, body), saidBy(before, id, body)]);
    expect(said.filter(([, one, other]) => one !== other)).toEqual([]);
    expect(said.filter(([, one]) => one?.startsWith('Error')).length).toBeLessThan(said.length / 10);
  });

  it('are taken where the text is the very same, and nowhere else', () => {
    const block = (body: string) => ({ 'a.hbs': `{{#*inline "x"}}${body}{{/inline}}` });
    const ready: Ready = new Map([['{{mm a}} mm', () => ({ compiler: [8, '>= 4.3.0'], main: () => 'beforehand' })]]);
    expect(words(block('{{mm a}} mm'), ready).say('x', { a: 40_000 })).toBe('beforehand');
    expect(words(block('{{mm a}}  mm'), ready).say('x', { a: 40_000 })).toBe('4.00 mm');
  });
});

describe('the workshop read beforehand', () => {
  const { workshop } = loadAssets();

  it('says what its file says, key by key in the same order', () => {
    const read = readWorkshop(workshop).value;
    expect(readyWorkshop(workshop.text)).toEqual(read);
    expect(JSON.stringify(readyWorkshop(workshop.text))).toBe(JSON.stringify(read));
  });

  it('is none where a letter of the file is another', () => expect(readyWorkshop(workshop.text.replace('mm', 'in'))).toBeUndefined());
});

/** With a number for every field; a fault of the words is what it says. */
function saidBy(by: Words, id: string, body: string): string {
  const names = [...body.matchAll(/[a-z][\w-]*/gi)].map(([name]) => name);
  try {
    return by.say(id, Object.fromEntries(names.map((name, i) => [name, i + 1])));
  } catch (cause) {
    return String(cause);
  }
}
