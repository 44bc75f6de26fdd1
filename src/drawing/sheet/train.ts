/** A train of wheels as circles that touch, shaft by shaft from left to right, each with its teeth; the name of each shaft beneath, on two lines by turns. */
import type { Item } from '../../model/display.ts';
import type { ShaftShown, TrainShown } from '../../model/sheet.ts';
import { circle, type Lettering, moved, text } from '../display.ts';
import { capHeight, textWidth } from '../measure.ts';
import { type Block, paragraph, stack } from './blocks.ts';
import { rule } from './frame.ts';
import { unlinked } from './links.ts';
import { figure } from './meant.ts';
import { GAP, type Paper, RULE, STYLES } from './type.ts';

/** mm; `items` stand in a frame whose top left corner is 0, 0. */
export type TrainFrame = { readonly width: number; readonly height: number };

/** mm; `share`: of the page, for the picture. */
const TRAIN = { share: 0.391, height: 31, gap: 6 } as const;

/** The picture on the left, what stands where and for what beside it. */
export function trainBlock(paper: Paper, { title, lines, shafts, alt }: TrainShown): Block {
  const { left, right, wide } = paper.page;
  const frame = { width: TRAIN.share * wide, height: TRAIN.height };
  const x = left + frame.width + TRAIN.gap;
  const place = (top: number) => ({ x, top, width: right - x });
  const words = stack(GAP.row, GAP.small, [
    (top) => paragraph(paper, STYLES.strong, title, place(top)),
    ...lines.map((line) => (top: number) => paragraph(paper, STYLES.body, line, place(top))),
  ]);
  const height = Math.max(TRAIN.height, words.height) + 2 * GAP.row;
  const drawn = figure(moved(drawTrain(paper, shafts, frame), left, GAP.row), unlinked(alt));
  return { height: height + GAP.row, items: [...drawn, ...words.items, rule(paper, height, 'thin')] };
}

/** Drawn as large as the frame lets it; two wheels on one shaft are two circles about one centre. */
export function drawTrain(paper: Pick<Paper, 'advances'>, shafts: readonly ShaftShown[], frame: TrainFrame): readonly Item[] {
  const centres = centresOf(shafts);
  const ends = shafts.flatMap((shaft, i) =>
    shaft.wheels.map((teeth) => ({ from: at(centres, i) - teeth / 2, to: at(centres, i) + teeth / 2 })),
  );
  const [left, right] = [Math.min(...ends.map((e) => e.from)), Math.max(...ends.map((e) => e.to))];
  const largest = Math.max(...shafts.flatMap((shaft) => shaft.wheels));
  const room = frame.height - 2 * STYLES.small.lead - PAD;
  const scale = Math.min(frame.width / (right - left), room / largest);
  const cy = room / 2;
  const small = { advances: paper.advances, ...STYLES.small };
  const number = { advances: paper.advances, ...STYLES.second };
  return shafts.flatMap((shaft, i) => {
    const cx = (at(centres, i) - left) * scale;
    const wheels = [...shaft.wheels].sort((a, b) => b - a);
    return [
      ...wheels.map((teeth) => circle(cx, cy, (teeth / 2) * scale, { stroke: { ink: 'black', width: RULE.box } })),
      ...(lonely(number, wheels, scale) === 'middle' ? [] : [circle(cx, cy, HUB, { fill: 'black' })]),
      ...wheels.map((teeth, n) => inFrame(number, String(teeth), cx, numberAt(number, wheels, n, { cy, scale }))),
      inFrame(small, shaft.label, cx, frame.height - PAD - (i % 2) * STYLES.small.lead),
    ];
  });
}
const PAD = 1;
const HUB = 0.6;

/** Where each shaft stands, in teeth: the last wheel of one touches the first of the next. */
function centresOf(shafts: readonly ShaftShown[]): readonly number[] {
  const out: number[] = [];
  for (const [i, shaft] of shafts.entries()) {
    const before = shafts[i - 1]?.wheels.at(-1);
    out.push(before === undefined ? 0 : (out[i - 1] ?? 0) + (before + (shaft.wheels[0] ?? 0)) / 2);
  }
  return out;
}

const at = (centres: readonly number[], i: number): number => centres[i] ?? 0;

/** About its shaft, but no further out than the frame's left. */
function inFrame(how: Lettering, words: string, cx: number, y: number): Item {
  return text(how, words, Math.max(cx, textWidth(how.advances, how.font, how.size, words) / 2), y, 'middle');
}

/** A single wheel may be too small for its number over the hub: then it stands in the hub's place, or above a wheel that is smaller yet. */
function lonely(how: Lettering, wheels: readonly number[], scale: number): 'over' | 'middle' | 'above' {
  const [teeth = 0, other] = wheels;
  const radius = (teeth / 2) * scale;
  const half = textWidth(how.advances, how.font, how.size, String(teeth)) / 2;
  const cap = capHeight(how.size);
  if (other !== undefined || Math.hypot(half, HUB + PAD / 2 + cap) <= radius) return 'over';
  return Math.hypot(half, cap / 2) <= radius ? 'middle' : 'above';
}
/** mm of air, so that the number clears a large wheel beside it too. */
const ABOVE = 2;

type Drawn = { readonly cy: number; readonly scale: number };

/** The larger wheel's number under its top, the smaller's (or the only one's) over the hub; of two equal ones, over and under it. */
function numberAt(how: Lettering, wheels: readonly number[], n: number, { cy, scale }: Drawn): number {
  const { size } = how;
  const over = cy - HUB - PAD / 2;
  const stands = lonely(how, wheels, scale);
  if (stands === 'middle') return cy + capHeight(size) / 2;
  if (stands === 'above') return cy - ((wheels[0] ?? 0) / 2) * scale - ABOVE;
  if (wheels.length === 1 || n === 1) return n === 1 ? cy + size : over;
  const [large = 0, other = 0] = wheels;
  const ring = ((large - other) / 2) * scale;
  return ring > size ? cy - (large / 2) * scale + size : over;
}
