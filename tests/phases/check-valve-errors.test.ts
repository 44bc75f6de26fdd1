/** What can't be, or is warned of, as a check valve is asked for: an example of each fault of sizes, duty, strength and metal, with all that is said of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { report } from '../../src/base/report.ts';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { CHECK_VALVE_PLACES } from '../../src/fittings/check-valve/places.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { SIZINGS } from '../../src/fittings/sizings.ts';
import { placeFindings } from '../../src/phases/read/placed.ts';
import { read } from '../../src/phases/read.ts';
import { code } from '../house/sources.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'tests', 'errors', 'check-valve');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const WORDS = words(loadWords('en'));
const EXAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();

describe('a check valve', () => {
  it.each(EXAMPLES)('%s', async (name) => {
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const fitting = { name: 'my-valve.yaml', text };
    const job = read({ fitting }, WORKSHOP, FITTING_KINDS);
    if (!job.value) throw new Error(`${name} cannot be read`);
    const reasoned = SIZINGS['check-valve']?.reason(job.value.asked, job.value.workshop);
    const found = placeFindings(reasoned?.found ?? [], fitting, CHECK_VALVE_PLACES);
    expect(found.map((d) => d.code)).toContain(name.replace('.yaml', ''));
    await expect(report(found, { 'my-valve.yaml': text }, WORDS)).toMatchFileSnapshot(join(FOLDER, name.replace('.yaml', '.txt')));
  });
  it('has an example of every fault of sizes, duty, strength and metal', () => {
    const files = ['flow.ts', 'seat.ts', 'working.ts', 'sizes.ts', 'stop.ts'].map((f) => `src/fittings/check-valve/${f}`);
    const own = code()
      .filter((file) => [...files, 'src/fittings/strength.ts'].includes(file.path))
      .flatMap((file) => file.tokens.flatMap((t) => (t.kind === 'string' && t.text.startsWith('design.') ? [t.text] : [])));
    const elsewhere = ['design.pipe-wall', 'design.galls'];
    expect(own.length).toBeGreaterThan(15);
    expect([...new Set(own)].filter((one) => !EXAMPLES.includes(`${one}.yaml`) && !elsewhere.includes(one))).toEqual([]);
  });
});
