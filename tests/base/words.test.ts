import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
import { readBlock, sayBlock } from '../../src/base/words/block.ts';
import { words } from '../../src/base/words.ts';
import { languages, loadWords } from '../../src/files.ts';

const say = (text: string, grounds: Record<string, unknown> = {}) =>
  words({ 'a.hbs': `{{#*inline "x"}}${text}{{/inline}}` }).say('x', grounds);

describe('words', () => {
  it('fills a block, folds its white space and escapes nothing', () => {
    expect(say('drill\n   {{d}} & <go>', { d: '4.2' })).toBe('drill 4.2 & <go>');
    expect(say("{{n}} {{plural n 'cut' 'cuts'}}", { n: 2 })).toBe('2 cuts');
    expect(say("{{#is a 'b'}}yes{{else}}no{{/is}}", { a: 'b' })).toBe('yes');
    expect(say('{{#if a}}yes{{else}}no{{/if}}', { a: false })).toBe('no');
    expect(say('{{mm a}} mm', { a: 45_000 })).toBe('4.50 mm');
    expect(say('{{#each a}}{{this}};{{/each}}', { a: ['p', 'q'] })).toBe('p;q;');
  });
  it.each([
    ['{{a}}', {}],
    ['{{#if a}}b{{/if}}', {}],
    ["{{plural a 'x' 'y'}}", {}],
    ['{{mm a}}', { a: '6' }],
    ['{{mm a}}', { a: 0.5 }],
    ['{{a}}', { a: Number.NaN }],
    ['{{a}}', { a: undefined }],
  ])('%s with %o is an error', (text, grounds) => {
    expect(() => say(text, grounds)).toThrow(/words 'x'/);
  });
  it.each([
    '{{#if a}}b',
    '{{#if a b}}c{{/if}}',
    "{{#is a 'b'}}c{{/if}}",
    '{{nope a}}',
    '{{a.b}}',
    '{{else}}',
    '{{/if}}',
    'a }} b',
    '{{toString a}}',
    '{{#with a}}b{{/with}}',
  ])('%s is not in the language', (text) => {
    expect(() => say(text, { a: 'b', b: 'c' })).toThrow(/words 'x'/);
  });
  it('refuses text outside a block, a block that stands twice, and an unknown id', () => {
    expect(() => words({ 'a.hbs': 'hello' })).toThrow(/only inline blocks/);
    expect(() => words({ 'a.hbs': '{{#*inline "x"}}a{{/inline}}', 'b.hbs': '{{#*inline "x"}}a{{/inline}}' })).toThrow(/stands twice/);
    expect(() => words({}).say('nope')).toThrow(/no words for 'nope'/);
  });
});

/** The library whose language it is says every block of every language alike, whatever the fields hold. */
describe.each(languages())('every block in %s', (language) => {
  const BLOCK = /\{\{#\*inline "([^"]+)"\}\}([\s\S]*?)\{\{\/inline\}\}/g;
  const HELPERS = ['plural', 'mm', 'rounded', 'in-units', 'with-unit', 'as-sold', 'by-units'];
  const echo = Object.fromEntries(HELPERS.map((name) => [name, (...asked: readonly unknown[]) => `${name}(${asked.join(';')})`]));
  const library = Handlebars.create();
  for (const [name, helper] of Object.entries(echo))
    library.registerHelper(name, (...asked: readonly unknown[]) => helper(...asked.slice(0, -1)));
  library.registerHelper('is', function (this: unknown, a: unknown, b: unknown, options: Handlebars.HelperOptions) {
    return a === b ? options.fn(this) : options.inverse(this);
  });
  const folded = (text: string): string => text.replace(/\s+/g, ' ').trim();
  const blocks = Object.values(loadWords(language)).flatMap((text) =>
    [...text.matchAll(BLOCK)].map(([, id = '', body = '']) => ({ id, body })),
  );

  it('is said as by the library', () => {
    expect(blocks.length).toBeGreaterThan(1000);
    for (const { id, body } of blocks) {
      const [own, others] = [readBlock(body, echo), library.compile(body, { strict: true, noEscape: true })];
      for (const fields of fieldsFor(body)) {
        expect(folded(sayBlock(own, (field) => fields[field])), id).toBe(folded(others(fields)));
      }
    }
  });
});

/** All fields empty; each with each of the values that the block's branches ask for; one after the other the first and the last of these. */
function fieldsFor(body: string): readonly Readonly<Record<string, unknown>>[] {
  const names = [...new Set([...body.matchAll(/\{\{#?(?:if |is |[a-z-]+ )?([a-zA-Z][\w-]*)/g)].map(([, name = '']) => name))];
  const asked = (name: string): readonly unknown[] => [
    '',
    ...[...body.matchAll(new RegExp(`\\{\\{#is ${name} (?:'([^']*)'|([\\d.-]+))`, 'g'))].map(([, text, number]) => text ?? Number(number)),
    `<${name}>`,
  ];
  const by = (pick: (all: readonly unknown[], i: number) => unknown) =>
    Object.fromEntries(names.map((name, i) => [name, pick(asked(name), i)]));
  const most = Math.max(0, ...names.map((name) => asked(name).length));
  return [
    ...Array.from({ length: most }, (_, n) => by((all) => all[Math.min(n, all.length - 1)])),
    ...Array.from({ length: most }, (_, n) => by((all, i) => all[(n + i) % all.length])),
    ...names.map((name) => ({ ...by((all) => all.at(-1)), [name]: '' })),
    ...names.map((name) => ({ ...by((all) => all[0]), [name]: `<${name}>` })),
  ];
}
