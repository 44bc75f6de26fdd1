/** How wide the columns of a table are, by what stands in them. */
import type { Column } from '../../model/sheet.ts';
import { textWidth, wrap } from '../measure.ts';
import { GAP, type Paper, STYLES, type Style } from './type.ts';

export type Span = { readonly x: number; readonly width: number };
export const MANNERS: Readonly<Record<Column['manner'], Style>> = {
  text: STYLES.note,
  strong: { ...STYLES.note, font: 'text-bold', ink: 'black' },
  figure: STYLES.second,
  small: STYLES.small,
};

const BETWEEN = 3;
/** Widths are found to a hundredth of a page. */
const HALVINGS = 10;
/** No column has to be wider than this share of the table. */
const MOST_LEAST = 0.5;

/** `whole`: of the widest cell; `all`: of all cells one after the other. */
type Asked = Pick<Column, 'share'> & { readonly least: number; readonly whole: number; readonly all: number };

/**
 * As wide as its widest cell where there is room for all; the rest goes out by share. Else figures, which are not broken, have their width,
 * and the others are as wide as each other or as the root of all that stands in them, whichever makes the table lower; never narrower than a
 * label or a word.
 */
export function columnSpans(paper: Paper, columns: readonly Column[], rows: readonly (readonly string[])[], place: Span): readonly Span[] {
  const room = place.width - BETWEEN * (columns.length - 1);
  const asked = columns.map(
    (column, i): Asked => ({
      ...column,
      ...widthsOf(
        paper,
        column,
        rows.map((cells) => cells[i] ?? ''),
        room,
      ),
    }),
  );
  const ways =
    sum(asked.map((each) => each.whole)) <= room ? [spread(asked, room)] : [pressed(asked, room, EVEN), pressed(asked, room, Math.sqrt)];
  const heights = ways.map((way) => (ways.length > 1 ? heightOf(paper, columns, rows, way) : 0));
  const widths = ways[heights.indexOf(Math.min(...heights))] ?? [];
  let x = place.x;
  return widths.map((width) => {
    const span = { x, width };
    x += width + BETWEEN;
    return span;
  });
}

function widthsOf(paper: Paper, column: Column, cells: readonly string[], room: number): Omit<Asked, 'share'> {
  const wide = (style: Style, words: string): number => textWidth(paper.advances, style.font, style.size, words) + GAP.small;
  const style = MANNERS[column.manner];
  const label = wide(STYLES.label, column.label);
  const widths = cells.map((words) => wide(style, words));
  const whole = Math.max(label, ...widths);
  const longest = Math.max(label, ...cells.flatMap((words) => words.split(' ').map((word) => wide(style, word))));
  return { whole, all: sum(widths), least: Math.min(room * MOST_LEAST, column.manner === 'figure' ? whole : longest) };
}

function spread(asked: readonly Asked[], room: number): readonly number[] {
  const left = room - sum(asked.map((each) => each.whole));
  const shares = sum(asked.map((each) => each.share));
  return asked.map((each) => each.whole + (left * each.share) / shares);
}

const EVEN = (): number => 1;

function pressed(asked: readonly Asked[], room: number, weight: (all: number) => number): readonly number[] {
  const at = (part: number): readonly number[] => asked.map((each) => Math.max(each.least, Math.min(each.whole, part * weight(each.all))));
  let [fits, tooWide] = [0, room];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (fits + tooWide) / 2;
    if (sum(at(middle)) <= room) fits = middle;
    else tooWide = middle;
  }
  const widths = at(fits);
  const over = room / sum(widths);
  return over < 1 ? widths.map((width) => width * over) : widths;
}

function heightOf(paper: Paper, columns: readonly Column[], rows: readonly (readonly string[])[], widths: readonly number[]): number {
  const cell = (manner: Column['manner'], words: string, width: number): number => {
    const { font, size, lead } = MANNERS[manner];
    return wrap(paper.advances, font, size, words, width).length * lead;
  };
  return sum(rows.map((cells) => Math.max(...columns.map(({ manner }, i) => cell(manner, cells[i] ?? '', widths[i] ?? 0)))));
}

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0);
