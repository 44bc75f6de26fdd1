/** Each kind's design: from what was asked (already read by that kind's schema) to parts. A new kind is a new row. */
import type { Outcome } from '../base/diagnostics.ts';
import type { Fitting } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import type { CheckValveAsked } from './check-valve/asked.ts';
import { designCheckValve } from './check-valve/design.ts';
import { CHECK_VALVE_PLACES } from './check-valve/places.ts';
import type { PlugAsked } from './plug/asked.ts';
import { designPlug } from './plug/design.ts';
import { PLUG_PLACES } from './plug/places.ts';
import type { SpindleAsked } from './spindle/asked.ts';
import { designSpindle } from './spindle/design.ts';
import { SPINDLE_PLACES } from './spindle/places.ts';
import type { StopValveAsked } from './stop-valve/asked.ts';
import { designStopValve } from './stop-valve/design.ts';
import { STOP_VALVE_PLACES } from './stop-valve/places.ts';
import type { DBitAsked, GaugeNutAsked, MandrelAsked } from './tooling/asked.ts';
import { designDBit, designGaugeNut, designMandrel } from './tooling/design.ts';
import { TOOLING_PLACES } from './tooling/places.ts';
import { designTurnedPart } from './turned-part/design.ts';
import type { Meant } from './turned-part/meant.ts';
import { TURNED_PART_PLACES } from './turned-part/places.ts';
import type { UnionAsked } from './union/asked.ts';
import { designUnion } from './union/design.ts';
import { UNION_PLACES } from './union/places.ts';

export type Designs = Readonly<Record<string, (asked: unknown, workshop: Workshop) => Outcome<Fitting>>>;

export const DESIGNS: Designs = {
  'check-valve': (asked, workshop) => designCheckValve(asked as CheckValveAsked, workshop),
  'stop-valve': (asked, workshop) => designStopValve(asked as StopValveAsked, workshop),
  spindle: (asked, workshop) => designSpindle(asked as SpindleAsked, workshop),
  union: (asked, workshop) => designUnion(asked as UnionAsked, workshop),
  plug: (asked, workshop) => designPlug(asked as PlugAsked, workshop),
  mandrel: (asked, workshop) => designMandrel(asked as MandrelAsked, workshop),
  'd-bit': (asked, workshop) => designDBit(asked as DBitAsked, workshop),
  'gauge-nut': (asked, workshop) => designGaugeNut(asked as GaugeNutAsked, workshop),
  'turned-part': (asked, workshop) => designTurnedPart(asked as Meant, workshop),
};

/** Which keys of the file a finding of a kind's design is about, so that it gets its line. */
export const PLACES: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  'check-valve': CHECK_VALVE_PLACES,
  'stop-valve': STOP_VALVE_PLACES,
  spindle: SPINDLE_PLACES,
  union: UNION_PLACES,
  plug: PLUG_PLACES,
  mandrel: TOOLING_PLACES,
  'd-bit': TOOLING_PLACES,
  'gauge-nut': TOOLING_PLACES,
  'turned-part': TURNED_PART_PLACES,
};
