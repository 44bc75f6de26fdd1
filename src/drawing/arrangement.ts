/** The parts put together, cut through the middle, the way up that they are to stand: what each is called, which way it flows, which way is up. */
import { mm } from '../base/units.ts';
import type { Advances, Box, Item, Picture } from '../model/display.ts';
import type { Arrangement, Part } from '../model/part.ts';
import { hatchesFor } from './arrangement/hatching.ts';
import { leastFor, type Named, namesBeside, widthOfName } from './arrangement/names.ts';
import { type Piece, piecesOf } from './arrangement/piece.ts';
import { ringOf, type Shape, spotsOf } from './arrangement/places.ts';
import { arrowHead, circle, line, polygon, type Stroke, text, textBox, type XY } from './display.ts';
import { type Hatch, hatched } from './hatch.ts';
import { CENTRE, HATCHED, NARROW, WIDE } from './paper.ts';
import type { Leg, Span } from './plane.ts';

export type ArrangementView = {
  readonly arrangement: Arrangement;
  readonly part: (id: string) => Part;
  readonly frame: { readonly width: number; readonly height: number };
  readonly words: {
    readonly alt: string;
    readonly up: string;
    readonly in: string;
    readonly out: string;
    /** By part; bought things by 'item <item>', the ball by 'ball'. */
    readonly names: Readonly<Record<string, string>>;
  };
  readonly advances: Advances;
};

/** On paper, mm. */
const ARROW = { long: 9, head: 3, gap: 3 } as const;
const OVERSHOOT = 1.5;
const UP_AT = 5;
const LETTERS = 2.8;
const ROOM = { names: 5, above: 4, below: 3 } as const;
/** On paper to one of work, no larger. */
const MOST = 2.2;
const SOFT: readonly Hatch[] = [
  { pitch: 0.7, lean: 1 },
  { pitch: 0.7, lean: -1 },
];
const FLOW: Stroke = { ink: 'black', width: 0.7 };
const UPWARD = 90;

type On = (p: XY) => XY;
type Extent = { readonly west: number; readonly east: number; readonly foot: number; readonly top: number };
/** Units of length to mm on paper; where the work begins at the left, where the columns of names end. */
type Laid = {
  readonly on: On;
  readonly scale: number;
  readonly height: number;
  readonly west: number;
  readonly left: number;
  readonly right: number;
};
type Marks = { readonly items: readonly Item[]; readonly boxes: readonly Box[] };

export function drawArrangement(view: ArrangementView): Picture {
  const { arrangement: a, frame, words } = view;
  const pieces = piecesOf(a, view.part);
  const hatches = hatchesFor(pieces);
  const laid = layOut(view, extentOf(pieces.flatMap(cornersOf)));
  const marks = joinMarks([...a.flow.map((flow) => flowArrow(view, pieces, laid, flow)), upArrow(view, laid)]);
  const barred = marks.boxes.map(({ x, y, w, h }): Span => ({ x, y, w, h }));
  const names = namesBeside(namedOf(view, pieces, laid), { ...laid, barred, edges: edgesOn(pieces, laid), advances: view.advances });
  const items: readonly Item[] = [
    ...pieces.flatMap((piece, i) => drawPiece(piece, laid.on, piece.shown === 'soft' ? SOFT : [hatches[i] ?? []].flat())),
    ...ballOf(a, laid),
    ...centreLines(a, pieces, laid),
    ...marks.items,
    ...names.items,
  ];
  return {
    width: frame.width,
    height: laid.height,
    items,
    boxes: [...workBoxes(pieces, laid), ...marks.boxes, ...names.boxes],
    alt: words.alt,
  };
}

const edgesOn = (pieces: readonly Piece[], { on }: Laid): readonly Leg[] =>
  pieces.flatMap(({ edges }) => edges.map(({ a, b }) => ({ a: on(a), b: on(b) })));
const cornersOf = ({ edges }: Piece): readonly XY[] => edges.flatMap(({ a, b }) => [a, b]);
const joinMarks = (all: readonly Marks[]): Marks => ({ items: all.flatMap((m) => m.items), boxes: all.flatMap((m) => m.boxes) });

function extentOf(corners: readonly XY[]): Extent {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { west: Math.min(...xs), east: Math.max(...xs), foot: Math.min(...ys), top: Math.max(...ys) };
}

/** As large as the frame lets it be beside the names, and the arrows where they are longer; no higher than it needs. */
function layOut({ arrangement, frame, words, advances }: ArrangementView, { west, east, foot, top }: Extent): Laid {
  const names = Math.max(0, ...Object.values(words.names).map((name) => widthOfName(advances, name)));
  const arrow = ARROW.gap + ARROW.long;
  const roomAt = (end: FlowEnd): number => (arrangement.flow.some((one) => one.end === end) ? arrow : 0);
  const room = {
    left: Math.max(names + ROOM.names, roomAt('left'), arrangement.stand === 'upright' ? 2 * UP_AT : 0),
    right: Math.max(names + ROOM.names, roomAt('side')),
    above: ROOM.above + roomAt('above'),
    below: ROOM.below + roomAt('below'),
  };
  const [across, high] = [frame.width - room.left - room.right, frame.height - room.above - room.below];
  const scale = Math.min(across / (east - west), high / (top - foot), MOST / mm(1));
  const shift = (across - (east - west) * scale) / 2;
  const height = Math.max(room.above + (top - foot) * scale + room.below, leastFor(Object.keys(words.names).length));
  return {
    ...{
      scale,
      height,
      west: room.left + shift,
      left: room.left + shift - ROOM.names,
      right: frame.width - room.right - shift + ROOM.names,
    },
    on: ({ x, y }) => ({ x: room.left + shift + (x - west) * scale, y: room.above + (top - y) * scale }),
  };
}

function drawPiece({ envelopes, cuts, edges, fine, openings = [], shown }: Piece, on: On, hatches: readonly Hatch[]): readonly Item[] {
  const rings = cuts.map((ring) => ring.map(on));
  const drawn = (legs: Piece['edges'], stroke: Stroke): readonly Item[] =>
    legs.map(({ a, b }) => {
      const [p, q] = [on(a), on(b)];
      return line(p.x, p.y, q.x, q.y, stroke);
    });
  return [
    ...envelopes.map((ring) => polygon(ring.map(on), { fill: 'white' })),
    ...(shown === 'thin' ? rings.map((ring) => polygon(ring, { fill: 'black' })) : []),
    ...hatches.flatMap((hatch) => rings.flatMap((ring) => hatched(ring, hatch, HATCHED))),
    ...drawn(fine, NARROW),
    ...drawn(edges, WIDE),
    ...openings.flatMap(({ over, sides }) => [polygon(over.map(on), { fill: 'white' }), ...drawn(sides, WIDE)]),
  ];
}

function ballOf({ ball }: Arrangement, { on, scale }: Laid): readonly Item[] {
  if (!ball) return [];
  const { x, y } = on({ x: 0, y: ball.at });
  return [circle(x, y, (ball.across / 2) * scale, { fill: 'white', stroke: WIDE })];
}

/** Of the upright axis, and of each level one to the end of what stands on it. */
function centreLines({ stands }: Arrangement, pieces: readonly Piece[], { on }: Laid): readonly Item[] {
  const { foot, top } = extentOf(pieces.filter(({ level }) => level === undefined).flatMap(cornersOf));
  const [low, high] = [on({ x: 0, y: foot }), on({ x: 0, y: top })];
  const levels = [...new Set(pieces.flatMap(({ level }) => level ?? []))];
  return [
    ...(stands.length > 0 ? [line(high.x, high.y - OVERSHOOT, low.x, low.y + OVERSHOOT, CENTRE)] : []),
    ...levels.map((level) => {
      const { west, east } = extentOf(pieces.filter((piece) => piece.level === level).flatMap(cornersOf));
      const [a, b] = [on({ x: west, y: level }), on({ x: east, y: level })];
      return line(a.x - OVERSHOOT, a.y, b.x + OVERSHOOT, b.y, CENTRE);
    }),
  ];
}

type FlowEnd = Arrangement['flow'][number]['end'];
const AWAY: Readonly<Record<FlowEnd, XY>> = { below: { x: 0, y: 1 }, above: { x: 0, y: -1 }, left: { x: -1, y: 0 }, side: { x: 1, y: 0 } };
const OUTWARD: Readonly<Record<FlowEnd, number>> = { below: -UPWARD, above: UPWARD, left: 2 * UPWARD, side: 0 };

/** What stands at which end of the fitting, and the arrow beyond it. */
function flowArrow(view: ArrangementView, pieces: readonly Piece[], { on }: Laid, { end, at, does }: Arrangement['flow'][number]): Marks {
  const how = { advances: view.advances, font: 'text', size: LETTERS, ink: 'black' } as const;
  const label = does === 'in' ? view.words.in : view.words.out;
  const inLine = end === 'below' || end === 'above';
  const own = extentOf(pieces.filter(({ level }) => (inLine ? level === undefined : level === at)).flatMap(cornersOf));
  const edge = on(inLine ? { x: 0, y: end === 'below' ? own.foot : own.top } : { x: end === 'left' ? own.west : own.east, y: at });
  const away = AWAY[end];
  const along = (by: number): XY => ({ x: edge.x + away.x * by, y: edge.y + away.y * by });
  const [near, far] = [along(ARROW.gap), along(ARROW.gap + ARROW.long)];
  const outward = OUTWARD[end];
  const [tip, tail] = does === 'in' ? [near, far] : [far, near];
  const shaft = along(does === 'in' ? ARROW.gap + ARROW.head : ARROW.gap + ARROW.long - ARROW.head);
  const words = inLine
    ? text(how, label, far.x + ARROW.gap / 2, end === 'below' ? far.y : far.y + LETTERS, 'left')
    : text(how, label, (near.x + far.x) / 2, near.y + LETTERS + ARROW.gap / 2, 'middle');
  const box = {
    x: Math.min(near.x, far.x) - 0.5,
    y: Math.min(near.y, far.y) - 0.5,
    w: Math.abs(near.x - far.x) + 1,
    h: Math.abs(near.y - far.y) + 1,
  };
  return {
    items: [
      line(shaft.x, shaft.y, tail.x, tail.y, FLOW),
      arrowHead(tip, does === 'in' ? outward + 2 * UPWARD : outward, ARROW.head, 'black'),
      words,
    ],
    boxes: [{ ...box, what: `mark ${end}` }, textBox(words, `text ${end}`)],
  };
}

/** Only where it matters how the fitting stands; at the foot, beside the work. */
function upArrow({ arrangement, words, advances }: ArrangementView, { height, west }: Laid): Marks {
  if (arrangement.stand !== 'upright') return { items: [], boxes: [] };
  const how = { advances, font: 'text-bold', size: LETTERS, ink: 'black' } as const;
  const x = Math.max(UP_AT, west - ARROW.long);
  const label = text(how, words.up, x, height - ROOM.below, 'middle');
  const [tip, tail] = [height - ROOM.below - LETTERS - 2 * ARROW.long, height - ROOM.below - LETTERS - OVERSHOOT];
  return {
    items: [line(x, tip + ARROW.head, x, tail, FLOW), arrowHead({ x, y: tip }, UPWARD, ARROW.head, 'black'), label],
    boxes: [{ x: x - 1, y: tip, w: 2, h: tail - tip, what: 'mark up' }, textBox(label, 'text up')],
  };
}

function namedOf(
  { arrangement: { ball }, words: { names } }: ArrangementView,
  pieces: readonly Piece[],
  { on, scale }: Laid,
): readonly Named[] {
  const shapes = pieces.map((piece): Shape => {
    const hides = piece.envelopes.map((ring) => ringOf(ring.map(on)));
    return { id: piece.id, hides, seen: piece.shown === 'whole' ? hides : piece.cuts.map((ring) => ringOf(ring.map(on))) };
  });
  const all = [...shapes, ...(ball ? [roundShape(on({ x: 0, y: ball.at }), (ball.across / 2) * scale)] : [])];
  return [...new Set(all.map(({ id }) => id))].flatMap((id) => {
    const name = names[id];
    if (name === undefined) return [];
    const spots = all.flatMap((shape, i) => (shape.id === id ? [spotsOf(shape, all.slice(i + 1))] : []));
    return [{ name, spots: { left: spots.flatMap((s) => s.left), right: spots.flatMap((s) => s.right) } }];
  });
}

/** An octagon in the circle will do to point at. */
function roundShape(middle: XY, radius: number): Shape {
  const corners = Array.from({ length: 8 }, (_, i) => ({
    x: middle.x + radius * Math.cos((i * Math.PI) / 4),
    y: middle.y + radius * Math.sin((i * Math.PI) / 4),
  }));
  const ring = ringOf(corners);
  return { id: 'ball', seen: [ring], hides: [ring] };
}

/** What no name may stand on: each piece's box. */
function workBoxes(pieces: readonly Piece[], { on }: Laid): readonly Box[] {
  return pieces.flatMap(({ id, envelopes }) =>
    envelopes.map((ring) => {
      const { west, east, foot, top } = extentOf(ring.map(on));
      return { x: west, y: foot, w: east - west, h: top - foot, what: `work ${id}` };
    }),
  );
}
