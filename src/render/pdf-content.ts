/**
 * What a page's content stream says: the items of its stretches in turn, each operator only where something changes. Millimetres and y downward,
 * as in the Document.
 */
import type { Font, Item, PathItem, TextItem } from '../model/display.ts';
import type { OpenFont } from './pdf-adapter.ts';
import { type Forms, hatchContent } from './pdf-hatch.ts';
import { beginOf, COLOURS, from, type Point, paintOf, pathOf, strokeOf } from './pdf-paths.ts';
import { pictureOf, type Shapes, shapesOf } from './pdf-shapes.ts';
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

export function pageContent({ stretches }: TaggedPage, means: Means): string {
  const scale = factor(means.points);
  const state: State = { lines: [`${scale} 0 0 ${scale} 0 0 cm`, '0 J 0 j'], means, set: {}, origin: { x: 0, y: 0 } };
  for (const stretch of stretches) writeStretch(state, stretch);
  endText(state);
  return state.lines.join('\n');
}

/**
 * `set`: what the last operators left set, said again only where it changes. `origin`: where coordinates are counted from. `at`: where the last
 * text began, while its text object is open: the next one is told by its step from there, and lines of a column by steps that are alike.
 */
type State = {
  readonly lines: string[];
  readonly means: Means;
  set: { readonly fill?: string; readonly stroke?: string; readonly font?: string };
  origin: Point;
  at?: Point | undefined;
};

/** A picture of more paths than this is counted from its own beginning: two that are alike are then told alike, and take less room. */
const FEW = 8;

/** A stretch and a text object stand one wholly in the other. */
function writeStretch(state: State, { open, items }: Stretch): void {
  const [first] = items;
  const level = items.every(isLevel);
  if (!level) endText(state);
  else if (!state.at && first?.kind === 'text') beginText(state, first);
  state.lines.push(open);
  const picture = pictureOf(items);
  const name = picture === undefined ? undefined : state.means.shapes.pictureName(picture);
  const begin = items.length > FEW ? items.find((item) => item.kind === 'path') : undefined;
  if (name !== undefined && first?.kind === 'path') state.lines.push(`q ${placed(state, beginOf(first))} /${name} Do Q`);
  else if (begin?.kind === 'path') writePicture(state, items, beginOf(begin));
  else writeItems(state, items);
  if (!level) endText(state);
  state.lines.push('EMC');
}

const isLevel = (item: Item): boolean => item.kind === 'text' && !item.turn;

function writePicture(state: State, items: readonly Item[], origin: Point): void {
  const { set } = state;
  state.lines.push(`q ${placed(state, origin)}`);
  state.origin = origin;
  writeItems(state, items);
  endText(state);
  state.lines.push('Q');
  state.set = set;
  state.origin = { x: 0, y: 0 };
}

const placed = ({ origin }: State, { x, y }: Point): string => `1 0 0 1 ${from(origin.x, x)} ${from(origin.y, y)} cm`;

function writeItems(state: State, items: readonly Item[]): void {
  for (const [i, item] of items.entries()) {
    if (item.kind === 'text') writeText(state, item, items[i + 1]);
    else writePath(state, item);
  }
}

/** The page counts y downward, letters stand upward: the text's own matrix turns them over, and by `turn`. */
function beginText(state: State, { x, y, turn = 0 }: TextItem): void {
  const angle = (turn * Math.PI) / 180;
  const turned = [Math.cos(angle), -Math.sin(angle), -Math.sin(angle), -Math.cos(angle)].map(number);
  state.lines.push(`BT ${turned.join(' ')} ${from(state.origin.x, x)} ${from(state.origin.y, y)} Tm`);
  state.at = { x, y };
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
  const { x, y } = state.at ?? item;
  state.at = { x: item.x, y: item.y };
  state.lines.push(
    [
      ...changed(state, 'fill', `${COLOURS[item.ink]} rg`),
      ...changed(state, 'font', `/${font.name} ${number(item.size)} Tf`),
      ...(x === item.x && y === item.y ? [] : [`${from(x, item.x)} ${from(item.y, y)} Td`]),
      `${font.encode(next?.kind === 'text' ? `${item.text} ` : item.text)} Tj`,
    ].join(' '),
  );
  if (item.turn) endText(state);
}

function writePath(state: State, item: PathItem): void {
  const { stroke, fill } = item;
  endText(state);
  state.lines.push(
    [
      ...(fill ? changed(state, 'fill', `${COLOURS[fill]} rg`) : []),
      ...(stroke ? changed(state, 'stroke', strokeOf(stroke)) : []),
      shown(state, item),
    ].join(' '),
  );
}

function shown(state: State, item: PathItem): string {
  const { forms, shapes } = state.means;
  if (item.hatch && item.segments.length > FEW) return hatchContent(item.hatch, state.origin, forms);
  const name = shapesOf(item).flatMap((shape) => shapes.nameOf(shape) ?? [])[0];
  if (name !== undefined) return `q ${placed(state, beginOf(item))} /${name} Do Q`;
  return `${pathOf(item.segments, state.origin)} ${paintOf(item)}`;
}

function changed(state: State, what: 'fill' | 'stroke' | 'font', value: string): readonly string[] {
  if (state.set[what] === value) return [];
  state.set = { ...state.set, [what]: value };
  return [value];
}
