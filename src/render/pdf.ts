/** A Document as a PDF. It transcribes: nothing is measured, moved or laid out here. Millimetres and y downward, as in the Document. */
import type { FontFiles } from '../model/assets.ts';
import type { Document, Font, Page } from '../model/display.ts';
import { openPdf, type Packing, type Pdf } from './pdf-adapter.ts';
import { writeAnnotations } from './pdf-annotations.ts';
import { attach } from './pdf-attached.ts';
import { asOne, fontOf, type Opened, pageContent, picturesIn } from './pdf-content.ts';
import { hatchForms } from './pdf-hatch.ts';
import { sharedPictures, sharedShapes } from './pdf-shapes.ts';
import { type WrittenPage, writeStructure } from './pdf-structure.ts';
import { type Rect, type TaggedPage, tagPage } from './pdf-tags.ts';
import { array, dictionary, number, ref, string } from './pdf-write.ts';
import { srgbProfile } from './srgb.ts';
import { xmp } from './xmp.ts';

/** Fonts are opened in this order, so that the same document gives the same bytes. */
const FONT_ORDER: readonly Font[] = ['text', 'text-bold', 'narrow', 'narrow-bold'];
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
 * `packing: 'no'` leaves the page streams readable, for tests; who has a better way to pack than most brings it.
 */
export async function writePdf(document: Document, fonts: FontFiles, packing: Packing = 'yes'): Promise<Uint8Array> {
  const { title, language, mark: keywords } = document;
  const facts = { title, keywords, language, producer: PRODUCER, date: DATE };
  const pdf = await openPdf(facts, packing);
  const opened = openFonts(pdf, document, fonts);
  demandGlyphs(document, opened);
  const tagged = document.pages.map(tagPage);
  const means = { opened, forms: hatchForms(pdf), shapes: sharedShapes(pdf, tagged), points: POINTS };
  const contents = tagged.map((page) => pageContent(page, means));
  const shown = sharedPictures(pdf, contents.flatMap(picturesIn));
  const pages = tagged.map((page, i) => writePage(pdf, i, document, page, asOne(contents[i] ?? [], shown)));
  writeStructure(pdf, pages);
  writeAnnotations(pdf, pages, POINTS);
  attach(pdf, document.attached ?? [], PDF_DATE);
  claim(pdf, document, xmp(facts));
  return whole(await pdf.finish());
}

function writePage(pdf: Pdf, i: number, { pages }: Document, tagged: TaggedPage, content: string): WrittenPage {
  const page = pages[i];
  if (!page) throw new Error('a page of tags has no page');
  pdf.addPage(page.width * POINTS, page.height * POINTS);
  if (page.heading !== (pages[i - 1]?.heading ?? '')) pdf.mark(page.heading);
  pdf.write(content);
  const annotations = tagged.spots.map(() => pdf.reserve());
  pdf.tagPage(i, annotations);
  const place = (rect: Rect): string => array(pointsOf(rect, page).map(number));
  const around = (rect: Rect): string => array(pointsOf(rect, page).map((at, edge) => number(edge < 2 ? Math.floor(at) : Math.ceil(at))));
  return { page: pdf.page(), tagged, annotations, place, around };
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
function pointsOf({ x, y, w, h }: Rect, page: Page): readonly number[] {
  return [x, page.height - y - h, x + w, page.height - y].map((mm) => mm * POINTS);
}

function openFonts(pdf: Pdf, document: Document, fonts: FontFiles): Opened {
  const used = new Set(document.pages.flatMap((page) => page.items.filter((item) => item.kind === 'text').map((item) => item.font)));
  return new Map(FONT_ORDER.filter((font) => used.has(font)).map((font) => [font, pdf.openFont(font, fonts[font])]));
}

function demandGlyphs(document: Document, opened: Opened): void {
  const texts = new Map([...opened.keys()].map((font) => [font, new Set<string>()]));
  for (const { items } of document.pages) for (const item of items) if (item.kind === 'text') texts.get(item.font)?.add(item.text);
  const lacking = [...texts].flatMap(([font, used]) =>
    fontOf(opened, font)
      .missing(used)
      .map((sign) => `${sign} (${font})`),
  );
  if (lacking.length > 0) throw new Error(`the fonts lack these signs: ${lacking.join(', ')}`);
}

function whole(bytes: Uint8Array): Uint8Array {
  const tail = new TextDecoder('latin1').decode(bytes.slice(-END_MARK.length - 2));
  if (!tail.includes(END_MARK)) throw new Error('the PDF was cut short: no end mark');
  return bytes;
}
