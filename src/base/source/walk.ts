/** Goes through the YAML nodes once: builds plain records, notes where everything stood, and refuses what a description never needs. */
import { isAlias, isMap, isScalar, isSeq, type Pair, type ParsedNode, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Diagnostic } from '../diagnostics.ts';
import { shown } from '../written.ts';
import { lineOf, lineStarts } from './places.ts';

export type Finding = { readonly code: string; readonly from: number; readonly to: number; readonly grounds: Diagnostic['grounds'] };
type Range = readonly [number, number];
type Spot = { readonly key?: Range; readonly value: Range; readonly written: string };
/** `spots` and `refused` by path as JSON. */
export type Tree = {
  readonly value: unknown;
  readonly top: Range;
  readonly spots: ReadonlyMap<string, Spot>;
  readonly refused: ReadonlySet<string>;
  readonly found: readonly Finding[];
};

/** Keys that mean something to JavaScript itself. */
const FORBIDDEN: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);
/** Nothing in a workshop is as large, in any unit. */
export const LARGEST_NUMBER = 1e9;
/** Keys within keys; ours go to five. */
const DEEPEST = 20;
const DECIMAL = /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/;

type Path = readonly (string | number)[];
type Walk = {
  readonly text: string;
  readonly starts: readonly number[];
  readonly spots: Map<string, Spot>;
  readonly refused: Set<string>;
  readonly found: Finding[];
};
type Node = ParsedNode | null;

export function walk(top: ParsedNode, text: string): Tree {
  const w: Walk = { text, starts: lineStarts(text), spots: new Map(), refused: new Set(), found: [] };
  const value = plain(w, top, []);
  const first = isMap(top) ? rangeOf(top.items[0]?.key) : undefined;
  return { value, top: first ?? rangeOf(top), spots: w.spots, refused: w.refused, found: w.found };
}

/**
 * Of what breaks the text up, the first finding of each line: a second one is nearly always the first again. Of all else, everything
 * that stands in a column of its own.
 */
export function firstOfEachLine(found: readonly Diagnostic[]): readonly Diagnostic[] {
  const seen = new Set<string>();
  return found.filter((d) => {
    const mark = BROKEN.has(d.code) ? `${d.place?.line}` : `${d.place?.line}:${d.place?.col}`;
    if (seen.has(mark)) return false;
    seen.add(mark).add(`${d.place?.line}:${d.place?.col}`);
    return true;
  });
}
const BROKEN: ReadonlySet<string> = new Set([
  'read.indent',
  'read.two-keys',
  'read.no-colon',
  'read.unclosed',
  'read.not-followed',
  'read.tab',
  'read.missing-comma',
]);

function plain(w: Walk, node: Node, path: Path): unknown {
  if (node === null) return undefined;
  if (isAlias(node)) return refuse(w, path, 'read.alias', rangeOf(node), { word: shown(node.source) });
  if (node.anchor !== undefined)
    note(w, 'read.anchor', [rangeOf(node)[0] - node.anchor.length - 2, rangeOf(node)[0]], { word: shown(node.anchor) });
  if (node.tag !== undefined)
    note(w, 'read.tag', [w.text.lastIndexOf('!', Math.max(0, rangeOf(node)[0] - 1)), rangeOf(node)[0] - 1], {
      word: shown(node.tag.replace(/^tag:yaml\.org,2002:/, '!!')),
    });
  if (node.tag !== undefined && isScalar(node)) return refuse(w, path);
  if (path.length > DEEPEST) return refuse(w, path, 'read.too-deep', rangeOf(node), { word: '' });
  if (isMap(node)) return recordOf(w, node as YAMLMap.Parsed, path);
  if (isSeq(node)) return listOf(w, node as YAMLSeq.Parsed, path);
  return isScalar(node) ? scalarOf(w, node as Scalar.Parsed, path) : undefined;
}

function listOf(w: Walk, node: YAMLSeq.Parsed, path: Path): unknown[] {
  return node.items.map((item, index) => {
    const here = [...path, index];
    spot(w, here, undefined, item);
    if (isNothing(item)) return refuseNothing(w, here, item, `${path.at(-1) ?? ''}[${index + 1}]`, rangeOf(item));
    return plain(w, item, here);
  });
}

function recordOf(w: Walk, node: YAMLMap.Parsed, path: Path): Record<string, unknown> {
  const record: Record<string, unknown> = {};
  const firsts = new Map<string, number>();
  let before: Pair<ParsedNode, Node> | undefined;
  let last = '';
  for (const pair of node.items) {
    const key = isScalar(pair.key) && typeof pair.key.value === 'string' ? pair.key.value : undefined;
    const keyRange = rangeOf(pair.key);
    if (key === undefined) note(w, 'read.odd-key', keyRange, { word: shown(w.text.slice(...keyRange)) });
    else if (FORBIDDEN.has(key)) note(w, 'read.forbidden-key', keyRange, { word: key });
    else if (key === '<<') note(w, 'read.merge-key', keyRange, {});
    else if (firsts.has(key)) note(w, 'read.duplicate-key', keyRange, { word: shown(key), line: lineOf(w.starts, firsts.get(key) ?? 0) });
    else if (isNothing(pair.value) && commaBefore(before, key)) {
      record[last] = refuse(w, [...path, last], 'read.decimal-comma-in-braces', keyRange, commaGrounds(before, key));
    } else {
      firsts.set(key, keyRange[0]);
      const here = [...path, key];
      spot(w, here, keyRange, pair.value);
      record[key] = isNothing(pair.value) ? refuseNothing(w, here, pair.value, key, keyRange) : plain(w, pair.value, here);
    }
    before = pair;
    last = key ?? '';
  }
  return record;
}

function scalarOf(w: Walk, node: Scalar.Parsed, path: Path): unknown {
  const { value } = node;
  if (typeof value === 'bigint') return refuse(w, path, 'read.huge-number', rangeOf(node), { word: shown(node.source) });
  if (typeof value !== 'number') return value;
  if (Number.isNaN(value)) return refuse(w, path, 'read.not-a-number', rangeOf(node), { word: shown(node.source) });
  if (Math.abs(value) > LARGEST_NUMBER) return refuse(w, path, 'read.huge-number', rangeOf(node), { word: shown(node.source) });
  if (!DECIMAL.test(node.source)) return refuse(w, path, 'read.odd-number', rangeOf(node), { word: shown(node.source), value });
  return value === 0 ? 0 : value;
}

/** Nothing written, `~` or `null`. */
function isNothing(node: Node): boolean {
  return node === null || (isScalar(node) && node.value === null && node.tag === undefined);
}

/** `#40` straight after the colon is a comment to YAML: say that, and not just that there is nothing. */
function refuseNothing(w: Walk, path: Path, node: Node, key: string, keyRange: Range): undefined {
  const from = node?.range?.[0] ?? keyRange[1];
  const rest = /^[ \t]*:?[ \t]*(#[0-9][0-9A-Za-z]*)/.exec(w.text.slice(from, from + 80));
  if (rest?.[1]) {
    const at = from + rest[0].length - rest[1].length;
    return refuse(w, path, 'read.comment-taken', [at, at + rest[1].length], { key: shown(key), word: rest[1] });
  }
  const written = node && w.text.slice(...rangeOf(node)).trim();
  return refuse(w, path, 'read.empty-value', written && node ? rangeOf(node) : keyRange, { key: shown(key) });
}

/** `{ wall: 0,8 mm }`: YAML sees wall: 0, and a key `8 mm` without a value. */
function commaBefore(before: Pair<ParsedNode, Node> | undefined, key: string): boolean {
  return /^\d/.test(key) && isScalar(before?.value) && typeof before.value.value === 'number' && Number.isInteger(before.value.value);
}

function commaGrounds(before: Pair<ParsedNode, Node> | undefined, key: string): Finding['grounds'] {
  const whole = isScalar(before?.value) ? String(before.value.value) : '';
  return { word: shown(`${whole},${key}`), better: shown(`${whole}.${key}`) };
}

function spot(w: Walk, path: Path, key: Range | undefined, node: Node): void {
  const value = node ? rangeOf(node) : (key ?? [0, 0]);
  w.spots.set(JSON.stringify(path), { value, written: shown(w.text.slice(value[0], value[1])), ...(key && { key }) });
}

function note(w: Walk, code: string, [from, to]: Range, grounds: Finding['grounds']): void {
  w.found.push({ code, from: Math.max(0, from), to, grounds });
}

function refuse(w: Walk, path: Path, code?: string, range?: Range, grounds: Finding['grounds'] = {}): undefined {
  if (code !== undefined && range) note(w, code, range, grounds);
  w.refused.add(JSON.stringify(path));
  return undefined;
}

function rangeOf(node: { readonly range?: readonly [number, number, number] | null } | null | undefined): Range {
  return [node?.range?.[0] ?? 0, node?.range?.[1] ?? 0];
}
