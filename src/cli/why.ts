/** `why`: the reasons for the order, of all parts in short, of one part, or of one operation in full. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import type { WhyOperation, WhyPart, WhyView } from '../model/why.ts';
import { why as reasons } from '../phases/why.ts';
import { showWhyAll, showWhyOperation, showWhyPart } from '../render/why.ts';
import { tell } from './console.ts';
import { failedClaims, type Job, type Options, plainFinding, runJob, tellFindings } from './job.ts';
import { tellFailures, tellNoRoutes } from './reasons.ts';
import type { Console, Exit, Tools } from './tools.ts';
import { writeGraphs } from './why-graph.ts';

export async function why(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  const job = await runJob(asked[0] ?? '', options, tools);
  const asJson = 'json' in options;
  const { plan } = job.compiled;
  if (!asJson) tellFindings(job, console);
  if (!plan) {
    if (asJson)
      console.out(
        json({ exit: 1, found: job.compiled.found.map((d) => plainFinding(d, job.words)), noRoutes: job.compiled.noRoutes ?? [] }),
      );
    else await tellNoRoutes(job, console);
    return 1;
  }
  const { wanted, found } = pick(reasons(plan), asked[1], asked[2]);
  if (!wanted) {
    if (asJson) console.out(json({ exit: 1, found: [found].map((d) => plainFinding(d, job.words)) }));
    else tell([found], {}, job.words, console);
    return 1;
  }
  if ('graph' in options) return writeGraphs(asked[0] ?? '', partsOf(wanted), job, options, console);
  console.out(asJson ? json(wanted.record) : show(wanted, job));
  const failures = failedClaims(plan);
  if (failures.length > 0 && !asJson) tellFailures('cli.proof-failed', failures, job, console);
  return failures.length > 0 ? 2 : 0;
}

type Wanted =
  | { readonly what: 'all'; readonly record: WhyView }
  | { readonly what: 'part'; readonly record: WhyPart }
  | { readonly what: 'operation'; readonly part: WhyPart; readonly record: WhyOperation };
type Picked = { readonly wanted: Wanted; readonly found?: never } | { readonly wanted?: never; readonly found: Diagnostic };

function pick(view: WhyView, part: string | undefined, operation: string | undefined): Picked {
  if (part === undefined) return { wanted: { what: 'all', record: view } };
  const found = view.parts.find((p) => p.part === part);
  if (!found)
    return {
      found: missing(
        'no-such-part',
        { word: part },
        part,
        view.parts.map((p) => p.part),
      ),
    };
  if (operation === undefined) return { wanted: { what: 'part', record: found } };
  const op = found.operations.find((o) => String(o.number) === operation || o.id === operation || o.id === `${found.part}/${operation}`);
  const names = found.operations.map((o) => o.id.slice(found.part.length + 1));
  if (!op) return { found: missing('no-such-operation', { word: operation, part: found.part }, operation, names) };
  return { wanted: { what: 'operation', part: found, record: op } };
}

function missing(code: string, grounds: Diagnostic['grounds'], word: string, any: readonly string[]): Diagnostic {
  return { code: `cli.${code}`, severity: 'error', grounds: { ...grounds, any: any.join(', '), near: nearest(word, any) ?? '' } };
}

function show(wanted: Wanted, job: Job): string {
  if (wanted.what === 'all') return showWhyAll(wanted.record, job.words);
  if (wanted.what === 'part') return showWhyPart(wanted.record, job.words);
  return showWhyOperation(wanted.part, wanted.record, job.words);
}

function partsOf(wanted: Wanted): readonly WhyPart[] {
  if (wanted.what === 'all') return wanted.record.parts;
  return wanted.what === 'part' ? [wanted.record] : [wanted.part];
}

function json(record: unknown): string {
  return `${JSON.stringify(record, null, 2)}\n`;
}
