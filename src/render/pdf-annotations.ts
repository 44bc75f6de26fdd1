/** Boxes to tick and links, as annotations: each with its words, printed, in its own element, and drawn without a viewer's help. */
import type { Pdf } from './pdf-adapter.ts';
import { annotationKeys, type WrittenPage } from './pdf-structure.ts';
import type { Link, Rect, Tick } from './pdf-tags.ts';
import { array, dictionary, number, ref, string } from './pdf-write.ts';

/** Shown on screen and on paper (flag 3 of ISO 32000-1, table 165): PDF/A asks for it. */
const PRINTED = '4';
const CHECK_MARK = '(4)'; // of ZapfDingbats: what a viewer may call it; it is not drawn with it

/** `points`: how many a mm. Throws Error for a link to a sheet that is not there. */
export function writeAnnotations(pdf: Pdf, pages: readonly WrittenPage[], points: number): void {
  const keys = annotationKeys(pages);
  const names = new Set<string>();
  const looks = new Map<string, Look>();
  const fields: number[] = [];
  for (const [i, page] of pages.entries())
    for (const [n, { spot }] of page.tagged.spots.entries()) {
      const id = page.annotations[n] ?? 0;
      const common = { P: ref(page.page), StructParent: String(keys[i]?.[n] ?? 0), F: PRINTED, Rect: page.place(spot.rect) };
      if (spot.spot === 'link') pdf.pack(id, linkTo(spot, pages, common));
      else {
        fields.push(id);
        pdf.pack(id, boxFor(spot, ownName(spot.name, names), lookOf(pdf, looks, spot.rect, points), common));
      }
    }
  if (fields.length > 0) pdf.catalog({ AcroForm: dictionary({ Fields: array(fields.map(ref)) }) });
}

type Common = Readonly<Record<'P' | 'StructParent' | 'F' | 'Rect', string>>;

function linkTo(link: Link, pages: readonly WrittenPage[], common: Common): string {
  const to = pages[link.sheet - 1];
  if (!to) throw new Error(`a link leads to sheet ${link.sheet}, which is not there`);
  return dictionary({
    ...{ Type: '/Annot', Subtype: '/Link', ...common },
    ...{ Border: '[0 0 0]', Contents: string(link.says), Dest: array([ref(to.page), '/Fit']) },
  });
}

function boxFor(tick: Tick, called: string, look: Look, common: Common): string {
  return dictionary({
    ...{ Type: '/Annot', Subtype: '/Widget', FT: '/Btn', ...common },
    ...{ T: string(called), TU: string(tick.says), V: '/Off', AS: '/Off' },
    MK: dictionary({ CA: CHECK_MARK }),
    AP: dictionary({ N: dictionary({ Yes: ref(look.ticked), Off: ref(look.open) }) }),
  });
}

/** A full stop would part a field's name in two; a name that stands twice is numbered. */
function ownName(asked: string, names: Set<string>): string {
  const plain = asked.replace(/\./g, '_');
  let own = plain;
  for (let n = 2; names.has(own); n++) own = `${plain}#${n}`;
  names.add(own);
  return own;
}

/** What all boxes of one size show, open and ticked. The page itself draws the frame: open is nothing. */
type Look = { readonly ticked: number; readonly open: number };

function lookOf(pdf: Pdf, looks: Map<string, Look>, rect: Rect, points: number): Look {
  const [w, h] = [rect.w * points, rect.h * points];
  const key = `${number(w)} ${number(h)}`;
  const known = looks.get(key);
  if (known) return known;
  const form = { Type: '/XObject', Subtype: '/Form', BBox: `[0 0 ${key}]`, Resources: '<<>>' };
  const at = (x: number, y: number): string => `${number(x * w)} ${number(y * h)}`;
  const stroke = `${number(w / 8)} w 0.1 0.1 0.1 RG 1 J 1 j ${at(0.2, 0.45)} m ${at(0.42, 0.22)} l ${at(0.82, 0.78)} l S`;
  const look = { ticked: pdf.stream(form, stroke), open: pdf.stream(form, ' ') };
  looks.set(key, look);
  return look;
}
