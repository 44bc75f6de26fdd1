/** `exercise` and `mark` in this process, on a small part: files that are written, orders from a file, every mistake in an order. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { consoleOf } from '../../src/cli/console.ts';
import { print } from '../../src/cli/print.ts';
import { run } from '../../src/cli/run.ts';
import { compile } from '../../src/compile.ts';

const PLUG = fileURLToPath(new URL('../../specs/fittings/parts/drain-plug.yaml', import.meta.url));
const DEMO = fileURLToPath(new URL('../../specs/fittings/launch-feed-check-valve.yaml', import.meta.url));
const ERRORS = fileURLToPath(new URL('../errors/orders/', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function said(argv: readonly string[]): Promise<{ readonly exit: number; readonly out: string; readonly err: string }> {
  const texts = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({ write: (text: string) => (texts[to] += text) });
  const tools = { compile: async (...all: Parameters<typeof compile>) => compile(...all), print };
  return { exit: await run(argv, tools, consoleOf(stream('out'), stream('err'), {})), ...texts };
}
const order = (text: string): string => {
  const path = join(folder, 'order.txt');
  writeFileSync(path, text);
  return path;
};

describe('exercise', () => {
  it('writes a PDF and a text, the same every time', async () => {
    expect((await said(['exercise', PLUG, '--out', join(folder, 'a')])).exit).toBe(0);
    expect((await said(['exercise', PLUG, '--out', join(folder, 'b')])).exit).toBe(0);
    const [a, b] = ['a', 'b'].map((name) => readdirSync(join(folder, name)).map((file) => readFileSync(join(folder, name, file))));
    expect(readdirSync(join(folder, 'a'))).toEqual(['drain-plug-exercise.pdf', 'drain-plug-exercise.txt']);
    expect(a).toEqual(b);
  });
  it('knows no part that the plan does not make', async () => {
    const { exit, err } = await said(['exercise', PLUG, '--part', 'plag']);
    expect([exit, err.includes("'plag'")]).toEqual([1, true]);
  });
});

describe('mark', () => {
  const text = async (): Promise<string> => {
    await said(['exercise', PLUG, '--out', join(folder, 'a')]);
    return readFileSync(join(folder, 'a', 'drain-plug-exercise.txt'), 'utf8');
  };

  it("the plan's own order, as the answer page has it, is right", async () => {
    const letters = /plan's own:\s+([A-Z ]+)/.exec(await text())?.[1] ?? '';
    expect(await said(['mark', PLUG, order(letters)])).toEqual({ exit: 0, out: 'Right: this order breaks no rule.\n', err: '' });
  });
  it('turned round, it is wrong, with reasons, and what is told puts it right', async () => {
    const letters = (/plan's own:\s+([A-Z ]+)/.exec(await text())?.[1] ?? '').trim();
    const { exit, out } = await said(['mark', PLUG, order([...letters].reverse().join(''))]);
    expect(exit).toBe(0);
    expect(out).toMatch(/rules? (is|are) broken/);
    const mended = /The order is right then: ([A-Z ]+)/.exec(out)?.[1] ?? '';
    expect((await said(['mark', PLUG, order(mended), '--json'])).out).toContain('"right": true');
  });
  it('asks whose strips they are where the plan makes several parts', async () => {
    const { exit, err } = await said(['mark', DEMO, order('A B')]);
    expect([exit, err.includes('--part NAME')]).toEqual([1, true]);
  });

  const examples = readdirSync(ERRORS).filter((name) => name.endsWith('.order.txt'));
  it('every mistake in an order has its example', () => {
    const codes = ['empty', 'strip-twice', 'strips-missing', 'unknown-strip'];
    expect(examples.map((name) => name.replace('.order.txt', '')).sort()).toEqual(codes);
  });
  it.each(examples)('%s', async (name) => {
    const path = join(ERRORS, name);
    const { exit, err } = await said(['mark', PLUG, path]);
    expect(exit).toBe(1);
    await expect(err.replaceAll(path, name)).toMatchFileSnapshot(path.replace('.order.txt', '.said.txt'));
  });
});
