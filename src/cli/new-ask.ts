/** Puts questions one after another: what it is for, an example, what Enter gives; an answer that the file's reader refuses is asked again. */
import { askedWords } from '../base/asked-words.ts';
import type { Diagnostic } from '../base/diagnostics.ts';
import { ownWords } from '../base/own-words.ts';
import { enriched } from '../base/report.ts';
import type { Words } from '../base/words.ts';
import type { Entries, Question, Step } from '../fittings/question.ts';
import { type Answer, fileOf } from './new-file.ts';

export type Asking = {
  readonly say: Words;
  /** 'workshop' or the kind: first part of the words' ids. */
  readonly about: string;
  readonly lines: AsyncIterator<string, unknown>;
  show(text: string): void;
  /** What the reader finds in a whole file. */
  judge(text: string): readonly Diagnostic[];
};

/** All answers, or the key at which no more came. */
export type Asked = { readonly answers: readonly Answer[] } | { readonly endedAt: string };

/** `before`: lines 'key: value' that stand first and are not asked. */
export async function askAll(asking: Asking, steps: readonly Step[], before: readonly string[]): Promise<Asked> {
  const answers: Answer[] = before.map((line) => ({ path: [line.slice(0, line.indexOf(':'))], value: line.slice(line.indexOf(':') + 2) }));
  for (const step of steps) {
    const endedAt = await ('list' in step ? askEntries(asking, step, answers) : askOne(asking, step, [], answers));
    if (endedAt !== undefined) return { endedAt };
  }
  return { answers };
}

/** The key at which no more answers came, if so. */
async function askEntries(asking: Asking, { list, least, each }: Entries, answers: Answer[]): Promise<string | undefined> {
  for (let n = 0; ; n += 1) {
    const more = n < least ? 'yes' : await wantsOne(asking, list, n);
    if (more !== 'yes') return more === undefined ? list : undefined;
    for (const question of each) {
      const endedAt = await askOne(asking, question, [list, n], answers);
      if (endedAt !== undefined) return endedAt;
    }
  }
}

async function wantsOne(asking: Asking, list: string, n: number): Promise<string | undefined> {
  const { what } = askedWords(asking.say, `${asking.about}.${list}`);
  const text = n === 0 ? asking.say.say('new.any', { list, what }) : asking.say.say('new.another', { list });
  for (;;) {
    const heard = await ask(asking, text);
    const said = heard === undefined ? undefined : plainAnswer(heard, asking.say);
    if (said === undefined || ['', 'no', 'yes'].includes(said)) return said;
    asking.show(`${asking.say.say('error.read.not-yes-or-no.do')}\n`);
  }
}

/** Yes and no may be said in the words' own language; a file says 'yes' and 'no' in all. */
export function plainAnswer(said: string, say: Words): string {
  const word = said.toLowerCase();
  return word === say.say('new.yes') ? 'yes' : word === say.say('new.no') ? 'no' : word;
}

async function askOne(asking: Asking, question: Question, within: Answer['path'], answers: Answer[]): Promise<string | undefined> {
  if (!applies(question, within, answers)) return undefined;
  const path = [...within, ...question.key.split('.')];
  for (;;) {
    const said = await ask(asking, prompt(asking, question, within));
    if (said === undefined) return question.key;
    const answer = fitting(asking, answers, path, said === '' ? usualOf(question, asking.say) : said);
    if (!('found' in answer)) {
      answers.push(answer);
      return undefined;
    }
    for (const d of answer.found) asking.show(`${complaint(d, asking.say)}\n`);
  }
}

function applies({ when, unless, beside }: Question, within: Answer['path'], answers: readonly Answer[]): boolean {
  const said = (key: string): string | undefined =>
    answers.findLast((a) => a.path.join('.') === [...within, key].join('.'))?.value ?? undefined;
  if (unless !== undefined && (said(unless) !== undefined || isSkipped(unless, within, answers))) return false;
  if (beside !== undefined && said(beside) === undefined) return false;
  return when === undefined || when.is.includes(said(when.key) ?? '');
}

/** The key was not asked at all, because an earlier one made it needless. */
const isSkipped = (key: string, within: Answer['path'], answers: readonly Answer[]): boolean =>
  !answers.some((a) => a.path.join('.') === [...within, key].join('.'));

/** As typed if the reader takes it so, else as a text between quotes; else what is wrong with it. */
function fitting(
  asking: Asking,
  answers: readonly Answer[],
  path: Answer['path'],
  value: string | undefined,
): Answer | { readonly found: readonly Diagnostic[] } {
  const tries = value === undefined ? [undefined] : [value, JSON.stringify(value)];
  const judged = tries.map((one) => ({ path, value: one })).map((one) => ({ one, found: faults(asking, answers, one) }));
  const good = judged.find(({ found }) => found.length === 0);
  return good?.one ?? { found: judged[0]?.found ?? [] };
}

/** What is found about this answer; that later keys are missing is no fault of it. */
function faults({ judge, about, say }: Asking, answers: readonly Answer[], answer: Answer): readonly Diagnostic[] {
  const name = answer.path
    .map((key) => (typeof key === 'number' ? `[${key + 1}]` : `.${key}`))
    .join('')
    .replace(/^\./, '');
  const found = judge(fileOf([], [...answers, answer], about, say));
  const own = found.filter(({ grounds }) => typeof grounds.path === 'string' && (grounds.path === name || inside(grounds.path, name)));
  const syntax = found.filter(({ grounds, code }) => grounds.path === undefined && code !== 'read.unknown-key' && code.startsWith('read.'));
  return [...own, ...(answer.value === undefined ? [] : syntax)].slice(0, 1);
}

const inside = (path: string, name: string): boolean => path.startsWith(`${name}.`) || path.startsWith(`${name}[`);

/** What Enter gives; a title in the language of the words. */
const usualOf = ({ key, usual }: Question, say: Words): string | undefined =>
  usual !== undefined && key === 'title' ? ownWords('title', usual, say) : usual;

function prompt({ say, about }: Asking, question: Question, within: Answer['path']): string {
  const { key } = question;
  const usual = usualOf(question, say);
  const id = [about, ...within.filter((one) => typeof one === 'string'), key].join('.');
  const { what, example } = askedWords(say, id);
  const n = within.find((one) => typeof one === 'number');
  const name = n === undefined ? key : `${within[0]} ${n + 1}, ${key}`;
  return say.say(usual === undefined ? 'new.ask-open' : 'new.ask', { key: name, what, example, usual: usual ?? '' });
}

/** A line, trimmed; nothing where no more come. */
export async function ask({ lines, show }: Pick<Asking, 'lines' | 'show'>, text: string): Promise<string | undefined> {
  show(`${text}\n> `);
  const next = await lines.next();
  return next.done ? undefined : String(next.value).trim();
}

function complaint(d: Diagnostic, say: Words): string {
  const grounds = enriched(d, say);
  return say.say('new.complaint', { what: say.say(`error.${d.code}`, grounds), todo: say.say(`error.${d.code}.do`, grounds) });
}
