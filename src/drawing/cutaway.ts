/** A fitting put together, in perspective, with a quarter of it cut away: hidden lines are left out. */
import type { Item, Picture, Segment } from '../model/display.ts';
import type { Arrangement, Part } from '../model/part.ts';
import { type Curve, curvesOf } from './cutaway/lines.ts';
import { type Band, outOf, placeOn, type Scene, sceneOf } from './cutaway/solids.ts';
import { type Eye, eyeOn, type Place, seenBy } from './cutaway/space.ts';
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
  const { eye, scale, west, top } = standBack(scene, frame);
  const on = ({ x, y }: XY): XY => ({ x: EDGE + (x - west) * scale, y: EDGE + (y - top) * scale });
  const curves = curvesOf(scene, eye, { hatch: APART.hatch / scale, thread: APART.thread / scale });
  const items = (Object.keys(PENS) as Curve['pen'][]).flatMap((pen): readonly Item[] => {
    const segments = curves.filter((curve) => curve.pen === pen).flatMap((curve): readonly Segment[] => seenOf(curve, scene, eye, on));
    return segments.length === 0 ? [] : [{ kind: 'path', segments, stroke: PENS[pen] }];
  });
  return { ...frame, items, boxes: [], alt };
}

type Stand = { readonly eye: Eye; readonly scale: number; readonly west: number; readonly top: number };

/** As large as the frame lets it be. */
function standBack(scene: Scene, frame: CutawayView['frame']): Stand {
  const corners = scene.solids.flatMap((solid) =>
    [solid.least, solid.most].flatMap((a) => [0, 1, 2, 3].map((k) => placeOn(solid, a, solid.wide, (k * Math.PI) / 2))),
  );
  const middle = (pick: (p: Place) => number): number => (Math.min(...corners.map(pick)) + Math.max(...corners.map(pick))) / 2;
  const on = { x: middle((p) => p.x), y: middle((p) => p.y), z: 0 };
  const size = Math.max(...corners.map((p) => Math.hypot(p.x - on.x, p.y - on.y, p.z)));
  const eye = eyeOn(on, { ...FROM, far: FROM.far * size });
  const rims = scene.solids.flatMap((solid) =>
    solid.bands.flatMap((b) => rimsOf(b).flatMap(({ a, r }) => ROUNDS.map((round) => seenBy(eye, placeOn(solid, a, r, round))))),
  );
  const [west, east] = [Math.min(...rims.map((p) => p.x)), Math.max(...rims.map((p) => p.x))];
  const [top, foot] = [Math.min(...rims.map((p) => p.y)), Math.max(...rims.map((p) => p.y))];
  const scale = Math.min((frame.width - 2 * EDGE) / (east - west), (frame.height - 2 * EDGE) / (foot - top));
  return { eye, scale, west, top };
}

const rimsOf = (b: Band): readonly { readonly a: number; readonly r: number }[] => [
  { a: b.a0, r: outOf({ ...b, r1: b.r0 }) },
  { a: b.a1, r: outOf({ ...b, r0: b.r1 }) },
];
const ROUNDS = Array.from({ length: 24 }, (_, k) => (k * Math.PI) / 12);
