/**
 * The sheet of every fitting, whole: its text as it is printed, and a digest of each page and of each grip's picture, so that a change of a
 * drawing is seen where no word changes. To renew them, after reading the diff as a turner would:
 *   npm run vitest -- tests/phases/sheet-goldens.test.ts -u
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Sheet, sheet } from '../../src/phases/sheet.ts';
import { writeText } from '../../src/render/text.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

const FOLDER = join(import.meta.dirname, '..', 'goldens', 'sheets');
const words = allWords();
/** Single parts described feature by feature have goldens of their own, shorter ones. */
const fittings = everyPlan.filter(({ spec }) => !spec.includes('/'));

const digest = (record: unknown): string => createHash('sha256').update(JSON.stringify(record)).digest('hex').slice(0, 16);
/** A line a page of the display list, then one a picture, by its part and grip. */
const drawingsOf = ({ document, drawn }: Sheet): string =>
  [
    ...document.pages.map((page) => `${digest(page.items)} page ${page.label} ${page.heading}`),
    ...drawn.map(({ key, picture }) => `${digest(picture.items)} picture ${key}`),
  ].join('\n');

describe.each(fittings)('the sheet of $spec', ({ spec, plan, stages }) => {
  const made = sheet(plan, stages, { words, advances: ADVANCES, language: 'en' });
  it('says what it said', async () => {
    await expect(writeText(made.view, made.document)).toMatchFileSnapshot(join(FOLDER, `${spec}.txt`));
  });
  it('is drawn as it was drawn', async () => {
    await expect(`${drawingsOf(made)}\n`).toMatchFileSnapshot(join(FOLDER, `${spec}.drawings`));
  });
});
