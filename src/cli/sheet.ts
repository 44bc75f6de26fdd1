/** `sheet`: plan, prove, and write the sheet. No proof, no sheet, except as a draft. */
import { basename, extname } from 'node:path';
import { writeAll } from '../files.ts';
import type { Plan } from '../model/plan.ts';
import { showFindings } from '../render/findings.ts';
import type { Format } from './commands.ts';
import { failedClaims, type Job, type Options, plainFinding, runJob, tellFindings } from './job.ts';
import { tellFailures, tellNoRoutes } from './reasons.ts';
import type { Console, Exit, Tools } from './tools.ts';

const FOLDER = 'out';
const ENDINGS: Readonly<Record<Format, string>> = { pdf: 'pdf', text: 'txt', json: 'json' };

export async function sheet(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  const [path = ''] = asked;
  const job = await runJob(path, options, tools);
  if (!('json' in options)) tellFindings(job, console);
  const { plan } = job.compiled;
  if (!plan || !job.inputs) {
    if (!('json' in options)) await tellNoRoutes(job, console);
    return end(1, [], job, options, console);
  }
  const failures = failedClaims(plan);
  const draft = 'draft' in options;
  if (failures.length > 0 && !('json' in options))
    tellFailures(draft ? 'cli.proof-failed-draft' : 'cli.proof-failed', failures, job, console);
  if (failures.length > 0 && !draft) return end(2, [], job, options, console);
  const written = await write(path, plan, job, options, tools);
  if (!written.value) {
    if (!('json' in options)) console.err(showFindings(written.found, {}, job.words, console.paint));
    return end(1, [], { ...job, compiled: { ...job.compiled, found: [...job.compiled.found, ...written.found] } }, options, console);
  }
  return end(failures.length > 0 ? 2 : 0, written.value, job, options, console);
}

async function write(path: string, plan: Plan, job: Job, options: Options, tools: Tools) {
  const format = (options.format ?? 'pdf') as Format;
  if (!job.inputs) throw new Error('a plan without its inputs');
  const bytes = await tools.print(plan, format, job.inputs, job.assets);
  return writeAll(options.out ?? FOLDER, [{ name: `${basename(path, extname(path))}.${ENDINGS[format]}`, bytes }]);
}

function end(exit: Exit, written: readonly string[], job: Job, options: Options, console: Console): Exit {
  if ('json' in options) {
    const found = job.compiled.found.map((d) => plainFinding(d, job.words));
    console.out(
      `${JSON.stringify({ exit, written, draft: exit === 2 && written.length > 0, mark: job.compiled.plan?.mark ?? null, found }, null, 2)}\n`,
    );
  } else for (const path of written) console.out(`${job.words.say(exit === 2 ? 'cli.wrote-draft' : 'cli.wrote', { path })}\n`);
  return exit;
}
