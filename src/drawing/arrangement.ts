/** The parts put together, cut through the middle, the way up that they are to stand: which way the water goes, and which way is up. */
import type { Advances, Item, Picture } from '../model/display.ts';
import type { Arrangement, Part } from '../model/part.ts';
import type { Edge } from '../model/stage.ts';
import { arrowHead, circle, line, polygon, type Stroke, text, type XY } from './display.ts';
import { hatchLines } from './hatch.ts';
import { CENTRE, HATCHED, NARROW, WIDE } from './paper.ts';
import { finishedStage, surfaceOf } from './part-outline.ts';

export type ArrangementView = {
  readonly arrangement: Arrangement;
  readonly part: (id: string) => Part;
  readonly frame: { readonly width: number; readonly height: number };
  readonly words: { readonly alt: string; readonly up: string; readonly in: string; readonly out: string };
  readonly advances: Advances;
};

/** On paper, mm. */
const ARROW = { long: 11, head: 3, gap: 2.5 } as const;
const UP_AT = 5;
const LETTERS = 2.8;
const PITCH = 1.3;
const ROOM = { left: 12, right: 24, above: 4, below: 18 } as const;
const FLOW: Stroke = { ink: 'black', width: 0.7 };

/** One piece where it stands: x to the right of the upright axis, y up, in units of length. */
type Piece = { readonly part: Part; readonly at: (z: number, r: number, side: 1 | -1) => XY };

export function drawArrangement(view: ArrangementView): Picture {
  const { arrangement: a, frame, words } = view;
  const pieces = piecesOf(view);
  const corners = pieces.flatMap((piece) =>
    outlineOf(piece.part).flatMap(({ a: p }) => ([1, -1] as const).map((s) => piece.at(p.z, p.d / 2, s))),
  );
  const [west, east] = [Math.min(...corners.map((p) => p.x)), Math.max(...corners.map((p) => p.x))];
  const [foot, top] = [Math.min(...corners.map((p) => p.y)), Math.max(...corners.map((p) => p.y))];
  const scale = Math.min((frame.width - ROOM.left - ROOM.right) / (east - west), (frame.height - ROOM.above - ROOM.below) / (top - foot));
  const on = ({ x, y }: XY): XY => ({ x: ROOM.left + (x - west) * scale, y: ROOM.above + (top - y) * scale });
  const axis = on({ x: 0, y: 0 }).x;
  const ball = a.ball && on({ x: 0, y: a.ball.at });
  const items: readonly Item[] = [
    ...pieces.flatMap((piece, i) => drawPiece(piece, on, i % 2 === 0 ? 1 : -1)),
    ...(a.ball && ball ? [circle(ball.x, ball.y, (a.ball.across / 2) * scale, { fill: 'white', stroke: WIDE })] : []),
    line(axis, ROOM.above - ARROW.gap, axis, on({ x: 0, y: foot }).y + ARROW.gap, CENTRE),
    ...flowArrows(view, on, { foot, east }),
    ...upArrow(view, on({ x: 0, y: foot }).y),
  ];
  return { ...frame, items, boxes: [], alt: words.alt };
}

/** What stands inside is drawn over what stands round it. */
function piecesOf({ arrangement, part }: ArrangementView): readonly Piece[] {
  const upright = arrangement.stands.map(({ part: id, way, at }): Piece => {
    const sign = way === 'up' ? 1 : -1;
    return { part: part(id), at: (z, r, side) => ({ x: side * r, y: at + sign * z }) };
  });
  const branches = arrangement.branches.map(
    ({ part: id, way, at, from, clear }): Piece => ({
      part: part(id),
      at: (z, r, side) => ({ x: Math.max(way === 'out' ? from + z : from - z, clear), y: at + side * r }),
    }),
  );
  return [...upright.slice(0, 1), ...branches, ...upright.slice(1)];
}

const outlineOf = (part: Part): readonly Edge[] => finishedStage(part, 'second').outlines.flat();

function drawPiece({ part, at }: Piece, on: (p: XY) => XY, lean: 1 | -1): readonly Item[] {
  const edges = outlineOf(part);
  const seen = edges.filter(({ a, b }) => a.d > 0 || b.d > 0);
  const halves = ([1, -1] as const).map((side) => edges.map(({ a }) => on(at(a.z, a.d / 2, side))));
  const beyond = edges.flatMap((edge) => acrossBore(part, edge)).map(({ z, r }) => [on(at(z, r, 1)), on(at(z, r, -1))] as const);
  return [
    polygon(
      envelopeOf(part, edges).map(({ z, r, side }) => on(at(z, r, side))),
      { fill: 'white' },
    ),
    ...halves.flatMap((ring) => [...hatchLines([ring], { pitch: PITCH, lean }).map(({ a, b }) => line(a.x, a.y, b.x, b.y, HATCHED))]),
    ...beyond.map(([a, b]) => line(a.x, a.y, b.x, b.y, NARROW)),
    ...seen.flatMap(({ a, b }) =>
      ([1, -1] as const).map((side) => {
        const [p, q] = [on(at(a.z, a.d / 2, side)), on(at(b.z, b.d / 2, side))];
        return line(p.x, p.y, q.x, q.y, WIDE);
      }),
    ),
  ];
}

/** All that it fills, its bores too: whatever stands behind is hidden. */
function envelopeOf(part: Part, edges: readonly Edge[]): readonly { readonly z: number; readonly r: number; readonly side: 1 | -1 }[] {
  const outer = edges.filter(({ surface }) => surface !== '' && surfaceOf(part, surface).side === 'outside').flatMap(({ a, b }) => [a, b]);
  const half = (side: 1 | -1) => outer.map(({ z, d }) => ({ z, r: d / 2, side }));
  return [...half(1), ...half(-1).reverse()];
}

/** Edges of a bore that are seen beyond the cut: at its ends and where it steps. */
function acrossBore(part: Part, { a, b, surface }: Edge): readonly { readonly z: number; readonly r: number }[] {
  if (surface === '' || a.z !== b.z) return [];
  const face = surfaceOf(part, surface);
  const isEnd = part.features.some((f) => f.kind === 'end' && f.face === surface);
  const r = Math.min(a.d, b.d) / 2;
  return r > 0 && (face.side === 'inside' || isEnd) ? [{ z: a.z, r }] : [];
}

type Reach = { readonly foot: number; readonly east: number };
function flowArrows({ arrangement, words, advances }: ArrangementView, on: (p: XY) => XY, { foot, east }: Reach): readonly Item[] {
  const how = { advances, font: 'text', size: LETTERS, ink: 'black' } as const;
  return arrangement.flow.flatMap(({ end, at, does }): readonly Item[] => {
    const label = does === 'in' ? words.in : words.out;
    if (end === 'below') {
      const { x, y } = on({ x: 0, y: foot });
      const [tip, tail] = [y + ARROW.gap, y + ARROW.gap + ARROW.long];
      const head =
        does === 'in' ? arrowHead({ x, y: tip }, UPWARD, ARROW.head, 'black') : arrowHead({ x, y: tail }, -UPWARD, ARROW.head, 'black');
      return [line(x, tip + ARROW.head, x, tail, FLOW), head, text(how, label, x + ARROW.gap, tail, 'left')];
    }
    const { x, y } = on({ x: east, y: at });
    const [near, far] = [x + ARROW.gap, x + ARROW.gap + ARROW.long];
    const head =
      does === 'out' ? arrowHead({ x: far, y }, 0, ARROW.head, 'black') : arrowHead({ x: near, y }, 2 * UPWARD, ARROW.head, 'black');
    const [from, to] = does === 'out' ? [near, far - ARROW.head] : [near + ARROW.head, far];
    return [line(from, y, to, y, FLOW), head, text(how, label, near, y + LETTERS + ARROW.gap, 'left')];
  });
}
const UPWARD = 90;

/** Only where it matters how the fitting stands. */
function upArrow({ arrangement, words, advances }: ArrangementView, foot: number): readonly Item[] {
  if (arrangement.stand !== 'upright') return [];
  const how = { advances, font: 'text-bold', size: LETTERS, ink: 'black' } as const;
  const tip = { x: UP_AT, y: foot - 2 * ARROW.long };
  return [
    line(UP_AT, tip.y + ARROW.head, UP_AT, foot - LETTERS - ARROW.gap, FLOW),
    arrowHead(tip, UPWARD, ARROW.head, 'black'),
    text(how, words.up, UP_AT, foot, 'middle'),
  ];
}
