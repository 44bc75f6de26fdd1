/** A fitting put together, in perspective, with a quarter of it cut away: hidden lines are left out. */
import type { Item, Picture, Segment } from '../model/display.ts';
import type { Arrangement, Part } from '../model/part.ts';
import { type Curve, curvesOf } from './cutaway/lines.ts';
import { around, sightOf } from './cutaway/sight.ts';
import { placeOn, type Scene, sceneOf } from './cutaway/solids.ts';
import { type Eye, eyeOn, type Place } from './cutaway/space.ts';
import { seenOf } from './cutaway/trace.ts';
import type { Stroke, XY } from './display.ts';
import { HATCHED, NARROW, WIDE } from './paper.ts';

export type CutawayView = {
  readonly arrangement: Arrangement;
  readonly part: (id: string) => Part;
  readonly frame: { readonly width: number; readonly height: number };
  readonly alt: string;
};

/** Degrees from the plane of the first cut and over the level; distance as a share of what is looked at. */
const FROM = { turn: 56, rise: 24, far: 5 } as const;
/** On paper, mm. */
const APART = { hatch: 1, thread: 0.5 } as const;
const EDGE = 0.5;
const PENS: Readonly<Record<Curve['pen'], Stroke>> = { edge: WIDE, thread: NARROW, hatch: HATCHED };

export function drawCutaway({ arrangement, part, frame, alt }: CutawayView): Picture {
  const scene = sceneOf(arrangement, part);
  const sight = sightOf(scene, standBack(scene));
  const { west, east, top, foot } = around(sight.boxes.map(({ all }) => all));
  const scale = Math.min((frame.width - 2 * EDGE) / (east - west), (frame.height - 2 * EDGE) / (foot - top));
  const on = ({ x, y }: XY): XY => ({ x: EDGE + (x - west) * scale, y: EDGE + (y - top) * scale });
  const curves = curvesOf(scene, sight.eye, { hatch: APART.hatch / scale, thread: APART.thread / scale });
  const items = (Object.keys(PENS) as Curve['pen'][]).flatMap((pen): readonly Item[] => {
    const segments = curves.filter((curve) => curve.pen === pen).flatMap((curve): readonly Segment[] => seenOf(curve, sight, on));
    return segments.length === 0 ? [] : [{ kind: 'path', segments, stroke: PENS[pen] }];
  });
  const width = 2 * EDGE + (east - west) * scale;
  return { width, height: 2 * EDGE + (foot - top) * scale, items, boxes: [], alt };
}

/** Far enough for the whole. */
function standBack(scene: Scene): Eye {
  const corners = scene.solids.flatMap((solid) =>
    [solid.least, solid.most].flatMap((a) => [0, 1, 2, 3].map((k) => placeOn(solid, a, solid.wide, (k * Math.PI) / 2))),
  );
  const middle = (pick: (p: Place) => number): number => (Math.min(...corners.map(pick)) + Math.max(...corners.map(pick))) / 2;
  const on = { x: middle((p) => p.x), y: middle((p) => p.y), z: 0 };
  const size = Math.max(...corners.map((p) => Math.hypot(p.x - on.x, p.y - on.y, p.z)));
  return eyeOn(on, { ...FROM, far: FROM.far * size });
}
