/** Jaws, collet, sleeve and mandrel as seen beside the work: cut above the axis, plain below. */
import type { GripKind } from '../model/plan.ts';
import { line, type Paint, polygon } from './display.ts';
import { type Hatch, hatchLines } from './hatch.ts';
import { HATCHED, joined, type Layer, level, NOTHING, onPaper, type Paper, ringOnPaper } from './paper.ts';
import type { UR } from './sketch.ts';
import { box, type Window } from './window.ts';

/** On paper, mm. */
const JAW_DEPTH = 7;
const COLLET_DEPTH = 5;
const SLEEVE_WALL = 2.2;
const COLLET_NOSE = 2.5;
const TOOLING_HATCH: Hatch = { pitch: 1.5, lean: -1 };
const EDGE = { ink: 'dark', width: 0.25 } as const;
const JAW: Paint = { fill: 'pale', stroke: EDGE };
const PLAIN: Paint = { fill: 'panel', stroke: EDGE };

/** How far the hold reaches out past what it closes on, mm on paper. */
export function holdDepth(kind: GripKind): number {
  if (kind === 'bench') return 0;
  return kind === 'collet' ? COLLET_DEPTH : kind === 'sleeve' ? JAW_DEPTH + SLEEVE_WALL : JAW_DEPTH;
}

export function drawHold(kind: GripKind, window: Window, paper: Paper): Layer {
  const tooling = window.tooling.length > 0 ? drawTooling(window.tooling, paper) : NOTHING;
  const clamp = window.clamp;
  if (!clamp) return tooling;
  const out = (mm: number): number => mm / paper.scale;
  if (kind === 'collet') return joined([tooling, drawCut(colletNose(clamp, out), paper)]);
  if (kind !== 'sleeve') return joined([tooling, drawJaw(box(clamp.from, clamp.to, clamp.radius, clamp.radius + out(JAW_DEPTH)), paper)]);
  const wall = clamp.radius + out(SLEEVE_WALL);
  const sleeve = drawCut(box(clamp.from, clamp.to, clamp.radius, wall), paper);
  return joined([tooling, sleeve, drawJaw(box(clamp.from, clamp.to - out(1), wall, wall + out(JAW_DEPTH)), paper)]);
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
  const hatch = hatchLines([above], TOOLING_HATCH).map((l) => line(l.a.x, l.a.y, l.b.x, l.b.y, HATCHED));
  const items = [
    polygon(above, { fill: 'white' }),
    ...hatch,
    polygon(above, { stroke: EDGE }),
    polygon(ringOnPaper(paper, ring, 'below'), PLAIN),
  ];
  return { items, boxes: solidBoxes(ring, paper) };
}

function drawTooling(ring: readonly UR[], paper: Paper): Layer {
  return drawCut(ring, paper);
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
