/** What cannot be as described: the place among the keys, the words' id, and what they are told. */
import type { Grounds } from '../../model/plan.ts';

export type Path = readonly (string | number)[];
export type Fault = { readonly path: Path; readonly problem: string; readonly grounds: Grounds; readonly alone?: true };
export type Faults = Fault[];

export function fault(faults: Faults, path: Path, problem: string, grounds: Grounds): void {
  const alone = ALONE.includes(problem) ? ({ alone: true } as const) : {};
  faults.push({ path, problem: `design.part-${problem}`, grounds, ...alone });
}

/** They rest on their own words, or on names and letters: they are told also where some other size cannot be read. */
const ALONE: readonly string[] = [
  ...['name-twice', 'letter-twice', 'no-such-face', 'no-such-section', 'one-size', 'one-side', 'two-kinds', 'cone-one-of'],
  ...['thread-unknown', 'thread-as-size', 'fit-unknown', 'fit-of-other-side', 'fit-on-length', 'nothing-left', 'as-bar-without-bar'],
];
