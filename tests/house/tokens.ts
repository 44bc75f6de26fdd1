/**
 * A small reader of TypeScript for the house's own tests: source text to tokens, with strings, templates, comments and regular
 * expressions told apart from code. (TypeScript 7 has no programming interface of its own.)
 */
export type Token = {
  readonly kind: 'name' | 'number' | 'string' | 'template' | 'regex' | 'comment' | 'mark';
  /** As written; for a string or template what stands between its quotes (of a template, each stretch of text by itself). */
  readonly text: string;
  readonly line: number;
};

const PUNCTUATION = [
  '>>>=',
  '...',
  '===',
  '!==',
  '**=',
  '<<=',
  '>>=',
  '>>>',
  '&&=',
  '||=',
  '??=',
  '=>',
  '==',
  '!=',
  '<=',
  '>=',
  '&&',
  '||',
  '??',
  '?.',
  '++',
  '--',
  '+=',
  '-=',
  '*=',
  '/=',
  '%=',
  '&=',
  '|=',
  '^=',
  '<<',
  '**',
];
const NUMBER = /(?:0[xX][\da-fA-F_]+|0[oO][0-7_]+|0[bB][01_]+|(?:\d[\d_]*\.?[\d_]*|\.\d[\d_]*)(?:[eE][+-]?\d[\d_]*)?)n?/y;
const NAME = /[\p{ID_Start}$_#][\p{ID_Continue}$\u200c\u200d]*/uy;
/** After one of these words a slash begins a regular expression; after any other name it divides. */
const BEFORE_REGEX = new Set([
  'return',
  'typeof',
  'case',
  'in',
  'of',
  'delete',
  'void',
  'throw',
  'new',
  'else',
  'do',
  'await',
  'yield',
  'instanceof',
]);

export function tokens(source: string): readonly Token[] {
  const all: Token[] = [];
  /** One entry for each open template stretch `${`: how many braces are open inside it. */
  const inside: number[] = [];
  let at = source.startsWith('#!') ? source.indexOf('\n') : 0;
  let line = 1;
  const push = (kind: Token['kind'], text: string, end: number): void => {
    all.push({ kind, text, line });
    line += source.slice(at, end).split('\n').length - 1;
    at = end;
  };
  while (at < source.length) {
    const c = source[at] ?? '';
    if (/\s/.test(c)) {
      if (c === '\n') line++;
      at++;
    } else if (source.startsWith('//', at)) push('comment', '', upTo(source, '\n', at));
    else if (source.startsWith('/*', at)) push('comment', '', upTo(source, '*/', at) + 2);
    else if (c === "'" || c === '"') stretch('string', at, new RegExp(c));
    else if (c === '`') openTemplate(at);
    else if (c === '}' && inside[inside.length - 1] === 0) {
      inside.pop();
      openTemplate(at);
    } else if (c === '/' && regexMayStand(all)) push('regex', source.slice(at, regexEnd(source, at)), regexEnd(source, at));
    else plain(c);
  }
  return all.filter((t) => t.kind !== 'comment');

  function stretch(kind: 'string', from: number, close: RegExp): void {
    const end = quoteEnd(source, from + 1, (rest) => close.test(rest[0] ?? ''));
    push(kind, source.slice(from + 1, end), end + 1);
  }
  function openTemplate(from: number): void {
    const end = quoteEnd(source, from + 1, (rest) => rest.startsWith('`') || rest.startsWith('${'));
    const opens = source.startsWith('${', end);
    push('template', source.slice(from + 1, end), end + (opens ? 2 : 1));
    if (opens) inside.push(0);
  }
  function plain(c: string): void {
    const number = /[\d.]/.test(c) ? match(NUMBER, source, at) : '';
    const name = match(NAME, source, at);
    if (/\d/.test(number)) push('number', number, at + number.length);
    else if (name !== '') push('name', name, at + name.length);
    else mark(c);
  }
  function mark(c: string): void {
    const depth = inside.length - 1;
    if (depth >= 0 && c === '{') inside[depth] = (inside[depth] ?? 0) + 1;
    if (depth >= 0 && c === '}') inside[depth] = (inside[depth] ?? 0) - 1;
    const text = PUNCTUATION.find((p) => source.startsWith(p, at)) ?? c;
    push('mark', text, at + text.length);
  }
}

function match(pattern: RegExp, source: string, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(source)?.[0] ?? '';
}

function upTo(source: string, what: string, from: number): number {
  const found = source.indexOf(what, from);
  return found < 0 ? source.length : found;
}

function quoteEnd(source: string, from: number, closes: (rest: string) => boolean): number {
  let at = from;
  while (at < source.length && !closes(source.slice(at, at + 2))) at += source[at] === '\\' ? 2 : 1;
  return at;
}

function regexMayStand(before: readonly Token[]): boolean {
  const last = before[before.length - 1];
  if (!last) return true;
  if (last.kind === 'name') return BEFORE_REGEX.has(last.text);
  return last.kind === 'mark' && ![')', ']', '}', '++', '--'].includes(last.text);
}

function regexEnd(source: string, from: number): number {
  let at = from + 1;
  let inClass = false;
  while (at < source.length && (inClass || source[at] !== '/')) {
    if (source[at] === '\\') at++;
    else if (source[at] === '[') inClass = true;
    else if (source[at] === ']') inClass = false;
    at++;
  }
  return at + 1 + match(/[a-z]*/y, source, at + 1).length;
}
