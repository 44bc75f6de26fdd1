/** What a design writes down as it goes: each figure with its formula, inputs and source, and each fault that it finds. */
import type { Diagnostic } from '../base/diagnostics.ts';
import type { Derivation } from '../model/part.ts';

export type Book = { readonly derivations: Derivation[]; readonly found: Diagnostic[] };
export const DERIVED = 'derived here (geometry)';
export const CUSTOM = 'common practice, no source';

export const newBook = (): Book => ({ derivations: [], found: [] });

export type Figure = readonly [value: number, unit: string, formula: string, inputs?: Readonly<Record<string, number>>, source?: string];

/** `inputs` by the letters of the formula; without a source it is geometry. `stated`: the person gave the figure, the formula only checks it. */
export function note(book: Book, of: string, [value, unit, formula, inputs = {}, source = DERIVED]: Figure, stated?: unknown): void {
  book.derivations.push({ of, value, unit, formula, inputs, source, stated: stated !== undefined });
}

export function refuse(book: Book, code: string, grounds: Diagnostic['grounds']): void {
  book.found.push({ code, severity: 'error', grounds });
}

export function warn(book: Book, code: string, grounds: Diagnostic['grounds']): void {
  book.found.push({ code, severity: 'warning', grounds });
}

export const refused = (book: Book): boolean => book.found.some((d) => d.severity === 'error');
