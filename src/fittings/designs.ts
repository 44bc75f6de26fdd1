/** Each kind's design: from what was asked (already read by that kind's schema) to parts. A new kind is a new row. */
import type { Outcome } from '../base/diagnostics.ts';
import type { Fitting } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import type { CheckValveAsked } from './check-valve/asked.ts';
import { designCheckValve } from './check-valve/design.ts';
import { CHECK_VALVE_PLACES } from './check-valve/places.ts';
import type { StopValveAsked } from './stop-valve/asked.ts';
import { designStopValve } from './stop-valve/design.ts';
import { STOP_VALVE_PLACES } from './stop-valve/places.ts';
import { designTurnedPart } from './turned-part/design.ts';
import type { Meant } from './turned-part/meaning.ts';

export type Designs = Readonly<Record<string, (asked: unknown, workshop: Workshop) => Outcome<Fitting>>>;

export const DESIGNS: Designs = {
  'check-valve': (asked, workshop) => designCheckValve(asked as CheckValveAsked, workshop),
  'stop-valve': (asked, workshop) => designStopValve(asked as StopValveAsked, workshop),
  'turned-part': (asked, workshop) => designTurnedPart(asked as Meant, workshop),
};

/** Which keys of the file a finding of a kind's design is about, so that it gets its line. */
export const PLACES: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  'check-valve': CHECK_VALVE_PLACES,
  'stop-valve': STOP_VALVE_PLACES,
};
