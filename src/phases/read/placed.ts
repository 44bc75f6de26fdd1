/** Gives findings of later phases, which know values only, their place in the person's file: the key that they are about. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { type Path, readSource, type Source } from '../../base/source.ts';

/**
 * By code, the keys (as 'duty.pressure') that a finding may be about, the likeliest first; '{field}' stands for what its grounds hold, and
 * '@name' for the place of what has that name in a list.
 */
export type KeysOfFindings = Readonly<Record<string, readonly string[]>>;

/**
 * The first of a code's keys that stands in the file gives the place. A finding keeps the place that it has; one whose keys are all
 * absent, because the thing was chosen and not asked for, stays without.
 */
export function placeFindings(
  found: readonly Diagnostic[],
  { name, text }: { readonly name: string; readonly text: string },
  keys: KeysOfFindings,
): readonly Diagnostic[] {
  const source = found.some((d) => !d.place) ? readSource(name, text).value : undefined;
  if (!source) return found;
  return found.map((d) => {
    const paths = (Object.hasOwn(keys, d.code) ? keys[d.code] : undefined)?.map((key) => pathOf(source, filled(key, d))) ?? [];
    const path = paths.find((p) => source.written(p) !== '');
    return d.place || !path ? d : { ...d, place: source.place(path) };
  });
}

/** A name that is not in the list leads nowhere. */
function pathOf({ value }: Source, key: string): Path {
  let at = value;
  return key.split('.').map((segment) => {
    const found = segment.startsWith('@') && Array.isArray(at) ? at.findIndex((one) => one?.name === segment.slice(1)) : segment;
    at = typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[found] : undefined;
    return found;
  });
}

/** 'threads.{which}': what the finding names there. */
const filled = (key: string, { grounds }: Diagnostic): string =>
  key.replace(/\{(\w+)\}/g, (_, field: string) => String(grounds[field] ?? ''));
