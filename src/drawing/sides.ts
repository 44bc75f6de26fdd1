/**
 * What is not of revolution, on the outside view below the axis: flats by their crossed diagonals (ISO 128-3), holes by their circle, a
 * soldered branch as a plain stump, knurling by crossed hatching. Which way round they stand is for the words to say.
 */
import { len, toMm } from '../base/units.ts';
import type { Item } from '../model/display.ts';
import type { SideFeature } from '../model/part.ts';
import type { Point, SideShown, Stage } from '../model/stage.ts';
import { circle, line, polygon, polyline, type Stroke, type XY } from './display.ts';
import { hatched } from './hatch.ts';
import { across, HATCHED, type Half, type Layer, MADE, NARROW, type Paper, WIDE } from './paper.ts';
import { along } from './sketch.ts';

/** On paper, mm: how far a branch is shown to stand out before it is broken off, and the wave of its break. */
const STUMP = 5;
const WAVE = 0.5;
const WAVE_STEPS = Array.from({ length: 13 }, (_, i) => i / 12);
const KNURL_PITCH = 1.1;

const UNSEEN: readonly SideFeature['does'][] = ['harden', 'square-hole', 'bolt-holes', 'flange'];

/** As a stage has it; `on` is the diameter of the surface that carries it. Undefined for what leaves no mark seen from the side (hardening, a square hole). */
export function sideShown(f: SideFeature, on: number, made: SideShown['made']): SideShown | undefined {
  const sized = f.does !== 'knurl' && f.does !== 'branch';
  if (UNSEEN.includes(f.does) || (sized && !f.size)) return undefined;
  return {
    does: f.does,
    z: f.at,
    half: f.half,
    on,
    made,
    ...(f.size ? { size: f.size.target } : {}),
    ...(f.does === 'slot' ? { open: f.at === f.half ? ('first' as const) : ('second' as const) } : {}),
    ...(f.facing ? { far: true as const } : {}),
  };
}

/** Where its operation's number may point: the lower edge of a flat, a branch's root, the rim of a hole; over the axis for a branch on the far side. */
export function pointedAt(side: SideShown): { readonly at: Point; readonly half: Half } {
  const z = len(Math.round(side.does === 'branch' ? side.z - side.half : side.z));
  const low =
    side.does === 'cross-hole' || side.does === 'slit' || side.does === 'slot'
      ? (side.size ?? 0) / 2
      : halfWidth(side.does, side.on / 2, (side.size ?? 0) / 2);
  const d = side.does === 'branch' ? side.on : 2 * low;
  return { at: { z, d: len(Math.round(d)) }, half: side.far ? 'above' : 'below' };
}

export function drawSides(sides: readonly SideShown[], out: Stage['out'], paper: Paper): Layer {
  const branches = sides.filter((s) => s.does === 'branch');
  const covered = (s: SideShown): boolean => s.does === 'cross-hole' && branches.some((b) => Math.abs(b.z - s.z) < b.half);
  const shown = sides.filter((s) => !covered(s)).map((s) => drawSide(s, out, paper));
  return { items: shown.flatMap((l) => l.items), boxes: shown.flatMap((l) => l.boxes) };
}

function drawSide(side: SideShown, out: Stage['out'], paper: Paper): Layer {
  const x = across(paper, along(side.z, out));
  const half = toPaper(side.half, paper);
  const radius = toPaper(side.on / 2, paper);
  const size = toPaper((side.size ?? 0) / 2, paper);
  if (side.does === 'branch')
    return stump(x, Math.max(half, size), radius * (side.far ? -1 : 1), side.made === 'here' ? MADE : NARROW, paper);
  if (side.does === 'cross-hole') return { items: [halfCircle(x, paper, size)], boxes: [] };
  if (side.does === 'knurl') return { items: crossHatched(belowAxis(x, half, radius, paper)), boxes: [] };
  if (side.does === 'slit') return { items: slit(x, half, size, paper), boxes: [] };
  if (side.open)
    return { items: slot(x + (side.open === out ? half : -half), x - (side.open === out ? half : -half), size, paper), boxes: [] };
  return { items: flat(x, half, halfWidth(side.does, radius, size), side.made === 'here' ? MADE : NARROW, paper), boxes: [] };
}

function toPaper(units: number, paper: Paper): number {
  return toMm(units as Parameters<typeof toMm>[0]) * paper.scale;
}

/** Half the width of a flat as it faces the eye. `size`: half of what is measured across. */
function halfWidth(does: SideShown['does'], radius: number, size: number): number {
  if (does === 'hexagon') return Math.min(radius, size / Math.sqrt(3));
  const away = does === 'half-flat' ? 2 * size - radius : size;
  return Math.sqrt(Math.max(0, radius * radius - away * away));
}

/** Its two ends, its lower edge, and the half of its diagonals that is below the axis. */
function flat(x: number, half: number, wide: number, stroke: Stroke, paper: Paper): readonly Item[] {
  const low = paper.axis + wide;
  const outline = polyline(
    [
      { x: x - half, y: paper.axis },
      { x: x - half, y: low },
      { x: x + half, y: low },
      { x: x + half, y: paper.axis },
    ],
    stroke,
  );
  return [line(x - half, low, x, paper.axis, NARROW), line(x + half, low, x, paper.axis, NARROW), outline];
}

/** Seen straight on: the half of it below the axis, open at both ends. */
function slit(x: number, half: number, wide: number, paper: Paper): readonly Item[] {
  const ring: readonly XY[] = [
    { x: x - half, y: paper.axis },
    { x: x - half, y: paper.axis + wide },
    { x: x + half, y: paper.axis + wide },
    { x: x + half, y: paper.axis },
  ];
  return [polygon(ring, { fill: 'white' }), polyline(ring, WIDE)];
}

/** Seen along it, on both sides of the axis: it goes through the cut half as through the other. `open`: where it comes out at its end. */
function slot(open: number, bottom: number, wide: number, paper: Paper): readonly Item[] {
  const past = open + Math.sign(open - bottom) * WIDE.width;
  const [high, low] = [paper.axis - wide, paper.axis + wide];
  const gap = [
    { x: past, y: high },
    { x: bottom, y: high },
    { x: bottom, y: low },
    { x: past, y: low },
  ];
  const ring = gap.map(({ x, y }) => ({ x: x === past ? open : x, y }));
  return [polygon(gap, { fill: 'white' }), polyline(ring, WIDE)];
}

function halfCircle(x: number, paper: Paper, r: number): Item {
  const whole = circle(x, paper.axis, r, { stroke: WIDE });
  // from the right end of the circle down and round to the left end: its first two quarters
  return { ...whole, segments: whole.segments.slice(0, 3) };
}

const belowAxis = (x: number, half: number, radius: number, paper: Paper): readonly XY[] => [
  { x: x - half, y: paper.axis },
  { x: x - half, y: paper.axis + radius },
  { x: x + half, y: paper.axis + radius },
  { x: x + half, y: paper.axis },
];

/** Of a knurl, and of the wheel that rolls it. */
export const crossHatched = (ring: readonly XY[]): readonly Item[] =>
  ([1, -1] as const).flatMap((lean) => hatched(ring, { pitch: KNURL_PITCH, lean }, HATCHED));

/** How much a branch on the far side stands out above the work, on paper. */
export function standsAbove(sides: readonly SideShown[] = []): number {
  return sides.some((s) => s.does === 'branch' && s.far) ? STUMP + WAVE : 0;
}

/**
 * The collar's width out of the barrel's edge, under the axis or (`radius` below nothing) above it, then broken off; narrow once it is in, since
 * it swings with the work; white, so that what lies behind it does not show.
 */
function stump(x: number, wide: number, radius: number, edge: Stroke, paper: Paper): Layer {
  const way = Math.sign(radius);
  const [root, end] = [paper.axis + radius, paper.axis + radius + way * STUMP];
  const wave = WAVE_STEPS.map((t) => ({ x: x - wide + 2 * wide * t, y: end + WAVE * Math.sin(2 * Math.PI * t) }));
  const ring = [{ x: x - wide, y: root }, ...wave, { x: x + wide, y: root }];
  const items = [
    polygon(ring, { fill: 'white' }),
    line(x - wide, root, x - wide, end, edge),
    line(x + wide, root, x + wide, end, edge),
    polyline(wave, NARROW),
    line(x, root, x, end, { ...NARROW, dash: [1.6, 0.5, 0.3, 0.5] }),
  ];
  const y = Math.min(root, end) - (way < 0 ? WAVE : 0);
  return { items, boxes: [{ x: x - wide, y, w: 2 * wide, h: STUMP + WAVE, what: 'work branch' }] };
}
