/** `size`: the reasoning of a fitting alone, or one of its sizes taken through several values, as a table and as curves. */
import { basename, dirname } from 'node:path';
import { type Diagnostic, failed } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import type { Words } from '../base/words.ts';
import { curves } from '../drawing/curves.ts';
import { loadAssets, readUserFile, writeAll } from '../files.ts';
import { PLACES } from '../fittings/designs.ts';
import { FITTING_KINDS } from '../fittings/kinds.ts';
import { SIZINGS, type Sizing } from '../fittings/sizings.ts';
import type { Assets } from '../model/assets.ts';
import type { VaryView } from '../model/size.ts';
import type { Job } from '../model/workshop.ts';
import { placeFindings } from '../phases/read/placed.ts';
import { read } from '../phases/read.ts';
import { namesOf, size as reasons, vary } from '../phases/size.ts';
import { showSize, showVary } from '../render/size.ts';
import { svgOfPicture } from '../render/svg.ts';
import { type Sources, tell } from './console.ts';
import { type Options, plainFinding } from './job.ts';
import { speech } from './speech.ts';
import type { Console, Exit } from './tools.ts';

type Read = { readonly sources: Sources; readonly found: readonly Diagnostic[]; readonly job?: Job; readonly sizing?: Sizing };
type Desk = { readonly say: Words; readonly assets: Assets; readonly options: Options; readonly console: Console };

export async function size(asked: readonly string[], options: Options, console: Console): Promise<Exit> {
  const assets = loadAssets(options.language);
  const desk: Desk = { say: speech(assets.words, options.language), assets, options, console };
  const got = readJob(asked[0] ?? '', desk);
  if (!got.job || !got.sizing) return refuse(got.found, got.sources, desk);
  const key = options.vary;
  return key === undefined ? tellReasons(got.job, got.sizing, got, desk) : tellVary(got.job, got.sizing, key, got, desk);
}

function readJob(path: string, { assets, options }: Desk): Read {
  const [fitting, shop] = [path, options.workshop].map((each) => (each === undefined ? undefined : readUserFile(each)));
  const found = [...(fitting?.found ?? []), ...(shop?.found ?? [])];
  if (!fitting?.value || failed(found)) return { sources: {}, found };
  const sources: Sources = {
    [assets.workshop.name]: { path: assets.workshop.name, text: assets.workshop.text },
    [fitting.value.name]: { path, text: fitting.value.text },
    ...(shop?.value && options.workshop !== undefined ? { [shop.value.name]: { path: options.workshop, text: shop.value.text } } : {}),
  };
  const inputs = { fitting: fitting.value, ...(shop?.value ? { workshop: shop.value } : {}) };
  const job = read(inputs, assets.workshop, FITTING_KINDS);
  if (!job.value) return { sources, found: job.found };
  const sizing = SIZINGS[job.value.fitting];
  if (!sizing) return { sources, found: [mistake('not-sized', { kind: job.value.fitting, any: Object.keys(SIZINGS).join(', ') })] };
  const reasoned = placeFindings(sizing.reason(job.value.asked, job.value.workshop).found, fitting.value, PLACES[job.value.fitting] ?? {});
  return { sources, found: [...job.found, ...reasoned], job: job.value, sizing };
}

function tellReasons(job: Job, sizing: Sizing, { found, sources }: Read, { say, options, console }: Desk): Exit {
  const view = reasons(job, sizing);
  const exit = failed(found) ? 1 : 0;
  if ('json' in options) console.out(json({ exit, ...view, found: found.map((d) => plainFinding(d, say)) }));
  else {
    console.out(showSize(view, say));
    tell(found, sources, say, console);
  }
  return exit;
}

function tellVary(job: Job, sizing: Sizing, key: string, { sources }: Read, desk: Desk): Exit {
  const { say, options, console } = desk;
  const view = vary(job, sizing, key);
  const any = namesOf(sizing);
  if (!view) return refuse([mistake('not-varied', { word: key, any: any.join(', '), near: nearest(key, any) ?? '' })], sources, desk);
  const drawn = options.out === undefined ? undefined : draw(view, options.out, desk);
  const exit = drawn && !drawn.value ? 1 : 0;
  if ('json' in options) console.out(json({ exit, ...view, written: drawn?.value ?? [] }));
  else {
    console.out(showVary(view, say));
    tell(drawn?.found ?? [], sources, say, console);
    for (const path of drawn?.value ?? []) console.out(`${say.say('cli.wrote', { path })}\n`);
  }
  return exit;
}

function draw(view: VaryView, path: string, { say, assets }: Desk) {
  const label = (of: string, unit: string): string => `${say.has(`figure.${of}`) ? say.say(`figure.${of}`) : of}, ${unit}`;
  const picture = curves(
    {
      title: view.title,
      x: {
        label: label(view.of, view.unit),
        values: view.rows.map((r) => r.value),
        now: view.rows.find((r) => r.now)?.value ?? 0,
      },
      panels: view.columns.map(({ of, unit }, i) => ({ label: label(of, unit), values: view.rows.map((r) => r.figures[i]) })),
    },
    assets.advances,
  );
  return writeAll(dirname(path), [{ name: basename(path), bytes: new TextEncoder().encode(svgOfPicture(picture)) }]);
}

function refuse(found: readonly Diagnostic[], sources: Sources, { say, options, console }: Desk): Exit {
  if ('json' in options) console.out(json({ exit: 1, found: found.map((d) => plainFinding(d, say)) }));
  else tell(found, sources, say, console);
  return 1;
}

const mistake = (code: string, grounds: Diagnostic['grounds']): Diagnostic => ({ code: `cli.${code}`, severity: 'error', grounds });
const json = (record: unknown): string => `${JSON.stringify(record, null, 2)}\n`;
