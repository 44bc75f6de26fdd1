/** Back matter at the bench: assembly with its measured sums, the tests and their sign-off. */

import type { Arrangement, Say } from '../../model/part.ts';
import type { Plan } from '../../model/plan.ts';
import type { PlainPage, Section, StepShown } from '../../model/sheet.ts';
import { cautionSaid } from './caution.ts';
import { partName } from './names.ts';
import type { SheetWords } from './said.ts';
import { SUMS, sumsOf } from './sums.ts';

/** Absent where the fitting has nothing to put together and nothing to test. */
export function closingPage(plan: Plan, words: SheetWords): PlainPage | undefined {
  const sections = [...arranged(plan, words), ...assembly(plan, words), ...tests(plan, words)];
  if (sections.length === 0) return undefined;
  const heading = words.say('closing.heading');
  return {
    kind: 'plain',
    key: 'closing',
    heading,
    name: heading.toUpperCase(),
    about: plan.fitting.title,
    right: '',
    sections,
    cautions: underPressure(plan) ? [cautionSaid(words, 'closing.caution')] : [],
  };
}

/** The picture of it put together. Its words are the kind's own: 'arrangement.<kind>'. */
function arranged(plan: Plan, words: SheetWords): readonly Section[] {
  const { arrangement, kind } = plan.fitting;
  if (!arrangement) return [];
  const of = (what: string): string => `arrangement.${kind}.${what}`;
  const shown = {
    arrangement,
    alt: words.say(of('alt'), arrangement.grounds),
    up: words.say('arrangement.up'),
    in: words.say('arrangement.in'),
    out: words.say('arrangement.out'),
    names: namesOf(plan, arrangement, words),
    notes: ['flow', 'stand', 'order'].filter((note) => words.has(of(note))).map((note) => words.say(of(note), arrangement.grounds)),
  };
  return [{ kind: 'arrangement', title: words.say('arrangement.title', { stand: arrangement.stand }), shown }];
}

/** What each thing of the picture is called. */
function namesOf(
  { parts }: Plan,
  { stands, branches, rings = [], ball }: Arrangement,
  words: SheetWords,
): Readonly<Record<string, string>> {
  const drawn = [...new Set([...stands, ...branches].map(({ part }) => part))];
  const own = parts.flatMap(({ part }) => (drawn.includes(part.id) ? [[part.id, partName(part, words)]] : []));
  const items = rings.map(({ item }) => [`item ${item}`, words.say(`arrangement.item.${item}`)]);
  return Object.fromEntries([...own, ...items, ...(ball ? [['ball', words.say('arrangement.item.ball')]] : [])]);
}

/** Tooling that is asked for by itself is tried, but nobody signs for it. */
const underPressure = (plan: Plan): boolean => plan.fitting.parts.some((part) => part.use === 'fitting');

function assembly(plan: Plan, words: SheetWords): readonly Section[] {
  const steps = plan.fitting.assembly.map((step) => stepOf(step, words));
  const sums = sumsOf(plan, words);
  const all: readonly Section[] = steps.length === 0 ? sums : [{ kind: 'steps', title: words.say('assembly.title'), steps }, ...sums];
  const measured = sums[0] ?? all[0];
  return all.map((one) => (one === measured ? { ...one, key: SUMS } : one));
}

function tests(plan: Plan, words: SheetWords): readonly Section[] {
  if (plan.fitting.tests.length === 0) return [];
  const steps = plan.fitting.tests.map((test) => stepOf(test, words));
  if (!underPressure(plan)) return [{ kind: 'steps', title: words.say('tests.title'), steps }];
  const boxes = ['by', 'date', 'pressure', 'remarks'].map((what) => ({ letter: '', label: words.say(`label.${what}`), hint: '' }));
  return [
    { kind: 'steps', title: words.say('tests.title'), steps },
    { kind: 'boxes', title: words.say('tests.sign'), text: words.say('tests.sign.how'), boxes, sum: '' },
  ];
}

/** A step has its sentence; a title, what to do when it fails, and boxes for what is measured there, where words are given for them. */
function stepOf(step: Say, words: SheetWords): StepShown {
  const given = (id: string): string => (words.has(id) ? words.say(id, step.grounds) : '');
  const fails = given(`${step.id}.fails`);
  return {
    title: given(`${step.id}.title`),
    text: words.say(step.id, step.grounds),
    otherwise: fails === '' ? '' : words.say('step.fails', { what: fails }),
    boxes: ['a', 'b', 'c', 'd'].map((box) => given(`${step.id}.box-${box}`)).filter((label) => label !== ''),
  };
}
