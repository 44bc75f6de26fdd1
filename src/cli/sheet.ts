/** `sheet`: plan, prove, and write the sheet. No proof, no sheet, except as a draft. */
import { basename, extname } from 'node:path';
import type { Diagnostic } from '../base/diagnostics.ts';
import { writeAll } from '../files.ts';
import type { Format } from './commands.ts';
import { tell } from './console.ts';
import { type FailedClaim, failedClaims, type Job, type Options, plainFinding, runJob, wishOf } from './job.ts';
import { sayClaim, tellFailures, tellNoRoutes } from './reasons.ts';
import { each } from './several.ts';
import type { Console, Exit, Tools } from './tools.ts';

const FOLDER = 'out';
const ENDINGS: Readonly<Record<Format, string>> = { pdf: 'pdf', text: 'txt', json: 'json' };

type Done = {
  readonly exit: Exit;
  readonly written: readonly string[];
  readonly found: readonly Diagnostic[];
  readonly failures: readonly FailedClaim[];
};

export async function sheet(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  return each('sheet', asked, options, console, async (path) => {
    const job = await runJob(path, options, tools);
    const done = await write(path, job, options, tools);
    return { exit: done.exit, plain: plain(done, job), tell: () => tellDone(done, job, options, console) };
  });
}

async function write(path: string, job: Job, options: Options, tools: Tools): Promise<Done> {
  const { plan, found } = job.compiled;
  if (!plan) return { exit: 1, written: [], found, failures: [] };
  const failures = failedClaims(plan);
  const proved = failures.length === 0;
  if (!proved && !('draft' in options)) return { exit: 2, written: [], found, failures };
  const format = (options.format ?? 'pdf') as Format;
  const learner = options.edition === 'learner';
  const planned = {
    ...job.compiled,
    plan,
    wish: wishOf(job, options),
    ...(job.inputs ? { inputs: job.inputs } : {}),
    edition: learner ? ('learner' as const) : ('bench' as const),
  };
  const bytes = await tools.print(planned, format, job.assets, job.words);
  const written = writeAll(options.out ?? FOLDER, [
    { name: `${basename(path, extname(path))}${learner ? '-learner' : ''}.${ENDINGS[format]}`, bytes },
  ]);
  const all = [...found, ...written.found];
  return written.value
    ? { exit: proved ? 0 : 2, written: written.value, found: all, failures }
    : { exit: 1, written: [], found: all, failures };
}

async function tellDone(done: Done, job: Job, options: Options, console: Console): Promise<void> {
  tell(done.found, job.sources, job.words, console);
  await tellNoRoutes(job, console);
  if (done.failures.length > 0)
    tellFailures('draft' in options ? 'cli.proof-failed' : 'cli.proof-failed-no-sheet', done.failures, job, console);
  for (const path of done.written) console.out(`${job.words.say(done.exit === 2 ? 'cli.wrote-draft' : 'cli.wrote', { path })}\n`);
}

function plain(done: Done, job: Job): Record<string, unknown> {
  return {
    exit: done.exit,
    written: done.written,
    draft: done.exit === 2 && done.written.length > 0,
    mark: job.compiled.plan?.mark ?? null,
    found: done.found.map((d) => plainFinding(d, job.words)),
    noRoutes: job.compiled.noRoutes ?? [],
    failed: done.failures.map((f) => ({ part: f.part, ...f.claim, message: sayClaim(f, job.words) })),
  };
}
