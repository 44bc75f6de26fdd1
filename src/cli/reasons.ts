/** Tells why there is no plan, or why a plan is not proved. Loaded words and records only; nothing is decided here. */
import { showMm } from '../base/units.ts';
import type { Words } from '../base/words.ts';
import type { FailedClaim, Job } from './job.ts';
import type { Console } from './tools.ts';

/** For each part that cannot be planned: what was refused and what would help. */
export async function tellNoRoutes(job: Job, console: Console): Promise<void> {
  const none = job.compiled.noRoutes ?? [];
  if (none.length === 0) return;
  const { whyNot } = await import('../phases/why.ts');
  const { showWhyNot } = await import('../render/why.ts');
  for (const each of none) console.err(showWhyNot(whyNot(each), job.words));
}

/** `heading`: the words' id of the line above, told how many there are. */
export function tellFailures(heading: string, failures: readonly FailedClaim[], job: Job, console: Console): void {
  console.err(`${console.paint.error(job.words.say(heading, { n: failures.length }))}\n`);
  for (const failure of failures) console.err(`  ${sayClaim(failure, job.words)}\n`);
}

export function sayClaim({ part, claim }: FailedClaim, words: Words): string {
  const worst = claim.worst;
  const figures = worst
    ? { lo: showMm(worst.lo), hi: showMm(worst.hi), least: showMm(worst.limits.lo), most: showMm(worst.limits.hi) }
    : {};
  return words.say('why.claim', {
    part,
    at: claim.at ?? '',
    claim: words.say(`claim.${claim.kind.replaceAll(' ', '-')}`),
    about: claim.about,
    worst: worst !== undefined,
    ...figures,
  });
}
