/** What the YAML library complains of, in this project's own codes, and the few traps that it falls into silently. */
import type { Document, ErrorCode } from 'yaml';
import { shown } from '../written.ts';
import type { Finding } from './walk.ts';

/** After one of these the rest of the text may mean anything: nothing else of the file is reported. */
export const BREAKS: ReadonlySet<string> = new Set([
  'read.too-deep',
  'read.unclosed',
  'read.unclosed-quote',
  'read.not-followed',
  'read.levels',
  'read.no-colon',
  'read.two-documents',
  'read.comment-taken-in-list',
  'read.tab',
]);

const CODES: Partial<Record<ErrorCode, string>> = {
  TAB_AS_INDENT: 'read.tab',
  MULTIPLE_DOCS: 'read.two-documents',
  BAD_SCALAR_START: 'read.reserved-character',
  RESOURCE_EXHAUSTION: 'read.too-deep',
  BLOCK_AS_IMPLICIT_KEY: 'read.levels',
  BAD_INDENT: 'read.levels',
  MULTILINE_IMPLICIT_KEY: 'read.no-colon',
  NON_STRING_KEY: 'read.odd-key',
  BLOCK_IN_FLOW: 'read.unclosed',
};

/** Said in `walk`, with the node at hand. */
const ELSEWHERE: ReadonlySet<ErrorCode> = new Set<ErrorCode>(['DUPLICATE_KEY', 'TAG_RESOLVE_FAILED', 'BAD_ALIAS']);

/** Errors and warnings alike, in the order of the text. */
export function syntaxFindings(text: string, document: Document.Parsed): readonly Finding[] {
  const found: Finding[] = [];
  for (const e of [...document.errors, ...document.warnings]) {
    if (ELSEWHERE.has(e.code)) continue;
    const [from, to] = e.pos;
    found.push({
      code: codeOf(e.code, e.message),
      from,
      to,
      grounds: { word: shown(lineAt(text, from)), character: shown(text.slice(from, from + 1)) },
    });
  }
  const taken = hashInBrackets(text);
  if (taken && found.some((f) => f.code === 'read.unclosed' || f.code === 'read.not-followed')) {
    return [...found.filter((f) => f.from < taken.from && f.code !== 'read.unclosed' && f.code !== 'read.not-followed'), taken];
  }
  return found.sort((a, b) => a.from - b.from);
}

function codeOf(code: ErrorCode, message: string): string {
  if (code === 'BAD_INDENT' && /end with a [\]}]/.test(message)) return 'read.unclosed';
  if (code === 'MISSING_CHAR' && /closing ['"]quote/.test(message)) return 'read.unclosed-quote';
  if (code === 'MISSING_CHAR' && /map values/.test(message)) return 'read.no-colon';
  return CODES[code] ?? 'read.not-followed';
}

/** `[#40, #30]` or `{ drill: #40 }`: the rest of the line is a comment to YAML, so that the bracket never closes. */
function hashInBrackets(text: string): Finding | undefined {
  const match = /^(?:[^#\n]*[[{,:])[ \t]*(#[0-9][0-9A-Za-z]*)/m.exec(text);
  if (!match?.[1] || !/[[{]/.test(match[0])) return undefined;
  const from = match.index + match[0].length - match[1].length;
  return { code: 'read.comment-taken-in-list', from, to: from + match[1].length, grounds: { word: match[1] } };
}

function lineAt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  return text.slice(start, end < 0 ? text.length : end);
}
