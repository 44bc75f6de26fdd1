/** How long it takes, as an estimate, in whole seconds. Nothing here computes. */
import type { OpId, PartId } from './ids.ts';

/** `cutting` from speed, feed, length and passes; `handling`: tools, dials, measuring, work by hand. */
export type OpTime = { readonly op: OpId; readonly cutting: number; readonly handling: number };
export type PartTime = {
  readonly operations: readonly OpTime[];
  /** By place in the route: into the hold, and all with the operations done there. */
  readonly setUps: readonly { readonly hold: number; readonly whole: number }[];
  readonly hold: number;
  readonly cutting: number;
  readonly handling: number;
  readonly whole: number;
};
/** `times`: how often it is made, tooling in place as often as the sequence has it. `clean`: once, at the end. */
export type PackTime = {
  readonly parts: readonly { readonly part: PartId; readonly times: number; readonly each: number; readonly all: number }[];
  readonly clean: number;
  readonly whole: number;
};
