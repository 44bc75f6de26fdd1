/**
 * An enlarged detail (ISO 128-3): where new edges come out under 2 mm on paper, a thin circle with a letter round them, and the same cut
 * face larger in a free place of the frame. Added to a finished picture, so it never costs the rest its place; left out where none is free.
 */
import type { Advances, Box, Item } from '../model/display.ts';
import { isFree } from './collisions.ts';
import { at2, circle, type Lettering, polygon, polyline, rect, text, textBox, type XY } from './display.ts';
import { hatched } from './hatch.ts';
import { capHeight } from './measure.ts';
import { HATCHED, type Layer, MADE, NARROW, onPaper, type Paper, WIDE } from './paper.ts';
import { boxOn, distance, grown, type Leg, lineBoxes, overlap, type Span, withRoom } from './plane.ts';
import { corners, type Edge, type Sketch, type UR } from './sketch.ts';
import { bandEdges, onRoot } from './work.ts';

export type DetailRoom = {
  readonly frame: { readonly width: number; readonly height: number };
  readonly taken: readonly Box[];
  readonly advances: Advances;
  readonly scales: readonly number[];
  /** Letters that faces of the work have: none of these. */
  readonly letters: readonly string[];
};

/** On paper, mm. */
const TOO_SMALL = 2;
const DUST = 0.2;
const RADIUS = 4.5;
const LARGEST_SIDE = 30;
const STEP = 3;
const CLEAR = 1.2;
/** The last of the alphabet that is free (ISO 128-3 asks for a capital). */
const LETTERS = 'ZYXWVU';
const LETTER_SIZE = 3.6;
const TURNS = 24;
/** Not worth its place below this enlargement. */
const LEAST_TIMES = 2;

/** Undefined where nothing is too small, or nowhere is room. `shownScale` as on the rest of the picture. */
export function drawDetail(sketch: Sketch, paper: Paper, room: DetailRoom, shownScale: (scale: number) => string): Layer | undefined {
  const middle = crowdOf(sketch, paper);
  const scale = room.scales.find((s) => s <= (paper.scale * LARGEST_SIDE) / (2 * RADIUS));
  if (!middle || scale === undefined || scale < LEAST_TIMES * paper.scale) return undefined;
  const ring = circleRound(onPaper(paper, middle, 'above'), room);
  const side = (2 * RADIUS * scale) / paper.scale;
  const how: Lettering = { advances: room.advances, font: 'narrow-bold', size: LETTER_SIZE, ink: 'black' };
  const letter = letterOf(room);
  const place = ring && freePlace(side, room, ring.boxes);
  if (!ring || !place) return undefined;
  const label = text(how, `${letter} (${shownScale(scale)})`, place.x + side / 2, place.y + side + LETTER_SIZE, 'middle');
  const face = enlarged(
    sketch,
    middle,
    { scale, u0: middle.u, left: place.x + side / 2, axis: place.y + side / 2 + middle.r * scale },
    place,
  );
  return {
    items: [...ring.items, ...face, rect(place.x, place.y, side, side, { stroke: NARROW }), label],
    boxes: [...ring.boxes, boxOn(place, 'mark detail'), textBox(label, 'text detail')],
  };
}

const letterOf = ({ letters }: DetailRoom): string => [...LETTERS].find((one) => !letters.includes(one)) ?? '';

/** The middle of the small new edge that has most others about it. */
function crowdOf(sketch: Sketch, paper: Paper): UR | undefined {
  const small = sketch.loops
    .flatMap(whole)
    .filter((e) => e.made && e.a.r + e.b.r > 0 && isSmall(e, paper))
    .map((e): UR => ({ u: (e.a.u + e.b.u) / 2, r: (e.a.r + e.b.r) / 2 }));
  const near = (p: UR): number => small.filter((q) => Math.hypot(p.u - q.u, p.r - q.r) * paper.scale < RADIUS).length;
  const counted = small.map((p) => ({ p, near: near(p) }));
  return counted.sort((a, b) => b.near - a.near || b.p.u - a.p.u || b.p.r - a.p.r)[0]?.p;
}

/** The chords of an arc are one edge. */
function whole(loop: readonly Edge[]): readonly Edge[] {
  const found: Edge[] = [];
  for (const e of loop) {
    const last = found.at(-1);
    const on = last && e.surface !== '' && last.surface === e.surface && last.made === e.made && last.b.u === e.a.u && last.b.r === e.a.r;
    if (last && on) found[found.length - 1] = { ...last, b: e.b };
    else found.push(e);
  }
  return found;
}

function isSmall(e: Edge, paper: Paper): boolean {
  const long = Math.hypot(e.a.u - e.b.u, e.a.r - e.b.r) * paper.scale;
  return long > DUST && long < TOO_SMALL;
}

/** The circle on the picture, and its letter at the first free place round it. */
function circleRound(middle: XY, room: DetailRoom): Layer | undefined {
  const around = (turn: number, radius: number): XY => ({
    x: at2(middle.x + radius * Math.cos((2 * Math.PI * turn) / TURNS)),
    y: at2(middle.y - radius * Math.sin((2 * Math.PI * turn) / TURNS)),
  });
  const points = Array.from({ length: TURNS + 1 }, (_, i) => around(i, RADIUS));
  const legs = points.slice(1).map((b, i): Leg => ({ a: points[i] ?? b, b }));
  const boxes = legs.flatMap((leg) => lineBoxes(leg, 'line detail'));
  const reach = RADIUS + 2 * LETTER_SIZE;
  const about = { x: middle.x - reach, y: middle.y - reach, w: 2 * reach, h: 2 * reach };
  const near = room.taken.filter((b) => overlap(b, about));
  if (!boxes.every((b) => isFree(b, near))) return undefined;
  const how: Lettering = { advances: room.advances, font: 'narrow-bold', size: LETTER_SIZE, ink: 'black' };
  for (let turn = 0; turn < TURNS; turn++) {
    const at = around(turn, RADIUS + LETTER_SIZE * 0.8);
    const letter = text(how, letterOf(room), at.x, at.y + capHeight(LETTER_SIZE) / 2, 'middle');
    const box = textBox(letter, 'text detail');
    if (!within(box, room.frame) || !isFree(withRoom(box, 0.3), near)) continue;
    return { items: [circle(middle.x, middle.y, RADIUS, { stroke: NARROW }), letter], boxes: [...boxes, box] };
  }
  return undefined;
}

/** Top left of a square with room for its letter beneath, clear of everything; from the left, where the headstock needs no sizes. */
function freePlace(side: number, room: DetailRoom, ring: readonly Box[]): Span | undefined {
  const taken = [...room.taken, ...ring];
  for (let x = CLEAR; x + side + CLEAR < room.frame.width; x += STEP) {
    for (let y = CLEAR; y + side + 2 * LETTER_SIZE < room.frame.height; y += STEP) {
      const whole = grown({ x, y, w: side, h: side + 1.5 * LETTER_SIZE }, CLEAR);
      const clear = taken.every(
        (b) => b.x >= whole.x + whole.w || b.x + b.w <= whole.x || b.y >= whole.y + whole.h || b.y + b.h <= whole.y,
      );
      if (clear) return { x: at2(x), y: at2(y), w: side, h: side };
    }
  }
  return undefined;
}

function within(box: Span, frame: DetailRoom['frame']): boolean {
  return box.x > 0 && box.y > 0 && box.x + box.w < frame.width && box.y + box.h < frame.height;
}

/** The cut face inside the square, hatched, with its edges; thread roots narrow. */
function enlarged(sketch: Sketch, middle: UR, paper: Paper, square: Span): readonly Item[] {
  const half = square.w / 2 / paper.scale;
  const window = { from: middle.u - half, to: middle.u + half, low: middle.r - half, high: middle.r + half };
  const rings = [...sketch.loops.map(corners), ...sketch.bands.map((b) => b.polygon)]
    .map((ring) => clipped(ring, window).map((p) => onPaper(paper, p, 'above')))
    .filter((ring) => ring.length > 2);
  const hatch = rings.flatMap((ring) => hatched(ring, { pitch: 1.2, lean: 1 }, HATCHED));
  const own = sketch.loops.flat().filter((e) => e.a.r + e.b.r > 0 && !sketch.bands.some((band) => onRoot(e, band)));
  const threads = sketch.bands.flatMap((band) => bandEdges(band).map((edge) => ({ edge, root: onRoot(edge, band) })));
  const drawn = [
    ...threads.filter((t) => t.root).map(({ edge }) => ({ edge, stroke: NARROW })),
    ...[...own, ...threads.filter((t) => !t.root).map((t) => t.edge)].map((edge) => ({ edge, stroke: edge.made ? MADE : WIDE })),
  ];
  const legs = drawn.flatMap(({ edge, stroke }) => {
    const leg = clippedLeg({ a: onPaper(paper, edge.a, 'above'), b: onPaper(paper, edge.b, 'above') }, square);
    return leg ? [{ leg, stroke }] : [];
  });
  return [
    rect(square.x, square.y, square.w, square.h, { fill: 'white' }),
    ...rings.map((ring) => polygon(ring, { fill: 'white' })),
    ...hatch,
    ...[...legs].sort((p, q) => p.stroke.width - q.stroke.width).map(({ leg, stroke }) => polyline([leg.a, leg.b], stroke)),
  ];
}

type Square = { readonly from: number; readonly to: number; readonly low: number; readonly high: number };
/** A polygon's part inside an upright rectangle (Sutherland and Hodgman 1974). */
function clipped(ring: readonly UR[], s: Square): readonly UR[] {
  const cuts: readonly ((p: UR) => number)[] = [(p) => p.u - s.from, (p) => s.to - p.u, (p) => p.r - s.low, (p) => s.high - p.r];
  return cuts.reduce<readonly UR[]>(
    (points, depth) =>
      points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length] ?? p;
        const [a, b] = [depth(p), depth(q)];
        const meet = a >= 0 !== b >= 0 ? [{ u: p.u + ((q.u - p.u) * a) / (a - b), r: p.r + ((q.r - p.r) * a) / (a - b) }] : [];
        return a >= 0 ? [p, ...meet] : meet;
      }),
    ring,
  );
}

/** An edge's part inside a square on paper; undefined outside. */
function clippedLeg(leg: Leg, square: Span): Leg | undefined {
  const depths = (p: XY): readonly number[] => [p.x - square.x, square.x + square.w - p.x, p.y - square.y, square.y + square.h - p.y];
  const [a, b] = [depths(leg.a), depths(leg.b)];
  let [t0, t1] = [0, 1];
  for (const [i, da] of a.entries()) {
    const db = b[i] ?? 0;
    if (da < 0 && db < 0) return undefined;
    if (da < 0) t0 = Math.max(t0, da / (da - db));
    if (db < 0) t1 = Math.min(t1, da / (da - db));
  }
  const at = (t: number): XY => ({ x: leg.a.x + (leg.b.x - leg.a.x) * t, y: leg.a.y + (leg.b.y - leg.a.y) * t });
  return t0 < t1 && distance(at(t0), at(t1)) > 0.05 ? { a: at(t0), b: at(t1) } : undefined;
}
