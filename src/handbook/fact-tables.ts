/** The tables of facts, each under its file's name, in the order in which the sources page counts them. */

import { capability } from './capability.ts';
import { chainFacts } from './chains.ts';
import { difficulty } from './difficulty.ts';
import { drilling } from './drilling.ts';
import { dutyFacts } from './duty.ts';
import type { FactTable } from './fact.ts';
import { flowFacts } from './flow.ts';
import { handling } from './handling.ts';
import { leadTable } from './lead-error.ts';
import { leakFacts } from './leak-rates.ts';
import { machining } from './machining.ts';
import { materialLimits } from './materials.ts';
import { numbersTable } from './numbers.ts';
import { parting } from './parting.ts';
import { shopPractice } from './practice.ts';
import { endsPractice } from './practice-ends.ts';
import { kindsPractice } from './practice-kinds.ts';
import { liftStopPractice } from './practice-lift-stop.ts';
import { stopValvePractice } from './practice-stop-valve.ts';
import { proving } from './proving.ts';
import { radii } from './radii.ts';
import { READING } from './reading.ts';
import { setting } from './setting.ts';
import { silverSteel } from './silver-steel.ts';
import { spindleFacts } from './spindle.ts';
import { stockFacts } from './stock-facts.ts';
import { tapping } from './tapping-torque.ts';
import { threading } from './thread-passes.ts';
import { toolTable } from './thread-tool.ts';

export const FACT_TABLES: readonly (readonly [file: string, table: FactTable])[] = [
  ['capability.ts', capability],
  ['chains.ts', chainFacts],
  ['difficulty.ts', difficulty],
  ['drilling.ts', drilling],
  ['duty.ts', dutyFacts],
  ['flow.ts', flowFacts],
  ['handling.ts', handling],
  ['lead-error.ts', leadTable],
  ['leak-rates.ts', leakFacts],
  ['machining.ts', machining],
  ['materials.ts', materialLimits],
  ['numbers.ts', numbersTable],
  ['parting.ts', parting],
  ['practice.ts', shopPractice],
  ['practice-stop-valve.ts', stopValvePractice],
  ['practice-kinds.ts', kindsPractice],
  ['practice-lift-stop.ts', liftStopPractice],
  ['practice-ends.ts', endsPractice],
  ['radii.ts', radii],
  ['proving.ts', proving],
  ['reading.ts', READING],
  ['setting.ts', setting],
  ['silver-steel.ts', silverSteel],
  ['spindle.ts', spindleFacts],
  ['stock-facts.ts', stockFacts],
  ['tapping-torque.ts', tapping],
  ['thread-passes.ts', threading],
  ['thread-tool.ts', toolTable],
];
