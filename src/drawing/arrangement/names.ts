/** Names of parts in two columns beside a picture, each with a leader to its part: which side, which spot, which height. Paper: mm, y down. */
import type { Advances, Box, Item } from '../../model/display.ts';
import { circle, type Lettering, line, text, textBox, type XY } from '../display.ts';
import { EDGES, type Field, fieldOf, next } from '../field.ts';
import { capHeight, textWidth } from '../measure.ts';
import { NARROW } from '../paper.ts';
import { cross, distance, grown, type Leg, lineBoxes, overlap, runsThrough, type Span, spanOf } from '../plane.ts';

export type Side = 'left' | 'right';
export type Named = { readonly name: string; readonly spots: Readonly<Record<Side, readonly XY[]>> };
export type ColumnsAsk = {
  /** Where the names end at the left, and where they begin at the right. */
  readonly left: number;
  readonly right: number;
  readonly height: number;
  /** What no name and no leader may meet. */
  readonly barred: readonly Span[];
  /** Lines of the work that a leader should not run along. */
  readonly edges: readonly Leg[];
  readonly advances: Advances;
};
/** `boxes`: round the edges. `costs`: what is known of a choice, by the height at which its name stands. */
type Columns = ColumnsAsk & { readonly boxes: Field; readonly costs: ReadonlyMap<Choice, Map<number, number>> };
export type Names = { readonly items: readonly Item[]; readonly boxes: readonly Box[] };

const LETTERS = 2.8;
const PITCH = 4.2;
const GAP = 0.8;
const DOT = 0.4;
const HALF = PITCH / 2;
/** In mm of leader. */
const CROSSES = 1000;
const ALONG = 15;
const THROUGH = 5;
/** mm from a line, to be taken for it. */
const NEAR = 0.6;
const STEEP = 3;
/** Times that each name may try a better place. */
const ROUNDS = 6;

type Choice = { readonly side: Side; readonly spot: XY };
type Placed = { readonly named: Named; readonly choice: Choice; readonly y: number; readonly leader: Leg };

export const widthOfName = (advances: Advances, name: string): number => textWidth(advances, 'text', LETTERS, name);

/** Height that so many names want, in two columns. */
export const leastFor = (names: number): number => (Math.ceil(names / 2) + 1) * PITCH;

/** Names whose parts are seen nowhere are left out. */
export function namesBeside(all: readonly Named[], ask: ColumnsAsk): Names {
  const named = all.filter(({ spots }) => spots.left.length + spots.right.length > 0);
  const choices = named.map(({ spots }) => choicesOf(spots));
  const costs = new Map(choices.flat().map((choice) => [choice, new Map<number, number>()]));
  const columns: Columns = { ...ask, boxes: fieldOf(ask.edges.map((edge) => grown(spanOf(edge), NEAR))), costs };
  let chosen: readonly Choice[] = named.map((one, i) => bestAlone(one, choices[i] ?? [], columns));
  for (let round = 0; round < ROUNDS; round++) {
    const before = chosen;
    named.forEach((_, i) => {
      chosen = bestFor(i, choices[i] ?? [], chosen, named, columns);
    });
    if (before === chosen) break;
  }
  return drawn(place(chosen, named, columns), columns);
}

const choicesOf = (spots: Named['spots']): readonly Choice[] =>
  (['left', 'right'] as const).flatMap((side) => spots[side].map((spot) => ({ side, spot })));

/** As if no other name were there. */
function bestAlone(named: Named, of: readonly Choice[], columns: Columns): Choice {
  const costs = of.map((choice) => costOf(place([choice], [named], columns), columns));
  return of[costs.indexOf(Math.min(...costs))] as Choice;
}

/** The choices with that one changed where it costs least. */
function bestFor(
  i: number,
  of: readonly Choice[],
  chosen: readonly Choice[],
  named: readonly Named[],
  columns: Columns,
): readonly Choice[] {
  let [best, least] = [chosen, costOf(place(chosen, named, columns), columns)];
  for (const choice of of) {
    const other = chosen.map((c, j) => (j === i ? choice : c));
    const cost = costOf(place(other, named, columns), columns);
    if (cost < least - 1e-9) [best, least] = [other, cost];
  }
  return best;
}

function place(chosen: readonly Choice[], named: readonly Named[], columns: Columns): readonly Placed[] {
  return (['left', 'right'] as const).flatMap((side) => {
    const here = chosen.flatMap((choice, i) => (choice.side === side ? [{ named: named[i] as Named, choice }] : []));
    const inOrder = here.sort((a, b) => a.choice.spot.y - b.choice.spot.y || a.choice.spot.x - b.choice.spot.x);
    const ys = heights(
      inOrder.map(({ choice }) => choice.spot.y),
      columns.height,
    );
    const x = side === 'left' ? columns.left + GAP : columns.right - GAP;
    return inOrder.map(({ named: one, choice }, i): Placed => {
      const y = ys[i] ?? 0;
      return { named: one, choice, y, leader: { a: { x, y }, b: choice.spot } };
    });
  });
}

type Pool = { readonly from: number; readonly n: number; readonly mean: number };

/** In their order and a line apart, as near as may be to where they are wanted: neighbours that would meet are pooled (isotonic regression). */
function heights(wanted: readonly number[], height: number): readonly number[] {
  const pools: Pool[] = [];
  for (const [i, y] of wanted.entries()) {
    let pool: Pool = { from: i, n: 1, mean: y - i * PITCH };
    for (let last = pools.at(-1); last && last.mean >= pool.mean; last = pools.at(-1)) {
      pools.pop();
      const n = last.n + pool.n;
      pool = { from: last.from, n, mean: (last.mean * last.n + pool.mean * pool.n) / n };
    }
    pools.push(pool);
  }
  const most = height - HALF - (wanted.length - 1) * PITCH;
  return pools.flatMap(({ from, n, mean }) =>
    Array.from({ length: n }, (_, i) => Math.min(Math.max(mean, HALF), Math.max(most, HALF)) + (from + i) * PITCH),
  );
}

function costOf(placed: readonly Placed[], columns: Columns): number {
  let cost = 0;
  placed.forEach((one, i) => {
    cost += known(one, columns);
    for (let j = 0; j < i; j++) if (cross(one.leader, (placed[j] as Placed).leader)) cost += CROSSES;
  });
  return cost;
}

/** Asked many times for the same leader. */
function known(one: Placed, columns: Columns): number {
  const before = columns.costs.get(one.choice);
  const cost = before?.get(one.y) ?? costOfOne(one, columns);
  before?.set(one.y, cost);
  return cost;
}

function costOfOne({ leader, named, choice: { side } }: Placed, { barred, edges, boxes, advances }: Columns): number {
  let cost = distance(leader.a, leader.b) + STEEP * Math.abs(leader.a.y - leader.b.y);
  const width = widthOfName(advances, named.name) + GAP;
  const name = { x: side === 'left' ? leader.a.x - width : leader.a.x, y: leader.a.y - HALF, w: width, h: PITCH };
  for (const box of barred) if (overlap(name, box) || runsThrough(leader, box)) cost += CROSSES;
  const { x: left, y: top, w, h } = spanOf(leader);
  const meets = (from: number): number => next(boxes, from, left, top, left + w, top + h);
  for (let at = meets(0); at < boxes.length; at = meets(at + EDGES)) {
    const edge = edges[at / EDGES] as Leg;
    cost += runsAlong(leader, edge) ? ALONG : cross(leader, edge) ? THROUGH : 0;
  }
  return cost;
}

/** A leader that lies on a level edge, or nearly, reads as a line of the work. */
function runsAlong({ a, b }: Leg, edge: Leg): boolean {
  if (Math.abs(edge.a.y - edge.b.y) > 0.05) return false;
  const [from, to] = [
    Math.max(Math.min(a.x, b.x), Math.min(edge.a.x, edge.b.x)),
    Math.min(Math.max(a.x, b.x), Math.max(edge.a.x, edge.b.x)),
  ];
  if (to - from < 1) return false;
  const y = a.y + ((b.y - a.y) * ((from + to) / 2 - a.x)) / (b.x - a.x || 1);
  return Math.abs(y - edge.a.y) < NEAR;
}

function drawn(placed: readonly Placed[], { left, right, advances }: Columns): Names {
  const how: Lettering = { advances, font: 'text', size: LETTERS, ink: 'black' };
  const texts = placed.map(({ named, choice: { side }, y }) =>
    text(how, named.name, side === 'left' ? left : right, y + capHeight(LETTERS) / 2, side === 'left' ? 'right' : 'left'),
  );
  return {
    items: [
      ...placed.flatMap(({ leader: { a, b } }) => [line(a.x, a.y, b.x, b.y, NARROW), circle(b.x, b.y, DOT, { fill: 'black' })]),
      ...texts,
    ],
    boxes: [
      ...placed.flatMap(({ leader, named }) => lineBoxes(leader, `leader ${named.name}`)),
      ...texts.map((item, i) => textBox(item, `text ${placed[i]?.named.name ?? ''}`)),
    ],
  };
}
