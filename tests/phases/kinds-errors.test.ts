/** What can't be as a spindle, a union, a plug or tooling is asked for: an example of each fault, with all that is said of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { report } from '../../src/base/report.ts';
import { words } from '../../src/base/words.ts';
import { compile } from '../../src/compile.ts';
import { loadWords } from '../../src/files.ts';
import { PLACES } from '../../src/fittings/designs.ts';
import { code } from '../house/sources.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'tests', 'errors', 'kinds');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const WORDS = words(loadWords('en'));
const EXAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();
const KINDS = ['spindle', 'union', 'plug', 'tooling'];
/** Told with the check valve and the stop valve. */
const SHARED = ['design.pipe-wall', 'design.material-unknown', 'design.no-bar'];

describe('a kind of its own', () => {
  it.each(EXAMPLES)('%s', async (name) => {
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const { plan, found } = compile({ fitting: { name: 'mine.yaml', text } }, { workshop: WORKSHOP });
    expect(plan === undefined).toBe(found.some((d) => d.severity === 'error'));
    expect(found.map((d) => d.code)).toContain(name.replace('.yaml', ''));
    await expect(report(found, { 'mine.yaml': text }, WORDS)).toMatchFileSnapshot(join(FOLDER, name.replace('.yaml', '.txt')));
  });
  it('has an example of every fault of its own, and a key for each to stand at', () => {
    const places = new Set(Object.values(PLACES).flatMap((one) => Object.keys(one)));
    const own = code()
      .filter((file) => KINDS.some((kind) => file.path.startsWith(`src/fittings/${kind}/`)) && !file.path.endsWith('places.ts'))
      .flatMap((file) => file.tokens.flatMap((t) => (t.kind === 'string' && t.text.startsWith('design.') ? [t.text] : [])));
    expect(own.length).toBeGreaterThan(15);
    expect(own.filter((one) => !places.has(one))).toEqual([]);
    expect(own.filter((one) => !EXAMPLES.includes(`${one}.yaml`) && !SHARED.includes(one))).toEqual([]);
  });
});
