/** `exercise`: the operations of a plan shuffled, as strips to cut out, with an answer page; a PDF to print and the same as text. */
import { basename, extname } from 'node:path';
import type { Diagnostic, Outcome } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import { loadFonts, writeAll } from '../files.ts';
import type { PartId } from '../model/ids.ts';
import type { Plan } from '../model/plan.ts';
import { tell } from './console.ts';
import { failedClaims, type Job, type Options, plainFinding, runJob, tellFindings, wishOf } from './job.ts';
import { packed } from './packed.ts';
import { tellFailures, tellNoRoutes } from './reasons.ts';
import type { Console, Exit, Tools } from './tools.ts';

const FOLDER = 'out';

export async function exercise(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  const path = asked[0] ?? '';
  const job = await runJob(path, options, tools);
  const plan = await provedPlan(job, options, console);
  if (!plan.value) return plan.exit;
  const parts = partsOf(plan.value, options.part);
  if (!parts.value) return refuse(parts.found, job, options, console);
  const { exercisePages } = await import('../phases/sheet/exercise.ts');
  const { view, document } = exercisePages(plan.value, parts.value, {
    words: job.words,
    advances: job.assets.advances,
    language: job.assets.language,
    ...wishOf(job, options),
  });
  const pdf = await (await import('../render/pdf.ts')).writePdf(document, loadFonts(), packed);
  const text = (await import('../render/text.ts')).writeText(view, document);
  const name = `${basename(path, extname(path))}${options.part === undefined ? '' : `-${options.part}`}-exercise`;
  const written = writeAll(options.out ?? FOLDER, [
    { name: `${name}.pdf`, bytes: pdf },
    { name: `${name}.txt`, bytes: text },
  ]);
  if (!written.value) return refuse(written.found, job, options, console);
  if ('json' in options) console.out(`${JSON.stringify({ exit: 0, written: written.value, found: [] }, null, 2)}\n`);
  else for (const each of written.value) console.out(`${job.words.say('cli.wrote', { path: each })}\n`);
  return 0;
}

/** No exercise from a plan that is not there or not proved: what stands in its way is told. */
export async function provedPlan(job: Job, options: Options, console: Console): Promise<{ readonly value?: Plan; readonly exit: Exit }> {
  const { plan, found } = job.compiled;
  const failures = plan ? failedClaims(plan) : [];
  if (plan && failures.length === 0) {
    if (!('json' in options)) tellFindings(job, console);
    return { value: plan, exit: 0 };
  }
  const exit = plan ? 2 : 1;
  if ('json' in options) console.out(`${JSON.stringify({ exit, found: found.map((d) => plainFinding(d, job.words)) }, null, 2)}\n`);
  else {
    tellFindings(job, console);
    await tellNoRoutes(job, console);
    if (failures.length > 0) tellFailures('cli.proof-failed', failures, job, console);
  }
  return { exit };
}

/** Parts of which there is something to put in order; the one that is named, or all. */
export function partsOf(plan: Plan, named: string | undefined): Outcome<readonly PartId[]> {
  const any = plan.parts.filter(({ route }) => route.setUps.flatMap((s) => s.operations).length > 1).map(({ part }) => part.id);
  if (named === undefined) return { value: any, found: [] };
  if (any.includes(named)) return { value: [named], found: [] };
  const grounds = { word: named, any: any.join(', '), near: nearest(named, any) ?? '' };
  return { found: [{ code: 'cli.no-such-part', severity: 'error', grounds }] };
}

export function refuse(found: readonly Diagnostic[], job: Job, options: Options, console: Console): Exit {
  if ('json' in options) console.out(`${JSON.stringify({ exit: 1, found: found.map((d) => plainFinding(d, job.words)) }, null, 2)}\n`);
  else tell(found, job.sources, job.words, console);
  return 1;
}
