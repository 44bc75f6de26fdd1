/** Reasons as a person reads them in a terminal. Sentences are words `why.*`; those of a rule are `rule.<id>.title`, `.why`, `.otherwise`. */
import { showMm } from '../base/units.ts';
import type { Words } from '../base/words.ts';
import type { Because, Cost, RefusedPlan } from '../model/plan.ts';
import type { WhyHold, WhyMust, WhyNot, WhyOperation, WhyPart, WhyRefusal, WhySetUp, WhyView } from '../model/why.ts';

const STEP = '  ';

/** All parts in short. */
export function showWhyAll(view: WhyView, words: Words): string {
  const parts = view.parts.flatMap((part) => [...headOfPart(part, words), ...part.setUps.map((s) => STEP + setUpLine(s, part, words)), '']);
  return text([view.title, '', ...parts, ...dayLines(view, words)]);
}

/** Which tooling stays in the chuck for which holds; nothing where none is made there. */
function dayLines({ day }: WhyView, words: Words): readonly string[] {
  if (!day || day.makings === 0) return [];
  const named = (hold: WhyHold): string => words.say('why.day.hold', hold);
  const lines = day.standing.flatMap(({ tooling, holds, out }) => [
    ...(out ? [STEP + words.say('why.day.out', { tooling, ...out })] : []),
    STEP + words.say('why.day.serves', { tooling, holds: holds.map(named).join(', '), several: holds.length > 1 }),
  ]);
  return [words.say('why.day', { ...day, best: day.proved === 'best' }), ...lines];
}

/** One part: every operation with its rules and what must come before it. */
export function showWhyPart(part: WhyPart, words: Words): string {
  return text([...headOfPart(part, words), ...part.setUps.flatMap((setUp) => setUpBlock(setUp, part, words)), ...tailOfPart(part, words)]);
}

/** One operation in full: what must come before and after it, and what goes wrong otherwise. */
export function showWhyOperation(part: WhyPart, operation: WhyOperation, words: Words): string {
  const setUp = part.setUps[operation.setUp];
  return text([
    `${part.part}: ${title(operation, words)}`,
    ...operation.because.flatMap((b) => reason(b, words, STEP)),
    ...(setUp ? ['', setUpLine(setUp, part, words), ...setUp.because.flatMap((b) => reason(b, words, STEP))] : []),
    ...operation.notFrom.map((end) => STEP + words.say('why.not-from', { end: words.say(`why.end.${end}`) })),
    ...methodLines(operation, words),
    ...mustBlock('why.comes-after', operation.comesAfter, part, words),
    ...mustBlock('why.comes-before', operation.comesBefore, part, words),
  ]);
}

/** A part that cannot be planned: what was refused, and which single change would help. */
export function showWhyNot(none: WhyNot, words: Words): string {
  const stuck = none.stuck.map((id) => within(id, none.part)).join(', ');
  return text([
    words.say('why.no-route', { part: none.part }),
    ...(stuck === '' ? [] : [STEP + words.say('why.stuck', { any: stuck })]),
    ...section('why.refused', none.refused, none.part, words),
    ...helpBlock(none, words),
  ]);
}

function helpBlock(none: WhyNot, words: Words): readonly string[] {
  const single = [
    ...none.wouldHelp.flatMap((r) => changeLines(r, none.part, words)),
    ...none.wouldHelpByOne.flatMap((all) => oneForAll(all, none.part, words)),
  ];
  if (single.length > 0) return ['', words.say('why.would-help'), ...single];
  if (none.wouldHelpPairs.length === 0) return ['', words.say('why.nothing-single-helps')];
  const told = ({ what, because }: WhyRefusal): string => `${within(what, none.part)} (${ruleTitle(because, words)})`;
  const pairs = none.wouldHelpPairs.map(([a, b]) => STEP + words.say('why.pair', { a: told(a), b: told(b) }));
  return ['', words.say('why.would-help-together'), ...pairs];
}

function headOfPart(part: WhyPart, words: Words): readonly string[] {
  const cost = words.say('why.cost', rounded(part.cost));
  const best = part.proved === 'best' ? 'why.best' : 'why.best-found';
  const habits = part.habits.map((habit) => STEP + words.say(`why.habit.${habit}`));
  return [
    words.say('why.part', { part: part.part, cost }),
    STEP + words.say(best, { asGood: part.asGood, states: part.states }),
    ...(part.atLeast ? [STEP + words.say('why.at-least', { cost: words.say('why.cost', part.atLeast) })] : []),
    ...habits,
    ...part.insteadOf.flatMap((one) => refusedLines(one, part.part, words)),
  ];
}

/** A plan that came before this one: why the proof refused it, and what was left out then. */
function refusedLines({ claims, left }: RefusedPlan, part: string, words: Words): readonly string[] {
  const said = claims.map(
    (one) =>
      STEP +
      STEP +
      words
        .say(`claim.${one.kind.replace(/ /g, '-')}.fails`, one.grounds)
        .replace(/\s+/g, ' ')
        .trim(),
  );
  const names = {
    grip: 'grip' in left ? within(left.grip, part) : '',
    op: 'op' in left ? within(left.op, part) : '',
    feature: 'feature' in left ? within(left.feature, part) : '',
    title: 'because' in left ? ruleTitle(left.because, words) : '',
  };
  return [STEP + words.say('why.instead-of'), ...said, STEP + words.say(`why.left-out.${left.what}`, names)];
}

// ---- set-ups and operations --------------------------------------------------------------------------------------------
function setUpBlock(setUp: WhySetUp, part: WhyPart, words: Words): readonly string[] {
  const operations = part.operations.filter((o) => part.setUps[o.setUp] === setUp);
  return [
    '',
    setUpLine(setUp, part, words),
    ...setUp.because.map((b) => STEP + inShort(b, words)),
    ...operations.flatMap((o) => [
      STEP + title(o, words),
      ...o.because.map((b) => STEP + STEP + inShort(b, words)),
      ...together(o.comesAfter, words).map((group) => STEP + STEP + afterLine(group, part, words)),
    ]),
  ];
}

function setUpLine(s: WhySetUp, part: WhyPart, words: Words): string {
  const numbers = part.operations.filter((o) => part.setUps[o.setUp] === s).map((o) => o.number);
  const span = { from: numbers[0] ?? 0, to: numbers[numbers.length - 1] ?? 0, several: numbers.length > 1 };
  if (s.kind === 'bench') return words.say('why.bench', span);
  if (s.kind === 'vee-block') return words.say('why.vee-block', { ...span, diameter: showMm(s.diameter), long: showMm(s.long) });
  const held = {
    diameter: showMm(s.diameter),
    long: showMm(s.long),
    datum: within(s.datum, part.part),
    out: words.say(`why.end.${s.out}`),
  };
  const grip = [...(s.plugged ? ['and-plug'] : []), ...(s.seated ? ['and-seat'] : []), ...(s.centred ? ['and-centre'] : [])].reduce(
    (said, besides) => words.say(`why.grip.${besides}`, { grip: said }),
    words.say(`why.grip.${s.kind}`),
  );
  return words.say('why.set-up', { no: s.no, grip, ...held, ...span });
}

export function title(o: WhyOperation, words: Words): string {
  return words.say('why.operation', { number: o.number, verb: words.say(`why.verb.${o.verb}`), feature: o.feature });
}

function methodLines({ method }: WhyOperation, words: Words): readonly string[] {
  const { because, besides } = method;
  if (besides.length === 0) return [];
  const others = besides.map((m) => STEP + ruleTitle(m.because, words));
  return ['', words.say('why.method', { title: ruleTitle(because, words) }), words.say('why.besides'), ...others];
}

// ---- what must come before and after -----------------------------------------------------------------------------------
/** Befores that one rule asks for in the same words and with the same force, told once. */
type Together = { readonly because: Because; readonly force: WhyMust['force']; readonly all: readonly WhyMust[] };

function together(musts: readonly WhyMust[], words: Words): readonly Together[] {
  const groups = new Map<string, WhyMust[]>();
  for (const must of musts) {
    const key = `${must.force} ${ruleTitle(must.because, words)}`;
    groups.set(key, [...(groups.get(key) ?? []), must]);
  }
  return [...groups.values()].flatMap((all) => (all[0] ? [{ because: all[0].because, force: all[0].force, all: inOrder(all) }] : []));
}

/** By number, each operation once. */
function inOrder(musts: readonly WhyMust[]): readonly WhyMust[] {
  const once = musts.filter((m, i) => musts.findIndex((other) => other.op === m.op) === i);
  return once.sort((a, b) => a.number - b.number);
}

function afterLine({ because, force, all }: Together, part: WhyPart, words: Words): string {
  const ops = all.map((m) => (m.number > 0 ? String(m.number) : within(m.op, part.part))).join(', ');
  return words.say('why.after-line', { ops, rule: ruleTitle(because, words), habit: force === 'preferred' });
}

function mustBlock(id: string, musts: readonly WhyMust[], part: WhyPart, words: Words): readonly string[] {
  if (musts.length === 0) return [];
  const lines = together(musts, words).flatMap(({ because, force, all }) => [
    STEP + all.map((m) => named(m.op, part, words)).join(', '),
    ...reason(because, words, STEP + STEP),
    ...(force === 'preferred' ? [STEP + STEP + STEP + words.say('why.habit')] : []),
  ]);
  return ['', words.say(id), ...lines];
}

function named(op: string, part: WhyPart, words: Words): string {
  const found = part.operations.find((o) => o.id === op);
  return found ? title(found, words) : within(op, part.part);
}

// ---- refused, next best, not kept ---------------------------------------------------------------------------------------
function tailOfPart(part: WhyPart, words: Words): readonly string[] {
  const broken = part.broken.map((m) => {
    const pair = { first: named(m.op, part, words), after: named(m.than, part, words) };
    return STEP + words.say('why.broken-line', { ...pair, why: words.say(`rule.${m.because.rule}.why`, m.because.grounds) });
  });
  const runners = part.runnersUp.map((r) => {
    const grips = r.grips.map((grip) => within(grip, part.part)).join(', ');
    return STEP + words.say('why.runner-up', { grips, dearerBy: r.dearerBy, cost: words.say('why.cost', rounded(r.cost)) });
  });
  return [
    ...(broken.length > 0 ? ['', words.say('why.broken'), ...broken] : []),
    ...section('why.refused', part.refused, part.part, words),
    ...(runners.length > 0 ? ['', words.say('why.runners-up'), ...runners] : []),
  ];
}

function section(id: string, refusals: readonly WhyRefusal[], part: string, words: Words): readonly string[] {
  if (refusals.length === 0) return [];
  return ['', words.say(id), ...refusals.flatMap((r) => refusalLines(r, part, words))];
}

/** One tool that several features want: its change, of the one that is to reach farthest, then what each of them wants of it. */
function oneForAll(all: readonly WhyRefusal[], part: string, words: Words): readonly string[] {
  const reach = (r: WhyRefusal): number => Number(r.because.grounds.reach ?? 0);
  const [first] = [...all].sort((a, b) => reach(b) - reach(a));
  if (!first) return [];
  const change = words.say(`rule.${first.because.rule}.change`, first.because.grounds);
  return [
    STEP + words.say('why.one-for-all', { change, count: all.length }),
    ...all.flatMap((r) => STEP + (refusalLines(r, part, words)[0] ?? '')),
  ];
}

/** What to change, in the rule's own words; the figures say how much. */
function changeLines(r: WhyRefusal, part: string, words: Words): readonly string[] {
  const [head = ''] = refusalLines(r, part, words);
  const id = `rule.${r.because.rule}.change`;
  return [head, STEP + STEP + words.say(words.has(id) ? id : `rule.${r.because.rule}.why`, r.because.grounds)];
}

function refusalLines(r: WhyRefusal, part: string, words: Words): readonly string[] {
  const what = `${within(r.what, part)}: ${ruleTitle(r.because, words)}.${figures(r, words)}`;
  return [STEP + what, STEP + STEP + words.say(`rule.${r.because.rule}.why`, r.because.grounds)];
}

/** What there is beside what is wanted or allowed; of something that there is none of, the latter alone. */
function figures({ has, wants, most }: WhyRefusal, words: Words): string {
  const shown = { has: has === undefined ? '' : showMm(has) };
  if (wants !== undefined) return ` ${words.say('why.has-wants', { ...shown, wants: showMm(wants) })}`;
  return most === undefined ? '' : ` ${words.say('why.has-most', { ...shown, most: showMm(most) })}`;
}

// ---- a rule's words ----------------------------------------------------------------------------------------------------
function reason(because: Because, words: Words, indent: string): readonly string[] {
  const id = `rule.${because.rule}.otherwise`;
  const otherwise = words.has(id) ? [indent + STEP + words.say('why.otherwise', { what: words.say(id, because.grounds) })] : [];
  return [indent + inShort(because, words), ...otherwise];
}

function inShort(because: Because, words: Words): string {
  return `${ruleTitle(because, words)}. ${words.say(`rule.${because.rule}.why`, because.grounds)}`;
}

function ruleTitle({ rule, grounds }: Because, words: Words): string {
  return words.say(`rule.${rule}.title`, grounds);
}

/** Without the part's own name, where that is said above. */
function within(id: string, part: string): string {
  return id.startsWith(`${part}/`) ? id.slice(part.length + 1) : id;
}

function text(lines: readonly string[]): string {
  return `${lines.join('\n').trimEnd()}\n`;
}

/** Minutes are told whole. */
const rounded = (cost: Cost): Cost => ({ ...cost, minutes: Math.round(cost.minutes / TENTHS) });
const TENTHS = 10;
