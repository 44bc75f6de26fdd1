/** What `new` asks of each kind of fitting, as data. A new kind is a new row; its words are the `ask.*` of its keys. */
import { CHECK_VALVE_QUESTIONS } from './check-valve/questions.ts';
import type { FITTING_KINDS } from './kinds.ts';
import { PLUG_QUESTIONS } from './plug/questions.ts';
import type { Step } from './question.ts';
import { SPINDLE_QUESTIONS } from './spindle/questions.ts';
import { STOP_VALVE_QUESTIONS } from './stop-valve/questions.ts';
import { D_BIT_QUESTIONS, GAUGE_NUT_QUESTIONS, MANDREL_QUESTIONS } from './tooling/questions.ts';
import { TURNED_PART_QUESTIONS } from './turned-part/questions.ts';
import { UNION_QUESTIONS } from './union/questions.ts';

/** A row for each kind that there is: the types say so. */
export const FITTING_QUESTIONS: Readonly<Record<string, readonly Step[]>> = {
  'check-valve': CHECK_VALVE_QUESTIONS,
  'stop-valve': STOP_VALVE_QUESTIONS,
  spindle: SPINDLE_QUESTIONS,
  union: UNION_QUESTIONS,
  plug: PLUG_QUESTIONS,
  mandrel: MANDREL_QUESTIONS,
  'd-bit': D_BIT_QUESTIONS,
  'gauge-nut': GAUGE_NUT_QUESTIONS,
  'turned-part': TURNED_PART_QUESTIONS,
} satisfies Readonly<Record<keyof typeof FITTING_KINDS, readonly Step[]>>;
