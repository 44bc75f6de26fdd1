/** YAML text to a plain value that remembers where each part of it stood. Keeps to the small safe part of YAML 1.2, and says why. */
import { type Document, isMap, parseDocument } from 'yaml';
import type { Diagnostic, Place } from './diagnostics.ts';
import { MOST_ON_LINE, tooDeepAt, tooLongAt } from './source/depth.ts';
import { lineStarts, placeAt } from './source/places.ts';
import { BREAKS, syntaxFindings } from './source/syntax.ts';
import { type Finding, firstOfEachLine, type Tree, walk } from './source/walk.ts';
import { looksBinary } from './written.ts';

export type Path = readonly (string | number)[];

/** One file as read. Paths are keys and list indexes from the top. */
export type Source = {
  readonly file: string;
  /** Plain records, lists, strings, numbers and booleans; what was refused is left out. */
  readonly value: unknown;
  /** Where the value at `path` stands; where there is none, the nearest key above it. */
  place(path: Path): Place;
  /** Where the key that ends `path` stands. */
  placeOfKey(path: Path): Place;
  /** The value as the person wrote it, short enough for a message. */
  written(path: Path): string;
  /** True when something at `path`, or above it, has been refused already: nothing more need be said of it. */
  refused(path: Path): boolean;
};

/** Bytes; a fitting or a workshop written by hand is a fiftieth of it. */
export const MOST_BYTES = 256 * 1024;

/**
 * `value` is absent when the text can't be followed at all (then only that is reported). It is there, with errors besides, when only
 * parts were refused, so that the rest can still be checked and everything be reported at once. Never throws.
 */
export function readSource(file: string, text: string): { readonly value?: Source; readonly found: readonly Diagnostic[] } {
  const starts = lineStarts(text);
  const say = (f: Finding): Diagnostic => ({
    code: f.code,
    severity: 'error',
    place: placeAt(file, text, starts, f.from, f.to),
    grounds: f.grounds,
  });
  const unfit = unfitFinding(text);
  if (unfit) return { found: [say(unfit)] };

  // Doubled keys are looked for in `walk`: the library compares each key with every other, and its message has no place for the first.
  const document = parseDocument(text, {
    schema: 'core',
    version: '1.2',
    merge: false,
    uniqueKeys: false,
    strict: true,
    stringKeys: true,
    prettyErrors: false,
  });
  const syntax = syntaxFindings(text, document);
  if (syntax.some((f) => BREAKS.has(f.code))) return { found: firstOfEachLine(breaking(syntax).map(say)) };
  if (!isMap(document.contents)) return { found: [...syntax.map(say), say(topFinding(document, text))] };
  const tree = walk(document.contents, text);
  const all = [...syntax, ...tree.found].sort((a, b) => a.from - b.from);
  const broken = breaking(all);
  if (broken.length > 0) return { found: firstOfEachLine(broken.map(say)) };
  return { value: source(file, text, starts, tree), found: firstOfEachLine(all.map(say)) };
}

/** What makes the rest of a text mean anything. A tab has no width that one could agree on, so beside tabs no column is complained of. */
function breaking(found: readonly Finding[]): readonly Finding[] {
  const all = found.filter((f) => BREAKS.has(f.code));
  const tabs = all.filter((f) => f.code === TAB);
  return tabs.length > 0 ? tabs : all;
}

const TAB = 'read.tab';

/** Why the text is not even handed to the YAML library: some texts make it slow, and some bring the whole process down. */
function unfitFinding(text: string): Finding | undefined {
  const bytes = text.length > MOST_BYTES / 4 ? new TextEncoder().encode(text).length : text.length;
  if (bytes > MOST_BYTES)
    return { code: 'read.too-big', from: 0, to: 0, grounds: { size: Math.ceil(bytes / 1024), most: MOST_BYTES / 1024 } };
  const binary = looksBinary(text);
  if (binary) return { code: 'read.not-text', from: binary.at, to: binary.at + 1, grounds: { character: binary.character } };
  const long = tooLongAt(text);
  if (long) return { code: 'read.long-line', from: long.at, to: long.at, grounds: { length: long.length, most: MOST_ON_LINE } };
  const deep = tooDeepAt(text);
  return deep === undefined ? undefined : { code: 'read.too-deep', from: deep, to: deep + 1, grounds: {} };
}

/** Why the top of the document is no set of keys. */
function topFinding(document: Document.Parsed, text: string): Finding {
  const [from, to] = document.contents?.range ?? [0, 0];
  if (text.replace(/^([ \t]*#.*|---[ \t]*|\.\.\.[ \t]*)$/gm, '').trim() === '')
    return { code: 'read.empty-file', from: 0, to: 1, grounds: {} };
  return {
    code: 'read.not-keys',
    from,
    to: Math.min(to, text.length),
    grounds: { word: text.slice(from, to).split('\n')[0]?.slice(0, 40) ?? '' },
  };
}

function source(file: string, text: string, starts: readonly number[], tree: Tree): Source {
  const at = (range: readonly [number, number]): Place => placeAt(file, text, starts, range[0], range[1]);
  const find = (path: Path) => tree.spots.get(JSON.stringify(path));
  const above = (path: Path): Place => {
    for (let n = path.length; n > 0; n -= 1) {
      const spot = find(path.slice(0, n));
      if (spot) return at(n === path.length ? spot.value : (spot.key ?? spot.value));
    }
    return at(tree.top);
  };
  return {
    file,
    value: tree.value,
    place: above,
    placeOfKey: (path) => {
      const spot = find(path);
      return spot?.key ? at(spot.key) : above(path);
    },
    written: (path) => find(path)?.written ?? '',
    refused: (path) => path.some((_, n) => tree.refused.has(JSON.stringify(path.slice(0, n + 1)))),
  };
}
