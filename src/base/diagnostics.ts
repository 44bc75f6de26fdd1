/** Mistakes are values: a stable code, the place in the user's file, and grounds for the words. Sentences live in templates. */

export type Place = { readonly file: string; readonly line: number; readonly col: number; readonly endCol?: number };

export type Diagnostic = {
  /** Stable: 'read.unknown-key', 'design.ball-crowds-seat', 'plan.no-route' ... Words' id is `error.<code>`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly place?: Place;
  readonly grounds: Readonly<Record<string, string | number | boolean>>;
};

/** A phase gives its result with all that it found; `value` is absent when there is any error. */
export type Outcome<T> = { readonly value?: T; readonly found: readonly Diagnostic[] };

export function failed(found: readonly Diagnostic[]): boolean {
  return found.some((d) => d.severity === 'error');
}
