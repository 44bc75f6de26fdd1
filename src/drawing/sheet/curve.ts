/** A curve on two axes with ticks and names: heavy as it is, thin as it would be without its levels, which are named at the right. */
import type { Item } from '../../model/display.ts';
import type { CurveShown, PointShown } from '../../model/sheet.ts';
import { circle, line, moved, polyline, rect, type Stroke, text, type XY } from '../display.ts';
import { type Block, paragraph, stack } from './blocks.ts';
import { rule } from './frame.ts';
import { unlinked } from './links.ts';
import { figure } from './meant.ts';
import { GAP, type Paper, RULE, STYLES } from './type.ts';

/** mm; `share`: of the page, for the picture. */
const SIZE = { share: 0.533, height: 56, gap: 5 } as const;

/** The picture at the left, what is told of it beside it. */
export function curveBlock(paper: Paper, shown: CurveShown): Block {
  const { left, right, wide } = paper.page;
  const frame = { width: SIZE.share * wide, height: SIZE.height };
  const x = left + frame.width + SIZE.gap;
  const place = (top: number) => ({ x, top, width: right - x });
  const words = stack(GAP.row, GAP.small, [
    ...shown.notes.map((note) => (top: number) => paragraph(paper, STYLES.note, note, place(top))),
    ...shown.points.map((point) => (top: number) => paragraph(paper, STYLES.rowNote, point.text, place(top))),
  ]);
  const height = Math.max(SIZE.height, words.height) + 2 * GAP.row;
  const drawn = figure(moved(drawCurve(paper, shown, frame), left, GAP.row), unlinked(shown.alt));
  return { height: height + GAP.row, items: [...drawn, ...words.items, rule(paper, height, 'thin')] };
}

/** mm; items stand in a frame whose top left corner is 0, 0. */
type CurveFrame = { readonly width: number; readonly height: number };

const LEFT = 9;
const RIGHT = 20;
const TOP = 6;
const FOOT = 10;
const TICK = 1;
const DOT = 0.7;
const PAD = 0.8;
const CURVE: Stroke = { ink: 'black', width: 0.5 };
const BARE: Stroke = { ink: 'mid', width: RULE.thin, dash: [1.2, 0.8] };
const LEVEL: Stroke = { ink: 'mid', width: RULE.thin, dash: [3, 1] };
const GRID: Stroke = { ink: 'pale', width: RULE.thin };
const FRAME: Stroke = { ink: 'black', width: RULE.thin };

type Plot = { readonly paper: Paper; readonly shown: CurveShown; readonly frame: CurveFrame; readonly at: (p: PointShown) => XY };

function drawCurve(paper: Paper, shown: CurveShown, frame: CurveFrame): readonly Item[] {
  const [wide, high] = [frame.width - LEFT - RIGHT, frame.height - TOP - FOOT];
  const at = ({ x, y }: PointShown): XY => ({ x: LEFT + (x / shown.x.to) * wide, y: TOP + high - (y / shown.y.to) * high });
  const plot: Plot = { paper, shown, frame, at };
  return [
    ...grid(plot),
    rect(LEFT, TOP, wide, high, { stroke: FRAME }),
    ...stopLine(plot),
    ...shown.levels.map((level) => segment(plot, { x: 0, y: level.at }, { x: shown.x.to, y: level.at }, LEVEL)),
    polyline(shown.bare.map(at), BARE),
    polyline(shown.curve.map(at), CURVE),
    ...shown.points.map((point) => circle(at(point).x, at(point).y, DOT, { fill: 'black' })),
    ...levelNames(plot),
    ...axisNames(plot),
  ];
}

function segment({ at }: Plot, a: PointShown, b: PointShown, stroke: Stroke): Item {
  const [from, to] = [at(a), at(b)];
  return line(from.x, from.y, to.x, to.y, stroke);
}

/** Ticks with their figures; between the ends a pale line across. */
function grid(plot: Plot): readonly Item[] {
  const { shown, paper, at } = plot;
  const { x, y } = shown;
  const small = { advances: paper.advances, ...STYLES.small };
  return [
    ...x.ticks.flatMap((tick) => {
      const foot = at({ x: tick.at, y: 0 });
      return [
        segment(plot, { x: tick.at, y: 0 }, { x: tick.at, y: y.to }, GRID),
        line(foot.x, foot.y, foot.x, foot.y + TICK, FRAME),
        text(small, tick.label, foot.x, foot.y + TICK + small.size, 'middle'),
      ];
    }),
    ...y.ticks.flatMap((tick) => {
      const foot = at({ x: 0, y: tick.at });
      return [
        segment(plot, { x: 0, y: tick.at }, { x: x.to, y: tick.at }, GRID),
        line(foot.x - TICK, foot.y, foot.x, foot.y, FRAME),
        text(small, tick.label, foot.x - TICK - PAD / 2, foot.y + small.size / 3, 'right'),
      ];
    }),
  ];
}

function stopLine(plot: Plot): readonly Item[] {
  const { shown, paper, at } = plot;
  const top = at({ x: shown.stop.at, y: shown.y.to });
  const small = { advances: paper.advances, ...STYLES.small };
  return [
    segment(plot, { x: shown.stop.at, y: 0 }, { x: shown.stop.at, y: shown.y.to }, LEVEL),
    text(small, shown.stop.label, top.x, top.y - PAD, 'right'),
  ];
}

/** To the right of the frame, each at its height, those that would touch moved apart, the highest first. */
function levelNames({ shown, paper, frame, at }: Plot): readonly Item[] {
  const small = { advances: paper.advances, ...STYLES.small };
  let under = 0;
  return [...shown.levels]
    .sort((a, b) => b.at - a.at)
    .map((level) => {
      const y = Math.max(at({ x: 0, y: level.at }).y + small.size / 3, under);
      under = y + small.lead;
      return text(small, level.label, frame.width - RIGHT + PAD, y);
    });
}

function axisNames({ shown, paper, frame }: Plot): readonly Item[] {
  const small = { advances: paper.advances, ...STYLES.small };
  const middle = LEFT + (frame.width - LEFT - RIGHT) / 2;
  return [text(small, shown.y.label, 0, TOP - PAD - 1), text(small, shown.x.label, middle, frame.height - PAD, 'middle')];
}
