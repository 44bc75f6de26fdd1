/** What can't be as a turned part is described: an example of each fault, with all that is said of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { report } from '../../src/base/report.ts';
import { words } from '../../src/base/words.ts';
import { compile } from '../../src/compile.ts';
import { loadWords } from '../../src/files.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'tests', 'errors', 'parts');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const WORDS = words(loadWords('en'));
const EXAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();
/** A second example of one fault has a name of its own behind the code. */
const codeOf = (name: string): string => name.split('.').slice(0, 2).join('.');

describe('a turned part', () => {
  it.each(EXAMPLES)('%s', async (name) => {
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const { plan, found } = compile({ fitting: { name: 'my-part.yaml', text } }, { workshop: WORKSHOP });
    expect(plan).toBeUndefined();
    expect([...new Set(found.map((d) => d.code))]).toEqual([codeOf(name)]);
    await expect(report(found, { 'my-part.yaml': text }, WORDS)).toMatchFileSnapshot(join(FOLDER, name.replace('.yaml', '.txt')));
  });
  it('has an example of every fault that has words', () => {
    const coded = WORDS.ids().flatMap((id) => /^error\.(design\.part-[a-z-]+)$/.exec(id)?.[1] ?? []);
    expect(coded.length).toBeGreaterThan(40);
    expect(coded.filter((code) => !EXAMPLES.includes(`${code}.yaml`))).toEqual([]);
  });
});
