/** A step of assembly or test: number, what to do, what to do when it fails, boxes for what is measured there, a box to tick. */
import type { Meaning } from '../../model/meaning.ts';
import type { StepShown } from '../../model/sheet.ts';
import { tickBox } from '../display.ts';
import { type Block, beside, paragraph, stack } from './blocks.ts';
import { rule, writeBox } from './frame.ts';
import { as, tick, within } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

/** Boxes to write in, side by side. */
export const FIELDS = 4;
const BOX_HEIGHT = 7;
const INDENT = 7;
const TICK = 4.2;

/** `steps`: the list that it stands in; `name`: of its box to tick. */
export function stepBlock(paper: Paper, step: StepShown, n: number, steps: Meaning, name: string): Block {
  const place = { x: paper.page.left + INDENT, width: paper.page.wide - 2 * INDENT };
  const words = stack(GAP.small, 0, [
    (top) => paragraph(paper, { ...STYLES.body, font: 'text-bold' }, step.title, { ...place, top }),
    (top) => paragraph(paper, STYLES.body, step.text, { ...place, top }),
    (top) => paragraph(paper, STYLES.rowNote, step.otherwise, { ...place, top }),
    (top) => fieldRow(paper, step.boxes, top + GAP.small, INDENT),
  ]);
  const number = paragraph(paper, STYLES.second, String(n), { x: paper.page.left, top: GAP.small, width: INDENT });
  const height = Math.max(words.height, TICK) + 2 * GAP.small + (step.boxes.length > 0 ? GAP.small : 0);
  const box = tick(tickBox(paper.page.right - TICK, GAP.small, TICK, 'open'), name, step.title === '' ? step.text : step.title);
  const said = within({ height, items: [...words.items, ...box] }, { is: 'said' });
  const entry = within({ height, items: [...as(number, { is: 'number' }).items, ...said.items] }, { is: 'entry' });
  return { height, items: [...within(entry, steps).items, rule(paper, height, 'thin')] };
}

/** A label over each box. */
export function fieldRow(paper: Paper, labels: readonly string[], top = 0, indent = 0): Block {
  if (labels.length === 0) return { height: 0, items: [] };
  const width = (paper.page.wide - 2 * indent - (FIELDS - 1) * GAP.column) / FIELDS;
  const blocks = labels.map((label, i) =>
    paragraph(paper, STYLES.label, label, { x: paper.page.left + indent + i * (width + GAP.column), top, width }),
  );
  const all = beside(blocks);
  const boxes = labels.map((_, i) => writeBox(paper.page.left + indent + i * (width + GAP.column), top + all.height, width, BOX_HEIGHT));
  return { height: all.height + BOX_HEIGHT + GAP.small, items: [...all.items, ...boxes] };
}
