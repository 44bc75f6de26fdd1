/** Sizes of files and functions, and what no source file holds. */
import { describe, expect, it } from 'vitest';
import { type Code, code, filesUnder, roomOf } from './sources.ts';
import { type Token, tokens } from './tokens.ts';

const MOST_LINES = 300;
const MOST_IN_FUNCTION = 40;
/** Files or functions ('path function') that may be longer, each with its reason. */
const LONGER: Readonly<Record<string, string>> = {};

/** Names that would make an answer hang on the clock, the place, the machine or chance. */
const NOWHERE = ['localeCompare', 'toLocaleString', 'toLocaleUpperCase', 'toLocaleLowerCase', 'Intl'];
const NOT_IN_CORE = [
  'process',
  'console',
  'fetch',
  'require',
  '__dirname',
  '__filename',
  'performance',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'globalThis',
  'crypto',
  'navigator',
  'window',
  'document',
];
const CHANCE: readonly (readonly [string, string])[] = [
  ['Date', 'now'],
  ['Math', 'random'],
];
const DISK_DOORS = ['files', 'cli'];

describe('sizes', () => {
  it('files keep to one question', () => {
    const long = code().filter((f) => lines(f.text) > MOST_LINES && !(f.path in LONGER));
    expect(long.map((f) => `${f.path}: ${lines(f.text)} lines`)).toEqual([]);
  });
  it('functions fit a screen', () => {
    const long = code().flatMap((f) =>
      functionsOf(f)
        .filter((fn) => fn.lines > MOST_IN_FUNCTION && !(`${f.path} ${fn.name}` in LONGER))
        .map((fn) => `${f.path}:${fn.line} ${fn.name}: ${fn.lines} lines`),
    );
    expect(long).toEqual([]);
  });
  it('every file says at its top what it is for', () => {
    expect(
      code()
        .filter((f) => !/^(#!.*\n)?\/\*\*/.test(f.text))
        .map((f) => f.path),
    ).toEqual([]);
  });
  it.each([
    ['function f(a: { b: number }): string {\n\n}', ['f 3']],
    ['const g = (x) => {\n};', ['g 2']],
    ['const r = { m(a) {\n} };', ['m 2']],
    ['if (a) {\n}\nfor (;;) {\n}', []],
    ['export async function* h<T>(): AsyncIterable<{ a: T }> {\n}', ['h 2']],
  ])('%j has %j', (text, expected) => {
    expect(functionsOf({ path: '', text, tokens: tokens(text) }).map((f) => `${f.name} ${f.lines}`)).toEqual(expected);
  });
});

describe('what is nowhere', () => {
  it('no file asks a locale', () => {
    expect(
      code().flatMap((f) =>
        f.tokens.filter((t) => t.kind === 'name' && NOWHERE.includes(t.text)).map((t) => `${f.path}:${t.line} ${t.text}`),
      ),
    ).toEqual([]);
  });
  it('no file asks the clock or chance', () => {
    const found = code().flatMap((f) =>
      f.tokens.flatMap((t, i) =>
        CHANCE.some(([a, b]) => t.text === a && f.tokens[i + 2]?.text === b) || newDate(f.tokens, i)
          ? [`${f.path}:${t.line} ${t.text}`]
          : [],
      ),
    );
    expect(found).toEqual([]);
  });
  it('no file of the core reaches the machine', () => {
    const core = code().filter((f) => !DISK_DOORS.includes(roomOf(f.path)));
    const found = core.flatMap((f) =>
      f.tokens
        .filter((t, i) => t.kind === 'name' && NOT_IN_CORE.includes(t.text) && isFree(f.tokens, i))
        .map((t) => `${f.path}:${t.line} ${t.text}`),
    );
    expect(found).toEqual([]);
  });
  it('no class, no enum, no namespace', () => {
    expect(
      code().flatMap((f) =>
        f.tokens
          .filter(
            (t, i) =>
              t.kind === 'name' &&
              ['class', 'enum', 'namespace'].includes(t.text) &&
              f.tokens[i + 1]?.kind === 'name' &&
              f.tokens[i + 2]?.text === '{',
          )
          .map((t) => `${f.path}:${t.line} ${t.text}`),
      ),
    ).toEqual([]);
  });
});

describe('what a visitor could not use', () => {
  const texts = [
    ...['src', 'tests', 'scripts', 'specs', 'docs', '.ci'].flatMap((folder) => existing(folder)),
    ...filesUnder('.', '.md').filter((f) => !f.path.includes('/')),
  ];
  it.each([
    ["a path on somebody's machine", /(?<![\w.~-])\/(?:home|root|work|tmp|Users|mnt|opt)\/\w/],
    ['a folder outside the project', /(?:\.\.\/){4,}/],
    ['a loopback or private host', /\b(?:localhost|127\.0\.0\.1|10\.\d+\.\d+\.\d+|192\.168\.\d+\.\d+)\b/],
  ])('no text holds %s', (_, pattern) => {
    const lines = texts.flatMap((f) => f.text.split('\n').map((text, i) => ({ at: `${f.path}:${i + 1}`, text })));
    expect(lines.filter(({ at, text }) => !at.startsWith('tests/house/style.test.ts') && pattern.test(text)).map(({ at }) => at)).toEqual(
      [],
    );
  });
});

function existing(folder: string): readonly { readonly path: string; readonly text: string }[] {
  try {
    return filesUnder(folder, '').filter((f) => /\.(ts|mjs|js|json|yaml|md|hbs|css|run)$|\/run$/.test(f.path));
  } catch {
    return [];
  }
}

const lines = (text: string): number => text.trimEnd().split('\n').length;

/** `new Date()` without a moment in it. */
function newDate(all: readonly Token[], i: number): boolean {
  return all[i]?.text === 'new' && all[i + 1]?.text === 'Date' && (all[i + 2]?.text !== '(' || all[i + 3]?.text === ')');
}

/** A name that stands for itself: not a field (`a.process`, `process:`), not declared or passed as a parameter of that name. */
function isFree(all: readonly Token[], i: number): boolean {
  const before = all[i - 1]?.text ?? '';
  const after = all[i + 1]?.text ?? '';
  return (
    !['.', '?.'].includes(before) &&
    (['.', '['].includes(after) || (after === '(' && before !== 'function')) &&
    !declared(all, all[i]?.text ?? '')
  );
}

function declared(all: readonly Token[], name: string): boolean {
  return all.some(
    (t, i) =>
      t.text === name &&
      t.kind === 'name' &&
      (['const', 'let', 'function'].includes(all[i - 1]?.text ?? '') ||
        (['(', ','].includes(all[i - 1]?.text ?? '') && all[i + 1]?.text === ':')),
  );
}

type Fn = { readonly name: string; readonly line: number; readonly lines: number };
const CONTROL = ['if', 'for', 'while', 'switch', 'catch', 'with'];

/** Functions with a braced body, by their braces. A type's braces and a block's are told apart by what stands before them. */
function functionsOf(file: Code): readonly Fn[] {
  const all = file.tokens;
  return all.flatMap((t, i) => {
    if (t.text !== '{' || t.kind !== 'mark') return [];
    const name = bodyOf(all, i);
    if (name === undefined) return [];
    const end = closing(all, i);
    return [{ name, line: t.line, lines: (all[end]?.line ?? t.line) - t.line + 1 }];
  });
}

/** The function's name when the brace at `i` opens its body. */
function bodyOf(all: readonly Token[], i: number): string | undefined {
  if (all[i - 1]?.text === '=>') return arrowName(all, i - 1);
  // a type's own braces, as in `Map<{ a: T }>`, stand within angles
  if (all[closing(all, i) + 1]?.text === '>') return undefined;
  const head = headBefore(all, i);
  if (head === undefined) return undefined;
  const name = all[head - 1];
  if (name?.kind === 'name' && !CONTROL.includes(name.text)) return name.text;
  return name?.text === '>' ? genericName(all, head - 1) : undefined;
}

/** Where the parameters' bracket opens, for `name(...) {` and `name(...): Type {`. */
function headBefore(all: readonly Token[], i: number): number | undefined {
  let at = i - 1;
  if (all[at]?.text !== ')') {
    at = typeStart(all, at);
    if (all[at]?.text !== ':' || all[at - 1]?.text !== ')') return undefined;
    at -= 1;
  }
  return opening(all, at);
}

/** Walks back over a return type to the colon before it, or to where it cannot be one. */
function typeStart(all: readonly Token[], from: number): number {
  let at = from;
  while (at > 0 && all[at]?.text !== ':') {
    const text = all[at]?.text ?? '';
    if (['}', ')', ']'].includes(text)) at = opening(all, at) - 1;
    else if ([';', '{', '(', '=', '=>'].includes(text)) return at;
    else at -= 1;
  }
  return at;
}

const CLOSERS: Readonly<Record<string, string>> = { ')': '(', ']': '[', '}': '{' };

function opening(all: readonly Token[], close: number): number {
  let depth = 0;
  for (let at = close; at >= 0; at--) {
    const t = all[at];
    if (t?.kind !== 'mark') continue;
    if (t.text in CLOSERS) depth++;
    if (Object.values(CLOSERS).includes(t.text) && --depth === 0) return at;
  }
  return 0;
}

function closing(all: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < all.length; at++) {
    const t = all[at];
    if (t?.kind !== 'mark') continue;
    if (Object.values(CLOSERS).includes(t.text)) depth++;
    if (t.text in CLOSERS && --depth === 0) return at;
  }
  return all.length - 1;
}

/** `const g = (x): T => {`: the name before the nearest '=' on the way back, or 'arrow'. */
function arrowName(all: readonly Token[], arrow: number): string {
  const equals = all
    .slice(Math.max(0, arrow - 40), arrow)
    .map((t) => t.text)
    .lastIndexOf('=');
  const name = equals < 0 ? undefined : all[Math.max(0, arrow - 40) + equals - 1];
  return name?.kind === 'name' ? name.text : 'arrow';
}

function genericName(all: readonly Token[], close: number): string {
  let at = close;
  while (at > 0 && all[at]?.text !== '<') at--;
  return all[at - 1]?.text ?? 'generic';
}
