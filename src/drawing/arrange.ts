/** One try at a stage's picture: at one scale, what is fixed there, and the tags round it in one arrangement. */

import type { Box, Item } from '../model/display.ts';
import { anchorsOf, barAt, halvesOf, rimAt, workOf } from './anchors.ts';
import { balloonTag, drawTags, labelTag, RING } from './balloons.ts';
import { drawDatum } from './datum.ts';
import { type Columns, drawDiameters, type Upright } from './diameters.ts';
import { at2, type Lettering, line, rect, text, type XY } from './display.ts';
import { centreRoom, drawHold } from './hold.ts';
import { type Surroundings, surroundings } from './leaders.ts';
import { drawLengths, type TierSizes, type Tiers } from './lengths.ts';
import { capHeight } from './measure.ts';
import { across, CENTRE, joined, type Layer, level, MADE, NOTHING, onPaper, type Paper } from './paper.ts';
import { distance, lineBoxes } from './plane.ts';
import { AXIS_PAST, highest, levelsOf, type Scene, SMALL } from './scene.ts';
import type { Tag } from './settle.ts';
import { drawSides } from './sides.ts';
import { along, metalAt, placed, type Sketch, type UR } from './sketch.ts';
import { type Placing, placeTags } from './tags.ts';
import { drawTool, type Reaches, reachesOf, toolIfFree } from './tool.ts';
import { drawVee } from './vee.ts';
import type { DiameterShown, StageView } from './view.ts';
import type { Window } from './window.ts';
import { drawWork } from './work.ts';

export type Arrangement = { readonly phase: XY; readonly places: number; readonly tiers: TierSizes };
/** `stray`: how many leaders run too far; `unplaced`: no room; `pointless`: nothing to point at, whatever the arrangement. */
export type Laid = Layer & {
  readonly lettered: readonly string[];
  readonly unplaced: readonly string[];
  readonly pointless: readonly string[];
  readonly stray: number;
  /** So many of its items, the first, are work and hold. */
  readonly solids: number;
  readonly reaches: Reaches;
};

/** On paper, mm. */
const EDGE = 0.5;
/** A longer leader is hard to follow. */
const STRAY = 40;
const LEGEND_LINE = 4.5;
const SWATCH = 7;

/** All but the tags, which stand round it, and the tags that are to be placed: the same wherever tags are tried. */
export type Fixed = {
  readonly layer: Layer;
  readonly around: Surroundings;
  /** The same with a tool that may be shown, where it has a place beside all this. */
  readonly besideTool: Surroundings | undefined;
  readonly tags: readonly Tag[];
  readonly lengths: Tiers;
  readonly datum: Layer | undefined;
  readonly solids: number;
  /** Of a tool that may be shown. */
  readonly reaches: Reaches;
};

export function fixedOf(scene: Scene, paper: Paper, sizes: TierSizes): Fixed {
  const { view, sketch, window } = scene;
  const solid = joined([
    drawHold(view.hold.kind, window, paper),
    drawWork(sketch, window, paper),
    drawSides(view.stage.sides ?? [], sketch.out, paper),
    drawVee(window, paper),
    drawTool(view.tool, sketch, window, paper, view.advances),
  ]);
  const notes = joined([drawAxis(view, window, paper), drawLegend(view, paper.scale)]);
  const standing = [...solid.boxes, ...notes.boxes];
  const levels = levelsOf(scene, paper);
  const base = paper.axis - highest(levels, view, window, paper);
  const lengths = drawLengths(view.advances, levels, sizes, {
    base,
    top: EDGE,
    left: EDGE,
    right: view.frame.width - EDGE,
    taken: standing,
  });
  const columns = drawColumns(view, sketch, window, paper, sizes, [...standing, ...lengths.boxes]);
  const taken = [...standing, ...lengths.boxes, ...columns.boxes];
  const reaches = reachesOf(view.toolIfFree, scene, paper);
  const datum = datumBesideTool(scene, paper, reaches, taken) ?? datumOf(view, sketch, window, paper, taken);
  const layer = joined([solid, notes, lengths, columns, datum ?? NOTHING]);
  const tags = tagsOf(view, sketch, window, paper, sizes, columns);
  const tool = toolIfFree(reaches, layer.boxes);
  const besideTool = tool.boxes.length > 0 ? surroundings([...layer.boxes, ...tool.boxes]) : undefined;
  return { layer, around: surroundings(layer.boxes), besideTool, tags, lengths, datum, solids: solid.items.length, reaches };
}

/** Where both it and the tool have a place. */
function datumBesideTool(scene: Scene, paper: Paper, reaches: Reaches, taken: readonly Box[]): Layer | undefined {
  const { view, sketch, window } = scene;
  const tool = toolIfFree(reaches, taken);
  const datum = tool.boxes.length > 0 ? datumOf(view, sketch, window, paper, [...taken, ...tool.boxes]) : undefined;
  return datum && toolIfFree(reaches, [...taken, ...datum.boxes]).boxes.length > 0 ? datum : undefined;
}

export function arrange({ view }: Scene, fixed: Fixed, arrangement: Arrangement): Laid {
  const { layer, around, besideTool, tags, lengths, datum, solids, reaches } = fixed;
  const lattice = {
    width: view.frame.width,
    height: view.frame.height,
    step: 2 * RING + 1.8,
    phase: arrangement.phase,
    places: arrangement.places,
  };
  const pointed = tags.filter((tag) => tag.anchors.length > 0);
  const beside = besideTool && placeTags(pointed, lattice, besideTool);
  // for a tool's sake nothing is left out and no leader runs far
  const placing = beside && beside.left.length + strayIn(beside) === 0 ? beside : placeTags(pointed, lattice, around);
  const stray = strayIn(placing);
  const pointless = tags.filter((tag) => tag.anchors.length === 0).map((tag) => tag.id);
  const { items, boxes } = joined([layer, drawTags(placing.standing)]);
  const { lettered, unplaced } = reportOf(view, lengths, tags, placing.left, datum);
  return { items, boxes, lettered, unplaced, pointless, stray, solids, reaches };
}

const strayIn = ({ standing }: Placing): number => standing.filter((s) => distance(s.leader.a, s.leader.b) > STRAY).length;

function reportOf(
  view: StageView,
  tiers: Tiers,
  tags: readonly Tag[],
  left: readonly string[],
  datum: Layer | undefined,
): Pick<Laid, 'lettered' | 'unplaced'> {
  const sizes = tags.filter((t) => t.kind === 'text').map((t) => t.id);
  const lost = left.filter((id) => sizes.includes(id));
  const noDatum = view.hold.datum && !datum ? [view.hold.datum.letter] : [];
  return { lettered: [...tiers.lettered, ...lost], unplaced: [...left.filter((id) => !sizes.includes(id)), ...noDatum] };
}

// ---- axis, legend -------------------------------------------------------------------------------------------------------
function small(view: StageView): Lettering {
  return { advances: view.advances, font: 'narrow', size: SMALL, ink: 'mid' };
}

function drawAxis(view: StageView, window: Window, paper: Paper): Layer {
  const start = across(paper, window.from) - AXIS_PAST - centreRoom(window, paper.scale, 'leftCentre');
  const end = Math.min(across(paper, window.right) + AXIS_PAST, view.frame.width - EDGE);
  const how = small(view);
  const label = text(how, view.words.headstock, start - 1, paper.axis + capHeight(SMALL) / 2, 'right');
  const box: Box = { x: label.x, y: paper.axis - SMALL / 2, w: label.width, h: SMALL, what: 'text headstock' };
  const leg = { a: { x: start, y: paper.axis }, b: { x: end, y: paper.axis } };
  return {
    items: [line(start, paper.axis, end, paper.axis, CENTRE), label],
    boxes: [...(label.text === '' ? [] : [box]), ...lineBoxes(leg, 'line axis')],
  };
}

/** Bottom corners: what new surface and taken metal look like on the right, the scale on the left. */
function drawLegend(view: StageView, scale: number): Layer {
  const how = small(view);
  const y = view.frame.height - 1.4;
  const items: Item[] = [];
  const boxes: Box[] = [];
  if (view.words.scale) {
    const label = text(how, view.words.scale(shownScale(scale, view)), EDGE, y);
    items.push(label);
    boxes.push({ x: label.x, y: y - SMALL, w: label.width, h: LEGEND_LINE - 0.6, what: `text ${label.text}` });
  }
  let x = view.frame.width - EDGE;
  const entry = (words: string, swatch: (left: number) => Item): void => {
    const label = text(how, words, x, y, 'right');
    const left = label.x - SWATCH - 1.5;
    items.push(label, swatch(left));
    boxes.push({ x: left, y: y - SMALL, w: x - left, h: LEGEND_LINE - 0.6, what: `text ${words}` });
    x = left - 6;
  };
  if (view.words.legend) {
    entry(view.words.legend.taken, (left) => rect(left + SWATCH / 2, y - 2.4, SWATCH / 2, 3, { fill: 'taken' }));
    entry(view.words.legend.made, (left) => line(left, y - 0.9, left + SWATCH, y - 0.9, MADE));
  }
  return { items, boxes };
}

/** ISO 5455: '5:1' enlarged, '1:2' reduced; of what is printed. */
export function shownScale(laidOut: number, { enlarged = 1 }: Pick<StageView, 'enlarged'>): string {
  const scale = at2(laidOut * enlarged);
  return scale >= 1 ? `${scale}:1` : `1:${Math.round(100 / scale) / 100}`;
}

// ---- diameters ----------------------------------------------------------------------------------------------------------
function drawColumns(view: StageView, sketch: Sketch, window: Window, paper: Paper, sizes: TierSizes, taken: readonly Box[]): Columns {
  const clear = view.diameters.filter((d) => d.as !== 'radius' && runsClear(d, sketch));
  const uprights: readonly Upright[] = clear.map((d) => {
    const at = placed({ z: d.z, d: d.d }, sketch.out);
    return {
      id: d.id,
      x: across(paper, rightEnd(at, sketch)),
      above: level(paper, at.r, 'above'),
      below: level(paper, at.r, 'below'),
      side: d.side,
      text: d.text,
    };
  });
  const from = across(paper, window.right) + AXIS_PAST;
  return drawDiameters(view.advances, uprights, sizes, { from, right: view.frame.width - EDGE - 1, taken });
}

/** The free-end end of the level stretch that the place lies on. */
function rightEnd(at: UR, sketch: Sketch): number {
  const on = sketch.loops
    .flat()
    .filter(
      (e) =>
        Math.abs(e.a.r - at.r) < 1e-3 && Math.abs(e.b.r - at.r) < 1e-3 && Math.min(e.a.u, e.b.u) <= at.u && at.u <= Math.max(e.a.u, e.b.u),
    );
  return Math.max(at.u, ...on.flatMap((e) => [e.a.u, e.b.u]));
}

/** Whether a level line from the surface meets no metal on its way to the free end. */
function runsClear(d: DiameterShown, sketch: Sketch): boolean {
  const at = placed({ z: d.z, d: d.d }, sketch.out);
  const nib = d.side === 'outside' ? 1e-3 : -1e-3;
  const us = [...new Set([at.u, ...sketch.loops.flat().flatMap((e) => [e.a.u, e.b.u])])].filter((u) => u >= at.u).sort((p, q) => p - q);
  return us.slice(1).every((u, i) => !metalAt(sketch.loops, { u: (u + (us[i] ?? u)) / 2, r: at.r + nib }));
}

// ---- datum, tags --------------------------------------------------------------------------------------------------------
function datumOf(view: StageView, sketch: Sketch, window: Window, paper: Paper, taken: readonly Box[]): Layer | undefined {
  const datum = view.hold.datum;
  if (!datum) return undefined;
  const u = Math.max(window.from, along(datum.z, sketch.out));
  const r = rimAt(sketch, u) || barAt(sketch, u);
  const nib = 1e-3;
  const airOnRight = !metalAt(sketch.loops, { u: u + nib, r: r - nib });
  const stand = { from: onPaper(paper, { u, r }, 'below'), side: airOnRight ? 1 : -1, frame: view.frame, taken } as const;
  return drawDatum(view.advances, datum.letter, stand);
}

function tagsOf(view: StageView, sketch: Sketch, window: Window, paper: Paper, sizes: TierSizes, columns: Columns): readonly Tag[] {
  const from = window.cutAt ?? window.from;
  // what points at one place stands together
  const pointsAt = ({ surface, at, half, text }: StageView['balloons'][number]): string =>
    surface !== '' ? surface : at ? `at ${at.z} ${at.d} ${half ?? ''}` : `number ${text}`;
  const groups = [...new Set(view.balloons.map(pointsAt))].map((key) => view.balloons.filter((b) => pointsAt(b) === key));
  const balloons = groups.map((group) => {
    const own = anchorsOf(sketch, group[0]?.surface ?? '', paper, from);
    const given = group.flatMap((b) => (b.at ? [b.at] : b.by ? workOf(view.stage, b.by) : [])).map((p) => placed(p, sketch.out));
    const numbers = group.map((b) => b.text);
    const half = group.find((b) => b.half)?.half;
    const shown = half ? given.map((p) => onPaper(paper, p, half)) : halvesOf(sketch, given, paper);
    return balloonTag(view.advances, numbers.join('+'), numbers, own.length > 0 ? own : shown);
  });
  const labels = view.diameters
    .filter((d) => !columns.placed.includes(d.id))
    .map((d) => labelTag(view.advances, d.id, d.text, sizes, halvesOf(sketch, [placed({ z: d.z, d: d.d }, sketch.out)], paper)));
  return [...balloons, ...labels];
}
