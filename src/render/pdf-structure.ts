/** The structure tree of the file: an element for each meaning, a section a page, and the way back from marked content to its element. */
import type { Pdf } from './pdf-adapter.ts';
import type { Element, Kid, Rect, TaggedPage } from './pdf-tags.ts';
import { array, dictionary, name, number, ref, string } from './pdf-write.ts';

/** `annotations`: an object's number for each of the page's spots, in their order; `place`: from mm on the page to points from its foot. */
export type WrittenPage = {
  readonly page: number;
  readonly tagged: TaggedPage;
  readonly annotations: readonly number[];
  readonly place: (rect: Rect) => string;
  /** The same to whole points, outward. */
  readonly around: (rect: Rect) => string;
};

/** Keys of the way back: pages by their place from 0, then annotations, page after page. */
export function annotationKeys(pages: readonly WrittenPage[]): readonly (readonly number[])[] {
  let next = pages.length;
  return pages.map(({ annotations }) => annotations.map(() => next++));
}

/** Writes all elements; the catalog learns of them. An element names its page where content of its own stands there, and no type: it may. */
export function writeStructure(pdf: Pdf, pages: readonly WrittenPage[]): void {
  const [root, whole] = [pdf.reserve(), pdf.reserve()];
  const ids = numbersOf(pdf, pages);
  const sections = pages.map((page) => writeSection(pdf, page, whole, ids));
  pdf.pack(whole, dictionary({ S: '/Document', P: ref(root), K: array(sections.map(ref)) }));
  const parents = writeParents(pdf, pages, ids);
  const next = pages.reduce((sum, page) => sum + page.annotations.length, pages.length);
  pdf.pack(root, dictionary({ Type: '/StructTreeRoot', K: ref(whole), ParentTree: ref(parents), ParentTreeNextKey: String(next) }));
  pdf.catalog({ MarkInfo: '<</Marked true>>', StructTreeRoot: ref(root) });
}

/** What has marked content is numbered in its order, so that the way back counts up, and is packed small. */
function numbersOf(pdf: Pdf, pages: readonly WrittenPage[]): ReadonlyMap<Element, number> {
  const ids = new Map<Element, number>();
  const number = (element: Element): void => {
    if (!ids.has(element)) ids.set(element, pdf.reserve());
  };
  const numberHolders = (kid: Kid): void => {
    if (typeof kid !== 'object' || 'spot' in kid) return;
    if (!kid.kids.some((own) => typeof own === 'number')) number(kid);
    kid.kids.forEach(numberHolders);
  };
  for (const { tagged } of pages) tagged.top.forEach(numberHolders);
  for (const { tagged } of pages) tagged.marked.forEach(number);
  return ids;
}

type Numbers = ReadonlyMap<Element, number>;

function writeSection(pdf: Pdf, page: WrittenPage, above: number, ids: Numbers): number {
  const id = pdf.reserve();
  const kids = page.tagged.top.map((kid) => writeKid(pdf, page, kid, id, ids));
  pdf.pack(id, dictionary({ S: '/Sect', P: ref(above), K: array(kids) }));
  return id;
}

function writeKid(pdf: Pdf, page: WrittenPage, kid: Kid, above: number, ids: Numbers): string {
  if (typeof kid === 'number') return String(kid);
  if (!('spot' in kid)) return ref(writeElement(pdf, page, kid, above, ids));
  const at = page.tagged.spots.findIndex(({ spot }) => spot === kid);
  return dictionary({ Type: '/OBJR', Obj: ref(page.annotations[at] ?? 0), Pg: ref(page.page) });
}

function writeElement(pdf: Pdf, page: WrittenPage, element: Element, above: number, ids: Numbers): number {
  const id = ids.get(element) ?? pdf.reserve();
  const kids = element.kids.map((kid) => writeKid(pdf, page, kid, id, ids));
  const { meaning } = element;
  pdf.pack(
    id,
    dictionary({
      S: name(element.role),
      P: ref(above),
      Pg: element.kids.some((kid) => typeof kid === 'number') ? ref(page.page) : undefined,
      Alt: meaning.is === 'figure' ? string(meaning.alt) : undefined,
      A: attributes(element, page),
      K: kids.length === 0 ? undefined : kids.length === 1 ? kids[0] : array(kids),
    }),
  );
  return id;
}

function attributes({ meaning, box }: Element, page: WrittenPage): string | undefined {
  switch (meaning.is) {
    case 'column-head':
      return '<</O/Table/Scope/Column>>';
    case 'row-head':
      return '<</O/Table/Scope/Row>>';
    case 'cell':
      return meaning.across === undefined ? undefined : dictionary({ O: '/Table', ColSpan: number(meaning.across) });
    case 'list':
      return '<</O/List/ListNumbering/None>>';
    case 'steps':
      return '<</O/List/ListNumbering/Decimal>>';
    case 'figure':
      return dictionary({ O: '/Layout', Placement: '/Block', BBox: box && page.around(box) });
    default:
      return undefined;
  }
}

/** A number tree of one leaf: for a page the elements of its marked stretches, for an annotation the element that it stands in. */
function writeParents(pdf: Pdf, pages: readonly WrittenPage[], ids: Numbers): number {
  const idOf = (element: Element): string => ref(ids.get(element) ?? 0);
  const ofPages = pages.map(({ tagged }, i) => `${i} ${array(tagged.marked.map(idOf))}`);
  const keys = annotationKeys(pages);
  const ofSpots = pages.flatMap(({ tagged }, i) => tagged.spots.map(({ element }, n) => `${keys[i]?.[n] ?? 0} ${idOf(element)}`));
  const id = pdf.reserve();
  pdf.pack(id, dictionary({ Nums: array([...ofPages, ...ofSpots]) }));
  return id;
}
