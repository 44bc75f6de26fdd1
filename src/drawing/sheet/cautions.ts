/** Cautions on paper: each on its panel, its safety signs before its words. */
import type { CautionShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import { textWidth } from '../measure.ts';
import { type Block, EMPTY, paragraph, stack } from './blocks.ts';
import { panel } from './frame.ts';
import { figure } from './meant.ts';
import { drawSign } from './signs.ts';
import { GAP, type Paper, STYLES } from './type.ts';

/** mm */
const SIGN = { size: 9, gap: 1.4 } as const;
const TITLE = { ...STYLES.body, font: 'text-bold' } as const;

export function cautionBlocks(paper: Paper, cautions: readonly CautionShown[]): readonly Block[] {
  const most = Math.max(0, ...cautions.map((caution) => caution.signs.length));
  return cautions.map((caution) => cautionBlock(paper, caution, most));
}

/** `most`: signs that any caution of the list carries, so that all words begin at one edge. */
function cautionBlock(paper: Paper, { title, text, signs }: CautionShown, most: number): Block {
  const x = paper.page.left + most * (SIGN.size + SIGN.gap) + (most > 0 ? GAP.small : 0);
  const place = { x, width: paper.page.right - x };
  const words = stack(GAP.small, 0, [
    (top) => titleLine(paper, title, signs.map((sign) => sign.name).join(' · '), { ...place, top }),
    (top) => paragraph(paper, STYLES.body, text, { ...place, top }),
  ]);
  const inner = Math.max(words.height, signs.length > 0 ? SIGN.size : 0);
  const height = inner + 2 * GAP.small;
  const down = GAP.small + Math.max(0, (words.height - SIGN.size) / 2);
  const drawn = signs.flatMap(({ id, name }, i) =>
    figure(drawSign(id, paper.page.left + (most - signs.length + i) * (SIGN.size + SIGN.gap), down, SIGN.size), name),
  );
  return { height: height + GAP.small, items: [panel(paper, 0, height), ...drawn, ...moved(words.items, 0, (inner - words.height) / 2)] };
}

/** What it is about, and after it the names of its signs. */
function titleLine(
  paper: Paper,
  title: string,
  names: string,
  place: { readonly x: number; readonly top: number; readonly width: number },
): Block {
  if (title === '') return EMPTY;
  const words = paragraph(paper, TITLE, title, place);
  const x = place.x + textWidth(paper.advances, TITLE.font, TITLE.size, title) + GAP.column;
  const small = paragraph(paper, STYLES.label, names, {
    x,
    top: place.top + TITLE.size - STYLES.label.size,
    width: place.x + place.width - x,
  });
  return { height: words.height, items: [...words.items, ...small.items] };
}
