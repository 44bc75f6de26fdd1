/** Back matter at the bench: assembly with its measured sums, the tests and their sign-off. */

import type { Words } from '../../base/words.ts';
import { limits, size } from '../../drawing/sheet/format.ts';
import type { Chain, Say } from '../../model/part.ts';
import type { Plan, PlannedPart } from '../../model/plan.ts';
import type { PlainPage, Section, StepShown } from '../../model/sheet.ts';
import { partName } from './grip.ts';
import { type Desk, deskOf, nameless } from './lookup.ts';

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** Absent where the fitting has nothing to put together and nothing to test. */
export function closingPage(plan: Plan, words: Words): PlainPage | undefined {
  const sections = [...assembly(plan, words), ...tests(plan, words)];
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
    caution: words.say('closing.caution'),
  };
}

function assembly(plan: Plan, words: Words): readonly Section[] {
  const steps = plan.fitting.assembly.map((step) => stepOf(step, words));
  const sums = plan.fitting.chains.filter(isWhole).map((chain) => sumOf(plan, chain, words));
  return steps.length === 0 ? sums : [{ kind: 'steps', title: words.say('assembly.title'), steps }, ...sums];
}

function tests(plan: Plan, words: Words): readonly Section[] {
  if (plan.fitting.tests.length === 0) return [];
  const steps = plan.fitting.tests.map((test) => stepOf(test, words));
  const boxes = ['by', 'date', 'pressure', 'remarks'].map((what) => ({ letter: '', label: words.say(`label.${what}`), hint: '' }));
  return [
    { kind: 'steps', title: words.say('tests.title'), steps },
    { kind: 'boxes', title: words.say('tests.sign'), text: words.say('tests.sign.how'), boxes, sum: '' },
  ];
}

/** A step has its sentence; a title, what to do when it fails, and boxes for what is measured there, where words are given for them. */
function stepOf(step: Say, words: Words): StepShown {
  const given = (id: string): string => (words.has(id) ? words.say(id, step.grounds) : '');
  const fails = given(`${step.id}.fails`);
  return {
    title: given(`${step.id}.title`),
    text: words.say(step.id, step.grounds),
    otherwise: fails === '' ? '' : words.say('step.fails', { what: fails }),
    boxes: ['a', 'b', 'c', 'd'].map((box) => given(`${step.id}.box-${box}`)).filter((label) => label !== ''),
  };
}

// ---- measured sums -----------------------------------------------------------------------------------------------------
/**
 * Do the links alone make up what is asked? Where bought things or joints as tightened belong to the sum and are no links of parts, a
 * formula of the links would mislead: then the steps of assembly say how it is measured.
 */
function isWhole(chain: Chain): boolean {
  const sum = chain.links.reduce((total, link) => total + link.sign * link.nominal, 0);
  return sum >= chain.asks.lo && sum <= chain.asks.hi;
}

/** Every link but the fitted one is measured on the parts as made; the sum gives the length to which the fitted one is cut. */
function sumOf(plan: Plan, chain: Chain, words: Words): Section {
  const desks = new Map(plan.parts.map((planned: PlannedPart) => [planned.part.id, deskOf(planned)]));
  const fitted = chain.links.find((link) => isFitted(chain, link, desks));
  const measured = chain.links.filter((link) => link !== fitted);
  const boxes = measured.map((link, i) => ({
    letter: LETTERS[i] ?? '',
    label: link.says ? words.say(link.says) : linkLabel(link, desks, words),
    hint: words.say('sum.drawing', { size: size(link.nominal) }),
  }));
  const title = words.has(`chain.${chain.id}`) ? words.say(`chain.${chain.id}`) : words.say('sum.title', { chain: nameless(chain.id) });
  const asks = { target: size(chain.asks.target), limits: limits(chain.asks) };
  if (!fitted)
    return {
      kind: 'boxes',
      title,
      text: words.say('sum.blind', asks),
      boxes,
      sum: words.say('sum.blind.sum', { formula: formulaOf(measured, 1), ...asks }),
    };
  const result = {
    letter: words.say('sum.result'),
    label: words.say('sum.fitted', { part: linkPart(desks.get(fitted.part), fitted.part, words) }),
    hint: words.say('sum.drawing', { size: size(fitted.nominal) }),
  };
  const formula = solvedFor(chain, fitted.sign, measured);
  return {
    kind: 'boxes',
    title,
    text: words.say('sum.how', asks),
    boxes: [...boxes, result],
    sum: words.say('sum.sum', { formula, ...asks }),
  };
}

function linkLabel(link: Link, desks: ReadonlyMap<string, Desk>, words: Words): string {
  const desk = desks.get(link.part);
  return words.say('sum.link', { part: linkPart(desk, link.part, words), from: letterAt(desk, link.a), to: letterAt(desk, link.b) });
}

type Link = Chain['links'][number];

function isFitted(chain: Chain, link: Link, desks: ReadonlyMap<string, Desk>): boolean {
  const dimension = desks.get(link.part)?.part.dimensions.find((d) => d.id === chain.fitted?.dim);
  return chain.fitted?.part === link.part && dimension !== undefined && dimension.a === link.a && dimension.b === link.b;
}

/** 'a − b': the signed letters, each turned by `turn`. */
function formulaOf(links: readonly Link[], turn: 1 | -1): string {
  const terms = links.map((link, i) => ({ plus: link.sign * turn > 0, letter: LETTERS[i] ?? '' }));
  return [...terms.filter((t) => t.plus), ...terms.filter((t) => !t.plus)]
    .map((t, i) => (t.plus ? (i === 0 ? t.letter : ` + ${t.letter}`) : ` \u2212 ${t.letter}`))
    .join('');
}

/** asks = sign·fitted + Σ others, solved for the fitted link. */
function solvedFor(chain: Chain, sign: 1 | -1, measured: readonly Link[]): string {
  const others = formulaOf(measured, sign === 1 ? -1 : 1);
  const target = size(chain.asks.target);
  return sign === 1 ? `${target}${others.startsWith(' ') ? '' : ' + '}${others}` : `${others} \u2212 ${target}`;
}

function linkPart(desk: Desk | undefined, id: string, words: Words): string {
  return desk ? partName(desk.part, words) : nameless(id);
}

function letterAt(desk: Desk | undefined, surface: string): string {
  return desk?.part.surfaces.some((s) => s.id === surface && s.shape === 'face') ? desk.letter(surface) : nameless(surface);
}
