/** A Document as a PDF. It transcribes: nothing is measured, moved or laid out here. Millimetres and y downward, as in the Document. */
import type { FontFiles } from '../model/assets.ts';
import type { Document, Font, Ink, Item, Page, PathItem, Segment, TextItem } from '../model/display.ts';
import { INKS } from './inks.ts';
import { type OpenFont, openPdf, type Pdf } from './pdf-adapter.ts';

/** Fonts are opened in this order, so that the same document gives the same bytes. */
const FONT_ORDER: readonly Font[] = ['text', 'text-bold', 'narrow', 'narrow-bold'];
/** Points in a millimetre: 72 to the inch of 25.4. */
const POINTS = 72 / 25.4;
/** A constant: a sheet carries its plan's mark, not the hour at which it was printed. */
const DATE = new Date('2000-01-01T00:00:00Z');
const PRODUCER = 'valvewright';
const END_MARK = '%%EOF';
const PLACES = 5;

/**
 * The file's bytes: the same for the same document and fonts, in any time zone, folder or locale.
 * Throws Error when a font lacks a sign that is used (named, before anything is drawn), and when the file came out cut short.
 * `compress: 'no'` leaves the page streams readable, for tests.
 */
export async function writePdf(document: Document, fonts: FontFiles, compress: 'yes' | 'no' = 'yes'): Promise<Uint8Array> {
  const { title, language, mark: keywords } = document;
  const pdf = await openPdf({ title, keywords, language, producer: PRODUCER, date: DATE }, compress);
  const opened = openFonts(pdf, document, fonts);
  demandGlyphs(document, opened);
  let heading = '';
  for (const page of document.pages) {
    pdf.addPage(page.width * POINTS, page.height * POINTS);
    if (page.heading !== heading) pdf.mark(page.heading);
    heading = page.heading;
    pdf.write(pageContent(page, opened));
  }
  pdf.labelPages(document.pages.map((page) => page.label));
  return whole(await pdf.finish());
}

type Opened = ReadonlyMap<Font, OpenFont>;

function openFonts(pdf: Pdf, document: Document, fonts: FontFiles): Opened {
  const used = new Set(document.pages.flatMap((page) => page.items.filter((item) => item.kind === 'text').map((item) => item.font)));
  return new Map(FONT_ORDER.filter((font) => used.has(font)).map((font) => [font, pdf.openFont(font, fonts[font])]));
}

function demandGlyphs(document: Document, opened: Opened): void {
  const lacking = document.pages.flatMap((page) =>
    page.items.flatMap((item) =>
      item.kind === 'text'
        ? fontOf(opened, item.font)
            .missing(item.text)
            .map((sign) => `${sign} (${item.font})`)
        : [],
    ),
  );
  if (lacking.length > 0) throw new Error(`the fonts lack these signs: ${[...new Set(lacking)].join(', ')}`);
}

function fontOf(opened: Opened, font: Font): OpenFont {
  const found = opened.get(font);
  if (!found) throw new Error(`font '${font}' was not opened`);
  return found;
}

function pageContent(page: Page, opened: Opened): string {
  for (const font of opened.values()) font.use();
  const scale = number(POINTS);
  return [`${scale} 0 0 ${scale} 0 0 cm`, '0 J 0 j', ...page.items.map((item) => itemContent(item, opened))].join('\n');
}

function itemContent(item: Item, opened: Opened): string {
  return item.kind === 'text' ? textContent(item, fontOf(opened, item.font)) : pathContent(item);
}

/** The page counts y downward, letters stand upward: the text's own matrix turns them over, and by `turn`. */
function textContent(item: TextItem, font: OpenFont): string {
  if (item.text === '') return '';
  const turn = ((item.turn ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const matrix = [cos, -sin, -sin, -cos, item.x, item.y].map(number).join(' ');
  return `${colour(item.ink)} rg BT /${font.name} ${number(item.size)} Tf ${matrix} Tm <${font.encode(item.text)}> Tj ET`;
}

function pathContent(item: PathItem): string {
  const { stroke, fill } = item;
  const path = item.segments.map(segmentContent).join(' ');
  const lines: string[] = [];
  if (fill) lines.push(`${colour(fill)} rg`);
  if (stroke) lines.push(`${colour(stroke.ink)} RG ${number(stroke.width)} w [${(stroke.dash ?? []).map(number).join(' ')}] 0 d`);
  if (!stroke && !fill) return '';
  return [...lines, `${path} ${fill && stroke ? 'B' : fill ? 'f' : 'S'}`].join(' ');
}

function segmentContent(segment: Segment): string {
  if (segment.to === 'close') return 'h';
  const end = `${number(segment.x)} ${number(segment.y)}`;
  if (segment.to === 'move') return `${end} m`;
  if (segment.to === 'line') return `${end} l`;
  return `${number(segment.x1)} ${number(segment.y1)} ${number(segment.x2)} ${number(segment.y2)} ${end} c`;
}

/** Device RGB, taken as sRGB: the inks are. */
function colour(ink: Ink): string {
  const value = Number.parseInt(INKS[ink].slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((part) => number(part / 255)).join(' ');
}

/** No exponent, no -0, no more places than paper shows. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`not a number on paper: ${value}`);
  const text = value.toFixed(PLACES).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

function whole(bytes: Uint8Array): Uint8Array {
  const tail = new TextDecoder('latin1').decode(bytes.slice(-END_MARK.length - 2));
  if (!tail.includes(END_MARK)) throw new Error('the PDF was cut short: no end mark');
  return bytes;
}
