/** A Document as a PDF. It transcribes: nothing is measured, moved or laid out here. Millimetres and y downward, as in the Document. */
import type { FontFiles } from '../model/assets.ts';
import type { Document, Font, Ink, Item, Page, PathItem, Segment, TextItem } from '../model/display.ts';
import { INKS } from './inks.ts';
import { type OpenFont, openPdf, type Pdf } from './pdf-adapter.ts';
import { writeAnnotations } from './pdf-annotations.ts';
import { attach } from './pdf-attached.ts';
import { type WrittenPage, writeStructure } from './pdf-structure.ts';
import { type Rect, type TaggedPage, tagPage } from './pdf-tags.ts';
import { array, dictionary, factor, number, ref, string } from './pdf-write.ts';
import { srgbProfile } from './srgb.ts';
import { xmp } from './xmp.ts';

/** Fonts are opened in this order, so that the same document gives the same bytes. */
const FONT_ORDER: readonly Font[] = ['text', 'text-bold', 'narrow', 'narrow-bold'];
/** Device RGB, taken as sRGB: the inks are. */
const COLOURS = Object.fromEntries(Object.entries(INKS).map(([ink, sRgb]) => [ink, colour(sRgb)])) as Readonly<Record<Ink, string>>;
/** Points in a millimetre: 72 to the inch of 25.4. */
const POINTS = 72 / 25.4;
/** A constant: a sheet carries its plan's mark, not the hour at which it was printed. */
const DATE = new Date('2000-01-01T00:00:00Z');
const PDF_DATE = '(D:20000101000000Z)';
const PRODUCER = 'valvewright';
const END_MARK = '%%EOF';

/**
 * The file's bytes: the same for the same document and fonts, in any time zone, folder or locale.
 * Throws Error when a font lacks a sign that is used (named, before anything is drawn), and when the file came out cut short.
 * `compress: 'no'` leaves the page streams readable, for tests.
 */
export async function writePdf(document: Document, fonts: FontFiles, compress: 'yes' | 'no' = 'yes'): Promise<Uint8Array> {
  const { title, language, mark: keywords } = document;
  const facts = { title, keywords, language, producer: PRODUCER, date: DATE };
  const pdf = await openPdf(facts, compress);
  const opened = openFonts(pdf, document, fonts);
  demandGlyphs(document, opened);
  let heading = '';
  const pages: WrittenPage[] = [];
  for (const page of document.pages) {
    pdf.addPage(page.width * POINTS, page.height * POINTS);
    if (page.heading !== heading) pdf.mark(page.heading);
    heading = page.heading;
    const tagged = tagPage(page);
    pdf.write(pageContent(tagged, opened));
    const annotations = tagged.spots.map(() => pdf.reserve());
    pdf.tagPage(pages.length, annotations);
    pages.push({ page: pdf.page(), tagged, annotations, place: (rect) => pointsOf(rect, page) });
  }
  writeStructure(pdf, pages);
  writeAnnotations(pdf, pages, POINTS);
  attach(pdf, document.attached ?? [], PDF_DATE);
  claim(pdf, document, xmp(facts));
  return whole(await pdf.finish());
}

/** What the file says of itself: its pages' names, its metadata, and whose red, green and blue it uses. */
function claim(pdf: Pdf, { pages }: Document, metadata: string): void {
  const labels = pages.map((page, i) => `${i} ${dictionary({ P: string(page.label) })}`);
  const profile = pdf.stream({ N: '3' }, srgbProfile());
  const name = string('sRGB IEC61966-2.1');
  const intent = dictionary({
    ...{ Type: '/OutputIntent', S: '/GTS_PDFA1', OutputConditionIdentifier: name, Info: name },
    DestOutputProfile: ref(profile),
  });
  pdf.catalog({
    PageLabels: dictionary({ Nums: array(labels) }),
    OutputIntents: array([intent]),
    Metadata: ref(pdf.stream({ Type: '/Metadata', Subtype: '/XML' }, new TextEncoder().encode(metadata), 'open')),
  });
}

/** From mm, y downward, to points from the page's foot. */
function pointsOf({ x, y, w, h }: Rect, page: Page): string {
  return array([x, page.height - y - h, x + w, page.height - y].map((mm) => number(mm * POINTS)));
}

type Opened = ReadonlyMap<Font, OpenFont>;

function openFonts(pdf: Pdf, document: Document, fonts: FontFiles): Opened {
  const used = new Set(document.pages.flatMap((page) => page.items.filter((item) => item.kind === 'text').map((item) => item.font)));
  return new Map(FONT_ORDER.filter((font) => used.has(font)).map((font) => [font, pdf.openFont(font, fonts[font])]));
}

function demandGlyphs(document: Document, opened: Opened): void {
  const signs = new Map([...opened.keys()].map((font) => [font, new Set<string>()]));
  for (const { items } of document.pages)
    for (const item of items) if (item.kind === 'text') for (const sign of item.text) signs.get(item.font)?.add(sign);
  const lacking = [...signs].flatMap(([font, used]) =>
    fontOf(opened, font)
      .missing(used)
      .map((sign) => `${sign} (${font})`),
  );
  if (lacking.length > 0) throw new Error(`the fonts lack these signs: ${lacking.join(', ')}`);
}

function fontOf(opened: Opened, font: Font): OpenFont {
  const found = opened.get(font);
  if (!found) throw new Error(`font '${font}' was not opened`);
  return found;
}

function pageContent({ stretches }: TaggedPage, opened: Opened): string {
  for (const font of opened.values()) font.use();
  const scale = factor(POINTS);
  const set: Set = {};
  const marked = stretches.flatMap(({ open, items }) => [open, ...stretchContent(items, opened, set), 'EMC']);
  return [`${scale} 0 0 ${scale} 0 0 cm`, '0 J 0 j', ...marked].join('\n');
}

/** What the page's last operators left set: said again only where it changes. */
type Set = { fill?: string; stroke?: string; font?: string };

/** Lines of one stroke that follow one another are one path: they are painted alike either way. */
function stretchContent(items: readonly Item[], opened: Opened, set: Set): readonly string[] {
  const lines: string[] = [];
  let open: string | undefined;
  for (const [i, item] of items.entries()) {
    const stroke = item.kind === 'path' && item.stroke && !item.fill ? strokeOf(item.stroke) : undefined;
    if (item.kind === 'path' && stroke !== undefined && stroke === open) {
      lines[lines.length - 1] = `${lines.at(-1)?.slice(0, -STROKED.length)} ${pathOf(item)}${STROKED}`;
      continue;
    }
    open = stroke;
    lines.push(item.kind === 'text' ? textContent(item, fontOf(opened, item.font), items[i + 1], set) : pathContent(item, set));
  }
  return lines;
}
const STROKED = ' S';

function changed(set: Set, what: keyof Set, value: string): readonly string[] {
  if (set[what] === value) return [];
  set[what] = value;
  return [value];
}

/**
 * The page counts y downward, letters stand upward: the text's own matrix turns them over, and by `turn`. Where another text of the same
 * stretch follows there is a blank at the end, unseen, so that who reads them on hears two words and not one.
 */
function textContent(item: TextItem, font: OpenFont, next: Item | undefined, set: Set): string {
  if (item.text === '') return '';
  const turn = ((item.turn ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const matrix = [cos, -sin, -sin, -cos, item.x, item.y].map(number).join(' ');
  const codes = font.encode(next?.kind === 'text' ? `${item.text} ` : item.text);
  const [ink, face] = [changed(set, 'fill', `${COLOURS[item.ink]} rg`), changed(set, 'font', `/${font.name} ${number(item.size)} Tf`)];
  return [...ink, 'BT', ...face, matrix, 'Tm', `<${codes}>`, 'Tj ET'].join(' ');
}

function pathContent(item: PathItem, set: Set): string {
  const { stroke, fill } = item;
  if (!stroke && !fill) return '';
  return [
    ...(fill ? changed(set, 'fill', `${COLOURS[fill]} rg`) : []),
    ...(stroke ? changed(set, 'stroke', strokeOf(stroke)) : []),
    `${pathOf(item)} ${fill && stroke ? 'B' : fill ? 'f' : 'S'}`,
  ].join(' ');
}

const pathOf = (item: PathItem): string => item.segments.map(segmentContent).join(' ');

function strokeOf({ ink, width, dash = [] }: NonNullable<PathItem['stroke']>): string {
  return `${COLOURS[ink]} RG ${number(width)} w [${dash.map(number).join(' ')}] 0 d`;
}

function segmentContent(segment: Segment): string {
  if (segment.to === 'close') return 'h';
  const end = `${number(segment.x)} ${number(segment.y)}`;
  if (segment.to === 'move') return `${end} m`;
  if (segment.to === 'line') return `${end} l`;
  return `${number(segment.x1)} ${number(segment.y1)} ${number(segment.x2)} ${number(segment.y2)} ${end} c`;
}

function colour(sRgb: string): string {
  const value = Number.parseInt(sRgb.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((part) => number(part / 255)).join(' ');
}

function whole(bytes: Uint8Array): Uint8Array {
  const tail = new TextDecoder('latin1').decode(bytes.slice(-END_MARK.length - 2));
  if (!tail.includes(END_MARK)) throw new Error('the PDF was cut short: no end mark');
  return bytes;
}
