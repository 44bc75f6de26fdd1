import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
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
    expect(say('{{a}}{{b}} of {{{c}}}', { a: 0, b: 'x', c: '$&' })).toBe('0x of $&');
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
    ['{{a}} {{mm b}}', { b: 1 }],
    ['{{mm}}', { mm: 1 }],
  ])('%s with %o is an error', (text, grounds) => {
    expect(() => say(text, grounds)).toThrow(/words 'x'/);
  });
  it('refuses text outside a block, a block that stands twice, and an unknown id', () => {
    expect(() => words({ 'a.hbs': 'hello' })).toThrow(/only inline blocks/);
    expect(() => words({ 'a.hbs': '{{#*inline "x"}}a{{/inline}}', 'b.hbs': '{{#*inline "x"}}a{{/inline}}' })).toThrow(/stands twice/);
    expect(() => words({}).say('nope')).toThrow(/no words for 'nope'/);
  });
});

/** Blocks with nothing but words and fields: a text for one field, a figure for the next. */
describe.each(languages())('plain blocks in %s', (language) => {
  const FIELDS = /\{\{([A-Za-z]+)\}\}/g;
  const BETWEEN = '\u0001';
  const blocks = Object.values(loadWords(language)).flatMap((text) =>
    [...text.matchAll(/\{\{#\*inline "([^"]+)"\}\}([\s\S]*?)\{\{\/inline\}\}/g)].map(([, id = '', body = '']) => ({ id, body })),
  );
  const plain = blocks.filter(({ body }) => !body.replace(FIELDS, '').includes('{{'));
  const names = new Set(plain.flatMap(({ body }) => [...body.matchAll(FIELDS)].map(([, name = '']) => name)));
  const grounds = Object.fromEntries([...names].map((name, i) => [name, i % 2 === 0 ? ` ${name} & <x> ` : i + 0.5]));
  it('are said as the engine says them', () => {
    const w = words(loadWords(language));
    const said = Handlebars.compile(plain.map(({ body }) => body).join(BETWEEN), { noEscape: true })(grounds).split(BETWEEN);
    expect(names.size).toBeGreaterThan(100);
    expect(plain.map(({ id }) => w.say(id, grounds))).toEqual(said.map((text) => text.replace(/\s+/g, ' ').trim()));
  });
});
