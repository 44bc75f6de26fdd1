/**
 * What can be described and not be made: an example of each fault that planning finds, with all that is said of it. And that every code of the
 * program has an example somewhere.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { report } from '../../src/base/report.ts';
import { words } from '../../src/base/words.ts';
import { compile } from '../../src/compile.ts';
import { loadWords } from '../../src/files.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'tests', 'errors', 'plans');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const WORDS = words(loadWords('en'));
const EXAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();
/** A second example of one fault has a name of its own behind the code. */
const codeOf = (name: string): string => name.split('.').slice(0, 2).join('.');

/** Nothing that a person writes raises these alone: the test that does, from a part or a file made for it. */
const RAISED_IN: Readonly<Record<string, string>> = {
  'chain.cannot-be-fitted': 'tests/phases/stack.test.ts',
  'chain.cannot-be-held': 'tests/phases/stack.test.ts',
  'chart.not-located': 'tests/phases/chart.test.ts',
  'chart.not-true': 'tests/phases/truths.test.ts',
  'read.too-big': 'tests/phases/read.test.ts',
};

describe('a plan', () => {
  it.each(EXAMPLES)('%s', async (name) => {
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const { plan, found } = compile({ fitting: { name: 'my-part.yaml', text } }, { workshop: WORKSHOP });
    expect(plan).toBeUndefined();
    expect(found.filter((d) => d.severity === 'error').map((d) => d.code)).toContain(codeOf(name));
    await expect(report(found, { 'my-part.yaml': text }, WORDS)).toMatchFileSnapshot(join(FOLDER, name.replace('.yaml', '.txt')));
  });
});

describe('every code that can be said', () => {
  const coded = WORDS.ids().flatMap((id) => /^error\.([a-z]+\.[a-z0-9-]+)$/.exec(id)?.[1] ?? []);
  const files = readdirSync(join(ROOT, 'tests', 'errors'), { recursive: true, encoding: 'utf8' });
  it('has an example under tests/errors, or a test that raises it', () => {
    const shown = new Set(
      files.flatMap((file) => /([a-z]+\.[a-z0-9-]+)(\.said|\.command)?\.(txt|yaml)$/.exec(file.split('/').at(-1) ?? '')?.[1] ?? []),
    );
    const orders = files.flatMap((file) => /^orders\/([a-z-]+)\.said\.txt$/.exec(file)?.[1] ?? []);
    for (const one of orders) shown.add(`order.${one}`);
    expect(coded.length).toBeGreaterThan(200);
    expect(coded.filter((code) => !shown.has(code) && !(code in RAISED_IN))).toEqual([]);
  });
  it.each(Object.entries(RAISED_IN))('%s is raised in %s', (code, test) => {
    expect(coded).toContain(code);
    expect(readFileSync(join(ROOT, test), 'utf8')).toContain(`'${code}'`);
  });
});
