/** What is said to a terminal: in colour only where a person looks on and has not asked for none. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { report } from '../base/report.ts';
import type { Words } from '../base/words.ts';
import type { Console, Paint } from './tools.ts';

const PLAIN: Paint = { error: (text) => text, warning: (text) => text, dim: (text) => text };
const COLOUR: Paint = { error: paintWith('1;31'), warning: paintWith('1;33'), dim: paintWith('2') };

/** The user's texts by the name that places carry, and the path as it was typed, which a terminal can open. */
export type Sources = Readonly<Record<string, { readonly path: string; readonly text: string }>>;
type Stream = { readonly isTTY?: boolean; write(text: string): unknown };
type Environment = Readonly<Record<string, string | undefined>>;

export function consoleOf(out: Stream, err: Stream, environment: Environment, input?: NodeJS.ReadableStream): Console {
  const looked = err.isTTY === true && environment.TERM !== 'dumb';
  return {
    ...(looked ? { progress: (text: string) => void err.write(`\r\u001b[K${text}`) } : {}),
    out: (text) => void out.write(text),
    err: (text) => void err.write(text),
    answers: () => (input ? linesOf(input) : nothing()),
    paint: looked && !environment.NO_COLOR ? COLOUR : PLAIN,
  };
}

export async function* nothing(): AsyncGenerator<string> {}

/** What reads lines is loaded when somebody is asked: most commands ask nothing. */
async function* linesOf(input: NodeJS.ReadableStream): AsyncGenerator<string> {
  const { createInterface } = await import('node:readline');
  yield* createInterface({ input });
}

/** Writes all of `found` to the error stream; nothing when there is nothing. */
export function tell(found: readonly Diagnostic[], sources: Sources, words: Words, console: Console): void {
  if (found.length === 0) return;
  const placed = found.map((d) => withPath(d, sources));
  const texts = Object.fromEntries(Object.values(sources).map(({ path, text }) => [path, text]));
  console.err(painted(report(placed, texts, words), words, console.paint));
}

function withPath(d: Diagnostic, sources: Sources): Diagnostic {
  const source = d.place && Object.hasOwn(sources, d.place.file) ? sources[d.place.file] : undefined;
  return d.place && source ? { ...d, place: { ...d.place, file: source.path } } : d;
}

/** Colours the word that says how grave a finding is. */
function painted(text: string, words: Words, paint: Paint): string {
  const shades = (['error', 'warning'] as const).map((grade) => ({ grade, word: `${words.say(`report.${grade}`)}:` }));
  return text
    .split('\n')
    .map((line) => {
      const shade = shades.find(({ word }) => line.startsWith(word) || line.includes(`: ${word}`));
      return shade ? line.replace(shade.word, paint[shade.grade](shade.word)) : line;
    })
    .join('\n');
}

function paintWith(code: string): (text: string) => string {
  return (text) => `\u001b[${code}m${text}\u001b[0m`;
}
