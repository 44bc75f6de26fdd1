/** How much stands on a document's pages, for plain.mjs: its own texts, block by block, and the means of its paths. */

/** Points in a millimetre. */
const POINTS = 72 / 25.4;
/** Points: pdfkit kerns, so its lines are not ours to a hair. */
const SLACK = 2;

/** `document`: as laid out (model/display.ts). Lines that say the same paragraph, cell or heading are one block. */
export function densityOf({ pages }) {
  const all = pages.flatMap((page) => page.items);
  const paths = all.filter((item) => item.kind === 'path');
  const mean = (total, count) => Math.max(1, Math.round(total / Math.max(1, count)));
  return {
    blocks: pages.map(blocksOf),
    labels: pages.map((page) => page.items.filter((item) => item.kind === 'text' && isLabel(item)).map((item) => blockOf([item]))),
    paths: mean(paths.length, pages.length),
    points: mean(
      paths.reduce((sum, path) => sum + path.segments.length, 0),
      paths.length,
    ),
  };
}

/** One line that tells it. `lines`: a block, as pdfkit wrapped them. */
export function toldOf({ blocks, labels, paths, points }, lines) {
  const [wrapped, single] = [blocks.flat(), labels.flat()];
  const letters = [...wrapped, ...single].reduce((sum, { text }) => sum + text.length, 0);
  const each = (count) => Math.round(count / blocks.length);
  return `${blocks.length} pages; on each ${each(wrapped.length)} blocks that wrap to ${lines} lines, ${each(single.length)} labels, ${each(letters)} letters in all, ${paths} paths of ${points} points`;
}

const isLabel = ({ within = [] }) => within.length === 0 || within.at(-1).is === 'figure';

function blocksOf({ items }) {
  const lines = new Map();
  for (const item of items) {
    if (item.kind !== 'text' || item.text === '' || isLabel(item)) continue;
    const leaf = item.within.findLast((meaning) => meaning.is !== 'link') ?? item.within.at(-1);
    lines.set(leaf, [...(lines.get(leaf) ?? []), item]);
  }
  return [...lines.values()].map(blockOf);
}

function blockOf(lines) {
  const [{ font, size, y }] = lines;
  const x = Math.min(...lines.map((line) => line.x));
  const right = Math.max(...lines.map((line) => line.x + line.width));
  return {
    ...{ text: lines.map((line) => line.text).join(' '), font, size: size * POINTS },
    ...{ x: x * POINTS, y: (y - size) * POINTS, width: (right - x) * POINTS + SLACK },
  };
}
