/** Dials, feeds and what binds them, for a row and the line beneath it: what to read after each pass, where to stop and measure. */
import { len } from '../../base/units.ts';
import type { Figures, Operation, Reading } from '../../model/plan.ts';
import { SAID_OVER } from './once.ts';
import type { SheetWords } from './said.ts';

/** In the order in which they are needed. */
export function figuresSaid(operation: Operation, figures: Figures | undefined, words: SheetWords): readonly string[] {
  if (!figures) return [];
  return [
    ...readingsSaid(operation, figures, words),
    ...slideSaid(figures, words),
    ...boundSaid(operation, figures, words),
    ...(figures.says ?? []).filter(({ id }) => !SAID_OVER.includes(id)).map((say) => words.say(say.id, say.grounds)),
    ...(figures.spring && operation.verb === 'turn' ? [words.say('cuts.spring')] : []),
  ];
}

/** '0.5 ×3, 0.4, measure, 0.15' */
export function passesText({ passes: cuts = [], measure }: Figures, words: SheetWords): string {
  if (measure === undefined || measure === 0) return words.passes(cuts);
  return [words.passes(cuts.slice(0, measure)), words.say('dial.measure'), words.passes(cuts.slice(measure))].join(', ');
}

/** A few readings stand in the column, 'cross 50, 85, 1t'; of more it has the whole, 'cross 2t 5', and on a line of its own 'carriage 120 div'. */
export function dialText(figures: Figures, words: SheetWords): string {
  const { dial, readings = [], zero, along } = figures;
  if (!dial) return '';
  const slide = words.say(`slide.${dial.which}`);
  const few = readings.length > 1 && readings.length <= FEW;
  const text = few ? words.say('dial.few', { slide, readings: listed(readings, words) }) : words.say('dial', { slide, ...shown(dial) });
  if (zero && words.has(`zero.${zero.at}`)) return words.say('dial.from', { dial: text, zero: words.say(`zero.${zero.at}`) });
  if (!along) return text;
  return [text, words.say('dial', { slide: words.say(`slide.${along.which}`), ...shown(along) })].join('\n');
}
/** Readings that the column has room for. */
const FEW = 2 + 1;

/** A part of a division is left to the eye: shown to a tenth. */
const shown = ({ turns, divisions }: Reading): { readonly turns: number; readonly divisions: number } => ({
  turns,
  divisions: Math.round(divisions * 10) / 10,
});

const listed = (readings: readonly Reading[], words: SheetWords): string =>
  readings.map((reading) => words.say('dial.short', shown(reading))).join(', ');

/** Many readings stand beneath the row; where their nought is, the page says. */
function readingsSaid({ verb }: Operation, figures: Figures, words: SheetWords): readonly string[] {
  const { readings = [], zero, outward, slack } = figures;
  if (zero === undefined || readings.length === 0) return [];
  const many =
    readings.length > FEW
      ? [words.say('dial.readings', { slide: words.say(`dial.${readings[0]?.which ?? 'cross'}`), readings: runSaid(figures, words) })]
      : [];
  const away = outward && verb !== 'cone' ? [words.say('dial.outward', { slack: slack ?? '' })] : [];
  return [...many, ...away];
}

/** Of very many the like ones are told by the first, the step and the last: nobody finds his place among eighty readings. */
function runSaid({ readings = [], passes = [] }: Figures, words: SheetWords): string {
  if (readings.length <= MANY) return listed(readings, words);
  return runsOf(passes)
    .map(({ from, to }) => {
      const [first, second, last] = [readings[from], readings[from + 1], readings[to - 1]];
      const step = first && second && stepOf(readings, first, second);
      if (to - from <= MANY / 2 / 2 || !step || !last) return listed(readings.slice(from, to), words);
      const [begins, each, ends] = [first, step, last].map((one) => words.say('dial.short', shown(one)));
      return words.say('dial.so-on', { first: begins ?? '', step: each ?? '', last: ends ?? '' });
    })
    .join(', ');
}
const MANY = 2 * 10;

/** Passes that are alike, one after the other: from which up to before which. */
function runsOf(passes: readonly number[]): readonly { readonly from: number; readonly to: number }[] {
  const starts = passes.flatMap((pass, i) => (pass === passes[i - 1] ? [] : [i]));
  return starts.map((from, i) => ({ from, to: starts[i + 1] ?? passes.length }));
}

/** What the dial goes on by from one reading to the next; nothing where the readings do not tell what a division and a turn are. */
function stepOf(readings: readonly Reading[], a: Reading, b: Reading): Reading | undefined {
  const short = readings.find(({ turns, divisions }) => turns === 0 && divisions > 0);
  const long = readings.find(({ turns }) => turns > 0);
  if (!short) return undefined;
  const division = short.total / short.divisions;
  const turn = long ? (long.total - long.divisions * division) / long.turns : Number.POSITIVE_INFINITY;
  const total = len(b.total - a.total);
  const turns = Math.floor(total / turn);
  return { which: a.which, turns, divisions: turns > 0 ? (total - turns * turn) / division : total / division, total };
}

function slideSaid({ slide }: Figures, words: SheetWords): readonly string[] {
  if (!slide) return [];
  return [words.say('slide.cone', { angle: slide.angle, travel: words.say('dial.turns', shown(slide.travel)), slack: slide.slack ?? '' })];
}

/** What is always so is not said: the tool, or what there is to take. */
function boundSaid({ verb }: Operation, { bound, feed }: Figures, words: SheetWords): readonly string[] {
  if (bound === undefined || bound === 'bound.tool' || bound === 'bound.stock') return [];
  const fed = verb === 'drill' || verb === 'part-off' || verb === 'cut-stub' || verb === 'groove';
  if (fed && feed !== undefined)
    return [words.say('feed.bound', { feed: words.feed(Math.round(feed * 100) / 100), verb, bound: words.say(bound) })];
  return [words.say('cuts.bound', { bound: words.say(bound) })];
}
