/**
 * What PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1) ask of a sheet, each as a test of its own, on a page that has one of everything: read
 * back by pdfjs, and in the file's own words where a reader does not tell. qpdf looks at the whole where it is on the path.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { tickBox } from '../../src/drawing/display.ts';
import { textWidth } from '../../src/drawing/measure.ts';
import type { Document, Item, TextItem } from '../../src/model/display.ts';
import type { Meaning } from '../../src/model/meaning.ts';
import { writePdf } from '../../src/render/pdf.ts';
import { ADAPTATION, COLORANTS, srgbProfile } from '../../src/render/srgb.ts';
import { ADVANCES, FONTS } from './assets.ts';

const text = (words: string, x: number, y: number, ...within: readonly Meaning[]): TextItem => ({
  ...{ kind: 'text', text: words, x, y, size: 4, font: 'text', ink: 'black', width: textWidth(ADVANCES, 'text', 4, words) },
  ...(within.length > 0 ? { within } : {}),
});
const table: Meaning = { is: 'table' };
const heads: readonly Meaning[] = [{ is: 'column-head' }, { is: 'column-head' }];
const cells: readonly Meaning[] = [{ is: 'row-head' }, { is: 'cell' }];
const wide: Meaning = { is: 'cell', across: 2 };
const rows: readonly Meaning[] = [
  { is: 'row', cells: heads },
  { is: 'row', cells },
  { is: 'row', cells: [wide] },
];
const [headRow = table, row = table, wideRow = table] = rows;
const [firstHead = table, secondHead = table] = heads;
const [rowHead = table, emptyCell = table] = cells;
const paragraph: Meaning = { is: 'text' };
const figure: Meaning = { is: 'figure', alt: 'Half-section of a plug, Ø 12' };
const tick: Meaning = { is: 'tick', name: 'plug/hole/drill.1', says: '10 Drill' };
const line: Item = {
  kind: 'path',
  segments: [
    { to: 'move', x: 20, y: 90 },
    { to: 'line', x: 60, y: 120 },
  ],
  stroke: { ink: 'black', width: 0.3 },
};
const first: readonly Item[] = [
  text('Plug', 20, 20, { is: 'sheet-title' }),
  text('sheet 1 of 2', 150, 20, { is: 'running-head' }),
  line,
  text('Drill', 20, 40, table, headRow, firstHead),
  text('Rpm', 60, 40, table, headRow, secondHead),
  text('10', 20, 50, table, row, rowHead),
  ...tickBox(100, 46, 4, 'open').map((item): Item => ({ ...item, within: [table, row, emptyCell, tick] })),
  text('any of these will do', 20, 60, table, wideRow, wide),
  text('held on the mandrel of sheet ', 20, 70, paragraph),
  text('2', 100, 70, paragraph, { is: 'link', sheet: 2, says: 'Go to sheet 2: Mandrel' }),
  { ...line, within: [figure] },
  text('12.00', 40, 100, figure),
];
const plan = new TextEncoder().encode('{"mark":"7c1e90d2"}');
const document: Document = {
  ...{ title: 'Plug & mandrel', language: 'en', mark: '7c1e90d2' },
  pages: [first, [text('Mandrel', 20, 20, { is: 'sheet-title' })]].map((items, i) => ({
    ...{ width: 210, height: 297, items, label: `${i + 1}`, heading: i === 0 ? 'Plug' : 'Mandrel' },
  })),
  attached: [
    { kind: 'fitting', name: 'plug.yaml', type: 'application/yaml', says: 'as read', bytes: Uint8Array.of(0xef, 0xbb, 0xbf, 0x61) },
    { kind: 'plan', name: 'plan.json', type: 'application/json', says: 'the plan', bytes: plan },
  ],
};

let bytes = new Uint8Array();
let plain = '';
beforeAll(async () => {
  bytes = (await writePdf(document, FONTS)) as Uint8Array<ArrayBuffer>;
  plain = new TextDecoder('latin1').decode(await writePdf(document, FONTS, 'no'));
});

/** The same file less a feature: edited in its own bytes, as another writer would have left it. */
const less = (feature: RegExp, instead = ''): string => {
  const edited = plain.replace(feature, instead);
  expect(edited).not.toBe(plain);
  return edited;
};
/** What the file must hold, and the edit that takes it away. */
type Rule = readonly [rule: string, holds: RegExp, feature: RegExp, instead?: string];

const rowsOf = (rules: readonly Rule[]) => rules.map(([rule, holds, feature, instead = '']) => [rule, holds, feature, instead] as const);

type Node = { readonly role?: string; readonly alt?: string; readonly type?: string; readonly children?: readonly Node[] };
const outline = (node: Node): unknown => (node.role ? [node.role, ...(node.children ?? []).map(outline)] : (node.type ?? ''));

describe('PDF/UA: what is told to someone who does not see the page', () => {
  it('the tree in reading order, cells that hold nothing among them (7.1, 7.2)', async () => {
    const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
    expect(await file.getMarkInfo()).toMatchObject({ Marked: true });
    const tree = (await (await file.getPage(1)).getStructTree()) as Node;
    expect(JSON.stringify(outline(tree)).replace(/"/g, '')).toBe(
      '[Root,[Document,[Sect,[H1,content],[Table,[TR,[TH,content],[TH,content]],[TR,[TH,content],[TD,[Form,annotation]]],' +
        '[TR,[TD,content]]],[P,content,[Link,object,content]],[Figure,content]]]]',
    );
  });
  /** Drawing operators outside a marked stretch, stretches within stretches, and stretches left open. */
  const loose = (file: string): readonly string[] =>
    (file.match(/0 0 cm\n[\s\S]*?endstream/g) ?? []).flatMap((content) => {
      let open = 0;
      const found: string[] = [];
      for (const each of content.split('\n')) {
        if (/ B(DC|MC)$/.test(each)) open += 1;
        if (each === 'EMC') open -= 1;
        if (open > 1 || open < 0 || (/ (S|f|B|Tj|Do Q)$/.test(each) && open !== 1)) found.push(each);
      }
      return open === 0 ? found : [...found, 'left open'];
    });
  it('all that is drawn stands in a marked stretch or is an artifact (7.1-3)', () => {
    expect(loose(plain)).toEqual([]);
    expect(plain).toContain('/Artifact <</Type/Pagination/Attached[/Top]/Subtype/Header>> BDC');
  });
  it.each([
    ['a paragraph that nothing marks', /\/P <<\/MCID \d+>> BDC\n/],
    ['a rule that is no artifact', /\/Artifact BMC\n/],
    ['a stretch that does not end', /EMC\n/],
  ])('%s is seen', (_, mark) => {
    expect(loose(less(mark))).not.toEqual([]);
  });
  it('a tree in another order, or without one, is seen', async () => {
    const treeOf = async (file: string): Promise<string> => {
      const opened = await getDocument({ data: new Uint8Array(Buffer.from(file, 'latin1')), verbosity: 0 }).promise;
      return JSON.stringify(outline(((await (await opened.getPage(1)).getStructTree()) ?? {}) as Node));
    };
    const right = await treeOf(plain);
    expect(right).toContain('"Table"');
    expect(await treeOf(less(/\/S \/Table/, '/S /Div  '))).not.toBe(right);
    expect(await treeOf(less(/\/StructTreeRoot (?=\d+ 0 R)/, '/StructTreeLeaf '))).not.toBe(right);
    const opened = await getDocument({ data: new Uint8Array(Buffer.from(less(/\/Marked true/, '/Marked null'), 'latin1')), verbosity: 0 })
      .promise;
    expect((await opened.getMarkInfo())?.Marked ?? false).toBe(false);
  });
  const RULES: readonly Rule[] = [
    ['its title is shown (7.1-9, 7.1-10)', /\/DisplayDocTitle true/, /\/DisplayDocTitle true/, '/DisplayDocTitle false'],
    ['its language is named (7.2-34)', /\/Lang \(en\)/, /\/Lang \(en\)/],
    ['a figure has words (7.3)', /\/S \/Figure.*?\/Alt \(Half-section of a plug, \xd8 12\)/, /\/Alt \([^)]*\)/],
    ['a figure has a box (7.3)', /\/S \/Figure.*?\/A <<\/O \/Layout\/Placement \/Block\/BBox \[[\d. ]+\]>>/, /\/BBox \[[\d. ]+\]>>/, '>>'],
    ['a head over a column says so (7.5-1)', /\/S \/TH[^\n]*\/Scope\/Column>>/, /\/Scope\/Column/g],
    ['a head of a row says so (7.5-1)', /\/S \/TH[^\n]*\/Scope\/Row>>/, /\/Scope\/Row/g],
    ['a cell across columns says so (7.2)', /\/S \/TD[^\n]*\/ColSpan 2>>/, /\/ColSpan 2/],
    ['a box to tick is named (7.18.1-3)', /\/Subtype \/Widget[^\n]*\/T \(plug\/hole\/drill_1\)\/TU \(10 Drill\)/, /\/TU \(10 Drill\)/],
    ['a box to tick is in its place (7.18.4-1)', /\/Subtype \/Widget[^\n]*\/StructParent 2/, /\/StructParent 2/],
    ['a link says where it leads (7.18.5-2)', /\/Subtype \/Link[^\n]*\/Contents \(Go to sheet 2: Mandrel\)/, /\/Contents \(Go[^)]*\)/],
    ['a link is in its place (7.18.5-1)', /\/Subtype \/Link[^\n]*\/StructParent 3/, /\/StructParent 3/],
    ['tab goes by the structure (7.18.3)', /\/Tabs \/S/, /\/Tabs \/S/g],
    ['it claims to be PDF/UA-1 (5-1)', /<pdfuaid:part>1<\/pdfuaid:part>/, /<pdfuaid:part>1<\/pdfuaid:part>/],
  ];
  it.each(rowsOf(RULES))('%s', (_, holds) => {
    expect(plain).toMatch(holds);
  });
  it.each(rowsOf(RULES))('%s: a file without it is refused', (_, holds, feature, instead) => {
    expect(less(feature, instead)).not.toMatch(holds);
  });
  /** How many elements the marked stretches of each page are given; undefined where the list is not whole. */
  const owned = (file: string): readonly number[] | undefined => {
    const nums = /\/Nums \[(0 \[[^\]]*\].*?)\]>>/.exec(file)?.[1] ?? '';
    const found = /[ [](0 0 R)/.test(nums) ? null : nums.match(/^0 \[((?:\d+ 0 R ?)*)\] 1 \[((?:\d+ 0 R ?)*)\] 2 \d+ 0 R 3 \d+ 0 R$/);
    return found?.slice(1).map((list) => list.split(' R').length - 1);
  };
  it('every marked stretch and annotation finds its element (7.1, 7.18)', () => {
    const marked = (plain.match(/0 0 cm\n[\s\S]*?endstream/g) ?? []).map((content) => content.match(/\/MCID \d+/g)?.length ?? 0);
    expect(owned(plain)).toEqual([8, 1]);
    expect(marked.filter((n) => n > 0)).toEqual([8, 1]);
    expect(owned(less(/(\/Nums \[0 \[)\d+ 0 R /, '$1'))).toEqual([7, 1]);
    expect(owned(less(/(?<head>\/Nums \[0 \[)\d+ 0 R/, '$<head>0 0 R'))).toBeUndefined();
    expect(owned(less(/ 3 \d+ 0 R\]>>/, ']>>'))).toBeUndefined();
  });
});

describe('PDF/A-3a: what is left in fifty years', () => {
  const RULES: readonly Rule[] = [
    ['it is of PDF 1.7, and told to be no text (6.1.2)', /^%PDF-1\.7\n%[\x80-\xff]{4}/, /^(%PDF-1\.7\n)%[^\n]*/, '$1% '],
    [
      'it claims to be PDF/A-3a (6.6.4)',
      /<pdfaid:part>3<\/pdfaid:part><pdfaid:conformance>A<\/pdfaid:conformance>/,
      /<pdfaid:conformance>A/,
      '<pdfaid:conformance>B',
    ],
    [
      'and describes what PDF/A does not know (6.6.2.3)',
      /<pdfaSchema:prefix>pdfuaid<\/pdfaSchema:prefix>/,
      /<pdfaSchema:prefix>pdfuaid<\/pdfaSchema:prefix>/,
    ],
    [
      'its title can be read as XML (6.6.2.1)',
      /<rdf:li xml:lang="x-default">Plug &amp; mandrel<\/rdf:li>/,
      /Plug &amp; mandrel/,
      'Plug & mandrel',
    ],
    ['what it says of itself is named in its catalog (6.6.2.1)', /\/Type \/Catalog[^>]*[\s\S]*?\/Metadata \d+ 0 R/, /\/Metadata \d+ 0 R/],
    [
      'an output intent with its profile (6.2.3)',
      /\/OutputIntents \[<<\/Type \/OutputIntent\/S \/GTS_PDFA1[^\n]*\/DestOutputProfile \d+ 0 R>>\]/,
      /\/DestOutputProfile \d+ 0 R/,
    ],
    ['a box to tick is printed (6.3.2)', /\/Widget[^\n]*\/F 4/, /(\/Widget[^\n]*)\/F 4/, '$1/F 0'],
    [
      'a box to tick has both its looks (6.3.3)',
      /\/Widget[^\n]*\/AS \/Off[^\n]*\/AP <<\/N <<\/Yes \d+ 0 R\/Off \d+ 0 R>>>>/,
      /\/AP <<\/N <<\/Yes \d+ 0 R\/Off \d+ 0 R>>>>/,
    ],
    ['a link is printed (6.3.2)', /\/Subtype \/Link[^\n]*\/F 4/, /(\/Subtype \/Link[^\n]*)\/F 4/, '$1/F 0'],
    ['files are associated (6.8)', /\/AF \[\d+ 0 R \d+ 0 R\]/, /\/AF \[\d+ 0 R \d+ 0 R\]/],
    ['the inputs are its source (6.8)', /\/AFRelationship \/Source\/F \(plug\.yaml\)\/UF \(plug\.yaml\)/, /\/AFRelationship \/Source/],
    ['the plan is its data (6.8)', /\/AFRelationship \/Data\/F \(plan\.json\)\/UF \(plan\.json\)/, /\/AFRelationship \/Data/],
    ['with their kind of file (6.8)', /\/Type \/EmbeddedFile\n\/Subtype \/application#2fyaml/, /\/Subtype \/application#2fyaml/],
    ['fonts are in the file (6.2.11.4)', /\/FontFile2 \d+ 0 R/, /\/FontFile2 \d+ 0 R/g],
    ['and can be read out (6.2.11.7)', /\/ToUnicode \d+ 0 R/, /\/ToUnicode \d+ 0 R/g],
    ['their codes are mapped in the file (6.2.11.3.3)', /\/Encoding \d+ 0 R/, /\/Encoding \d+ 0 R/g, '/Encoding /Own-H'],
    [
      'by a map of the same collection (6.2.11.3.1)',
      /\/Type \/CMap\n\/CMapName \/Valvewright\n\/CIDSystemInfo <<\/Registry \(Adobe\)\/Ordering \(Identity\)\/Supplement 0>>/,
      /\/Ordering \(Identity\)\/Supplement 0>>/,
      '/Ordering (Japan1)/Supplement 0>>',
    ],
    ['the file has a name of its own (6.1.3)', /\/ID \[<[0-9a-f]{32}> <[0-9a-f]{32}>\]/, /\/ID \[<[0-9a-f]{32}> <[0-9a-f]{32}>\]/],
  ];
  it.each(rowsOf(RULES))('%s', (_, holds) => {
    expect(plain).toMatch(holds);
  });
  it.each(rowsOf(RULES))('%s: a file without it is refused', (_, holds, feature, instead) => {
    expect(less(feature, instead)).not.toMatch(holds);
  });
  const NEVER: readonly (readonly [rule: string, never: RegExp, place: RegExp, instead: string])[] = [
    ['no viewer has to draw the boxes (6.4.1)', /NeedAppearances/, /\/AcroForm <</, '/AcroForm <</NeedAppearances true'],
    ['nothing runs (6.5)', /JavaScript|\/JS |\/AA |\/A <<\/S/, /\/Type \/Catalog/, '/Type /Catalog/OpenAction <</S /JavaScript/JS (0)>>'],
    ['no colour but red, green, blue (6.2.4)', /DeviceCMYK|DeviceGray| k\n/, /0 0 cm\n/, '0 0 cm\n0 0 0 1 k\n'],
    ['nothing is locked (6.1.3)', /\/Encrypt/, /\/Type \/Catalog/, '/Type /Catalog/Encrypt 1 0 R'],
    ['every stream ends on its own line (6.1.7.1)', /[^\n\r]endstream/, /([^\n])\nendstream/, '$1endstream'],
  ];
  it.each(NEVER)('%s', (_, never) => {
    expect(plain).not.toMatch(never);
  });
  it.each(NEVER)('%s: a file with it is refused', (_, never, place, instead) => {
    expect(less(place, instead)).toMatch(never);
  });
  it('a sign that its font lacks is not written as an empty box (6.2.11.8)', async () => {
    const page = { width: 210, height: 297, items: [{ ...text('A', 20, 20), text: '\u2603' }], label: '1', heading: 'A' };
    await expect(writePdf({ ...document, pages: [page] }, FONTS)).rejects.toThrow('\u2603');
  });
  it('the files come out as they went in, each with its checksum', async () => {
    const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
    const attached = (await file.getAttachments()) as Record<string, { filename: string; content: Uint8Array }>;
    expect(Object.entries(attached).map(([key, { filename }]) => [key, filename])).toEqual([
      ['fitting', 'plug.yaml'],
      ['plan', 'plan.json'],
    ]);
    expect([...(attached.fitting?.content ?? [])]).toEqual([0xef, 0xbb, 0xbf, 0x61]);
    expect(attached.plan?.content).toEqual(plan);
    // by md5sum
    expect(plain).toContain('/CheckSum <352a67387e0dc09eb303ff9b1ab4dcb5>');
  });
  it('links lead to their sheet, boxes can be ticked', async () => {
    const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
    const found = (await (await file.getPage(1)).getAnnotations()) as readonly Record<string, unknown>[];
    expect(found.find((each) => each.subtype === 'Widget')).toMatchObject({
      fieldName: 'plug/hole/drill_1',
      checkBox: true,
      fieldValue: 'Off',
    });
    const link = found.find((each) => each.subtype === 'Link');
    const [to = { num: 0, gen: 0 }] = (link?.dest ?? []) as readonly { readonly num: number; readonly gen: number }[];
    expect(await file.getPageIndex(to)).toBe(1);
  });
});

describe('the colours', () => {
  /** IEC 61966-2-1: chromaticities of red, green, blue, and of the white. Bradford's matrix as ICC.1:2004-10, annex E, has it. */
  const primaries = [0.64, 0.33, 0.3, 0.6, 0.15, 0.06] as const;
  const white = [0.3127, 0.329] as const;
  const D50 = [0.9642, 1, 0.8249];
  const bradford = [
    [0.8951, 0.2664, -0.1614],
    [-0.7502, 1.7135, 0.0367],
    [0.0389, -0.0685, 1.0296],
  ];
  const times = (m: readonly (readonly number[])[], v: readonly number[]) =>
    m.map((r) => r.reduce((sum, each, i) => sum + each * (v[i] ?? 0), 0));
  const xyz = (x: number, y: number) => [x / y, 1, (1 - x - y) / y];
  const at = (v: readonly number[], i: number) => v[i] ?? 0;
  const inverse = (m: readonly (readonly number[])[]) => {
    const c = (i: number, j: number) => m[((i % 3) + 3) % 3]?.[((j % 3) + 3) % 3] ?? 0;
    const minor = (i: number, j: number) => c(i + 1, j + 1) * c(i + 2, j + 2) - c(i + 1, j + 2) * c(i + 2, j + 1);
    const det = c(0, 0) * minor(0, 0) + c(0, 1) * minor(0, 1) + c(0, 2) * minor(0, 2);
    return [0, 1, 2].map((i) => [0, 1, 2].map((j) => minor(j, i) / det));
  };
  it('are those of the standard, brought to D50', () => {
    const source = xyz(...white);
    const [from, to] = [times(bradford, source), times(bradford, D50)];
    const scaled = bradford.map((r, i) => r.map((each) => (each * at(to, i)) / at(from, i)));
    const adapt = inverse(bradford).map((r) => [0, 1, 2].map((j) => r.reduce((sum, each, k) => sum + each * at(scaled[k] ?? [], j), 0)));
    for (const [i, each] of adapt.flat().entries()) expect(at(ADAPTATION, i)).toBeCloseTo(each, 3);
    const columns = [0, 2, 4].map((i) => xyz(at(primaries, i), at(primaries, i + 1)));
    const matrix = [0, 1, 2].map((r) => columns.map((column) => at(column, r)));
    const shares = times(inverse(matrix), source);
    for (const [i, column] of columns.entries()) {
      const shown = times(
        adapt,
        column.map((each) => each * at(shares, i)),
      );
      for (const [k, each] of shown.entries()) expect(at(COLORANTS[i] ?? [], k)).toBeCloseTo(each, 3);
    }
  });
  it('stand in a profile whose parts lie inside it', () => {
    const profile = srgbProfile();
    const view = new DataView(profile.buffer);
    expect(view.getUint32(0)).toBe(profile.length);
    expect(new TextDecoder().decode(profile.slice(12, 24))).toBe('mntrRGB XYZ ');
    const tags = Array.from({ length: view.getUint32(128) }, (_, i) => [view.getUint32(136 + 12 * i), view.getUint32(140 + 12 * i)]);
    expect(tags.length).toBe(10);
    for (const [place = 0, size = 0] of tags) expect(place % 4 === 0 && place + size <= profile.length).toBe(true);
  });
});

describe('what cannot be written', () => {
  const bad = (items: readonly Item[], more: Partial<Document> = {}) =>
    writePdf({ ...document, ...more, pages: [{ width: 210, height: 297, items, label: '1', heading: 'A' }] }, FONTS);
  it.each<[string, () => Promise<Uint8Array>, string]>([
    ['a link to no sheet', () => bad([text('9', 20, 20, paragraph, { is: 'link', sheet: 9, says: '' })]), 'a link leads to sheet 9'],
    [
      'two fittings',
      () => bad([text('a', 20, 20)], { attached: [document, document].flatMap((d) => (d.attached ?? []).slice(0, 1)) }),
      'of one kind',
    ],
  ])('%s', async (_, make, message) => {
    await expect(make()).rejects.toThrow(message);
  });
  it('two boxes of one name are told apart', async () => {
    const box = (x: number): readonly Item[] =>
      tickBox(x, 20, 4, 'open').map((item) => ({ ...item, within: [{ is: 'tick', name: 'a', says: 'a' }] }));
    const out = new TextDecoder('latin1').decode(
      await writePdf(
        { ...document, pages: [{ width: 210, height: 297, items: [...box(20), ...box(40)], label: '1', heading: 'A' }] },
        FONTS,
        'no',
      ),
    );
    expect(out.match(/\/T \([^)]*\)/g)).toEqual(['/T (a)', '/T (a#2)']);
  });
});

const QPDF = spawnSync('qpdf', ['--version']).status === 0;
describe('by another program', () => {
  it.skipIf(!QPDF)(`qpdf finds nothing wrong${QPDF ? '' : ' (skipped: there is no qpdf on the path)'}`, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
    const both = { packed: bytes, open: await writePdf(document, FONTS, 'no') };
    for (const [name, content] of Object.entries(both)) writeFileSync(join(folder, name), content);
    const answers = Object.keys(both).map((name) => spawnSync('qpdf', ['--check', join(folder, name)], { encoding: 'utf8' }));
    rmSync(folder, { recursive: true });
    expect(answers.map(({ status, stderr }) => [status, stderr])).toEqual([
      [0, ''],
      [0, ''],
    ]);
  });
});
