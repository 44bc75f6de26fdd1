/** The chart of a plan as a table for a terminal: every dimension of the drawing with its links, its worst case and what is asked. */
import { type Len, showMm } from '../base/units.ts';
import type { Words } from '../base/words.ts';
import type { Plan, PlannedPart, StackPath } from '../model/plan.ts';
import type { Console } from './tools.ts';

type Pair = { readonly lo: Len; readonly hi: Len };
/** `links`: the working dimensions (or holds, or parts' lengths) on the way, each with its sign. */
type Row = {
  readonly part: string;
  readonly kind: 'length' | 'run-out' | 'across parts';
  readonly dimension: string;
  readonly links: readonly string[];
  readonly worst: Pair;
  readonly likely?: Pair;
  /** `hi` is absent where more does no harm. */
  readonly asked: { readonly lo: Len; readonly hi?: Len };
  readonly met: boolean;
  readonly says?: { readonly id: string; readonly grounds: Readonly<Record<string, string>> };
};

export function tellChart(plan: Plan, words: Words, console: Console): void {
  const heads = ['part', 'dimension', 'links', 'worst', 'likely', 'asked'].map((head) => words.say(`cli.chart.${head}`));
  const rows = rowsOf(plan).map((row) => cellsOf(row, words));
  if (rows.length === 0) return;
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd();
  console.out(`${[line(heads), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n')}\n\n`);
}

/** For a program to read: limits in whole units of 0.1 um. */
export function plainChart(plan: Plan): readonly Omit<Row, 'says'>[] {
  return rowsOf(plan).map(({ says: _, ...row }) => row);
}

function rowsOf(plan: Plan): readonly Row[] {
  return [...plan.parts.flatMap((planned) => [...lengthRows(planned), ...truthRows(planned)]), ...(plan.stacks ?? []).map(stackRow)];
}

const short = (part: string, id: string): string => (id.startsWith(`${part}/`) ? id.slice(part.length + 1) : id);

function lengthRows({ part, chart }: PlannedPart): readonly Row[] {
  return chart.drawing.map((path) => ({
    ...{
      part: part.id,
      kind: 'length',
      dimension: short(part.id, path.of),
      links: path.links.map((link) => signed(short(part.id, link.dim), link.sign)),
    },
    ...{ worst: { lo: path.lo, hi: path.hi }, asked: { lo: path.asks.lo, hi: path.asks.hi }, met: path.met },
    ...(path.likely ? { likely: path.likely } : {}),
  }));
}

const signed = (name: string, sign: 1 | -1): string => `${sign === 1 ? '+' : '\u2212'}${name}`;

function truthRows({ part, chart }: PlannedPart): readonly Row[] {
  const none = 0 as Len;
  return (chart.truths ?? []).map((path) => ({
    ...{ part: part.id, kind: 'run-out', dimension: short(part.id, path.of), links: path.links.map((link) => short(part.id, link.grip)) },
    ...{ worst: { lo: none, hi: path.worst }, asked: { lo: none, hi: path.asks }, met: path.met },
    says: { id: 'cli.chart.true', grounds: { a: short(part.id, path.a), b: short(part.id, path.b) } },
  }));
}

function stackRow(path: StackPath): Row {
  const worst = path.fitted ?? { lo: path.lo, hi: path.hi };
  const links = path.links.map((link) => signed(`${link.part} ${short(link.part, link.a)}-${short(link.part, link.b)}`, link.sign));
  const row = { part: '', kind: 'across parts', dimension: path.of, links, worst, asked: askedOf(path) } as const;
  if (path.fitted) return { ...row, met: path.met, says: { id: 'cli.chart.fitted', grounds: { of: path.of } } };
  return { ...row, met: path.met, likely: path.likely };
}

const askedOf = ({ asks, open }: StackPath): Row['asked'] => (open === 'above' ? { lo: asks.lo } : { lo: asks.lo, hi: asks.hi });

function cellsOf(row: Row, words: Words): readonly string[] {
  const pair = ({ lo, hi }: Pair): string =>
    row.kind === 'run-out'
      ? words.say('cli.chart.at-most', { most: showMm(hi) })
      : words.say('cli.chart.between', { lo: showMm(lo), hi: showMm(hi) });
  const { lo, hi } = row.asked;
  const wanted = hi === undefined ? words.say('cli.chart.at-least', { least: showMm(lo) }) : pair({ lo, hi });
  const asked = row.met ? wanted : `${wanted}: ${words.say('cli.chart.not-met')}`;
  return [
    row.part === '' ? words.say('cli.chart.several') : row.part,
    row.says ? words.say(row.says.id, row.says.grounds) : row.dimension,
    row.links.join(' '),
    pair(row.worst),
    row.likely ? pair(row.likely) : words.say('cli.chart.no-figure'),
    asked,
  ];
}
