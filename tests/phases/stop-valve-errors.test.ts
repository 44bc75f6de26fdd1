/** What can't be as a stop valve is asked for: an example of each fault, with all that is said of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { report } from '../../src/base/report.ts';
import { words } from '../../src/base/words.ts';
import { compile } from '../../src/compile.ts';
import { loadWords } from '../../src/files.ts';
import { STOP_VALVE_PLACES } from '../../src/fittings/stop-valve/places.ts';
import { code } from '../house/sources.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'tests', 'errors', 'stop-valve');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const WORDS = words(loadWords('en'));
const EXAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();

describe('a stop valve', () => {
  it.each(EXAMPLES)('%s', async (name) => {
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const { plan, found } = compile({ fitting: { name: 'my-valve.yaml', text } }, { workshop: WORKSHOP });
    expect(plan === undefined).toBe(found.some((d) => d.severity === 'error'));
    expect(found.map((d) => d.code)).toContain(name.replace('.yaml', ''));
    await expect(report(found, { 'my-valve.yaml': text }, WORDS)).toMatchFileSnapshot(join(FOLDER, name.replace('.yaml', '.txt')));
  });
  it('has an example of every fault of its own', () => {
    const own = code()
      .filter((file) => file.path.startsWith('src/fittings/stop-valve/') && !file.path.endsWith('places.ts'))
      .flatMap((file) => file.tokens.flatMap((t) => (t.kind === 'string' && t.text.startsWith('design.') ? [t.text] : [])));
    expect(own.filter((one) => !(one in STOP_VALVE_PLACES))).toEqual([]);
    expect(own.filter((one) => !EXAMPLES.includes(`${one}.yaml`))).toEqual([]);
  });
});
