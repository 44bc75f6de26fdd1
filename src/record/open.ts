/** A sheet opened again: the files that travel in it, as they went in. What is wrong with it is a finding (`record.*`), never an exception. */
import type { Diagnostic, Outcome } from '../base/diagnostics.ts';
import { markOf } from '../base/mark.ts';
import { md5 } from '../base/md5.ts';
import { nameOf, type PdfFile, readObjects } from './pdf-objects.ts';
import { type Dictionary, isDictionary, textOf, type Value } from './pdf-values.ts';

export type Given = { readonly name: string; readonly bytes: Uint8Array };
/** `plan`: as it was printed, of whatever version made it. */
export type Opened = { readonly fitting: Given; readonly workshop: Given; readonly plan: OldPlan };
export type OldPlan = Readonly<Record<string, unknown>> & { readonly mark: string; readonly version: string };

const KINDS = ['fitting', 'workshop', 'plan'] as const;
const DEEPEST = 8;

/** `path`: what the user calls the file. */
export async function openSheet(bytes: Uint8Array, path: string): Promise<Outcome<Opened>> {
  const refused = (code: string, more: Diagnostic['grounds'] = {}): Outcome<never> => ({
    found: [{ code: `record.${code}`, severity: 'error', grounds: { path, ...more } }],
  });
  if (new TextDecoder('latin1').decode(bytes.slice(0, '%PDF-'.length)) !== '%PDF-') return refused('not-a-pdf');
  const file = await readObjects(bytes);
  if (!file) return refused('cut-short');
  if (file.trailer.has('Encrypt')) return refused('locked');
  const specs = new Map(filesOf(file));
  if (KINDS.some((kind) => !specs.has(kind))) return refused('no-inputs');
  const given = new Map<string, Given>();
  for (const kind of KINDS) {
    const one = await givenBy(file, specs.get(kind));
    if (!one) return refused('changed', { name: kind });
    if (!isBaseName(one.name)) return refused('odd-name', { name: one.name });
    given.set(kind, one);
  }
  const [fitting, workshop, plan] = KINDS.map((kind) => given.get(kind));
  const read = plan && planOf(plan.bytes);
  if (!fitting || !workshop || !plan || !read) return refused('changed', { name: plan?.name ?? '' });
  return fitting.name === workshop.name
    ? refused('odd-name', { name: workshop.name })
    : { value: { fitting, workshop, plan: read }, found: [] };
}

/** Kind and file specification, from the catalog's tree of names. */
function filesOf(file: PdfFile): readonly (readonly [string, Dictionary])[] {
  const root = file.get(file.trailer.get('Root'));
  const names = isDictionary(root) ? file.get(root.get('Names')) : undefined;
  return isDictionary(names) ? leaves(file, names.get('EmbeddedFiles'), 0) : [];
}

function leaves(file: PdfFile, node: Value | undefined, depth: number): readonly (readonly [string, Dictionary])[] {
  const here = file.get(node);
  if (!isDictionary(here) || depth > DEEPEST) return [];
  const [names, kids] = [file.get(here.get('Names')), file.get(here.get('Kids'))];
  const own = isList(names)
    ? names.flatMap((key, i): readonly (readonly [string, Dictionary])[] => {
        const spec = i % 2 === 0 ? file.get(names[i + 1]) : undefined;
        const name = textOf(key);
        return name !== undefined && isDictionary(spec) ? [[name, spec]] : [];
      })
    : [];
  return [...own, ...(isList(kids) ? kids.flatMap((kid) => leaves(file, kid, depth + 1)) : [])];
}

const isList = (value: Value | undefined): value is readonly Value[] => Array.isArray(value);

/** Undefined when it cannot be unpacked, or is not what its checksum says. */
async function givenBy(file: PdfFile, spec: Dictionary | undefined): Promise<Given | undefined> {
  const name = textOf(file.get(spec?.get('UF'))) ?? textOf(file.get(spec?.get('F')));
  const held = file.get(spec?.get('EF'));
  const at = isDictionary(held) ? held.get('F') : undefined;
  const stream = file.get(at);
  const bytes = await file.content(at);
  if (name === undefined || !bytes || !isDictionary(stream) || nameOf(stream.get('Type')) !== 'EmbeddedFile') return undefined;
  const params = file.get(stream.get('Params'));
  const sum = isDictionary(params) ? file.get(params.get('CheckSum')) : undefined;
  const own = md5(bytes);
  return sum instanceof Uint8Array && sum.length === own.length && own.every((byte, i) => byte === sum[i]) ? { name, bytes } : undefined;
}

/** A name and no path, on any machine. */
function isBaseName(name: string): boolean {
  return name !== '' && name !== '.' && name !== '..' && name.length < 200 && !/[/\\:\p{Cc}]/u.test(name);
}

/** Undefined when it is no plan, or its mark is not of its text. */
function planOf(bytes: Uint8Array): OldPlan | undefined {
  try {
    const { mark, ...body } = JSON.parse(new TextDecoder().decode(bytes)) as Readonly<Record<string, unknown>>;
    if (typeof mark !== 'string' || typeof body.version !== 'string' || markOf(JSON.stringify(body)) !== mark) return undefined;
    return { ...body, version: body.version, mark };
  } catch {
    return undefined;
  }
}
