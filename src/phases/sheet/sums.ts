/** Sums across parts on the sheet: in the order in which they are measured, boxes to fill, what is cut to them, and the proof afterwards. */
import { type Len, len, mm, toStep } from '../../base/units.ts';
import type { Chain, ChainLink } from '../../model/part.ts';
import type { Plan, PlannedPart, StackPath } from '../../model/plan.ts';
import type { Section } from '../../model/sheet.ts';
import { type Desk, deskOf, namedIn } from './lookup.ts';
import { partName } from './names.ts';
import type { SheetWords } from './said.ts';

/** The sheet on which it is said how a face is measured that is cut last: its sum, or the steps of assembly where those say it. */
export const SUMS = 'sums';

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

type Sums = { readonly desks: ReadonlyMap<string, Desk>; readonly words: SheetWords };
type Boxes = Section & { readonly kind: 'boxes' };
/** What is measured at once: one link, or several that stand put together. */
type Reading = { readonly links: readonly ChainLink[]; readonly sign: 1 | -1; readonly nominal: Len };

/** A section a chain that its links make up. */
export function sumsOf(plan: Plan, words: SheetWords): readonly Section[] {
  const sums: Sums = { words, desks: new Map(plan.parts.map((planned: PlannedPart) => [planned.part.id, deskOf(planned)])) };
  return plan.fitting.chains.filter(isWhole).flatMap((chain) => {
    const path = plan.stacks?.find((one) => one.of === chain.id);
    return [sumOf(chain, path, sums), ...proofOf(chain, words)];
  });
}

/**
 * Do the links alone make up what is asked? Where bought things or joints as tightened belong to the sum and are no links of parts, a
 * formula of the links would mislead: then the steps of assembly say how it is measured.
 */
function isWhole({ links, asks, open }: Chain): boolean {
  const sum = links.reduce((total, link) => total + link.sign * link.nominal, 0);
  return sum >= asks.lo && (open === 'above' || sum <= asks.hi);
}

function sumOf(chain: Chain, path: StackPath | undefined, sums: Sums): Section {
  const fitted = chain.how === 'blind' ? undefined : chain.links.find((link) => isFitted(chain, link, sums));
  const readings = readingsOf(chain.links.filter((link) => link !== fitted));
  return fitted ? fittedSum(chain, fitted, readings, path, sums) : blindSum(chain, readings, path, sums);
}

/** Neighbours that are put together are one reading; it counts the way that it comes to. */
function readingsOf(links: readonly ChainLink[]): readonly Reading[] {
  const groups: ChainLink[][] = [];
  for (const link of links) {
    const last = groups.at(-1);
    if (last && link.together !== undefined && last[0]?.together === link.together) last.push(link);
    else groups.push([link]);
  }
  return groups.map((group) => {
    const sum = group.reduce((total, link) => total + link.sign * link.nominal, 0);
    return { links: group, sign: sum < 0 ? -1 : 1, nominal: toStep(len(Math.abs(sum)), mm(0.01)) };
  });
}

/** Every link but the fitted one is measured on the parts as made; the sum gives the length to which the fitted one is cut. */
function fittedSum(chain: Chain, fitted: ChainLink, readings: readonly Reading[], path: StackPath | undefined, sums: Sums): Boxes {
  const { words, desks } = sums;
  const asks = asksOf(chain, words);
  const result = {
    letter: words.say('sum.result'),
    label: words.say('sum.fitted', { part: linkPart(desks.get(fitted.part), fitted.part, words) }),
    hint: words.say('sum.drawing', { size: words.size(fitted.nominal) }),
  };
  const left = path?.fitted && path.left ? [leftOver(path.fitted, path.left, words)] : [];
  return {
    kind: 'boxes',
    title: titleOf(chain, words),
    text: [words.say('sum.how', asks), ...left].join(' '),
    boxes: [...readings.map((one, i) => boxOf(one, i, sums)), result],
    sum: words.say('sum.sum', {
      formula: solvedFor(chain, fitted.sign, readings, words),
      limits: path?.left ? evenly(path.left.cut, words) : asks.limits,
    }),
  };
}

/** The last cut has its own limits, closer than what is asked of the whole. */
const evenly = (cut: Len, words: SheetWords): string => `±${words.atMost(len(Math.floor(cut / 2)))}`;

function leftOver(fitted: NonNullable<StackPath['fitted']>, left: NonNullable<StackPath['left']>, words: SheetWords): string {
  const { cut, read, reckoned } = left;
  return words.say('sum.left', {
    ...{ least: words.size(fitted.lo), greatest: words.size(fitted.hi) },
    ...{ cut: words.size(cut), read: words.size(read), reckoned: reckoned === 0 ? '' : words.size(reckoned) },
  });
}

/** The limits of the parts hold it: their worst case is said, and boxes let it be measured. */
function blindSum(chain: Chain, readings: readonly Reading[], path: StackPath | undefined, sums: Sums): Boxes {
  const { words } = sums;
  const asks = asksOf(chain, words);
  const worst = path ? [words.say('sum.worst', { least: words.size(path.lo), greatest: words.size(path.hi) })] : [];
  const rival = chain.rivals ? [words.say('sum.governs')] : [];
  return {
    kind: 'boxes',
    title: titleOf(chain, words),
    text: [words.say('sum.blind', asks), ...worst, ...rival].join(' '),
    boxes: readings.map((one, i) => boxOf(one, i, sums)),
    sum: words.say('sum.blind.sum', { formula: formulaOf(readings, 1), ...asks }),
  };
}

const titleOf = ({ id }: Chain, words: SheetWords): string =>
  words.has(`chain.${id}`) ? words.say(`chain.${id}`) : words.say('sum.title', { chain: namedIn(id, words) });

function asksOf({ asks, open }: Chain, words: SheetWords): { readonly target: string; readonly limits: string } {
  return open === 'above'
    ? { target: words.say('sum.at-least', { least: words.atLeast(asks.lo) }), limits: '' }
    : { target: words.target(asks), limits: words.limits(asks) };
}

/** The proof afterwards, on what was put together: how, within what, and a box for what was found. */
function proofOf({ proof, asks, open }: Chain, words: SheetWords): readonly Boxes[] {
  if (proof === undefined) return [];
  const within =
    open === 'above'
      ? words.say('sum.at-least', { least: words.atLeast(asks.lo) })
      : words.say('sum.within', { least: words.atLeast(asks.lo), greatest: words.atMost(asks.hi) });
  const boxes = [{ letter: '', label: words.say('sum.found', { within }), hint: '' }];
  return [{ kind: 'boxes', title: words.say('sum.proof'), text: words.say(proof), boxes, sum: '' }];
}

function boxOf({ links, nominal }: Reading, i: number, sums: Sums): Boxes['boxes'][number] {
  return { letter: LETTERS[i] ?? '', label: labelOf(links, sums), hint: hintOf(links, nominal, sums.words) };
}

function labelOf([link, ...more]: readonly ChainLink[], { words, desks }: Sums): string {
  if (!link) return '';
  if (link.together !== undefined) return words.say(link.together);
  if (link.says !== undefined || more.length > 0) return words.say(link.says ?? '');
  const desk = desks.get(link.part);
  const [from, to] = [letterAt(desk, link.a, words), letterAt(desk, link.b, words)];
  const part = linkPart(desk, link.part, words);
  if (link.b === AXIS) return words.say('sum.across', { part, of: namedIn(link.a, words) });
  return words.say('sum.link', { part, from, to });
}
const AXIS = 'axis';

/** What can't be measured before is told with what it may come to. */
function hintOf([link]: readonly ChainLink[], nominal: Len, words: SheetWords): string {
  const unread = (link?.by === 'tightened' || link?.by === 'packed') && link.together === undefined;
  if (!unread || !link.limits) return words.say('sum.drawing', { size: words.size(nominal) });
  return words.say('sum.reckoned', { size: words.size(nominal), least: words.size(link.limits.lo), greatest: words.size(link.limits.hi) });
}

function isFitted(chain: Chain, link: ChainLink, { desks }: Sums): boolean {
  const dimension = desks.get(link.part)?.part.dimensions.find((d) => d.id === chain.fitted?.dim);
  if (chain.fitted?.part !== link.part || dimension === undefined) return false;
  return [dimension.a, dimension.b].includes(link.a) && [dimension.a, dimension.b].includes(link.b);
}

/** 'a − b': the signed letters, each turned by `turn`. */
function formulaOf(readings: readonly Reading[], turn: 1 | -1): string {
  const terms = readings.map((one, i) => ({ plus: one.sign * turn > 0, letter: LETTERS[i] ?? '' }));
  return [...terms.filter((t) => t.plus), ...terms.filter((t) => !t.plus)]
    .map((t, i) => (t.plus ? (i === 0 ? t.letter : ` + ${t.letter}`) : ` \u2212 ${t.letter}`))
    .join('');
}

/** asks = sign·fitted + Σ others, solved for the fitted link. */
function solvedFor(chain: Chain, sign: 1 | -1, measured: readonly Reading[], words: SheetWords): string {
  const others = formulaOf(measured, sign === 1 ? -1 : 1);
  const target = words.target(chain.asks);
  return sign === 1 ? `${target}${others.startsWith(' ') ? '' : ' + '}${others}` : `${others} \u2212 ${target}`;
}

function linkPart(desk: Desk | undefined, id: string, words: SheetWords): string {
  return desk ? partName(desk.part, words) : namedIn(id, words);
}

function letterAt(desk: Desk | undefined, surface: string, words: SheetWords): string {
  return desk?.part.surfaces.some((s) => s.id === surface && s.shape === 'face') ? desk.letter(surface) : namedIn(surface, words);
}
