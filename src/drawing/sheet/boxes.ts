/** Boxes to fill in the order in which they are measured, and the sum that they give. */
import type { Section } from '../../model/sheet.ts';
import { rect } from '../display.ts';
import { type Block, inRows, paragraph, stack } from './blocks.ts';
import { writeBox } from './frame.ts';
import { FIELDS, fieldRow } from './steps.ts';
import { GAP, type Paper, RULE, STYLES } from './type.ts';

/** mm; `label`: the share of the page that its words have. */
const BOX = { label: 0.587, width: 34, height: 7, indent: 7 } as const;

export function boxBlocks(paper: Paper, { boxes, sum }: Section & { readonly kind: 'boxes' }): readonly Block[] {
  const labels = boxes.map((box) => box.label);
  if (boxes.every((box) => box.letter === '')) return inRows(labels, FIELDS).map((row) => fieldRow(paper, row));
  return [...boxes.map((box) => boxLine(paper, box)), ...(sum === '' ? [] : [sumBlock(paper, sum)])];
}

function sumBlock(paper: Paper, sum: string): Block {
  const { left, wide } = paper.page;
  const words = paragraph(paper, STYLES.strong, sum, { x: left + GAP.small, top: GAP.row, width: wide - 2 * GAP.small });
  const height = words.height + 2 * GAP.row;
  return { height, items: [rect(left, 0, wide, height, { stroke: { ink: 'black', width: RULE.heavy } }), ...words.items] };
}

function boxLine(paper: Paper, box: { readonly letter: string; readonly label: string; readonly hint: string }): Block {
  const { left, wide } = paper.page;
  const x = left + (box.letter === '' ? 0 : BOX.indent);
  const [down, label] = [GAP.small, BOX.label * wide];
  const after = label + BOX.width + GAP.column;
  const words = stack(down, 0, [(top) => paragraph(paper, STYLES.body, box.label, { x, top, width: label - BOX.indent })]);
  const letter = paragraph(paper, STYLES.strong, box.letter, { x: left, top: down, width: BOX.indent });
  const hint = paragraph(paper, STYLES.small, box.hint, { x: left + after, top: down, width: wide - after });
  const height = Math.max(words.height, hint.height, BOX.height) + GAP.row;
  return { height, items: [...letter.items, ...words.items, ...hint.items, writeBox(left + label, 0, BOX.width, BOX.height)] };
}
