/** The door to the disk: what is read is read with care, what is written is written whole or not at all. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { VERSION } from '../../src/compile.ts';
import { loadAssets, loadFonts, packageVersion, readUserFile, writeAll } from '../../src/files.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const here = (name: string): string => join(folder, name);
const text = (name: string): string => readFileSync(here(name), 'utf8');

describe('reading', () => {
  it('gives the base name and the text', () => {
    writeFileSync(here('a.yaml'), 'fitting: ø\n');
    const bytes = new TextEncoder().encode('fitting: ø\n');
    expect(readUserFile(here('a.yaml'))).toEqual({ value: { name: 'a.yaml', text: 'fitting: ø\n', bytes }, found: [] });
  });
  it.each([
    ['nothing there', () => {}, 'file.not-there', { near: '' }],
    ['something near', () => writeFileSync(here('b.yaml'), ''), 'file.not-there', { near: 'b.yaml' }],
    ['a folder', () => mkdirSync(here('a.yaml')), 'file.not-a-file', {}],
    ['too much', () => writeFileSync(here('a.yaml'), ' '.repeat(256 * 1024 + 1)), 'file.too-large', { kilobytes: 257, most: 256 }],
    ['no text', () => writeFileSync(here('a.yaml'), new Uint8Array([0xff, 0xfe, 0x41])), 'file.not-text', {}],
  ])('%s is a finding', (_, prepare, code, grounds) => {
    prepare();
    const { value, found } = readUserFile(here('a.yaml'));
    expect(value).toBeUndefined();
    const full = 'near' in grounds && grounds.near ? { near: here(grounds.near) } : grounds;
    const place = code === 'file.not-text' ? { place: { file: here('a.yaml'), line: 1, col: 1 } } : {};
    expect(found).toEqual([{ code, severity: 'error', ...place, grounds: { path: here('a.yaml'), ...full } }]);
  });
  it('says where the first letter stands that is not UTF-8', () => {
    writeFileSync(here('a.yaml'), new Uint8Array([...new TextEncoder().encode('fitting: union\ntitle: Größe, '), 0xdc, 0x72, 0x0a]));
    expect(readUserFile(here('a.yaml')).found.map((d) => d.place)).toEqual([{ file: here('a.yaml'), line: 2, col: 15 }]);
  });
  it('of a folder that is not there is a finding', () => {
    expect(readUserFile(here('no/such/a.yaml')).found.map((d) => d.code)).toEqual(['file.not-there']);
  });
});

describe('writing', () => {
  it('makes the folder and leaves nothing else in it', () => {
    expect(
      writeAll(here('new/deep'), [
        { name: 'a.pdf', bytes: 'A' },
        { name: 'b.txt', bytes: new Uint8Array([66]) },
      ]).value,
    ).toEqual([here('new/deep/a.pdf'), here('new/deep/b.txt')]);
    expect(readdirSync(here('new/deep')).sort()).toEqual(['a.pdf', 'b.txt']);
    expect([text('new/deep/a.pdf'), text('new/deep/b.txt')]).toEqual(['A', 'B']);
  });
  it('replaces what was there', () => {
    writeFileSync(here('a.pdf'), 'old');
    expect(writeAll(folder, [{ name: 'a.pdf', bytes: 'new' }]).found).toEqual([]);
    expect(readdirSync(folder)).toEqual(['a.pdf']);
    expect(text('a.pdf')).toBe('new');
  });
  it.each([
    ['the last cannot be written: the first, which was there, is as it was', 'a.pdf', 'old'],
    ['the last cannot be written: the first, which was not, is not there', 'c.pdf', undefined],
  ])('%s', (_, first, before) => {
    if (before) writeFileSync(here(first), before);
    mkdirSync(here('b.txt'));
    const names = readdirSync(folder).sort();
    const { value, found } = writeAll(folder, [
      { name: first, bytes: 'new' },
      { name: 'b.txt', bytes: 'new' },
    ]);
    expect(value).toBeUndefined();
    expect(found).toEqual([{ code: 'file.cannot-write', severity: 'error', grounds: { path: here('b.txt'), reason: 'EISDIR' } }]);
    expect(readdirSync(folder).sort()).toEqual(names);
    if (before) expect(text(first)).toBe(before);
  });
  it('a folder that was made for it goes again when nothing could be written', () => {
    expect(writeAll(here('new/deep'), [{ name: 'no/such/place.pdf', bytes: 'A' }]).found.map((d) => d.code)).toEqual(['file.cannot-write']);
    expect(readdirSync(folder)).toEqual([]);
  });
  it.each(['a', 'a/deeper', 'a/deeper/still'])('into what is no folder is a finding, and names it: %s', (into) => {
    writeFileSync(here('a'), 'kept');
    const { value, found } = writeAll(here(into), [{ name: 'b', bytes: '' }]);
    expect(value).toBeUndefined();
    expect(found).toEqual([{ code: 'file.cannot-write', severity: 'error', grounds: { path: here('a'), reason: 'ENOTDIR' } }]);
    expect(readdirSync(folder)).toEqual(['a']);
    expect(text('a')).toBe('kept');
  });
  it('a place that takes no folders is a finding, not a wait without end', () => {
    const { value, found } = writeAll('/proc/valvewright/sheets', [{ name: 'b', bytes: '' }]);
    expect(value).toBeUndefined();
    expect(found.map((d) => d.code)).toEqual(['file.cannot-write']);
  });
});

describe('what the package brings', () => {
  it('words, advances, workshop, fonts and version are there', () => {
    const assets = loadAssets();
    expect(Object.keys(assets.words)).toContain('cli.hbs');
    expect(assets.advances.text.advances['65']).toBeGreaterThan(0);
    expect(assets.workshop.name).toBe('bench-lathe.yaml');
    expect(assets.workshop.text).toContain('lathe:');
    expect(Object.values(loadFonts()).map((bytes) => [...bytes.slice(0, 4)])).toEqual(Array.from({ length: 4 }, () => [0, 1, 0, 0]));
    expect(packageVersion()).toBe(VERSION);
  });
});
