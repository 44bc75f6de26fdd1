/**
 * What anybody would write to fill as many pages with pdfkit: no planning, no layout, no proof. The yardstick for run.mjs.
 * node plain.mjs OUT.pdf '{"pages":…,"texts":…,"letters":…,"paths":…,"points":…}': per page so many texts of so many letters, and so many
 * paths of so many points.
 */
import { createWriteStream } from 'node:fs';
import { fileURLToPath } from 'node:url';
import PDFDocument from 'pdfkit';

const [out, density] = process.argv.slice(2);
const { pages, texts, letters, paths, points } = JSON.parse(density);
const font = (name) => fileURLToPath(new URL(`../../templates/fonts/${name}`, import.meta.url));
const FONTS = ['IBMPlexSans-Regular', 'IBMPlexSans-SemiBold', 'IBMPlexSansCondensed-Medium', 'IBMPlexSansCondensed-SemiBold'];
const SAYING = 'turn to 11.95 from A, 560 a minute, two cuts, gauge before it leaves the chuck; ';

const document = new PDFDocument({ size: 'A4', margin: 0, font: null, autoFirstPage: false });
document.pipe(createWriteStream(out));
FONTS.forEach((name) => document.registerFont(name, font(`${name}.ttf`)));
for (let page = 0; page < pages; page++) {
  document.addPage();
  for (let i = 0; i < texts; i++) {
    const from = (i * 7) % SAYING.length;
    document.font(FONTS[i % FONTS.length]).fontSize(7 + (i % 4)).text((SAYING + SAYING).slice(from, from + letters), 40 + (i % 3) * 170, 40 + (i * 760) / texts, { lineBreak: false });
  }
  for (let i = 0; i < paths; i++) {
    document.moveTo(40 + (i % 20) * 25, 60 + i);
    for (let k = 1; k < points; k++) document.lineTo(40 + (i % 20) * 25 + k * 3, 60 + i + (k % 2) * 4);
    document.lineWidth(0.5).stroke();
  }
}
document.end();
