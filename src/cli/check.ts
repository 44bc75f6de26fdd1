/** `check`: everything but writing; what is found is listed. */

import { ownWords } from '../base/own-words.ts';
import type { Words } from '../base/words.ts';
import { short } from '../drawing/sheet/format.ts';
import type { Plan } from '../model/plan.ts';
import { hoursOf } from '../phases/sheet/stock.ts';
import { takenLines } from '../phases/sheet/taken.ts';
import { plainChart, tellChart } from './chart-table.ts';
import { failedClaims, type Job, type Options, plainFinding, runJob, tellFindings } from './job.ts';
import { sayClaim, tellFailures, tellNoRoutes } from './reasons.ts';
import { each } from './several.ts';
import type { Console, Exit, Tools } from './tools.ts';

export async function check(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  return each('check', asked, options, console, async (path) => {
    const job = await runJob(path, options, tools);
    const exit = judge(job);
    return { exit, plain: plain(job, exit), tell: () => tell(job, console) };
  });
}

function judge(job: Job): Exit {
  const { plan } = job.compiled;
  if (!plan) return 1;
  return failedClaims(plan).length > 0 ? 2 : 0;
}

async function tell(job: Job, console: Console): Promise<void> {
  tellFindings(job, console);
  await tellNoRoutes(job, console);
  const { plan, found } = job.compiled;
  const errors = found.filter((d) => d.severity === 'error').length;
  if (found.length > 0) console.err(`${job.words.say('cli.found', { errors, warnings: found.length - errors })}\n`);
  if (!plan) return;
  tellChart(plan, job.words, console);
  const failures = failedClaims(plan);
  if (failures.length > 0) return tellFailures('cli.proof-failed', failures, job, console);
  const setUps = plan.parts.reduce((sum, p) => sum + p.route.cost.setUps, 0);
  tellBar(plan, job.words, console);
  tellTaken(plan, job.words, console);
  const claims = plan.parts.reduce((sum, p) => sum + p.proof.claims.length, plan.day?.proof.claims.length ?? 0);
  console.out(`${job.words.say('cli.check-good', { parts: plan.parts.length, setUps, claims })}\n`);
}

function plain(job: Job, exit: Exit): Record<string, unknown> {
  const { plan, found, noRoutes } = job.compiled;
  const failures = plan ? failedClaims(plan) : [];
  return {
    exit,
    found: found.map((d) => plainFinding(d, job.words)),
    noRoutes: noRoutes ?? [],
    failed: failures.map((f) => ({ part: f.part, ...f.claim, message: sayClaim(f, job.words) })),
    parts: (plan?.parts ?? []).map((p) => ({
      part: p.part.id,
      setUps: p.route.cost.setUps,
      proved: p.route.proved,
      claims: p.proof.claims.length,
      holds: p.proof.holds,
      replays: p.proof.replays,
      ...(p.proof.volume === undefined ? {} : { volume: p.proof.volume }),
    })),
    ...(plan?.stock ? { stock: plan.stock } : {}),
    ...(plan?.time ? { time: plan.time } : {}),
    ...(plan?.day ? { day: { ...plan.day, proof: { claims: plan.day.proof.claims.length, holds: plan.day.proof.holds } } } : {}),
    taken: plan?.workshop.taken ?? [],
    chart: plan ? plainChart(plan) : [],
    mark: plan?.mark ?? null,
  };
}

function tellBar({ stock, time }: Plan, words: Words, console: Console): void {
  for (const { material, section, across, uses, grams, lacks } of stock?.kinds ?? []) {
    const facts = { uses: short(uses), grams: Math.round(grams ?? 0), lacks: lacks > 0 ? short(lacks) : '' };
    console.out(
      `${words.say('cli.check-bar', { stock: words.say('stock.bar', { material: ownWords('material', material, words), section, across: short(across) }), ...facts })}\n`,
    );
  }
  if (time) console.out(`${words.say('cli.check-time', { hours: hoursOf(time.whole, words) })}\n`);
}

function tellTaken({ workshop }: Plan, words: Words, console: Console): void {
  const lines = takenLines(workshop.taken, words, short);
  if (lines.length > 0) console.out(`${words.say('cli.check-taken')}\n`);
  for (const line of lines) console.out(`${words.say('cli.check-taken-line', { line })}\n`);
}
