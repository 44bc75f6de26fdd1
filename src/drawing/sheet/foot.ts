/** The foot of every page: dangers on the left, each with its safety signs before its words; units and mark on the right. */
import type { Item } from '../../model/display.ts';
import type { Meaning } from '../../model/meaning.ts';
import type { CautionSaid, SheetView, SignShown } from '../../model/sheet.ts';
import { text } from '../display.ts';
import { textWidth } from '../measure.ts';
import { type Block, FIRST_BASELINE, paragraph, placed } from './blocks.ts';
import { rule } from './frame.ts';
import { as, figure } from './meant.ts';
import { drawSign } from './signs.ts';
import { GAP, once, type Paper, STYLES, type Style } from './type.ts';

/** mm under the baseline. */
const BELOW = 0.97;
/** Units and mark stand in one line where that is no more than this of the width. */
const RIGHT_SHARE = 0.4;
const STYLE = STYLES.caution;

/** mm. `sign`: its size; between signs, `after` them to the words, `apart` from the words before; `most`: lines that it is meant for. */
type Way = {
  readonly sign: number;
  readonly between: number;
  readonly after: number;
  readonly apart: number;
  readonly style: Style;
  readonly most: number;
};
const LOOSE = { between: 0.5, after: 0.7, apart: 2, style: STYLE, most: Number.POSITIVE_INFINITY } as const;
const SMALL = { ...STYLE, size: STYLES.foot.size };
/**
 * The signs should not cost the page a line: of these ways the first that needs the fewest. Alone, a line has room for a larger sign; letters
 * are never less than what is followed has.
 */
const WAYS: readonly Way[] = [
  { ...LOOSE, sign: 4.7, most: 1 },
  { ...LOOSE, sign: 4 },
  { ...LOOSE, sign: 4, style: SMALL },
  { sign: 4, between: 0.3, after: 0.5, apart: 1.2, style: SMALL, most: LOOSE.most },
];

/** Stands at the foot of the page, whatever is above. */
export function foot(paper: Paper, view: SheetView, cautions: readonly CautionSaid[]): readonly Item[] {
  const { left, right } = footTexts(paper, view, cautions);
  return placed(
    { height: 0, items: [rule(paper, 0, 'thin'), ...left.items, ...as(right, { is: 'running-foot' }).items] },
    footTop(paper, view, cautions),
  );
}

/** What has many lines makes the foot higher, never smaller. */
export function footTop(paper: Paper, view: SheetView, cautions: readonly CautionSaid[]): number {
  const { left, right } = footTexts(paper, view, cautions);
  return paper.page.foot - Math.max(0, left.height - STYLE.lead, right.height - STYLES.foot.lead);
}

type Texts = { readonly left: Block; readonly right: Block };

function footTexts(paper: Paper, view: SheetView, cautions: readonly CautionSaid[]): Texts {
  return once(paper, cautions, () => {
    const { right, wide } = paper.page;
    const most = wide * RIGHT_SHARE;
    const marks = paragraph(paper, STYLES.foot, view.foot, { x: right - most, top: GAP.small, width: most }, 'right');
    const own = Math.min(most, textWidth(paper.advances, STYLES.foot.font, STYLES.foot.size, view.foot));
    const beside = Math.round(marks.height / STYLES.foot.lead);
    return { left: dangers(paper, cautions, (line) => (line < beside ? wide - own - GAP.column : wide)), right: marks };
  });
}

/** How wide a line may be, the first of them 0. */
type Widths = (line: number) => number;
/** A word where it stands in its line, its signs before it. */
type Token = { readonly x: number; readonly word: string; readonly signs: readonly SignShown[]; readonly meaning: Meaning };
type Lines = readonly (readonly Token[])[];

/** One after the other as a paragraph runs on, each with its signs at its first word. */
function dangers(paper: Paper, cautions: readonly CautionSaid[], widths: Widths): Block {
  const tokens = cautions.flatMap(tokensOf);
  const tried = WAYS.map((way) => ({ way, lines: inLines(paper, tokens, widths, way) })).filter(
    ({ way, lines }) => lines.length <= way.most,
  );
  const fewest = Math.min(...tried.map(({ lines }) => lines.length));
  const { way, lines } = tried.find((each) => each.lines.length === fewest) ?? { way: WAYS[0], lines: [] };
  const items = lines.flatMap((line, i) => (way ? lineItems(paper, line, GAP.small + i * STYLE.lead, way) : []));
  return { height: lines.length * STYLE.lead, items };
}

function inLines(paper: Paper, tokens: readonly Omit<Token, 'x'>[], widths: Widths, way: Way): Lines {
  const wide = (words: string): number => textWidth(paper.advances, way.style.font, way.style.size, words);
  const lines: Token[][] = [];
  let end = Number.POSITIVE_INFINITY;
  for (const token of tokens) {
    const own = signsWide(token.signs, way) + wide(token.word);
    const gap = token.signs.length > 0 ? way.apart : wide(' ');
    const fits = end + gap + own <= widths(lines.length - 1);
    if (!fits) lines.push([]);
    const x = fits ? end + gap : 0;
    lines.at(-1)?.push({ ...token, x });
    end = x + own;
  }
  return lines;
}

function tokensOf({ text: words, signs }: CautionSaid): readonly Omit<Token, 'x'>[] {
  const meaning: Meaning = { is: 'text' };
  return words
    .split(' ')
    .filter((word) => word !== '')
    .map((word, i) => ({ word, signs: i === 0 ? signs : [], meaning }));
}

const signsWide = ({ length }: readonly SignShown[], { sign, between, after }: Way): number =>
  length === 0 ? 0 : length * (sign + between) - between + after;

/** Words of one caution that stand side by side are one text, its signs one picture. */
function lineItems(paper: Paper, line: readonly Token[], top: number, way: Way): readonly Item[] {
  const { sign, between, style } = way;
  const how = { advances: paper.advances, font: style.font, size: style.size, ink: style.ink };
  const baseline = top + STYLE.size * FIRST_BASELINE;
  const left = (x: number): number => paper.page.left + x;
  return [...new Set(line.map(({ meaning }) => meaning))].flatMap((meaning) => {
    const own = line.filter((token) => token.meaning === meaning);
    const { x, signs } = own[0] ?? { x: 0, signs: [] };
    const words = own.map(({ word }) => word).join(' ');
    const drawn = signs.flatMap(({ id }, i) => drawSign(id, left(x + i * (sign + between)), baseline + BELOW - sign, sign));
    return [
      ...figure(drawn, signs.map(({ name }) => name).join(' · ')),
      { ...text(how, words, left(x + signsWide(signs, way)), baseline, 'left'), within: [meaning] },
    ];
  });
}
