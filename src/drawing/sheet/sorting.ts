/** Strips to cut out and put in order: in two columns, framed by dashes, each with its letter. */
import type { Item } from '../../model/display.ts';
import type { Section, StripToSort } from '../../model/sheet.ts';
import { line, moved } from '../display.ts';
import { type Block, paragraph, stack } from './blocks.ts';
import { GAP, type Paper, STYLES } from './type.ts';

/** mm */
const PAD = 2.2;
const LETTER = 9;
const ACROSS = 2;
const CUT = { ink: 'mid', width: 0.25, dash: [2, 1.2] } as const;
const widthOf = ({ page }: Paper): number => page.wide / ACROSS;

/** A row of them a block, each as high as the highest of all, so that none is told by its shape. */
export function stripRows(paper: Paper, section: Section & { readonly kind: 'strips' }): readonly Block[] {
  const width = widthOf(paper);
  const faces = section.strips.map((strip) => face(paper, strip));
  const height = Math.max(0, ...faces.map((block) => block.height)) + PAD;
  const cells = faces.map(({ items }, i): readonly Item[] => {
    const x = paper.page.left + (i % ACROSS) * width;
    return [...cuts(x, width, height), ...moved(items, x, 0)];
  });
  return cells.flatMap((cell, i) => (i % ACROSS === 0 ? [{ height, items: [...cell, ...(cells[i + 1] ?? [])] }] : []));
}

/** Round a strip, all from the left and from the top, so that the dashes of neighbours lie upon each other. */
function cuts(x: number, width: number, height: number): readonly Item[] {
  const [right, bottom] = [x + width, height];
  return [line(x, 0, right, 0, CUT), line(x, bottom, right, bottom, CUT), line(x, 0, x, bottom, CUT), line(right, 0, right, bottom, CUT)];
}

function face(paper: Paper, { letter, title, note, size, hold }: StripToSort): Block {
  const place = { x: PAD + LETTER, width: widthOf(paper) - 2 * PAD - LETTER };
  const words = stack(PAD, 0, [
    (top) => paragraph(paper, STYLES.strong, title, { ...place, top }),
    (top) => paragraph(paper, STYLES.second, size, { ...place, top }),
    (top) => paragraph(paper, STYLES.rowNote, note, { ...place, top }),
    (top) => paragraph(paper, STYLES.small, hold, { ...place, top: top + GAP.small / 2 }),
  ]);
  const mark = paragraph(paper, STYLES.section, letter, { x: PAD, top: PAD, width: LETTER });
  return { height: words.height + PAD, items: [...mark.items, ...words.items] };
}
