/** Proportions of stop valves and their spindles, beside the general ones of the workshop. Each row carries its source. */
import { type FactTable, factTable, type Standing } from './fact.ts';

const TRIBOLOGY =
  'Tribology Handbook, B25 Packed glands, table 25.2 (3 mm at least for shafts up to 12 mm), scaled down for small spindles: judgement';
const CUSTOM = 'common practice, no source';
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];

const ROWS: readonly Row[] = [
  ['stop.cone.throttle', 60, 'deg', 'included angle of a cone that regulates: whistle, blower, supply, feed'],
  ['stop.cone.quick', 90, 'deg', 'included angle of a cone that opens and shuts quickly: blow-down, steam to an injector'],
  ['stop.bore.step', 0.5, 'mm', 'seat bores are proposed in half millimetres'],
  ['stop.plug.over', 1.5, 'mm', 'plug over the seat bore, on diameter'],
  ['stop.plug.shoulder', 1, 'mm', 'plug over a running thread that is wider than that, on diameter: the spindle cannot be wound out'],
  ['stop.tip.share', 0.25, 'ratio', 'flat at the tip of the cone, of the seat bore'],
  ['stop.web.share', 0.6, 'ratio', 'thickness of the web that holds the seat, of the bore'],
  ['stop.web.least', 3, 'mm', 'least thickness of that web'],
  [
    'stop.travel.over',
    0.5,
    'mm',
    'travel to the back stop over the lift that passes the whole bore: what the chain of five lengths may eat up',
  ],
  ['stop.travel.most', 1.3, 'ratio', 'travel over which a valve wastes turns, of the same lift'],
  ['stop.inlet.clear', 0.5, 'mm', 'between a cross hole and the floor, plug or thread beside it'],
  ['stop.engagement', 1, 'ratio', 'thread of the spindle engaged when shut, of its diameter'],
  ['stop.land.least', 1, 'mm', 'least plain length of the plug behind its cone'],
  ['stop.stem.share', 0.65, 'ratio', 'stem, of the seat bore'],
  ['stop.stem.least', 3, 'mm', 'least stem: thinner bends under the hand'],
  ['stop.stem.clear', 0.2, 'mm', 'hole of bonnet, nut and follower over the stem, on diameter'],
  ['stop.thread.over-stem', 1.5, 'mm', 'running thread over the stem, on diameter: its root has to clear the stem'],
  ['stop.spindle.pitch', 1, 'mm', 'pitch proposed for the running thread'],
  ['stop.back', 2, 'mm', 'metal in the bonnet between the end of the running thread and the stuffing box'],
  ['packing.share', 0.35, 'ratio', 'width of packing, of the stem', TRIBOLOGY],
  ['packing.least', 1.2, 'mm', 'least width of packing', TRIBOLOGY],
  ['packing.rings', 3, 'count', 'rings of packing in the box (two to four)'],
  ['packing.squeeze', 0.3, 'ratio', 'packing pressed down by this much of its length (25 to 35 %)'],
  ['packing.step', 0.1, 'mm', 'packing widths are proposed in tenths'],
  ['gland.nose', 2.25, 'ratio', 'nose of the follower, in widths of packing: for three rings pressed by 35 % and 10 % over size'],
  ['gland.left', 0.3, 'mm', 'least that the flange of a follower still stands off when the packing has been pressed'],
  ['gland.entry', 0.3, 'mm', 'least that the nose of a follower is in its box over new packing'],
  ['gland.fit.least', 0.1, 'mm', 'least clearance of the follower in its box, on diameter'],
  ['gland.fit.most', 0.2, 'mm', 'greatest clearance of the follower in its box, on diameter'],
  ['gland.flange', 2, 'mm', 'thickness of the flange of a follower'],
  ['gland.wall', 0.8, 'mm', 'wall between stuffing box and the relief of the gland thread'],
  ['gland.threads', 5, 'count', 'full threads of the gland nut that hold when the packing is new'],
  ['gland.enter', 0.5, 'mm', 'box deeper than the packing that is laid in'],
  ['packing.over', 1.1, 'ratio', 'height of packing as laid in, at its widest, of its nominal width (band of packing as bought)'],
  ['bonnet.hexagon', 6, 'mm', 'height of the hexagon of a bonnet'],
  ['plug.head', 6, 'mm', 'height of the hexagon of a plug'],
  ['wheel.ratio', 3, 'ratio', 'handwheel, of the seat bore (3 to 4)'],
  ['wheel.rim', 6, 'mm', 'width of the rim of a handwheel'],
  ['wheel.hub.over', 5, 'mm', 'hub of a handwheel over the square hole, on diameter'],
  ['wheel.hub', 3, 'mm', 'length of that hub beyond the rim'],
  [
    'square.share',
    0.75,
    'ratio',
    'across the flats of a square whose corners stay round, of the stem',
    'DIN 79:2004: s over the greatest turned diameter is 0.75 to 0.80',
    'standard',
  ],
  ['square.step', 0.5, 'mm', 'squares are proposed in half millimetres'],
  ['square.in-wheel', 0.5, 'mm', 'square shorter than its wheel, so that the nut pulls the wheel down'],
  ['spindle.free', 4, 'mm', 'stem between the gland nut and the wheel when shut'],
  ['spindle.end', 5, 'mm', 'length of the thread for the wheel nut'],
  ['hexagon-nut.height', 0.8, 'ratio', 'height of a hexagon nut as it is drawn, of its thread', 'ISO 4032, from memory', 'from memory'],
  [
    'hexagon-nut.across',
    1.8,
    'ratio',
    'across the flats of a small hexagon nut as it is drawn, of its thread',
    'ISO 4032, from memory',
    'from memory',
  ],
  ['washer.thick', 0.5, 'mm', 'thickness of a washer for a thread of 2.5 or 3 mm', 'ISO 7089, from memory', 'from memory'],
  ['washer.across', 2.3, 'ratio', 'outside of such a washer as it is drawn, of its thread', 'ISO 7089, from memory', 'from memory'],
  ['band.running', 0.03, 'mm', 'band under size on a stem that runs through packing'],
  ['band.plug', 0.05, 'mm', 'either way on the diameter of a plug'],
];

export const stopValvePractice: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = CUSTOM, standing = 'common practice']) => ({ id, value, unit, what, source, standing })),
);
