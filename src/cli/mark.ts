/** `mark`: an order of strips, from a file or from standard input, judged against the rules. */
import type { Diagnostic } from '../base/diagnostics.ts';
import type { Words } from '../base/words.ts';
import { type Read, readStandardInput, readUserFile } from '../files.ts';
import type { PartId } from '../model/ids.ts';
import type { Plan } from '../model/plan.ts';
import type { Marked } from '../phases/sheet/exercise/marking.ts';
import { partsOf, provedPlan, refuse } from './exercise.ts';
import { wrap } from './help.ts';
import { type Job, type Options, runJob } from './job.ts';
import type { Console, Exit, Tools } from './tools.ts';

const INDENT = 4;

export async function mark(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  const job = await runJob(asked[0] ?? '', options, tools);
  const plan = await provedPlan(job, options, console);
  if (!plan.value) return plan.exit;
  const path = asked[1] ?? '-';
  const order = path === '-' ? readStandardInput() : readUserFile(path);
  if (!order.value) return refuse(order.found, job, options, console);
  const sources = { ...job.sources, [order.value.name]: { path: order.value.name === '-' ? '-' : path, text: order.value.text } };
  const judged = await judge(plan.value, order.value, options, job);
  if (!judged.marked) return refuse(judged.found, { ...job, sources }, options, console);
  if ('json' in options) console.out(`${JSON.stringify({ exit: 0, ...plain(judged.marked, job.words) }, null, 2)}\n`);
  else console.out(told(judged.marked, job.words));
  return 0;
}

type Judged = { readonly marked?: Marked; readonly found: readonly Diagnostic[] };

async function judge(plan: Plan, order: Read, options: Options, job: Job): Promise<Judged> {
  const parts = partsOf(plan, options.part);
  if (!parts.value) return parts;
  const ofFitting = plan.parts.filter(({ part }) => part.use === 'fitting').map(({ part }) => part.id);
  const part = onlyOne(options.part === undefined ? ofFitting : parts.value);
  if (part === undefined) return { found: [{ code: 'cli.which-part', severity: 'error', grounds: { any: parts.value.join(', ') } }] };
  const { exerciseOf, markOrder, readOrder } = await import('../phases/sheet/exercise.ts');
  const { puzzle, strips } = exerciseOf(plan, part, job.words);
  const read = readOrder(order.text, order.name, strips);
  return read.value ? { marked: markOrder(puzzle, strips, read.value), found: [] } : read;
}

const onlyOne = (parts: readonly PartId[]): PartId | undefined => (parts.length === 1 ? parts[0] : undefined);

const letters = (strips: readonly { readonly letter: string }[]): string => strips.map((strip) => strip.letter).join(' ');

function told(marked: Marked, words: Words): string {
  if (marked.right) return `${words.say('mark.right')}\n`;
  const said = reasons(marked, words).flatMap(({ what, why }) => [...wrap(what, 0), ...wrap(why, INDENT)]);
  const moves = marked.move.map((strip) => words.say('mark.strip', strip));
  return [
    words.say('mark.broken', { n: marked.broken.length + marked.interrupted.length }),
    ...said,
    ...wrap(words.say('mark.move', { n: marked.move.length, strips: moves.join('; ') }), 0),
    ...wrap(words.say('mark.mended', { letters: letters(marked.mended) }), 0),
    '',
  ].join('\n');
}

function reasons({ broken, interrupted }: Marked, words: Words): readonly { readonly what: string; readonly why: string }[] {
  const pairs = broken.map(({ first, then, because }) => {
    const { rule, grounds } = because;
    const otherwise = words.has(`rule.${rule}.otherwise`) ? words.say(`rule.${rule}.otherwise`, grounds) : '';
    const facts = { first: first.letter, firstTitle: first.title, then: then.letter, thenTitle: then.title };
    return { what: words.say('mark.pair', facts), why: words.say('mark.why', { why: words.say(`rule.${rule}.why`, grounds), otherwise }) };
  });
  const holds = interrupted.map((strips) => ({
    what: words.say('mark.hold', { hold: strips[0]?.hold ?? '', letters: letters(strips) }),
    why: words.say('mark.why', { why: words.say('rule.order-hold-once.why'), otherwise: words.say('rule.order-hold-once.otherwise') }),
  }));
  return [...pairs, ...holds];
}

function plain(marked: Marked, words: Words): Record<string, unknown> {
  return {
    right: marked.right,
    broken: marked.broken.map(({ first, then, because }) => ({ first: first.op, then: then.op, rule: because.rule })),
    interrupted: marked.interrupted.map((strips) => strips.map((strip) => strip.op)),
    said: reasons(marked, words),
    move: marked.move.map((strip) => strip.letter),
    mended: marked.mended.map((strip) => strip.letter),
  };
}
