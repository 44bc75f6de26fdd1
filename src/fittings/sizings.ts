/** What can be reasoned about a kind without drawing it, and what may be varied in it. A new kind is a new row. */
import type { Diagnostic } from '../base/diagnostics.ts';
import type { Derivation } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import type { CheckValveAsked } from './check-valve/asked.ts';
import { reasonCheckValve } from './check-valve/reason.ts';
import { CHECK_VALVE_VARIES } from './check-valve/vary.ts';
import type { StopValveAsked } from './stop-valve/asked.ts';
import { reasonStopValve } from './stop-valve/reason.ts';
import { STOP_VALVE_VARIES } from './stop-valve/vary.ts';
import type { Vary } from './vary.ts';

export type Reasoning = { readonly derivations: readonly Derivation[]; readonly found: readonly Diagnostic[] };
export type Sizing = {
  reason(asked: unknown, workshop: Workshop): Reasoning;
  readonly vary: readonly Vary<unknown>[];
};
export type Sizings = Readonly<Record<string, Sizing>>;

export const SIZINGS: Sizings = {
  'check-valve': {
    reason: (asked, workshop) => reasonCheckValve(asked as CheckValveAsked, workshop).book,
    vary: CHECK_VALVE_VARIES as readonly Vary<unknown>[],
  },
  'stop-valve': {
    reason: (asked, workshop) => reasonStopValve(asked as StopValveAsked, workshop).book,
    vary: STOP_VALVE_VARIES as readonly Vary<unknown>[],
  },
};
