/** What the YAML library complains of, in this project's own codes, pointed at what a person would put right. */
import { type Document, type ErrorCode, isCollection, isNode, isScalar, visit, type YAMLError } from 'yaml';
import { shown } from '../written.ts';
import type { Finding } from './walk.ts';

/** After one of these the rest of the text may mean anything: nothing else of the file is reported. */
export const BREAKS: ReadonlySet<string> = new Set([
  'read.too-deep',
  'read.unclosed',
  'read.unclosed-quote',
  'read.extra-bracket',
  'read.missing-comma',
  'read.not-followed',
  'read.indent',
  'read.two-keys',
  'read.no-colon',
  'read.two-documents',
  'read.comment-taken-in-list',
  'read.tab',
]);

/** The commonest first; a pattern is for the library's message where one code of its means several things. */
const CODES: readonly (readonly [code: ErrorCode, message: RegExp, ours: string])[] = [
  ['TAB_AS_INDENT', /./, 'read.tab'],
  ['MULTIPLE_DOCS', /./, 'read.two-documents'],
  ['BAD_SCALAR_START', /./, 'read.reserved-character'],
  ['RESOURCE_EXHAUSTION', /./, 'read.too-deep'],
  ['BAD_INDENT', /end with a [\]}]/, 'read.unclosed'],
  ['BAD_INDENT', /./, 'read.indent'],
  ['BLOCK_AS_IMPLICIT_KEY', /./, 'read.two-keys'],
  ['MULTILINE_IMPLICIT_KEY', /./, 'read.no-colon'],
  ['MISSING_CHAR', /closing ['"]quote/, 'read.unclosed-quote'],
  ['MISSING_CHAR', /map values/, 'read.no-colon'],
  ['MISSING_CHAR', /Missing ,/, 'read.missing-comma'],
  ['BLOCK_IN_FLOW', /./, 'read.missing-comma'],
  ['UNEXPECTED_TOKEN', /flow-(map|seq)-end/, 'read.extra-bracket'],
];
/** Said in `walk`, with the node at hand. */
const ELSEWHERE: ReadonlySet<ErrorCode> = new Set<ErrorCode>(['DUPLICATE_KEY', 'TAG_RESOLVE_FAILED', 'BAD_ALIAS', 'NON_STRING_KEY']);

/** Errors and warnings alike, in the order of the text; what only follows from an earlier one is left out. */
export function syntaxFindings(text: string, document: Document.Parsed): readonly Finding[] {
  const complaints = [...document.errors, ...document.warnings].filter((e) => !ELSEWHERE.has(e.code)).sort((a, b) => a.pos[0] - b.pos[0]);
  const all = new Map(complaints.map((e) => [mark(e.code, e.pos[0]), e]));
  const told = complaints.filter((e) => e.code !== 'MULTILINE_IMPLICIT_KEY' || !companion(all, 'BLOCK_AS_IMPLICIT_KEY', e));
  const last = told.findIndex((e) => LAST.has(codeOf(e)));
  const at: At = { text, all, ...(complaints.length > 0 ? spans(document) : { brackets: [], quotes: [] }) };
  const found = (last < 0 ? told : told.slice(0, last + 1)).map((e) => finding(at, e)).sort((a, b) => a.from - b.from);
  const taken = hashInBrackets(text);
  const isItsDoing = (f: Finding) => f.code === 'read.unclosed' || f.code === 'read.not-followed';
  return taken && found.some(isItsDoing) ? [...found.filter((f) => f.from < taken.from && !isItsDoing(f)), taken] : found;
}

/** After one of these the library is lost, and all its further complaints are about that. */
const LAST: ReadonlySet<string> = new Set(['read.extra-bracket', 'read.unclosed-quote']);

function codeOf(e: YAMLError): string {
  return CODES.find(([of, message]) => of === e.code && message.test(e.message))?.[2] ?? 'read.not-followed';
}

type Stretch = { readonly from: number; readonly to: number };
type At = { readonly text: string; readonly all: Complaints; readonly brackets: readonly Stretch[]; readonly quotes: readonly Stretch[] };

function finding({ text, all, brackets, quotes }: At, e: YAMLError): Finding {
  const code = codeOf(e);
  const [from, to] = e.pos;
  const word = shown(lineAt(text, from));
  const character = shown(text.slice(from, from + 1));
  if (code === 'read.missing-comma') return { code, from, to, grounds: { word: shown(text.slice(from, Math.max(to, from + 1))) } };
  if (code === 'read.unclosed') return { code, ...opening(brackets, from), grounds: { word } };
  if (code === 'read.unclosed-quote') return { code, ...opening(quotes, from), grounds: {} };
  if (code === 'read.indent') return indent(text, from);
  if (code !== 'read.two-keys') return { code, from, to, grounds: { word, character } };
  const further = companion(all, 'MULTILINE_IMPLICIT_KEY', e);
  return further ? indent(text, further.pos[1] - 1) : { code, from, to: from + restOfLine(text, from), grounds: { word } };
}

type Complaints = ReadonlyMap<string, YAMLError>;
const mark = (code: ErrorCode, from: number): string => `${code} ${from}`;

/** The library's second complaint of the same place, or of the next to it. */
function companion(all: Complaints, code: ErrorCode, e: YAMLError): YAMLError | undefined {
  const [from] = e.pos;
  return all.get(mark(code, from)) ?? all.get(mark(code, from + 1)) ?? all.get(mark(code, from - 1));
}

function restOfLine(text: string, from: number): number {
  return (/^[^\r\n]*/.exec(text.slice(from, from + NEAR))?.[0] ?? '').trimEnd().length;
}

/** The line of the offset stands in a column that fits nothing above it. */
function indent(text: string, offset: number): Finding {
  const line = lineAt(text, offset);
  const from = lineStart(text, offset) + (line.length - line.trimStart().length);
  return { code: 'read.indent', from, to: from + line.trim().length, grounds: { word: shown(line) } };
}

/** What lies between brackets, and what between quotes, each in the order of the text. */
function spans(document: Document.Parsed): { readonly brackets: readonly Stretch[]; readonly quotes: readonly Stretch[] } {
  const brackets: Stretch[] = [];
  const quotes: Stretch[] = [];
  visit(document, (_, node) => {
    const range = isNode(node) ? node.range : undefined;
    if (!range) return;
    if (isCollection(node) && node.flow) brackets.push({ from: range[0], to: range[1] });
    if (isScalar(node) && node.type?.startsWith('QUOTE')) quotes.push({ from: range[0], to: range[1] });
  });
  return { brackets, quotes };
}

/** The one that is still open at the offset: the innermost, so the last to begin. Its first letter. */
function opening(stretches: readonly Stretch[], offset: number): Stretch {
  const from = stretches.findLast((s) => s.from < offset && s.to >= offset - 1)?.from ?? offset;
  return { from, to: from + 1 };
}

/** `[#40, #30]` or `{ drill: #40 }`: the rest of the line is a comment to YAML, so that the bracket never closes. */
function hashInBrackets(text: string): Finding | undefined {
  const match = /^(?:[^#\n]*[[{,:])[ \t]*(#[0-9][0-9A-Za-z]*)/m.exec(text);
  if (!match?.[1] || !/[[{]/.test(match[0])) return undefined;
  const from = match.index + match[0].length - match[1].length;
  return { code: 'read.comment-taken-in-list', from, to: from + match[1].length, grounds: { word: match[1] } };
}

/** The line of the offset; of a monstrous one, what stands near. */
function lineAt(text: string, offset: number): string {
  const end = text.slice(offset, offset + NEAR).indexOf('\n');
  return text.slice(lineStart(text, offset), end < 0 ? offset + NEAR : offset + end);
}

function lineStart(text: string, offset: number): number {
  const near = Math.max(0, offset - NEAR);
  return near + text.slice(near, offset).lastIndexOf('\n') + 1;
}
const NEAR = 500;
