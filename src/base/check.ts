/** A value that was read, held against a schema: every fault with its place, what was asked, and the nearest thing that there is. */
import type * as z from 'zod';
import type { Diagnostic, Outcome, Place } from './diagnostics.ts';
import { nearest } from './nearest.ts';
import type { Problem } from './quantity.ts';
import type { Path, Source } from './source.ts';
import { standingAlone } from './stand-in.ts';
import { shown } from './written.ts';

/**
 * `about`: first part of the words' ids for this file's keys, e.g. 'workshop' (see `askId`). All faults at once; nothing twice.
 * Throws Error on an issue that no schema here should raise: our fault.
 */
export function checkSource<S extends z.ZodType>(schema: S, source: Source, about: string): Outcome<z.output<S>> {
  const result = schema.safeParse(source.value, ONCE);
  if (result.success) return { value: result.data, found: [] };
  const { issues } = result.error;
  const all = [...issues, ...standingAlone(schema, source.value, issues)];
  const found = all.flatMap((issue) => issueFindings(schema, source, about, issue, []));
  return { found: unique(found).filter((one) => !isMisspelt(one, found)) };
}

/** A key that stands there under a name near its own is not missing besides. */
const isMisspelt = ({ code, grounds }: Diagnostic, found: readonly Diagnostic[]): boolean =>
  code === 'read.missing-key' &&
  found.some((one) => one.code === 'read.unknown-key' && one.grounds.within === grounds.within && one.grounds.near === grounds.key);

/** A file is read once: to compile a parser for it would take longer than the reading. */
const ONCE: z.core.ParseContext<z.core.$ZodIssue> = { jitless: true };

/** Words' id of a key: 'workshop.tools.drills' for any of the drills. */
export function askId(about: string, path: Path): string {
  return [about, ...path.filter((p) => typeof p === 'string')].join('.');
}

type Issue = z.core.$ZodIssue;

function issueFindings(schema: z.ZodType, source: Source, about: string, issue: Issue, above: Path): readonly Diagnostic[] {
  const path = [...above, ...issue.path.map((p) => (typeof p === 'number' ? p : String(p)))];
  if (source.refused(path)) return [];
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(schema, source, about, path, key));
  if (issue.code === 'invalid_union')
    return branch(issue.errors, valueAt(source.value, path)).flatMap((i) => issueFindings(schema, source, about, i, path));
  if (issue.code === 'custom' && isProblem(issue.params)) return [finding(source, about, path, issue.params)];
  if (issue.code === 'invalid_type') return [finding(source, about, path, wrongType(issue.expected, valueAt(source.value, path)))];
  if (issue.code === 'invalid_value')
    return [
      finding(source, about, path, { problem: 'read.not-one-of', grounds: { near: '', words: issue.values.map(String).join(', ') } }),
    ];
  throw new Error(`a schema raised '${issue.code}' at ${path.join('.')}`);
}

function finding(source: Source, about: string, path: Path, { problem, grounds }: Problem): Diagnostic {
  const missing = valueAt(source.value, path) === undefined;
  const within = path.slice(0, -1);
  return {
    code: problem,
    severity: 'error',
    place: missing ? source.placeOfKey(within) : source.place(path),
    grounds: {
      key: shown(nameOf(path.slice(-1))),
      path: shown(nameOf(path)),
      within: shown(nameOf(within)),
      word: source.written(path),
      ask: askId(about, path),
      ...grounds,
    },
  };
}

function unknownKey(schema: z.ZodType, source: Source, about: string, path: Path, key: string): Diagnostic {
  const keys = keysAt(schema, path);
  const place: Place = source.placeOfKey([...path, key]);
  const grounds = {
    key: shown(key),
    within: shown(nameOf(path)),
    near: nearest(key, keys) ?? '',
    keys: keys.join(', '),
    ask: askId(about, path),
  };
  return { code: 'read.unknown-key', severity: 'error', place, grounds };
}

function wrongType(expected: string, value: unknown): Problem {
  if (value === undefined) return { problem: 'read.missing-key', grounds: {} };
  if (typeof value === 'string' && expected === 'object' && /^[\w-]+:\S/.test(value))
    return { problem: 'read.colon-without-space', grounds: { better: shown(value.replace(':', ': ')) } };
  const asked = { object: 'keys', array: 'list' }[expected];
  if (!asked) throw new Error(`a schema asked for '${expected}'`);
  return { problem: 'read.wrong-type', grounds: { asked } };
}

/** Of the ways to write a thing, the one that the person was at: keys or a list where that was written, else the short one. */
function branch(ways: readonly (readonly Issue[])[], value: unknown): readonly Issue[] {
  const isStructured = typeof value === 'object' && value !== null;
  const wants = (issues: readonly Issue[]) =>
    issues.some(
      (i) => i.path.length === 0 && (i.code === 'invalid_type' || (i.code === 'custom' && i.params?.problem === 'read.wrong-type')),
    );
  return (isStructured ? ways.find((w) => !wants(w)) : ways.find((w) => w.some((i) => i.code === 'custom'))) ?? ways[0] ?? [];
}

/** The keys that a record of the schema may have, looked up along a path. */
function keysAt(schema: z.ZodType, path: Path): readonly string[] {
  const [first, ...rest] = path;
  const def = schema.def as {
    type: string;
    innerType?: z.ZodType;
    in?: z.ZodType;
    element?: z.ZodType;
    options?: readonly z.ZodType[];
    shape?: Record<string, z.ZodType>;
  };
  if (def.type === 'union') return def.options?.map((o) => keysAt(o, path)).find((keys) => keys.length > 0) ?? [];
  const inner = def.innerType ?? def.in;
  if (inner) return keysAt(inner, path);
  if (first === undefined) return Object.keys(def.shape ?? {});
  const next = typeof first === 'number' ? def.element : def.shape?.[first];
  return next ? keysAt(next, rest) : [];
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce(
    (at: unknown, step) =>
      typeof at === 'object' && at !== null && Object.hasOwn(at, step) ? (at as Record<string | number, unknown>)[step] : undefined,
    value,
  );
}

/** 'tools.drills[3]'; items are counted from 1. */
function nameOf(path: Path): string {
  return path
    .map((p) => (typeof p === 'number' ? `[${p + 1}]` : `.${p}`))
    .join('')
    .replace(/^\./, '');
}

function isProblem(params: unknown): params is Problem {
  return typeof params === 'object' && params !== null && 'problem' in params && 'grounds' in params;
}

function unique(found: readonly Diagnostic[]): readonly Diagnostic[] {
  const seen = new Set<string>();
  return found.filter((d) => {
    const mark = JSON.stringify([d.code, d.place, d.grounds]);
    return seen.has(mark) ? false : Boolean(seen.add(mark));
  });
}
