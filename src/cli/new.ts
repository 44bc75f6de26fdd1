/** `new`: asks for a workshop or a fitting, checks each answer with the reader of the file, and writes the file with comments. */
import { basename, dirname } from 'node:path';
import { type Diagnostic, failed } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import { readSource } from '../base/source.ts';
import type { Words } from '../base/words.ts';
import { isThere, loadAssets, notWritable, writeAll } from '../files.ts';
import { FITTING_KINDS } from '../fittings/kinds.ts';
import type { Step } from '../fittings/question.ts';
import { FITTING_QUESTIONS } from '../fittings/questions.ts';
import type { Assets } from '../model/assets.ts';
import { read, readWorkshop } from '../phases/read.ts';
import { nothing, tell } from './console.ts';
import type { Options } from './job.ts';
import { type Asking, ask, askAll, plainAnswer } from './new-ask.ts';
import { fileOf } from './new-file.ts';
import { kindsOfNew, WORKSHOP } from './new-kinds.ts';
import { workshopQuestions } from './new-questions.ts';
import { speech } from './speech.ts';
import type { Console, Exit } from './tools.ts';

export async function makeNew(asked: readonly string[], options: Options, console: Console): Promise<Exit> {
  const [kind = '', path = `my-${kind}.yaml`] = asked;
  const assets = loadAssets(options.language);
  const say = speech(assets.words, options.language);
  const steps = stepsOf(kind, assets);
  if (!steps) return refuse([unknownKind(kind)], say, console);
  const barred = notWritable(dirname(path), [basename(path)]);
  if (barred) return refuse([barred], say, console);
  const lines: AsyncIterator<string, unknown> = console.answers?.() ?? nothing();
  const asking: Asking = { say, about: kind, lines, show: (text) => console.out(text), judge: (text) => judge(kind, text, assets) };
  console.out(`${say.say('new.begin', { kind, path })}\n\n`);
  try {
    if (!isThere(path)) return await interview({ kind, path, steps }, asking, console);
    const over = await ask(asking, say.say('new.overwrite', { path }));
    if (over !== undefined && plainAnswer(over, say) === 'yes') return await interview({ kind, path, steps }, asking, console);
    console.out(`${say.say('new.kept', { path })}\n`);
    return 1;
  } finally {
    await lines.return?.();
  }
}

type Wanted = { readonly kind: string; readonly path: string; readonly steps: readonly Step[] };

async function interview({ kind, path, steps }: Wanted, asking: Asking, console: Console): Promise<Exit> {
  const { say } = asking;
  const got = await askAll(asking, steps, headKeys(kind));
  if ('endedAt' in got) {
    console.out('\n');
    return refuse([{ code: 'cli.answers-end', severity: 'error', grounds: { key: got.endedAt, path } }], say, console);
  }
  const text = fileOf(headOf(kind, say), got.answers, kind, say);
  const found = asking.judge(text);
  if (failed(found)) return refuse(found, say, console);
  const written = writeAll(dirname(path), [{ name: basename(path), bytes: text }]);
  if (!written.value) return refuse(written.found, say, console);
  console.out(`\n${say.say(kind === WORKSHOP ? 'new.wrote-workshop' : 'new.wrote', { path })}\n`);
  return 0;
}

function stepsOf(kind: string, assets: Assets): readonly Step[] | undefined {
  if (kind === WORKSHOP) return workshopQuestions(readSource(assets.workshop.name, assets.workshop.text).value?.value);
  return Object.hasOwn(FITTING_QUESTIONS, kind) ? FITTING_QUESTIONS[kind] : undefined;
}

/** A fitting says first what it is; a workshop begins with its name. */
const headKeys = (kind: string): readonly string[] => (kind === WORKSHOP ? [] : [`fitting: ${kind}`]);
const headOf = (kind: string, say: Words): readonly string[] => [
  say.say(kind === WORKSHOP ? 'new.head-workshop' : 'new.head', { kind }),
  say.say('new.head-units'),
];

/** All that the reader finds in a file so far. */
function judge(kind: string, text: string, { workshop }: Assets): readonly Diagnostic[] {
  const file = { name: 'answer', text };
  return kind === WORKSHOP ? readWorkshop(file).found : read({ fitting: file }, workshop, FITTING_KINDS).found;
}

function unknownKind(word: string): Diagnostic {
  const grounds = { word, any: kindsOfNew.join(', '), near: nearest(word, kindsOfNew) ?? '' };
  return { code: 'cli.no-such-new', severity: 'error', grounds };
}

function refuse(found: readonly Diagnostic[], say: Words, console: Console): Exit {
  tell(found, {}, say, console);
  return 1;
}
