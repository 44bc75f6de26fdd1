/** `why --graph`, in this process, for the demo; and two changes that help only together, told. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { consoleOf } from '../../src/cli/console.ts';
import { run } from '../../src/cli/run.ts';
import { compile } from '../../src/compile.ts';
import type { Refusal } from '../../src/model/plan.ts';
import { whyNot } from '../../src/phases/why.ts';
import { showWhyNot } from '../../src/render/why.ts';
import { allWords } from '../render/assets.ts';

const DEMO = fileURLToPath(new URL('../../specs/fittings/launch-feed-check-valve.yaml', import.meta.url));
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function said(...argv: readonly string[]): Promise<{ readonly exit: number; readonly out: string }> {
  let out = '';
  const stream = { isTTY: false, write: (text: string) => (out += text) };
  const tools = {
    compile: async (inputs: Parameters<typeof compile>[0], assets: Parameters<typeof compile>[1]) => compile(inputs, assets),
    print: async () => '',
  };
  return { exit: await run([...argv], tools, consoleOf(stream, stream, {})), out };
}

describe('why --graph', () => {
  it('writes a picture and a text of one part, and says where', async () => {
    const { out } = await said('why', DEMO, 'union-nut', '--graph', '--out', folder);
    const names = ['launch-feed-check-valve-union-nut.dot', 'launch-feed-check-valve-union-nut.svg'];
    expect(readdirSync(folder).sort()).toEqual(names);
    for (const name of names) expect(out).toContain(join(folder, name));
    expect(readFileSync(join(folder, names[0] ?? ''), 'utf8')).toMatch(/^digraph "What must come before what: union-nut" \{/);
    expect(readFileSync(join(folder, names[1] ?? ''), 'utf8')).toMatch(/^<svg /);
  });
  it('writes all parts where none is named', async () => {
    await said('why', DEMO, '--graph', '--out', folder);
    const parts = new Set(readdirSync(folder).map((name) => name.replace(/\.(svg|dot)$/, '')));
    expect(parts.size * 2).toBe(readdirSync(folder).length);
    expect([...parts]).toEqual(expect.arrayContaining(['launch-feed-check-valve-body', 'launch-feed-check-valve-d-bit-4.5']));
  });
});

describe('what would help', () => {
  const refused = (what: string, rule: string): Refusal => ({ what, because: { rule, grounds: {} } });
  const [a, b] = [refused('plug/jaws', 'one'), refused('plug/ream', 'two')];
  const say = allWords('{{#*inline "rule.one.title"}}Too short{{/inline}}{{#*inline "rule.two.title"}}No reamer{{/inline}}');
  it('is told in pairs where nothing helps alone', () => {
    const text = showWhyNot(whyNot({ part: 'plug', kind: 'plug', refused: [], wouldHelp: [], wouldHelpPairs: [[a, b]], stuck: [] }), say);
    expect(text).toContain('Two together');
    expect(text).toContain('  jaws (Too short) and ream (No reamer)');
  });
});
