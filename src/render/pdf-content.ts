/**
 * What a page's content stream says: the items of its stretches in turn, each operator only where something changes. Hundredths of a millimetre
 * and y downward.
 */
import type { Font, Item, PathItem, TextItem } from '../model/display.ts';
import type { OpenFont } from './pdf-fonts.ts';
import { type Forms, hatchContent } from './pdf-hatch.ts';
import { beginOf, COLOURS, inUnits, length, type Point, paintOf, pathOf, strokeOf, UNITS } from './pdf-paths.ts';
import type { Picture, Shapes, Shown } from './pdf-shapes.ts';
import type { Stretch, TaggedPage } from './pdf-tags.ts';
import { factor, number } from './pdf-write.ts';

export type Opened = ReadonlyMap<Font, OpenFont>;

export function fontOf(opened: Opened, font: Font): OpenFont {
  const found = opened.get(font);
  if (!found) throw new Error(`font '${font}' was not opened`);
  return found;
}

/** `points`: how many a mm. */
export type Means = { readonly opened: Opened; readonly forms: Forms; readonly shapes: Shapes; readonly points: number };
/** Lines of operators, and pictures between them. */
export type Content = readonly (string | Picture)[];

export function pageContent({ stretches }: TaggedPage, means: Means): Content {
  const scale = factor(means.points / UNITS);
  const state = from({ x: 0, y: 0 }, means, [`${scale} 0 0 ${scale} 0 0 cm`, '0 J 0 j']);
  for (const stretch of stretches) writeStretch(state, stretch);
  endText(state);
  return state.lines;
}

export const picturesIn = (content: Content): readonly Picture[] => content.filter((line) => typeof line !== 'string');

export const asOne = (content: Content, shown: Shown): string =>
  content.map((line) => (typeof line === 'string' ? line : shown(line))).join('\n');

/**
 * `fill`, `stroke`, `font`: what the last operators left set, said again only where it changes. `origin`: where coordinates are counted from.
 * `at`: where the last text began, while its text object is open: the next one is told by its step from there, and lines of a column by steps
 * that are alike. `begun`: the text object is open and nothing written in it yet.
 */
type State = {
  readonly lines: (string | Picture)[];
  readonly means: Means;
  readonly origin: Point;
  fill: string;
  stroke: string;
  font: string;
  at: Point | undefined;
  begun: boolean;
};

const from = (origin: Point, means: Means, lines: string[] = []): State => ({
  ...{ lines, means, origin, fill: '', stroke: '', font: '' },
  ...{ at: undefined, begun: false },
});

/** A picture of more items than this is counted from its own beginning: two that are alike are then told alike, and take less room. */
const FEW = 8;

/** A stretch and a text object stand one wholly in the other. */
function writeStretch(state: State, { open, items, whole }: Stretch): void {
  const [first] = items;
  const level = items.every(isLevel);
  if (!level) endText(state);
  else if (!state.at && first?.kind === 'text') beginText(state, first);
  state.lines.push(open);
  const begin = items.length > (whole ? 1 : FEW) ? items.find((item) => item.kind === 'path') : undefined;
  if (begin?.kind === 'path') state.lines.push(pictureOf(items, beginOf(begin), state.means));
  else writeItems(state, items);
  if (!level) endText(state);
  state.lines.push('EMC');
}

const isLevel = (item: Item): boolean => item.kind === 'text' && !item.turn;

function pictureOf(items: readonly Item[], origin: Point, means: Means): Picture {
  const state = from(origin, means);
  writeItems(state, items);
  endText(state);
  return { content: state.lines.join('\n'), origin, items };
}

function writeItems(state: State, items: readonly Item[]): void {
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (item?.kind === 'text') writeText(state, item, items[i + 1]);
    else if (item) writePath(state, item);
  }
}

/** The page counts y downward, letters stand upward: the text's own matrix turns them over, and by `turn`. */
function beginText(state: State, { x, y, turn }: TextItem): void {
  state.at = { x: inUnits(x), y: inUnits(y) };
  state.begun = true;
  state.lines.push(`BT ${turn ? turned(turn) : '1 0 0 -1'} ${state.at.x - state.origin.x} ${state.at.y - state.origin.y} Tm`);
}

function turned(degrees: number): string {
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), -Math.sin(angle), -Math.sin(angle), -Math.cos(angle)].map(number).join(' ');
}

function endText(state: State): void {
  if (state.at) state.lines.push('ET');
  state.at = undefined;
}

/** Where another text of the same stretch follows there is a blank at the end, unseen, so that who reads them on hears two words and not one. */
function writeText(state: State, item: TextItem, next: Item | undefined): void {
  if (item.turn) endText(state);
  if (!state.at) beginText(state, item);
  const font = fontOf(state.means.opened, item.font);
  const now = { x: inUnits(item.x), y: inUnits(item.y) };
  const { x, y } = state.at ?? now;
  let line = filledWith(state, item.ink);
  const lettering = `/${font.name} ${length(item.size)} Tf`;
  if (state.font !== lettering) line += `${lettering} `;
  // after a text the place is where that one ended, so even no step has to be said
  if (!state.begun) line += `${now.x - x} ${y - now.y} Td `;
  state.font = lettering;
  state.begun = false;
  state.at = now;
  state.lines.push(`${line}${font.encode(next?.kind === 'text' ? `${item.text} ` : item.text)} Tj`);
  if (item.turn) endText(state);
}

function writePath(state: State, item: PathItem): void {
  const { stroke, fill } = item;
  endText(state);
  let line = fill ? filledWith(state, fill) : '';
  if (stroke) {
    const stroked = strokeOf(stroke);
    if (state.stroke !== stroked) line += `${stroked} `;
    state.stroke = stroked;
  }
  state.lines.push(line + shown(state, item));
}

function shown({ means: { forms, shapes }, origin }: State, item: PathItem): string {
  if (item.hatch && item.segments.length > FEW) return hatchContent(item.hatch, origin, forms);
  const name = shapes.nameOf(item);
  if (name === undefined) return `${pathOf(item.segments, origin)} ${paintOf(item)}`;
  const { x, y } = beginOf(item);
  return `q 1 0 0 1 ${x - origin.x} ${y - origin.y} cm /${name} Do Q`;
}

function filledWith(state: State, ink: TextItem['ink']): string {
  const colour = COLOURS[ink];
  if (state.fill === colour) return '';
  state.fill = colour;
  return `${colour} rg `;
}
