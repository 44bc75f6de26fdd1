/** Jaws, collet, sleeve and mandrel as seen beside the work: cut above the axis, plain below. */
import type { GripKind } from '../model/plan.ts';
import { type Paint, polygon, polyline } from './display.ts';
import { type Hatch, hatched } from './hatch.ts';
import { HATCHED, joined, type Layer, level, NOTHING, onPaper, type Paper, ringOnPaper } from './paper.ts';
import type { UR } from './sketch.ts';
import { box, type Clamp, type Window } from './window.ts';

/** On paper, mm. */
const JAW_DEPTH = 7;
const COLLET_DEPTH = 5;
const SLEEVE_WALL = 2.2;
const COLLET_NOSE = 2.5;
const TOOLING_HATCH: Hatch = { pitch: 1.5, lean: -1 };
const CENTRE_RADIUS = 2.5;
const CENTRE_SHANK = 6;
const WAVE = 0.12;
const WAVE_STEPS = Array.from({ length: 13 }, (_, i) => i / 12);
const EDGE = { ink: 'dark', width: 0.25 } as const;
const JAW: Paint = { fill: 'pale', stroke: EDGE };
const PLAIN: Paint = { fill: 'panel', stroke: EDGE };

/** How far the hold reaches out past what it closes on, mm on paper. */
export function holdDepth(kind: GripKind): number {
  if (kind === 'bench') return 0;
  if (kind === 'vee-block') return VEE_DEPTH;
  if (kind === 'between-centres') return DOG_EYE + DOG_SCREW;
  return kind === 'collet' ? COLLET_DEPTH : isSleeve(kind) ? JAW_DEPTH + SLEEVE_WALL : JAW_DEPTH;
}

const isSleeve = (kind: GripKind): boolean => kind === 'sleeve' || kind === 'threaded-sleeve';

const VEE_DEPTH = 9;

export function drawHold(kind: GripKind, window: Window, paper: Paper): Layer {
  const tooling = window.tooling.length > 0 ? drawTooling(window, paper) : NOTHING;
  if (!window.clamp) return tooling;
  const out = (mm: number): number => mm / paper.scale;
  const plug = window.plug ? drawPlug(window.plug, paper) : NOTHING;
  return joined([tooling, plug, ...drawClamp(kind, window.clamp, out, paper), ...centresOf(window, paper)]);
}

/** Inside the work: it is seen where that is cut, above the axis. */
function drawPlug(ring: readonly UR[], paper: Paper): Layer {
  const above = ringOnPaper(paper, ring, 'above');
  const hatch = hatched(above, TOOLING_HATCH, HATCHED);
  const edges = offAxis(ring).map((chain) => polyline(ringOnPaper(paper, chain, 'above'), EDGE));
  return { items: [polygon(above, { fill: 'white' }), ...hatch, ...edges], boxes: solidBoxes(ring, paper).slice(0, 1) };
}

function drawClamp(kind: GripKind, clamp: Clamp, out: (mm: number) => number, paper: Paper): readonly Layer[] {
  if (kind === 'between-centres') return [drawDog(clamp, out, paper)];
  if (kind === 'collet') return [drawCut(colletNose(clamp, out), paper)];
  if (!isSleeve(kind)) return [drawJaw(jawRing(clamp, out(JAW_DEPTH)), paper)];
  const wall = clamp.radius + out(SLEEVE_WALL);
  const sleeve = drawCut(box(clamp.from, clamp.to, clamp.radius, wall), paper);
  return [sleeve, drawJaw(box(clamp.from, clamp.to - out(1), wall, wall + out(JAW_DEPTH)), paper)];
}

/** A collet closes by its cone: thick behind, thin at the nose. */
function colletNose(
  clamp: { readonly from: number; readonly to: number; readonly radius: number },
  out: (mm: number) => number,
): readonly UR[] {
  const nose = Math.min(out(COLLET_NOSE), (clamp.to - clamp.from) / 2);
  return [
    { u: clamp.from, r: clamp.radius },
    { u: clamp.from, r: clamp.radius + out(COLLET_DEPTH * 0.5) },
    { u: clamp.to - nose, r: clamp.radius + out(COLLET_DEPTH) },
    { u: clamp.to, r: clamp.radius + out(COLLET_DEPTH) },
    { u: clamp.to, r: clamp.radius },
  ];
}

function drawJaw(ring: readonly UR[], paper: Paper): Layer {
  const [above, below] = [ringOnPaper(paper, ring, 'above'), ringOnPaper(paper, ring, 'below')];
  return { items: [polygon(above, JAW), polygon(below, JAW)], boxes: solidBoxes(ring, paper) };
}

function drawCut(ring: readonly UR[], paper: Paper): Layer {
  const above = ringOnPaper(paper, ring, 'above');
  const hatch = hatched(above, TOOLING_HATCH, HATCHED);
  const items = [
    polygon(above, { fill: 'white' }),
    ...hatch,
    ...offAxis(ring).map((chain) => polyline(ringOnPaper(paper, chain, 'above'), EDGE)),
    polygon(ringOnPaper(paper, ring, 'below'), PLAIN),
  ];
  return { items, boxes: solidBoxes(ring, paper) };
}

/** The outline in chains, less what lies on the axis: metal goes on there. */
function offAxis(ring: readonly UR[]): readonly (readonly UR[])[] {
  const chains: UR[][] = [];
  let end: UR | undefined;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    if (p.r === 0 && q.r === 0) return;
    if (end === p) chains.at(-1)?.push(q);
    else chains.push([p, q]);
    end = q;
  });
  return chains;
}

/** Bored jaws have a step behind the work's end. */
function jawRing(clamp: Clamp, deep: number): readonly UR[] {
  const { from, to, radius, step } = clamp;
  if (step === undefined) return box(from, to, radius, radius + deep);
  return [
    { u: from - step, r: radius - step },
    { u: from - step, r: radius + deep },
    { u: to, r: radius + deep },
    { u: to, r: radius },
    { u: from, r: radius },
    { u: from, r: radius - step },
  ];
}

/** Metal, then the thread that the work sits on: cut above, with its root narrow (ISO 6410); a break line where the bar is broken off. */
function drawTooling(window: Window, paper: Paper): Layer {
  const cut = window.toolingCut;
  const shown = cut === undefined ? window.tooling : waved(window.tooling, cut, window.rim);
  const threads = (window.toolingThreads ?? []).map((band) => ringOnPaper(paper, band, 'above'));
  const hatch = threads.slice(0, 1).flatMap((band) => hatched(band, TOOLING_HATCH, HATCHED));
  const bands = threads.map((band) => polygon(band, { fill: 'white', stroke: { ink: 'dark', width: 0.18 } }));
  const main = drawCut(shown, paper);
  return { items: [...main.items, ...bands, ...hatch], boxes: main.boxes };
}

/** Freehand wave of a broken-off bar, as the work's own. */
function waved(ring: readonly UR[], cut: number, rim: number): readonly UR[] {
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    if (p.u !== cut || q.u !== cut) return [p];
    return WAVE_STEPS.map((t) => p.r + (q.r - p.r) * t).map((r) => ({ u: cut - WAVE * rim * Math.sin((Math.PI * r) / rim), r }));
  });
}

const centresOf = (window: Window, paper: Paper): readonly Layer[] => [
  window.centre === undefined ? NOTHING : drawCentre(window.right, window.centre, paper),
  window.leftCentre === undefined ? NOTHING : drawCentre(window.from, window.leftCentre, paper, -1),
];

/** A driving dog: its eye round the work, its screw above, its bent tail below, toward the faceplate. */
function drawDog(clamp: Clamp, out: (mm: number) => number, paper: Paper): Layer {
  const { from, to, radius } = clamp;
  const eye = box(from, to, radius, radius + out(DOG_EYE));
  const third = (to - from) / 3;
  const screw = box(from + third, to - third, radius + out(DOG_EYE), radius + out(DOG_EYE + DOG_SCREW));
  const low = radius + out(DOG_EYE);
  const tail = [
    { u: to, r: low },
    { u: to, r: low + out(DOG_TAIL) },
    { u: from - out(CENTRE_SHANK), r: low + out(DOG_TAIL) },
    { u: from - out(CENTRE_SHANK), r: low + out(DOG_TAIL / 2) },
    { u: from, r: low + out(DOG_TAIL / 2) },
    { u: from, r: low },
  ];
  const drawn = (ring: readonly UR[], half: 'above' | 'below') => polygon(ringOnPaper(paper, ring, half), JAW);
  const items = [drawn(eye, 'above'), drawn(screw, 'above'), drawn(eye, 'below'), drawn(tail, 'below')];
  return { items, boxes: [...solidBoxes(eye, paper), ...solidBoxes(screw, paper).slice(0, 1), ...solidBoxes(tail, paper).slice(1)] };
}
const DOG_EYE = 3;
const DOG_SCREW = 4;
const DOG_TAIL = 3;

/** The tailstock's centre: 60 degrees, its point in the centre hole, whole (it is not cut). */
function drawCentre(end: number, radius: number, paper: Paper, way: 1 | -1 = 1): Layer {
  const out = (mm: number): number => mm / paper.scale;
  const slope = Math.tan(Math.PI / 6);
  const thick = Math.max(radius * 1.6, out(CENTRE_RADIUS));
  const tip = end - (way * radius) / slope;
  const shoulder = tip + (way * thick) / slope;
  const back = shoulder + way * out(CENTRE_SHANK);
  const ring = [
    { u: tip, r: 0 },
    { u: shoulder, r: thick },
    { u: back, r: thick },
    { u: back, r: 0 },
  ];
  const corner = onPaper(paper, { u: Math.min(end, back), r: thick }, 'above');
  const w = Math.abs(back - end) * paper.scale;
  return {
    items: (['above', 'below'] as const).map((half) => polygon(ringOnPaper(paper, ring, half), JAW)),
    boxes: [{ x: corner.x, y: corner.y, w, h: 2 * thick * paper.scale, what: 'work hold' }],
  };
}

/** mm on paper that a tailstock centre takes right of the work, at most so much more than its cone. */
export function centreRoom(window: Window, scale: number, side: 'centre' | 'leftCentre' = 'centre'): number {
  const mouth = window[side];
  if (mouth === undefined) return 0;
  const radius = mouth * scale;
  return (Math.max(radius * 1.6, CENTRE_RADIUS) - radius) / Math.tan(Math.PI / 6) + CENTRE_SHANK;
}

/** One box above and one below the axis. */
function solidBoxes(ring: readonly UR[], paper: Paper): Layer['boxes'] {
  const [us, rs] = [ring.map((p) => p.u), ring.map((p) => p.r)];
  const [low, high] = [Math.min(...rs), Math.max(...rs)];
  const corner = onPaper(paper, { u: Math.min(...us), r: high }, 'above');
  const w = (Math.max(...us) - Math.min(...us)) * paper.scale;
  const h = (high - low) * paper.scale;
  return [
    { x: corner.x, y: corner.y, w, h, what: 'work hold' },
    { x: corner.x, y: level(paper, low, 'below'), w, h, what: 'work hold' },
  ];
}
