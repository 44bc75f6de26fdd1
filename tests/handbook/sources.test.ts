/** Every figure has a page, and docs/sources.md says which: `npm run vitest -- tests/handbook/sources.test.ts -u` writes it anew. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cite, sources } from '../../src/handbook/sources.ts';
import { handbookUses, sourcesPage } from '../../src/handbook/sources-page.ts';

const FOLDER = new URL('../../src/handbook/', import.meta.url);
const FILES = readdirSync(FOLDER).sort();
/** Files without figures of their own, each with its reason. */
const NO_FIGURES: Readonly<Record<string, string>> = {
  'fact.ts': 'what a fact is',
  'fact-tables.ts': 'the list of them',
  'sources.ts': 'the works themselves',
  'sources-page.ts': 'the page',
  'thread-name.ts': 'names only',
  'materials-table.ts': 'told by materials.ts',
  'motor.ts': 'relations; the figures are the workshop’s',
  'unstated.ts': 'which row of ISO 2768-1 a length without limits is given',
  'pitches.ts': 'which pitches are whole numbers an inch',
  'lathe-usual.ts': 'no source, and says so; shares are told by reading.ts',
  look: 'answers made from the other files',
};

describe('sources', () => {
  it('are listed once each, with how they were read', () => {
    expect(new Set(sources.map((s) => s.id)).size).toBe(sources.length);
    expect(new Set(sources.map((s) => s.cite)).size).toBe(sources.length);
    expect(sources.filter((s) => s.cite === '' || s.seen === '')).toEqual([]);
  });
  it('stand beside every figure', () => {
    expect(handbookUses().length).toBeGreaterThan(500);
    expect(handbookUses().filter((u) => u.source.trim() === '' || u.what.trim() === '')).toEqual([]);
  });
  it('what is custom says so, and what is recalled too', () => {
    const custom = cite('custom');
    expect(handbookUses().filter((u) => u.source === custom && u.standing !== 'common practice')).toEqual([]);
    expect(handbookUses().filter((u) => u.source.includes('(from memory)') && u.standing !== 'from memory')).toEqual([]);
  });
  it('every file that holds figures is on the page', () => {
    const named = new Set(handbookUses().map((u) => u.file));
    expect(FILES.filter((file) => !named.has(file) && !(file in NO_FIGURES))).toEqual([]);
    expect([...named].filter((file) => !FILES.includes(file))).toEqual([]);
  });
  it('a place goes behind the work', () => expect(cite('if97', 'table 35')).toBe(`${cite('if97')}; table 35`));
  it('docs/sources.md is current', async () => {
    await expect(sourcesPage()).toMatchFileSnapshot('../../docs/sources.md');
  });
});
