/**
 * A block of words, read once and said often. It is written in a small part of Handlebars' language, and this reads that part and no more:
 *   {{field}}   {{helper field 'text' 1}}   {{#if field}}…{{else}}…{{/if}}   {{#is field 'text'}}…{{/is}}   {{#each field}}{{this}}{{/each}}
 *   {{!-- a comment --}}
 */

/** What an argument stands for: a field by its name, or itself. */
type Argument = { readonly field: string } | { readonly value: string | number };
type Piece =
  | string
  | { readonly does: 'field'; readonly field: string }
  | { readonly does: 'help'; readonly help: Helper; readonly asked: readonly Argument[] }
  | { readonly does: Branching; readonly asked: readonly Argument[]; readonly then: Block; readonly otherwise: Block };
export type Block = readonly Piece[];
export type Helper = (...asked: readonly unknown[]) => unknown;
/** Gives a field's value, or throws Error where it is not there. */
export type Lookup = (field: string) => unknown;

const BRANCHES = { if: 1, is: 2, each: 1 } as const;
type Branching = keyof typeof BRANCHES;
const TAG = /\{\{(!--[\s\S]*?--|[^{}]*)\}\}/g;
const ARGUMENT = /'([^']*)'|"([^"]*)"|(\S+)/g;
const NAME = /^[a-zA-Z][\w-]*$/;
const NUMBER = /^-?\d+(\.\d+)?$/;
const ELSE = 'else';

/** `helpers` by name. Throws Error on what is not in the language: an unknown helper, a branch that is not closed. */
export function readBlock(text: string, helpers: Readonly<Record<string, Helper>>): Block {
  // between tags at even places, tags at odd ones
  return readUntil({ all: text.split(TAG), helpers, at: 0 }, []).block;
}

type Reading = { readonly all: readonly string[]; readonly helpers: Readonly<Record<string, Helper>>; at: number };

function readUntil(reading: Reading, ends: readonly string[]): { readonly block: Block; readonly end: string } {
  const block: Piece[] = [];
  while (reading.at < reading.all.length) {
    const token = reading.all[reading.at] ?? '';
    const isTag = reading.at % 2 === 1;
    reading.at += 1;
    if (isTag && ends.includes(token.trim())) return { block, end: token.trim() };
    if (isTag ? token.startsWith('!') : token === '') continue;
    block.push(isTag ? readTag(reading, token.trim()) : plain(token));
  }
  if (ends.length > 0) throw new Error(`'{{${ends.at(-1)}}}' is missing`);
  return { block, end: '' };
}

function plain(text: string): string {
  if (text.includes('{{') || text.includes('}}')) throw new Error(`braces that belong to nothing in '${text}'`);
  return text;
}

function readTag(reading: Reading, tag: string): Piece {
  if (tag.startsWith('#')) return readBranch(reading, tag.slice(1));
  const [name = '', ...asked] = tag.match(ARGUMENT) ?? [];
  if (!NAME.test(name) || name === ELSE) throw new Error(`'{{${tag}}}' has no place here`);
  if (asked.length === 0) return { does: 'field', field: name };
  const help = Object.hasOwn(reading.helpers, name) ? reading.helpers[name] : undefined;
  if (!help) throw new Error(`there is no helper '${name}'`);
  return { does: 'help', help, asked: asked.map(argument) };
}

function readBranch(reading: Reading, tag: string): Piece {
  const [name = '', ...words] = tag.match(ARGUMENT) ?? [];
  if (!isBranching(name) || words.length !== BRANCHES[name]) throw new Error(`'{{#${tag}}}' is no branch`);
  const close = `/${name}`;
  const { block: then, end } = readUntil(reading, [ELSE, close]);
  const otherwise = end === ELSE ? readUntil(reading, [close]).block : [];
  return { does: name, asked: words.map(argument), then, otherwise };
}

const isBranching = (name: string): name is Branching => Object.hasOwn(BRANCHES, name);

function argument(word: string): Argument {
  if (word.startsWith("'") || word.startsWith('"')) return { value: word.slice(1, -1) };
  if (NUMBER.test(word)) return { value: Number(word) };
  if (!NAME.test(word)) throw new Error(`'${word}' is no field`);
  return { field: word };
}

/** The block's text. Throws Error on a field that is not there, and where a helper does. */
export function sayBlock(block: Block, look: Lookup): string {
  let said = '';
  for (const piece of block) said += typeof piece === 'string' ? piece : sayPiece(piece, look);
  return said;
}

function sayPiece(piece: Exclude<Piece, string>, look: Lookup): string {
  if (piece.does === 'field') return String(look(piece.field));
  const asked = piece.asked.map((one) => ('field' in one ? look(one.field) : one.value));
  if (piece.does === 'help') return String(piece.help(...asked));
  if (piece.does === 'each') return sayEach(piece.then, asked[0], look);
  const holds = piece.does === 'is' ? asked[0] === asked[1] : isThere(asked[0]);
  return sayBlock(holds ? piece.then : piece.otherwise, look);
}

function sayEach(block: Block, items: unknown, look: Lookup): string {
  if (!Array.isArray(items)) throw new Error('each needs a list');
  return items.map((item) => sayBlock(block, (field) => (field === 'this' ? item : look(field)))).join('');
}

const isThere = (value: unknown): boolean => (Array.isArray(value) ? value.length > 0 : Boolean(value));
