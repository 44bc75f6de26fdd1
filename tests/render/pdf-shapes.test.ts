/** What the file says in fewer bytes looks as it would in many: painted by poppler both ways, pixel against pixel. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { circle, enlarged, line, moved, roundRect, text, type XY } from '../../src/drawing/display.ts';
import { hatched } from '../../src/drawing/hatch.ts';
import { figure } from '../../src/drawing/sheet/meant.ts';
import { drawSign } from '../../src/drawing/sheet/signs.ts';
import type { Document, Item, PathItem, Segment } from '../../src/model/display.ts';
import { writePdf } from '../../src/render/pdf.ts';
import { ADVANCES, FONTS } from './assets.ts';
import { readPdf } from './read-pdf.ts';

const documentOf = (items: readonly Item[]): Document => ({
  ...{ title: 'Trial', language: 'en', mark: '7c1e90d2' },
  pages: [{ width: 210, height: 297, items, label: '1', heading: 'A' }],
});
const write = (items: readonly Item[], compress: 'yes' | 'no' = 'yes'): Promise<Uint8Array> => writePdf(documentOf(items), FONTS, compress);
const plain = async (items: readonly Item[]): Promise<string> => new TextDecoder('latin1').decode(await write(items, 'no'));

/** Grey levels of the page at 100 pixels an inch. */
async function painted(items: readonly Item[]): Promise<Uint8Array> {
  const folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
  writeFileSync(join(folder, 'a.pdf'), await write(items));
  const { status, stdout } = spawnSync('pdftoppm', ['-gray', '-r', '100', join(folder, 'a.pdf')], { maxBuffer: 2 ** 26 });
  rmSync(folder, { recursive: true });
  expect(status).toBe(0);
  return new Uint8Array(stdout);
}

const differing = (a: Uint8Array, b: Uint8Array, by: number): number =>
  a.reduce((sum, level, i) => sum + (Math.abs(level - (b[i] ?? 0)) > by ? 1 : 0), 0);

/** The same outline with its pen set down at another of its corners: no two of the eight are alike to a writer. */
function begunAt(item: PathItem, turn: number): PathItem {
  const drawn = item.segments.filter((s) => s.to !== 'close');
  const [first, ...rest] = drawn;
  const ends: readonly Segment[] = first ? [...rest, { ...first, to: 'line' } as Segment] : [];
  const turned = [...ends.slice(turn), ...ends.slice(0, turn)];
  const begin = ends.at(turn - 1);
  if (!begin || begin.to === 'close') return item;
  return { ...item, segments: [{ to: 'move', x: begin.x, y: begin.y }, ...turned, { to: 'close' }] };
}

describe('a picture without words that stands many times', () => {
  const sign = (x: number, y: number, alt: string): readonly Item[] =>
    figure([...drawSign('P028', x, y, 6), ...drawSign('W017', x + 7, y, 6)], alt);
  const places = Array.from({ length: 6 }, (_, i) => ({ x: 20.17 + 13.31 * i, y: 30.05 + 31.13 * i }));
  const signs = places.flatMap(({ x, y }, i) => sign(x, y, `sign ${i}`));

  it('is written once, colours and all, and shown where it stands, each as a figure of its own', async () => {
    const content = await plain(signs);
    expect(content.match(/ cm \/X\d+ Do Q/g)?.length).toBe(places.length);
    expect(content.match(/\/Subtype \/Form/g)?.length).toBe(1);
    expect(content.match(/\/Figure <<\/MCID \d+>> BDC/g)?.length).toBe(places.length);
    expect(await plain(sign(20, 30, 'one'))).not.toContain('/Subtype /Form');
  });
  it('looks as if each had been drawn by itself', async () => {
    // a word within keeps a picture from being shared
    const dot = { advances: ADVANCES, font: 'text', size: 3, ink: 'black' } as const;
    const words = places.map((_, i) => text(dot, '.', 200, 5 + 4 * i, 'left'));
    const apart = places.flatMap(({ x, y }, i) => figure([...sign(x, y, ''), ...words.slice(i, i + 1)], `sign ${i}`));
    expect(differing(await painted([...signs, ...words]), await painted(apart), 2)).toBe(0);
    expect(differing(await painted([...signs, ...words]), await painted(words), 2)).toBeGreaterThan(100);
  });
});

describe('a picture with words that stands many times', () => {
  const lettering = { advances: ADVANCES, font: 'narrow', size: 3, ink: 'new' } as const;
  const stroke = { ink: 'mid', width: 0.3 } as const;
  const dial = (x: number, y: number): readonly Item[] =>
    figure(
      [
        roundRect(x, y, 40, 20, 2, { fill: 'pale', stroke }),
        ...Array.from({ length: 12 }, (_, i) => circle(x + 3 + 3 * i, y + 6, 1, { stroke })),
        ...['0', '10', '20', '30'].map((said, i) => text(lettering, said, x + 2 + 9 * i, y + 15, 'left')),
      ],
      'dial',
    );
  const dials = [0, 1, 2, 3].map((i) => dial(20.17 + 3 * i, 20.05 + 31.13 * i));
  it('is written once, and its words are read where it stands', async () => {
    expect((await plain(dials.flat())).match(/\(20 \) Tj/g)).toHaveLength(1);
    const [page] = (await readPdf(await write(dials.flat()))).pages;
    const thirties = page?.texts.filter((each) => each.text.trim() === '30') ?? [];
    expect(thirties.map(({ x, y }) => [x, y].map((mm) => Math.round(mm * 100) / 100))).toEqual(
      [0, 1, 2, 3].map((i) => [20.17 + 3 * i + 29, 20.05 + 31.13 * i + 15].map((mm) => Math.round(mm * 100) / 100)),
    );
  });
  it('looks as each would alone', async () => {
    const all = await painted(dials.flat());
    const alone = await Promise.all(dials.map(painted));
    const together = all.map((_, i) => Math.min(...alone.map((page) => page[i] ?? 0)));
    expect(differing(all, together, 2)).toBe(0);
    expect(differing(all, alone[0] ?? all, 2)).toBeGreaterThan(100);
  });
});

describe('a shape that stands many times', () => {
  const stroke = { ink: 'mid', width: 0.3 } as const;
  const boxes = Array.from({ length: 8 }, (_, i) =>
    roundRect(20.17 + 3 * i, 20.05 + 31.13 * i, 88.61, 26.14, 1.2, { fill: 'pale', stroke }),
  );
  it('is written once and shown where it stands', async () => {
    const content = await plain(boxes);
    expect(content.match(/ cm \/X\d+ Do Q/g)?.length).toBe(8);
    expect(content.match(/\/Subtype \/Form/g)?.length).toBe(1);
    expect((await plain(boxes.slice(0, 1))).includes('/Subtype /Form')).toBe(false);
  });
  it('looks as if each had been drawn by itself', async () => {
    const apart = boxes.map((box, i) => begunAt(box, 1 + (i % 7)));
    expect(await plain(apart.slice(0, 7))).not.toContain('/Subtype /Form');
    expect(differing(await painted(boxes.slice(0, 7)), await painted(apart.slice(0, 7)), 2)).toBe(0);
    expect(differing(await painted(boxes), await painted(boxes.slice(1)), 2)).toBeGreaterThan(100);
  });
  it('of which filled and stroked ones are not confused', async () => {
    const places = Array.from({ length: 30 }, (_, i) => 15 + 6 * i);
    const discs = places.flatMap((x) => [
      circle(x, 40, 5, { fill: 'new' }),
      circle(x, 60, 5, { stroke }),
      circle(x, 80, 5, { fill: 'pale', stroke }),
    ]);
    expect((await plain(discs)).match(/\/Subtype \/Form/g)?.length).toBe(3);
  });
});

describe('a hatched face', () => {
  const ring: readonly XY[] = [
    { x: 21.3, y: 30.2 },
    { x: 71.9, y: 30.2 },
    { x: 88.4, y: 61.7 },
    { x: 60.2, y: 48.8 },
    { x: 21.3, y: 70.1 },
  ];
  const thin = { ink: 'dark', width: 0.13 } as const;
  const asLines = (items: readonly Item[]): readonly Item[] => items.map(({ hatch, ...item }: Item & { hatch?: unknown }) => item as Item);
  const rows: readonly (readonly [string, (items: readonly Item[]) => readonly Item[]])[] = [
    ['as drawn', (items) => items],
    ['moved', (items) => moved(items, 33.37, 101.93)],
    ['enlarged', (items) => enlarged(items, 1.25)],
    [
      'moved in a picture of its own',
      (items) =>
        moved([...Array.from({ length: 12 }, (_, i) => circle(150, 20 + 10 * i, 3 + i / 10, { fill: 'pale' })), ...items], 11.11, 7.77),
    ],
  ];
  it.each(rows.flatMap(([name, change]) => ([1, -1] as const).map((lean) => [name, lean, change] as const)))(
    'looks as its lines would: %s, lean %d',
    async (_, lean, change) => {
      const items = change(hatched(ring, { pitch: 1.2, lean }, thin));
      expect(await plain(items)).toMatch(/ W n 1 0 0 1 [-\d.]+ [-\d.]+ cm \/X\d+ Do Q/);
      const [shown, drawn] = [await painted(items), await painted(asLines(items))];
      const marks = drawn.reduce((sum, level) => sum + (level < 250 ? 1 : 0), 0);
      expect(marks).toBeGreaterThan(2000);
      // only the ends of lines, which are cut along the ring instead of square
      expect(differing(shown, drawn, 30)).toBeLessThan(marks / 20);
      // lines half a step away would nearly all be elsewhere
      const off = await painted(asLines(moved(items, 0.85, 0)));
      expect(differing(shown, off, 30)).toBeGreaterThan(marks / 4);
    },
  );
  it('of a few lines is drawn line by line', async () => {
    const small = hatched(
      ring.map(({ x, y }) => ({ x: x / 20, y: y / 20 })),
      { pitch: 1.2, lean: 1 },
      thin,
    );
    expect(small).toHaveLength(1);
    expect(await plain(small)).not.toContain('/Subtype /Form');
  });
  it('too small for a line is left white', () => {
    expect(
      hatched(
        ring.map(({ x, y }) => ({ x: x / 1000, y: 10 + y / 1000 })),
        { pitch: 1.2, lean: 1 },
        thin,
      ),
    ).toEqual([]);
  });
});

describe('texts', () => {
  const lettering = { advances: ADVANCES, font: 'text', size: 4, ink: 'black' } as const;
  it('stand where they should, one told from another, among lines and in pictures', async () => {
    const rows = Array.from({ length: 9 }, (_, i) => text(lettering, `row ${i}`, 20.37 + 7.13 * (i % 3), 33.33 + 6.07 * i));
    const rules = rows.map((_, i) => line(10, 30 + 6 * i, 12 + i, 31 + 6 * i, { ink: 'mid', width: 0.2 }));
    for (const items of [rows, rows.flatMap((row, i) => [rules[i] ?? row, row])]) {
      const [page] = (await readPdf(await write(items))).pages;
      const found = page?.texts.map(({ text: said, x, y }) => [said.trim(), x, y] as const) ?? [];
      expect(found.map(([said]) => said)).toEqual(rows.map((row) => row.text));
      for (const [i, [, x, y]] of found.entries()) {
        expect(x).toBeCloseTo(rows[i]?.x ?? 0, 2);
        expect(y).toBeCloseTo(rows[i]?.y ?? 0, 2);
      }
    }
  });
  it('that begin at one point both begin there', async () => {
    const [over, under] = [text(lettering, 'over', 30, 40, 'left'), text(lettering, 'under', 30, 40, 'left')];
    const [page] = (await readPdf(await write([over, under]))).pages;
    expect(page?.texts.map(({ text: said, x }) => [said.trim(), Math.round(x * 100) / 100])).toEqual([
      ['over', 30],
      ['under', 30],
    ]);
  });
  it('of more signs than a byte tells apart are read back', async () => {
    // less the micro sign, which the reader turns into a Greek letter
    const signs = Array.from({ length: 0x17f - 0x21 }, (_, i) => String.fromCodePoint(0x21 + i)).filter(
      (sign) => /\p{L}|\p{N}|[()\\]/u.test(sign) && sign !== 'µ',
    );
    const greek = [...'αβγδεζηθικλμνξοπρστυφχψω', ...'абвгдежзийклмнопрстуфхцчшщъыьэюя', '−', '→', '″', '½'];
    const lines = Array.from({ length: 30 }, (_, i) => [...signs, ...greek].slice(i * 12, i * 12 + 12).join('')).filter(
      (row) => row !== '',
    );
    const items = lines.map(
      (row, i): Item => ({
        ...{
          kind: 'text',
          text: row,
          x: 20,
          y: 20 + 6 * i,
          size: 4,
          font: 'text',
          ink: 'black',
          width: 50,
        },
      }),
    );
    const [page] = (await readPdf(await write(items))).pages;
    expect(page?.texts.map((each) => each.text.trim())).toEqual(lines);
  });
});
