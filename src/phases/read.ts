/** First phase: two YAML texts in, a job out; or every fault of both files at once, each with its place and what to do. */
import { checkSource } from '../base/check.ts';
import { type Diagnostic, failed, type Outcome } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import { readSource, type Source } from '../base/source.ts';
import { shown } from '../base/written.ts';
import type { FittingKinds } from '../fittings/kinds.ts';
import type { Inputs, StandardWorkshop } from '../model/assets.ts';
import type { Job, Workshop } from '../model/workshop.ts';
import { workshopOf } from './read/workshop.ts';
import { workshopSchema } from './read/workshop-schema.ts';

/**
 * `fallback`: the workshop that is used when the inputs name none. `kinds`: what may stand after `fitting:`. The job's `asked` is the
 * value of that kind's schema. Never throws on any text.
 */
export function read(inputs: Inputs, fallback: StandardWorkshop, kinds: FittingKinds): Outcome<Job> {
  const fitting = readFitting(inputs.fitting, kinds);
  const workshop = inputs.workshop || !fallback.says ? readWorkshop(inputs.workshop ?? fallback) : { value: fallback.says, found: [] };
  const found = [...fitting.found, ...workshop.found];
  if (failed(found) || !fitting.value || !workshop.value) return { found };
  return { value: { ...fitting.value, file: inputs.fitting.name, workshop: workshop.value }, found };
}

export function readWorkshop({ name, text }: { readonly name: string; readonly text: string }): Outcome<Workshop> {
  const source = readSource(name, text);
  if (!source.value) return { found: source.found };
  const keys = source.value.value as object;
  if (Object.hasOwn(keys, 'fitting') && !Object.hasOwn(keys, 'workshop')) {
    return {
      found: [
        ...source.found,
        { code: 'read.fitting-as-workshop', severity: 'error', place: source.value.placeOfKey(['fitting']), grounds: {} },
      ],
    };
  }
  const checked = checkSource(workshopSchema(), source.value, 'workshop');
  const found = [...source.found, ...checked.found];
  return failed(found) || !checked.value ? { found } : { value: workshopOf(checked.value), found };
}

function readFitting(
  { name, text }: Inputs['fitting'],
  kinds: FittingKinds,
): Outcome<{ readonly fitting: string; readonly asked: unknown }> {
  const { value: source, found: first } = readSource(name, text);
  if (!source) return { found: first };
  const written = (source.value as { readonly fitting?: unknown }).fitting;
  const names = Object.keys(kinds).sort();
  const near = typeof written === 'string' ? (names.find((n) => n === written) ?? nearest(shown(written), names)) : undefined;
  const schema = near === undefined ? undefined : kinds[near]?.();
  const unknown = near === written && schema ? [] : unknownKind(source, written, near ?? '', names);
  if (near === undefined || !schema) return { found: [...first, ...unknown] };
  // A slip in the kind's own name: the rest is judged as the kind that was meant, so that all is said at once.
  const checked = checkSource(schema, source, near);
  const found = [...first, ...unknown, ...checked.found.filter((d) => d.grounds.path !== 'fitting')];
  return failed(found) ? { found } : { value: { fitting: near, asked: checked.value }, found };
}

/** Without a kind nothing else of the file can be judged. A workshop handed in as a fitting is told as much. */
function unknownKind(source: Source, kind: unknown, near: string, names: readonly string[]): readonly Diagnostic[] {
  if (source.refused(['fitting'])) return [];
  const say = (code: string, grounds: Diagnostic['grounds']): readonly Diagnostic[] => [
    { code, severity: 'error', place: source.place(['fitting']), grounds: { kinds: names.join(', '), ...grounds } },
  ];
  if (kind !== undefined) return say('read.unknown-kind', { word: source.written(['fitting']), near });
  return Object.hasOwn(source.value as object, 'workshop') ? say('read.workshop-as-fitting', {}) : say('read.no-kind', {});
}
