/** Strips to cut out and put in order: in two columns, framed by dashes, each with its letter; larger where the sheet has room for it. */
import type { Item } from '../../model/display.ts';
import type { Section, StripToSort } from '../../model/sheet.ts';
import { enlarged, line, moved } from '../display.ts';
import { textWidth } from '../measure.ts';
import { type Block, beside, inRows, type Place, paragraph, stack } from './blocks.ts';
import type { Piece } from './filling.ts';
import { GAP, type Paper, STYLES, type Style } from './type.ts';

/** mm */
const PAD = 1.6;
const LETTER = 8;
const ACROSS = 2;
const CUT = { ink: 'mid', width: 0.25, dash: [2, 1.2] } as const;
/** How much larger their letters may be, the largest first; and how much higher than these need a strip may be. */
const LARGER = [1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1] as const;
const HIGHER = 1.15;

type Strips = Section & { readonly kind: 'strips' };
type Faces = { readonly faces: readonly Face[]; readonly times: number; readonly height: number };
/** `under`: what stands at its lower edge. */
type Face = { readonly upper: Block; readonly under: Block };

/** A row of them a piece, each as high as the highest of all, so that none is told by its shape. */
export function stripPieces(paper: Paper, section: Strips, above: Block): readonly Piece[] {
  const ways = LARGER.map((times) => facesOf(paper, section, times));
  const usual = ways.at(-1)?.height ?? 0;
  return inRows(section.strips, ACROSS).map((row, i) => ({
    above,
    block: rowOf(paper, ways.at(-1), row.length, i, usual),
    fuller: (more) => {
      const way = ways.find(({ height }) => height <= usual + more) ?? ways.at(-1);
      return rowOf(paper, way, row.length, i, Math.min(usual + more, HIGHER * (way?.height ?? usual)));
    },
  }));
}

function facesOf(paper: Paper, { strips }: Strips, times: number): Faces {
  const width = widthOf(paper) / times;
  const faces = strips.map((strip) => face(paper, strip, width));
  return { faces, times, height: times * Math.max(0, ...faces.map(({ upper, under }) => upper.height + under.height + 2 * PAD)) };
}

const widthOf = ({ page }: Paper): number => page.wide / ACROSS;

function rowOf(paper: Paper, way: Faces | undefined, count: number, row: number, height: number): Block {
  const width = widthOf(paper);
  const faces = way?.faces.slice(row * ACROSS, row * ACROSS + count) ?? [];
  const items = faces.flatMap(({ upper, under }, i): readonly Item[] => {
    const x = paper.page.left + i * width;
    const times = way?.times ?? 1;
    const lowest = moved(under.items, 0, height / times - PAD - under.height);
    return [...cuts(x, width, height), ...moved(enlarged([...upper.items, ...lowest], times), x, 0)];
  });
  return { height, items };
}

/** Round a strip, all from the left and from the top, so that the dashes of neighbours lie upon each other. */
function cuts(x: number, width: number, height: number): readonly Item[] {
  const [right, bottom] = [x + width, height];
  return [line(x, 0, right, 0, CUT), line(x, bottom, right, bottom, CUT), line(x, 0, x, bottom, CUT), line(right, 0, right, bottom, CUT)];
}

function face(paper: Paper, strip: StripToSort, wide: number): Face {
  const place = { x: PAD + LETTER, width: wide - 2 * PAD - LETTER };
  const mark = paragraph(paper, STYLES.section, strip.letter, { x: PAD, top: PAD, width: LETTER });
  const words = stack(PAD, 0, [
    (top) => headOf(paper, strip, { ...place, top }),
    (top) => paragraph(paper, STYLES.rowNote, strip.note, { ...place, top }),
  ]);
  return { upper: { height: words.height, items: [...mark.items, ...words.items] }, under: underOf(paper, strip, { ...place, top: 0 }) };
}

/** What is done, and the size at the right end of that line where both have room. */
function headOf(paper: Paper, { title, size }: StripToSort, place: Place): Block {
  return atBothEnds(paper, place, { style: STYLES.strong, text: title }, { style: STYLES.second, text: size });
}

/** In which hold, and of which part. */
function underOf(paper: Paper, { hold, part }: StripToSort, place: Place): Block {
  const top = place.top + GAP.small;
  const under = atBothEnds(paper, { ...place, top }, { style: STYLES.small, text: hold }, { style: STYLES.label, text: part });
  return { height: under.height + GAP.small, items: under.items };
}

type Said = { readonly style: Style; readonly text: string };

/** On one line where both have room, else one under the other. */
function atBothEnds(paper: Paper, place: Place, left: Said, right: Said): Block {
  const wide = ({ style, text }: Said): number => textWidth(paper.advances, style.font, style.size, text);
  const said = paragraph(paper, left.style, left.text, place);
  return wide(left) + GAP.column + wide(right) <= place.width
    ? beside([said, paragraph(paper, right.style, right.text, place, 'right')])
    : stack(place.top, 0, [() => said, (top) => paragraph(paper, right.style, right.text, { ...place, top })]);
}
