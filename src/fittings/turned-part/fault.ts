/** What cannot be as described: the place among the keys, the words' id, and what they are told. */
import type { Grounds } from '../../model/plan.ts';

export type Path = readonly (string | number)[];
export type Fault = { readonly path: Path; readonly problem: string; readonly grounds: Grounds };
export type Faults = Fault[];

export function fault(faults: Faults, path: Path, problem: string, grounds: Grounds): void {
  faults.push({ path, problem: `design.part-${problem}`, grounds });
}
