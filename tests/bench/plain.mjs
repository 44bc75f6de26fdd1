/**
 * What anybody would write to fill as many pages with pdfkit: no planning, no layout, no proof, no tags. The yardstick for run.mjs.
 * node plain.mjs OUT.pdf DENSITY.json: { blocks, labels: a list a page of { text, font, size, x, y, width } in points, paths, points: means
 * a page and a path }. Blocks (paragraphs and cells) are wrapped by pdfkit, labels in pictures stand in one line. It prints how many lines
 * a block came to.
 */
import { createWriteStream, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import PDFDocument from 'pdfkit';

const [out, density] = process.argv.slice(2);
const { blocks, labels, paths, points } = JSON.parse(readFileSync(density, 'utf8'));
const file = (name) => fileURLToPath(new URL(`../../templates/fonts/${name}.ttf`, import.meta.url));
const FONTS = {
  text: 'IBMPlexSans-Regular',
  'text-bold': 'IBMPlexSans-SemiBold',
  narrow: 'IBMPlexSansCondensed-Medium',
  'narrow-bold': 'IBMPlexSansCondensed-SemiBold',
};

const document = new PDFDocument({ size: 'A4', margin: 0, font: null, autoFirstPage: false });
document.pipe(createWriteStream(out));
for (const [name, font] of Object.entries(FONTS)) document.registerFont(name, file(font));
let [lines, pages] = [0, 0];
document.on('pageAdded', () => pages++);
for (const [page, onPage] of blocks.entries()) {
  document.addPage();
  for (const { text, font, size, x, y, width } of onPage) {
    document.font(font).fontSize(size).text(text, x, y, { width });
    lines += Math.round((document.y - y) / document.currentLineHeight(true));
  }
  for (const { text, font, size, x, y } of labels[page]) document.font(font).fontSize(size).text(text, x, y, { lineBreak: false });
  for (let i = 0; i < paths; i++) {
    document.moveTo(40 + (i % 20) * 25, 60 + i);
    for (let k = 1; k < points; k++) document.lineTo(40 + (i % 20) * 25 + k * 3, 60 + i + (k % 2) * 4);
    document.lineWidth(0.5).stroke();
  }
}
document.end();
if (pages !== blocks.length) throw new Error(`${pages} pages instead of ${blocks.length}`);
console.log((lines / blocks.flat().length).toFixed(2));
