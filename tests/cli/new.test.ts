/** `new`, its answers from a pipe: what it writes is read and planned; slips are asked again; nothing is written over unasked. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { consoleOf } from '../../src/cli/console.ts';
import { makeNew } from '../../src/cli/new.ts';
import { run } from '../../src/cli/run.ts';
import type { Tools } from '../../src/cli/tools.ts';
import { compile } from '../../src/compile.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { FITTING_QUESTIONS } from '../../src/fittings/questions.ts';
import { demoFitting, demoWorkshop } from '../fixtures/shop.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function told(kind: string, answers: readonly string[]) {
  const said = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({ write: (text: string) => (said[to] += text) });
  const path = join(folder, 'mine.yaml');
  const console = consoleOf(stream('out'), stream('err'), {}, Readable.from([answers.map((a) => `${a}\n`).join('')]));
  return { exit: await makeNew([kind, path], {}, console), ...said, path };
}
const enters = Array.from({ length: 90 }, () => '');
const text = (path: string) => ({ name: 'mine.yaml', text: readFileSync(path, 'utf8') });

describe('new', () => {
  it.each(Object.keys(FITTING_QUESTIONS))(
    '%s, by Enter alone, is planned and proved',
    async (kind) => {
      const { exit, path } = await told(kind, enters);
      expect(exit).toBe(0);
      const { plan, found } = compile({ fitting: text(path) }, { workshop: demoWorkshop });
      expect(found).toEqual([]);
      expect(plan?.parts.filter((p) => !p.proof.holds)).toEqual([]);
    },
    120_000,
  );
  it('help offers every kind that there is', async () => {
    const said = { out: '' };
    const console = consoleOf({ write: (text: string) => (said.out += text) }, { write: () => true }, {}, Readable.from([]));
    const idle: Tools = { compile: () => Promise.reject(new Error('nothing is planned')), print: () => Promise.resolve('') };
    expect(await run(['new', '--help'], idle, console)).toBe(0);
    const flat = said.out.replace(/\s+/g, ' ');
    expect(flat).toContain(`one of: workshop, ${Object.keys(FITTING_KINDS).sort().join(', ')}.`);
  });
  it('workshop, by Enter alone, plans the demo', async () => {
    const { exit, path } = await told('workshop', enters);
    expect(exit).toBe(0);
    expect(compile({ fitting: demoFitting, workshop: text(path) }, { workshop: demoWorkshop }).found).toEqual([]);
  });
  it('asks again where the reader finds a fault', async () => {
    const { exit, out, path } = await told('check-valve', ['', 'injectr', 'injector', '7', '6 bar', ...enters]);
    expect(exit).toBe(0);
    expect(out).toContain("Did you mean 'injector'?");
    expect(text(path).text).toMatch(/serves: injector .*\n {2}pressure: 6 bar /);
  });
  it('ends clearly where the answers end, and writes nothing', async () => {
    const { exit, err, path } = await told('check-valve', ['', 'injector']);
    expect({ exit, err }).toMatchObject({ exit: 1, err: expect.stringContaining("end at 'duty.pressure'") });
    expect(() => readFileSync(path)).toThrow();
  });
  it('asks nothing where the file could not be written', async () => {
    mkdirSync(join(folder, 'mine.yaml'));
    const { exit, out, err } = await told('check-valve', enters);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toContain(`'${join(folder, 'mine.yaml')}' is there already, and it is no file`);
  });
  it.each([
    ['', 1],
    ['yes', 0],
  ])('writes over a file only when told: %j', async (answer, exit) => {
    writeFileSync(join(folder, 'mine.yaml'), 'kept');
    const done = await told('check-valve', [answer, ...enters]);
    expect(done.exit).toBe(exit);
    expect(text(done.path).text === 'kept').toBe(exit === 1);
  });
});
