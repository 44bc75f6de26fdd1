/** The sheet as plain text: all that the page says, in the page's order, and nothing wider than a terminal. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { loadAssets } from '../../src/files.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { writeText } from '../../src/render/text.ts';
import { SMALL_PLAN, SMALL_STAGES, SMALL_WORDS } from '../fixtures/small-plan.ts';

const { words: files, advances } = loadAssets();
const { 'rules.hbs': _, ...others } = files;
const say = words({ ...others, 'small.hbs': SMALL_WORDS });
const { view, document } = sheet(SMALL_PLAN, SMALL_STAGES, { words: say, advances, language: 'en' });
const text = writeText(view, document);

describe('a sheet as text', () => {
  it('says every row: number, title, sizes, speed', () => {
    const rows = view.pages.flatMap((page) => (page.kind === 'grip' ? page.blocks.flatMap((block) => block.rows) : []));
    expect(rows.length).toBeGreaterThan(2);
    for (const row of rows) {
      expect(text).toContain(`[ ] ${row.number.padStart(3)}  ${row.title}`);
      for (const size of row.sizes) expect(text).toContain(`${size.text} ${size.limits}`.trim());
      if (row.rpm) expect(text).toContain(row.rpm);
    }
  });
  it('keeps the order of the pages and names the sheet that each begins on', () => {
    const at = view.pages.map((page) => text.indexOf(`\n${page.heading} `));
    expect(at.every((place, i) => place > (at[i - 1] ?? 0))).toBe(true);
    const numbers = [...text.matchAll(/ sheet (\d+) of (\d+)$/gm)].map((match) => Number(match[1]));
    expect(numbers.length).toBe(view.pages.length);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
  });
  it('is no wider than a hundred signs, but for a single long word', () => {
    const long = text.split('\n').filter((line) => line.length > 100 && line.trim().includes(' '));
    expect(long).toEqual([]);
  });
  it('leaves no mark of the layout', () => {
    expect(text).not.toMatch(/\{(?:n|of|sheet:[^}]*)\}|undefined|NaN/);
  });
});
