/** What all commands do first: read the user's files, load the package's own, compile, and tell what was found. */
import { present } from '../base/asking.ts';
import { type Diagnostic, failed, type Outcome } from '../base/diagnostics.ts';
import { enriched } from '../base/report.ts';
import type { Words } from '../base/words.ts';
import type { Compiled } from '../compile.ts';
import { loadAssets, readUserFile } from '../files.ts';
import type { Assets, Inputs } from '../model/assets.ts';
import type { Claim, Plan } from '../model/plan.ts';
import type { SheetWish } from '../model/wish.ts';
import { type Sources, tell } from './console.ts';
import { readyWorkshop } from './ready.ts';
import { speech } from './speech.ts';
import type { Console, Tools } from './tools.ts';

export type Options = Readonly<Record<string, string>>;
export type Job = {
  readonly inputs?: Inputs;
  readonly assets: Assets;
  readonly words: Words;
  readonly sources: Sources;
  readonly compiled: Compiled;
};

/** `path`: the fitting's file. A file that cannot be read is a finding like any other; then nothing is compiled. */
export async function runJob(path: string, options: Options, tools: Tools): Promise<Job> {
  const assets = withReady(loadAssets(options.language));
  const own = { assets, words: speech(assets.words, options.language) };
  const read = readInputs(path, options);
  const packs = options.quantity === undefined ? {} : { packs: Number(options.quantity) };
  if (!read.value) return { ...own, sources: {}, compiled: { found: read.found } };
  const { inputs, sources } = read.value;
  const compiled = await tools.compile({ ...inputs, ...packs }, assets);
  const standard = { [assets.workshop.name]: { path: assets.workshop.name, text: assets.workshop.text } };
  return { ...own, inputs, sources: { ...standard, ...sources }, compiled };
}

function withReady(assets: Assets): Assets {
  const says = readyWorkshop(assets.workshop.text);
  return says ? { ...assets, workshop: { ...assets.workshop, says } } : assets;
}

export function tellFindings(job: Job, console: Console): void {
  tell(job.compiled.found, job.sources, job.words, console);
}

/** A finding for a program to read. */
export function plainFinding(d: Diagnostic, words: Words): Record<string, unknown> {
  const grounds = enriched(d, words);
  return {
    code: d.code,
    severity: d.severity,
    ...(d.place ? { place: d.place } : {}),
    grounds: d.grounds,
    message: words.say(`error.${d.code}`, grounds),
    todo: words.say(`error.${d.code}.do`, grounds),
  };
}

/** How its pages are to look: what is asked for goes before what the workshop has. The words were judged when they were read. */
export function wishOf({ compiled }: Job, { units, paper, type }: Options): SheetWish {
  return { ...compiled.wish, ...(present({ units, paper, type }) as SheetWish) };
}

export type FailedClaim = { readonly part: string; readonly claim: Claim };

export function failedClaims(plan: Plan): readonly FailedClaim[] {
  const ofParts = plan.parts.flatMap(({ part, proof }) => proof.claims.map((claim) => ({ part: part.id, claim })));
  const ofDay = (plan.day?.proof.claims ?? []).map((claim) => ({ part: String(claim.grounds.part), claim }));
  return [...ofParts, ...ofDay].filter(({ claim }) => !claim.holds);
}

/** Two files of one name are told apart, for places in them, by naming the second as what it is. */
function readInputs(path: string, options: Options): Outcome<{ readonly inputs: Inputs; readonly sources: Sources }> {
  const fitting = readUserFile(path);
  const shopPath = options.workshop;
  const shop = shopPath === undefined ? undefined : readUserFile(shopPath);
  const found = [...fitting.found, ...(shop?.found ?? [])];
  if (!fitting.value || failed(found)) return { found };
  const sources = { [fitting.value.name]: { path, text: fitting.value.text } };
  if (shopPath === undefined || !shop?.value) return { value: { inputs: { fitting: fitting.value }, sources }, found };
  const name = shop.value.name === fitting.value.name ? `workshop ${shop.value.name}` : shop.value.name;
  const workshop = { ...shop.value, name };
  return {
    value: { inputs: { fitting: fitting.value, workshop }, sources: { ...sources, [name]: { path: shopPath, text: workshop.text } } },
    found,
  };
}
