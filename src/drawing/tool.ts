/**
 * The tool where its work is done. Where that is, the picture's new edges tell. What cuts from outside stands below the axis, on the turner's
 * side; what cuts inside is seen where the work is cut, above it; what the tailstock holds runs along the axis.
 */
import { type Len, len } from '../base/units.ts';
import type { Advances } from '../model/display.ts';
import { type Lettering, polygon, polyline, text, textBox, type XY } from './display.ts';
import { capHeight, textWidth } from './measure.ts';
import { type Half, joined, type Layer, NOTHING, type Paper, ringOnPaper } from './paper.ts';
import { type Band, clippedRing, type Edge, metalAt, placed, rootOf, type Sketch, type UR } from './sketch.ts';
import type { ToolShown } from './view.ts';
import type { Window } from './window.ts';

/** On paper, mm: how far a tool reaches out past the work, away from the axis and past its end. */
const OUT = { side: 7, end: 10 } as const;
/** On paper, mm: the body of what is held in the tool post; how far the edge of a boring tool stands out of its bar. */
const BODY = { wide: 6, bar: 5, bit: 1.3 } as const;
/** What is new stays in sight beside the tool that made it. */
const CLEAR = 0.45;
const EDGE = { ink: 'dark', width: 0.25 } as const;
const NEAR = 1e-6;
/** Half of the 60 degrees of a thread's form. */
const FLANK = Math.tan(Math.PI / 6);

/** Paper that it wants past the work; mm. */
export function toolRoom(tool: ToolShown | undefined): { readonly side: number; readonly end: number } {
  if (!tool) return { side: 0, end: 0 };
  return isFront(tool) ? { side: OUT.side, end: 0 } : { side: 0, end: OUT.end };
}

const isFront = ({ form, side }: ToolShown): boolean => side === 'outside' && form !== 'die';

/** `edge`: what of the ring is drawn as a line; the tool goes on where it is open, as it does between the ring's last point and its first. */
type Outline = { readonly half: Half; readonly ring: readonly UR[]; readonly edge?: readonly UR[] };
type Place = { readonly made: readonly Edge[]; readonly sketch: Sketch; readonly window: Window; readonly mm: (onPaper: number) => number };

export function drawTool(tool: ToolShown | undefined, sketch: Sketch, window: Window, paper: Paper, advances: Advances): Layer {
  if (!tool) return NOTHING;
  const { on, number = '' } = tool;
  const made = sketch.loops.flat().filter((e) => e.made && (!on || on.includes(e.surface)) && (e.a.r > NEAR || e.b.r > NEAR));
  const outlines = FORMS[tool.form](tool, { made, sketch, window, mm: (onPaper) => onPaper / paper.scale });
  const bodies: Layer = {
    items: outlines.flatMap(({ half, ring, edge = ring }) => [
      polygon(ringOnPaper(paper, ring, half), { fill: 'pale' }),
      polyline(ringOnPaper(paper, edge, half), EDGE),
    ]),
    boxes: outlines.map(({ half, ring }) => boxAround(ringOnPaper(paper, ring, half))),
  };
  const [first] = outlines;
  return first && number !== '' ? joined([bodies, numberOn(first, number, paper, advances)]) : bodies;
}

/** At its open end, within it; nothing where that is too narrow. */
function numberOn({ half, ring, edge }: Outline, number: string, paper: Paper, advances: Advances): Layer {
  const points = ringOnPaper(paper, ring, half);
  const [a, b] = edge ? points.slice(-2) : [points.at(-1), points[0]];
  if (!a || !b) return NOTHING;
  const how: Lettering = { advances, ...NUMBER };
  const [width, high] = [textWidth(advances, how.font, how.size, number) + 2 * PAD, capHeight(how.size) + 2 * PAD];
  const flat = a.y === b.y;
  if (flat ? Math.abs(b.x - a.x) < width : Math.abs(b.y - a.y) < high) return NOTHING;
  const written = flat
    ? text(how, number, (a.x + b.x) / 2, a.y - PAD, 'middle')
    : text(how, number, a.x - PAD, (a.y + b.y) / 2 + capHeight(how.size) / 2, 'right');
  return { items: [written], boxes: [textBox(written, 'text tool')] };
}
const NUMBER = { font: 'narrow-bold', size: 2.8, ink: 'dark' } as const;
const PAD = 0.6;

function boxAround(points: readonly XY[]): Layer['boxes'][number] {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y, what: 'work tool' };
}

const FORMS: Readonly<Record<ToolShown['form'], (tool: ToolShown, place: Place) => readonly Outline[]>> = {
  knife: ({ side }, place) => (side === 'outside' ? knife(place) : bar(place)),
  facing,
  blade,
  bevel,
  vee,
  drill: axial,
  centre,
  tap: axial,
  die,
};

// ---- in the tool post ---------------------------------------------------------------------------------------------------
/** Feeds toward the headstock: its edge stands square to the axis, its end clears what it has turned. */
function knife(place: Place): readonly Outline[] {
  const tip = leftEnd(place.made.filter((e) => e.a.u !== e.b.u));
  if (!tip) return [];
  return [
    front(place, tip, [
      [0.8, undefined],
      [0.8, 3],
      [0, 0],
      [5, 0.9],
      [BODY.wide, 2.4],
      [BODY.wide, undefined],
    ]),
  ];
}

/** Feeds toward the axis along the face. */
function facing(_: ToolShown, place: Place): readonly Outline[] {
  const walls = place.made.filter((e) => e.a.u === e.b.u);
  const [u] = walls.map((e) => e.a.u).sort((p, q) => q - p);
  if (u === undefined) return [];
  const r = Math.min(...walls.filter((e) => e.a.u === u).flatMap((e) => [e.a.r, e.b.r]));
  const [sample] = walls.filter((e) => e.a.u === u);
  const middle = sample ? (sample.a.r + sample.b.r) / 2 : r;
  const way = metalAt(place.sketch.loops, { u: u + NEAR, r: middle }) ? -1 : 1;
  const profile: Profile = [
    [0.8, undefined],
    [0.8, 4],
    [0, 0],
    [2.4, 0.8],
    [BODY.wide, 4],
    [BODY.wide, undefined],
  ];
  return [
    front(
      place,
      { u, r },
      profile.map(([x, y]) => [way * x, y]),
    ),
  ];
}

/** As wide as what it has cut, or as its kerf. */
function blade({ side, wide }: ToolShown, place: Place): readonly Outline[] {
  const us = place.made.flatMap((e) => [e.a.u, e.b.u]);
  const rs = place.made.flatMap((e) => [e.a.r, e.b.r]);
  if (us.length === 0 || side === 'inside') return [];
  const right = Math.max(...us);
  const left = wide === undefined ? Math.min(...us) : right - 2 * radiusOf(wide);
  const tip = wide === undefined ? Math.min(...rs) : 0;
  const [width, clear] = [(right - left) / place.mm(1), Math.min(CLEAR, (right - left) / place.mm(4))];
  return [
    front(place, { u: left, r: tip }, [
      [clear, undefined],
      [clear, clear],
      [width - clear, clear],
      [width - clear, undefined],
    ]),
  ];
}

/** Across, out from the tip; undefined: past the rim. mm on paper */
type Profile = readonly (readonly [number, number | undefined])[];

function front({ window, mm }: Place, tip: UR, profile: Profile): Outline {
  const past = window.rim + mm(OUT.side);
  return { half: 'below', ring: profile.map(([x, y]) => ({ u: tip.u + mm(x), r: y === undefined ? past : tip.r + mm(y) })) };
}

/** From the tailstock's side into the bore, its bit at the wall. */
function bar(place: Place): readonly Outline[] {
  const tip = leftEnd(place.made.filter((e) => e.a.u !== e.b.u));
  return tip
    ? [
        inBore(place, tip, [
          [0.5, 1],
          [0, 0],
          [BODY.bit, 1],
        ]),
      ]
    : [];
}

/** `bit`: across, and in toward the bar, which is at 1. */
function inBore({ window, mm }: Place, tip: UR, bit: readonly (readonly [number, number])[]): Outline {
  const stands = Math.min(mm(BODY.bit), tip.r / 3);
  const thick = Math.min(mm(BODY.bar), (tip.r - stands) * 0.9);
  const end = window.right + mm(OUT.end);
  const front = bit[0]?.[0] ?? 0;
  const top = tip.r - stands;
  return {
    half: 'above',
    ring: [
      { u: end, r: top - thick },
      { u: tip.u + mm(front), r: top - thick },
      ...bit.map(([x, y]) => ({ u: tip.u + mm(x), r: tip.r - y * stands })),
      { u: end, r: top },
    ],
  };
}

/** Its edge lies along the bevel, a little longer at both ends where nothing is in its way. */
function bevel({ side }: ToolShown, place: Place): readonly Outline[] {
  const slope = place.made.find((e) => e.a.u !== e.b.u && e.a.r !== e.b.r);
  if (!slope) return [];
  const [left, right] = slope.a.u < slope.b.u ? [slope.a, slope.b] : [slope.b, slope.a];
  const long = Math.hypot(right.u - left.u, right.r - left.r);
  const over = place.mm(1.5) / long;
  const on = (t: number): UR => ({ u: left.u + (right.u - left.u) * t, r: left.r + (right.r - left.r) * t });
  const reaching = (past: number, end: UR): UR =>
    metalAt(place.sketch.loops, past < 0 ? on(past / 2) : on((1 + past) / 2)) ? end : on(past);
  const [from, to] = [reaching(-over, left), reaching(1 + over, right)];
  if (side === 'inside')
    return [
      inBore(place, { u: from.u, r: to.r }, [
        [0, 1],
        [0, (to.r - from.r) / place.mm(1)],
        [(to.u - from.u) / place.mm(1), 0],
      ]),
    ];
  const past = place.window.rim + place.mm(OUT.side);
  const back = Math.max(from.u, to.u) + place.mm(BODY.wide / 2);
  return [{ half: 'below', ring: [{ u: from.u, r: past }, from, to, { u: back, r: to.r }, { u: back, r: past }] }];
}

/** At the middle of its thread. */
function vee({ side }: ToolShown, place: Place): readonly Outline[] {
  const band = place.sketch.bands.find((b) => b.made && b.side === side);
  if (!band) return [];
  const us = band.polygon.map((p) => p.u);
  const tip = { u: (Math.min(...us) + Math.max(...us)) / 2, r: rootOf(band.polygon, side) };
  if (side === 'inside')
    return [
      inBore(place, tip, [
        [-FLANK * BODY.bit, 1],
        [0, 0],
        [FLANK * BODY.bit, 1],
      ]),
    ];
  const half = BODY.wide / 2;
  return [
    front(place, tip, [
      [-half, undefined],
      [-half, half / FLANK],
      [0, 0],
      [half, half / FLANK],
      [half, undefined],
    ]),
  ];
}

function leftEnd(edges: readonly Edge[]): UR | undefined {
  const ends = edges.map((e) => (e.a.u < e.b.u ? e.a : e.b));
  return ends.reduce<UR | undefined>((best, p) => (best && best.u <= p.u ? best : p), undefined);
}

// ---- in the tailstock ----------------------------------------------------------------------------------------------------
/** Seen where the work is cut, above the axis; behind the work both its halves are. */
function axial({ form, diameter = len(0), point }: ToolShown, place: Place): readonly Outline[] {
  const across = form === 'tap' ? tapped(place) : radiusOf(diameter);
  const walls = wallsAt(place, across);
  if (walls.length === 0) return [];
  const r = Math.max(across - place.mm(CLEAR), across / 2);
  return alongAxis(place, nose(Math.min(...walls), r, point, place.mm(CLEAR)), r);
}

/** As its hole is, and on from there by the same cone to its body. `diameter`: of its pilot. */
function centre({ diameter = len(0) }: ToolShown, place: Place): readonly Outline[] {
  const clear = place.mm(CLEAR) / Math.sin(Math.PI / 6);
  const corners = place.made.flatMap((e) => [e.a, e.b]).sort((p, q) => p.u - q.u || p.r - q.r);
  const mouth = corners.at(-1);
  if (!mouth) return [];
  const body = Math.max(radiusOf(diameter) * CENTRE_BODY, mouth.r);
  const hole = corners.map((p) => ({ u: p.u + clear, r: p.r }));
  return alongAxis(place, [...hole, { u: mouth.u + clear + (body - mouth.r) / FLANK, r: body }], body);
}
/** Body to pilot, form A: 2.5 mm and 6.3, 3.15 and 8 (ISO 866). */
const CENTRE_BODY = 2.5;

/** The crests of a tap are the roots of its thread. */
const tapped = ({ sketch }: Place): number => Math.max(0, ...threadsIn(sketch).map((b) => rootOf(b.polygon, 'inside')));
const threadsIn = (sketch: Sketch): readonly Band[] => sketch.bands.filter((b) => b.made && b.side === 'inside');

const radiusOf = (diameter: Len): number => placed({ z: 0, d: diameter }, 'second').r;

/** From the axis out to that radius: a point, or flat and a little short of the floor. */
function nose(floor: number, r: number, point: number | undefined, clear: number): readonly UR[] {
  const [tip, shoulder] = point === undefined ? [floor + clear, floor + clear] : [floor - r / Math.tan((point * Math.PI) / 360), floor];
  return [
    { u: tip, r: 0 },
    { u: shoulder, r },
  ];
}

/** What of it lies where the work is broken away is not seen. */
function alongAxis({ window, mm }: Place, front: readonly UR[], r: number): readonly Outline[] {
  const end = Math.max(window.right, ...front.map((p) => p.u)) + mm(OUT.end);
  const whole = [...front, { u: end, r }, { u: end, r: 0 }];
  const cutAt = window.cutAt ?? Number.NEGATIVE_INFINITY;
  const seen = clippedRing(whole, cutAt);
  const behind = clippedRing(whole, window.right);
  const tip = front[0]?.u ?? end;
  return [
    { half: 'above', ring: seen, edge: seen.filter((p) => p.r > 0 || (p.u === tip && tip >= cutAt)) },
    { half: 'below', ring: behind, edge: behind.filter((p) => p.r > 0) },
  ];
}

/** Along the axis, the ends of what is new at that radius; of a thread, where there is none. */
function wallsAt({ made, sketch }: Place, radius: number): readonly number[] {
  const near = (e: Edge): boolean => e.a.u !== e.b.u && [e.a, e.b].every((p) => Math.abs(p.r - radius) < radius / 20);
  const walls = made.filter(near).flatMap((e) => [e.a.u, e.b.u]);
  return walls.length > 0 ? walls : threadsIn(sketch).flatMap((b) => b.polygon.map((p) => p.u));
}

/** Over the thread, as far as that goes; cut through above as it is below. */
function die(_: ToolShown, { sketch, mm }: Place): readonly Outline[] {
  const band = sketch.bands.find((b) => b.made && b.side === 'outside');
  if (!band) return [];
  const left = Math.min(...band.polygon.map((p) => p.u));
  const low = Math.max(...band.polygon.map((p) => p.r)) + mm(CLEAR);
  const [right, high] = [left + mm(BODY.wide), low + mm(OUT.side)];
  const ring = [
    { u: left, r: low },
    { u: left, r: high },
    { u: right, r: high },
    { u: right, r: low },
    { u: left, r: low },
  ];
  return (['above', 'below'] as const).map((half) => ({ half, ring }));
}
