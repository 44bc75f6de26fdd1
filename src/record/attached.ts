/** What a sheet carries of its own making: the two files that it was made from, as they were read, and the plan. */
import type { Words } from '../base/words.ts';
import type { Input, Inputs } from '../model/assets.ts';
import type { Attached } from '../model/display.ts';
import type { Plan } from '../model/plan.ts';

const YAML = 'application/yaml';
const JSON_TYPE = 'application/json';
const PLAN_NAME = 'plan.json';

/** `standard`: the workshop that was used where `inputs` names none. The plan's keys keep their order: its mark is of its text. */
export function attachedTo(plan: Plan, inputs: Inputs, standard: Input, words: Words): readonly Attached[] {
  const { fitting, workshop = standard } = inputs;
  const taken = [fitting.name, workshop.name];
  const planName = taken.includes(PLAN_NAME) ? `of ${PLAN_NAME}` : PLAN_NAME;
  const says = (kind: Attached['kind']): string => words.say(`attached.${kind}`);
  return [
    { kind: 'fitting', name: fitting.name, type: YAML, says: says('fitting'), bytes: bytesOf(fitting) },
    { kind: 'workshop', name: workshop.name, type: YAML, says: says('workshop'), bytes: bytesOf(workshop) },
    { kind: 'plan', name: planName, type: JSON_TYPE, says: says('plan'), bytes: new TextEncoder().encode(JSON.stringify(plan)) },
  ];
}

function bytesOf({ text, bytes }: Input): Uint8Array {
  return bytes ?? new TextEncoder().encode(text);
}
