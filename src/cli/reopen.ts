/** `reopen`: gives back the files that a sheet was made from, makes the plan again, and says in what the two differ. */
import { type Diagnostic, failed, type Outcome } from '../base/diagnostics.ts';
import type { Words } from '../base/words.ts';
import { type Compiled, VERSION } from '../compile.ts';
import { inTheWay, loadAssets, readBytes, writeAll } from '../files.ts';
import type { Input, Inputs } from '../model/assets.ts';
import { type Difference, differences } from '../record/compare.ts';
import { type Given, type OldPlan, type Opened, openSheet } from '../record/open.ts';
import { type Sources, tell } from './console.ts';
import { type Options, plainFinding } from './job.ts';
import { speech } from './speech.ts';
import type { Console, Exit, Tools } from './tools.ts';

const FOLDER = 'out';

export async function reopen(asked: readonly string[], options: Options, tools: Tools, console: Console): Promise<Exit> {
  const assets = loadAssets(options.language);
  const say = speech(assets.words, options.language);
  const given = await giveBack(asked[0] ?? '', options.out ?? FOLDER);
  const inputs = given.value ? inputsOf(given.value.opened) : undefined;
  const compiled = inputs ? await tools.compile(inputs, assets) : undefined;
  const exit: Exit = compiled?.plan ? 0 : 1;
  const found = [...given.found, ...(compiled?.found ?? [])];
  const judged = given.value && compiled ? judge(given.value.opened.plan, compiled) : undefined;
  if ('json' in options)
    console.out(`${JSON.stringify(plain({ exit, found, judged, written: given.value?.written ?? [] }, say), null, 2)}\n`);
  else {
    for (const path of given.value?.written ?? []) console.out(`${say.say('cli.wrote', { path })}\n`);
    tell(found, inputs ? sourcesOf(inputs) : {}, say, console);
    for (const line of judged ? sentences(judged, say) : []) console.out(`${line}\n`);
  }
  return exit;
}

type Back = { readonly opened: Opened; readonly written: readonly string[] };

/** Opens the sheet and writes its two inputs, or nothing. */
async function giveBack(path: string, folder: string): Promise<Outcome<Back>> {
  const read = readBytes(path);
  if (!read.value) return { found: read.found };
  const { value: opened, found } = await openSheet(read.value, path);
  if (!opened || failed(found)) return { found };
  const files = [opened.fitting, opened.workshop];
  const standing = inTheWay(folder, files);
  if (standing.length > 0)
    return { found: standing.map((each) => ({ code: 'record.in-the-way', severity: 'error', grounds: { path: each } })) };
  const written = writeAll(folder, files);
  return written.value ? { value: { opened, written: written.value }, found } : { found: written.found };
}

function inputsOf({ fitting, workshop, plan }: Opened): Inputs {
  const packs = (plan.stock as { readonly packs?: number } | undefined)?.packs;
  return { fitting: inputOf(fitting), workshop: inputOf(workshop), ...(packs === undefined ? {} : { packs }) };
}

function inputOf({ name, bytes }: Given): Input {
  return { name, text: new TextDecoder().decode(bytes), bytes };
}

function sourcesOf({ fitting, workshop }: Inputs): Sources {
  return Object.fromEntries([fitting, ...(workshop ? [workshop] : [])].map(({ name, text }) => [name, { path: name, text }]));
}

type Judged = { readonly old: OldPlan; readonly mark?: string; readonly differ: readonly Difference[] };

function judge(old: OldPlan, { plan }: Compiled): Judged {
  if (!plan) return { old, differ: [] };
  return { old, mark: plan.mark, differ: plan.mark === old.mark ? [] : differences(old, plan) };
}

function sentences({ old, mark, differ }: Judged, say: Words): readonly string[] {
  const facts = { now: VERSION, before: old.version, mark: mark ?? old.mark };
  if (mark === undefined) return [say.say('reopen.no-plan', facts)];
  if (differ.length === 0) return [say.say(mark === old.mark ? 'reopen.same' : 'reopen.same-by-another', facts)];
  const listed = differ.map((each) => `  ${say.say(`reopen.${each.id}`, each.facts)}`);
  return [say.say('reopen.differs', { ...facts, mark: old.mark }), ...listed];
}

type Done = {
  readonly exit: Exit;
  readonly found: readonly Diagnostic[];
  readonly judged: Judged | undefined;
  readonly written: readonly string[];
};

function plain({ exit, found, judged, written }: Done, say: Words): Record<string, unknown> {
  return {
    exit,
    written,
    found: found.map((d) => plainFinding(d, say)),
    before: judged ? { version: judged.old.version, mark: judged.old.mark } : null,
    now: { version: VERSION, mark: judged?.mark ?? null },
    same: judged?.mark !== undefined && judged.differ.length === 0,
    differences: (judged?.differ ?? []).map((each) => ({ ...each, message: say.say(`reopen.${each.id}`, each.facts) })),
  };
}
