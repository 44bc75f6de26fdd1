/** Display lists as SVG, one drawing a page or picture. It transcribes: nothing is measured, moved or laid out here. */
import type { Document, Item, Page, PathItem, Picture, Segment, TextItem } from '../model/display.ts';
import { FACES, INKS } from './inks.ts';

/** One SVG a page, in the order of the pages. */
export function svgOfDocument(document: Document): readonly string[] {
  return document.pages.map((page) => svgOfPage(page, document.language));
}

export function svgOfPage(page: Page, language: string): string {
  return svg(page.width, page.height, page.heading, page.items, ` lang="${escapeXml(language)}"`);
}

/** A picture alone; its `alt` is the title that a reader hears. */
export function svgOfPicture(picture: Picture): string {
  return svg(picture.width, picture.height, picture.alt, picture.items, '');
}

function svg(width: number, height: number, title: string, items: readonly Item[], attributes: string): string {
  const [w, h] = [number(width), number(height)];
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" role="img"${attributes}>`;
  // advances are measured without kerning and ligatures, so they are switched off
  const style = '<g stroke-linejoin="miter" stroke-linecap="butt" style="font-kerning:none;font-variant-ligatures:none;white-space:pre">';
  return `${head}\n<title>${escapeXml(title)}</title>\n${style}\n${items.map(itemOf).join('\n')}\n</g>\n</svg>\n`;
}

function itemOf(item: Item): string {
  return item.kind === 'text' ? textOf(item) : pathOf(item);
}

function pathOf(item: PathItem): string {
  const d = item.segments.map(segmentOf).join('');
  const fill = item.fill ? INKS[item.fill] : 'none';
  return `<path d="${d}" fill="${fill}"${strokeOf(item.stroke)}/>`;
}

function strokeOf(stroke: PathItem['stroke']): string {
  if (!stroke) return '';
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(number).join(' ')}"` : '';
  return ` stroke="${INKS[stroke.ink]}" stroke-width="${number(stroke.width)}"${dash}`;
}

function segmentOf(s: Segment): string {
  if (s.to === 'close') return 'Z';
  if (s.to === 'move') return `M${number(s.x)} ${number(s.y)}`;
  if (s.to === 'line') return `L${number(s.x)} ${number(s.y)}`;
  return `C${[s.x1, s.y1, s.x2, s.y2, s.x, s.y].map(number).join(' ')}`;
}

function textOf(item: TextItem): string {
  const face = FACES[item.font];
  const turn = item.turn ? ` transform="rotate(${number(-item.turn)} ${number(item.x)} ${number(item.y)})"` : '';
  const font = `font-family="${face.family}" font-weight="${face.weight}" font-size="${number(item.size)}"`;
  return `<text x="${number(item.x)}" y="${number(item.y)}" ${font} fill="${INKS[item.ink]}"${turn}>${escapeXml(item.text)}</text>`;
}

/** At most four decimals, no exponent, no -0. */
function number(n: number): string {
  const rounded = Math.round(n * 10000) / 10000;
  return String(rounded === 0 ? 0 : rounded);
}

export function escapeXml(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
