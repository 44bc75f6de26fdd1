/** Reasons as a person reads them in a terminal. Sentences are words `why.*`; those of a rule are `rule.<id>.title`, `.why`, `.otherwise`. */

import { showMm } from '../base/units.ts';
import type { Words } from '../base/words.ts';
import type { Because } from '../model/plan.ts';
import type { WhyMust, WhyNot, WhyOperation, WhyPart, WhyRefusal, WhySetUp, WhyView } from '../model/why.ts';

const STEP = '  ';

/** All parts in short. */
export function showWhyAll(view: WhyView, words: Words): string {
  return text([
    view.title,
    '',
    ...view.parts.flatMap((part) => [...headOfPart(part, words), ...part.setUps.map((s) => STEP + setUpLine(s, part, words)), '']),
  ]);
}

/** One part: every operation with its rules and what must come before and after it. */
export function showWhyPart(part: WhyPart, words: Words): string {
  return text([...headOfPart(part, words), ...part.setUps.flatMap((setUp) => setUpBlock(setUp, part, words)), ...tailOfPart(part, words)]);
}

/** One operation in full: with what goes wrong otherwise. */
export function showWhyOperation(part: WhyPart, operation: WhyOperation, words: Words): string {
  const setUp = part.setUps.find((s) => s.no === operation.setUp);
  return text([
    `${part.part}: ${title(operation, words)}`,
    ...(setUp ? [setUpLine(setUp, part, words), ...setUp.because.flatMap((b) => reason(b, words, STEP))] : []),
    ...operation.because.flatMap((b) => reason(b, words, '')),
    ...methodLines(operation, words),
    ...operation.notFrom.map((end) => words.say('why.not-from', { end: words.say(`why.end.${end}`) })),
    ...mustBlock('why.comes-after', operation.comesAfter, part, words),
    ...mustBlock('why.comes-before', operation.comesBefore, part, words),
  ]);
}

/** A part that cannot be planned: what was refused, and which single change would help. */
export function showWhyNot(none: WhyNot, words: Words): string {
  const stuck = none.stuck.length > 0 ? [words.say('why.stuck', { part: none.part, any: none.stuck.join(', ') })] : [];
  return text([
    words.say('why.no-route', { part: none.part }),
    ...stuck.map((line) => STEP + line),
    ...section('why.refused', none.refused, words),
    ...(none.wouldHelp.length > 0 ? section('why.would-help', none.wouldHelp, words) : [words.say('why.nothing-single-helps')]),
  ]);
}

function headOfPart(part: WhyPart, words: Words): readonly string[] {
  const cost = words.say('why.cost', part.cost);
  const best = part.proved === 'best' ? 'why.best' : 'why.best-found';
  return [words.say('why.part', { part: part.part, cost }), STEP + words.say(best, { asGood: part.asGood, states: part.states })];
}

function setUpBlock(setUp: WhySetUp, part: WhyPart, words: Words): readonly string[] {
  const operations = part.operations.filter((o) => o.setUp === setUp.no);
  return [
    '',
    setUpLine(setUp, part, words),
    ...setUp.because.flatMap((b) => inShort(b, words, STEP)),
    ...operations.flatMap((o) => [
      `${STEP}${title(o, words)}`,
      ...o.because.flatMap((b) => inShort(b, words, STEP + STEP)),
      ...mustLines(o, part, words),
    ]),
  ];
}

function mustLines(operation: WhyOperation, part: WhyPart, words: Words): readonly string[] {
  const line = (id: string) => (m: WhyMust) =>
    `${STEP}${STEP}${words.say(id, { op: named(m, part, words), rule: words.say(`rule.${m.because.rule}.title`, m.because.grounds), habit: m.force === 'preferred' })}`;
  return operation.comesAfter.map(line('why.after-line'));
}

function tailOfPart(part: WhyPart, words: Words): readonly string[] {
  const broken = part.broken.map((m) => {
    const than = part.operations.find((o) => o.id === m.than);
    return (
      STEP +
      words.say('why.broken-line', {
        first: named(m, part, words),
        after: than ? title(than, words) : m.than,
        why: words.say(`rule.${m.because.rule}.why`, m.because.grounds),
      })
    );
  });
  const runners = part.runnersUp.map(
    (r) => STEP + words.say('why.runner-up', { grips: r.grips.join(', '), dearerBy: r.dearerBy, cost: words.say('why.cost', r.cost) }),
  );
  return [
    ...(broken.length > 0 ? ['', words.say('why.broken'), ...broken] : []),
    ...section('why.refused', part.refused, words),
    ...(runners.length > 0 ? ['', words.say('why.runners-up'), ...runners] : []),
  ];
}

function section(id: string, refusals: readonly WhyRefusal[], words: Words): readonly string[] {
  if (refusals.length === 0) return [];
  return ['', words.say(id), ...refusals.flatMap((r) => refusalLines(r, words))];
}

function refusalLines(r: WhyRefusal, words: Words): readonly string[] {
  const rule = words.say(`rule.${r.because.rule}.title`, r.because.grounds);
  const figures =
    r.has !== undefined && r.wants !== undefined ? ` ${words.say('why.has-wants', { has: showMm(r.has), wants: showMm(r.wants) })}` : '';
  return [`${STEP}${r.what}: ${rule}.${figures}`, `${STEP}${STEP}${words.say(`rule.${r.because.rule}.why`, r.because.grounds)}`];
}

function methodLines(operation: WhyOperation, words: Words): readonly string[] {
  const { because, besides } = operation.method;
  if (besides.length === 0) return [];
  const others = besides.map((m) => STEP + words.say(`rule.${m.because.rule}.title`, m.because.grounds));
  return [
    words.say('why.method', { title: words.say(`rule.${because.rule}.title`, because.grounds) }),
    ...reason(because, words, STEP).slice(1),
    words.say('why.besides'),
    ...others,
  ];
}

function mustBlock(id: string, musts: readonly WhyMust[], part: WhyPart, words: Words): readonly string[] {
  if (musts.length === 0) return [];
  return [
    '',
    words.say(id),
    ...musts.flatMap((m) => [
      `${STEP}${named(m, part, words)}${m.force === 'preferred' ? ` ${words.say('why.habit')}` : ''}`,
      ...reason(m.because, words, STEP + STEP),
    ]),
  ];
}

function reason({ rule, grounds }: Because, words: Words, indent: string): readonly string[] {
  const otherwise = words.has(`rule.${rule}.otherwise`)
    ? [`${indent}${STEP}${words.say('why.otherwise', { what: words.say(`rule.${rule}.otherwise`, grounds) })}`]
    : [];
  return [...inShort({ rule, grounds }, words, indent), ...otherwise];
}

function inShort({ rule, grounds }: Because, words: Words, indent: string): readonly string[] {
  return [`${indent}${words.say(`rule.${rule}.title`, grounds)}. ${words.say(`rule.${rule}.why`, grounds)}`];
}

function title(o: WhyOperation, words: Words): string {
  return words.say('why.operation', { number: o.number, verb: words.say(`why.verb.${o.verb}`), feature: o.feature });
}

function named(m: WhyMust, part: WhyPart, words: Words): string {
  const found = part.operations.find((o) => o.id === m.op);
  return found ? title(found, words) : m.op;
}

function setUpLine(s: WhySetUp, part: WhyPart, words: Words): string {
  const numbers = part.operations.filter((o) => o.setUp === s.no).map((o) => o.number);
  const span = { from: numbers[0] ?? 0, to: numbers[numbers.length - 1] ?? 0 };
  if (s.kind === 'bench') return words.say('why.bench', { no: s.no, ...span });
  const held = { diameter: showMm(s.diameter), long: showMm(s.long), datum: s.datum, out: words.say(`why.end.${s.out}`) };
  return words.say('why.set-up', { no: s.no, grip: words.say(`why.grip.${s.kind}`), ...held, ...span });
}

function text(lines: readonly string[]): string {
  return `${lines.join('\n').trimEnd()}\n`;
}
