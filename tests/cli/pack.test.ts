/** Packed, installed in another folder, run from a third: nothing may hang on where the sources were. */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setEngine } from '../../src/cli/engine.ts';
import { kept } from '../../src/cli/kept.ts';
import { ROOT } from '../house/sources.ts';
import { DEMO, demandFresh, runBuilt } from './built.ts';

const PATIENCE = 120_000;
let folder = '';
let installed = '';
const run = (program: string, argv: readonly string[], cwd: string): string => {
  const { status, stdout, stderr } = spawnSync(program, argv, { cwd, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program} ${argv.join(' ')}: ${stderr}`);
  return stdout;
};

beforeAll(() => {
  demandFresh();
  folder = mkdtempSync(join(tmpdir(), 'valvewright-pack-'));
  const [packed] = JSON.parse(run('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], ROOT)) as {
    readonly filename: string;
  }[];
  if (!packed) throw new Error('nothing was packed');
  installed = join(folder, 'home', 'node_modules', 'valvewright');
  mkdirSync(installed, { recursive: true });
  run('tar', ['-xzf', join(folder, packed.filename), '--strip-components=1', '-C', installed], folder);
  for (const path of runtimePackages()) cpSync(join(ROOT, path), join(folder, 'home', path), { recursive: true });
}, PATIENCE);
afterAll(() => rmSync(folder, { recursive: true, force: true }), PATIENCE);

/** Folders of the packages that run time needs, and no others, as the lock file lists them: an installation without a network. */
function runtimePackages(): readonly string[] {
  const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    readonly packages: Readonly<Record<string, { readonly dev?: boolean; readonly optional?: boolean }>>;
  };
  return Object.entries(packages)
    .filter(([path, { dev, optional }]) => path !== '' && !dev && (!optional || existsSync(join(ROOT, path))))
    .map(([path]) => path);
}

describe('the package', () => {
  it('holds what it needs and nothing of its making', () => {
    expect(readdirSync(installed).sort()).toEqual(
      expect.arrayContaining(['LICENSE', 'README.md', 'dist', 'package.json', 'specs', 'templates']),
    );
    for (const name of ['src', 'tests', 'node_modules', 'out']) expect(existsSync(join(installed, name))).toBe(false);
  });
  it('prints the demo from a third folder', () => {
    const third = join(folder, 'third');
    mkdirSync(third);
    const { exit, out, err } = runBuilt(['sheet', DEMO], third, {}, join(installed, 'dist', 'cli', 'main.js'));
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out).toBe(`Wrote ${join('out', 'launch-feed-check-valve.pdf')}\n`);
    expect(
      readFileSync(join(third, 'out', 'launch-feed-check-valve.pdf'))
        .subarray(-6)
        .toString(),
    ).toContain('%%EOF');
  });
  it('starts from what the engine kept, where the engine is the same', () => {
    setEngine();
    expect(kept(join(installed, 'dist', 'cli'), 'sheet')?.start).toBeTypeOf('function');
  });
  it('is a library', () => {
    writeFileSync(join(folder, 'home', 'use.mjs'), "import * as all from 'valvewright'; console.log(Object.keys(all).sort().join(' '));");
    expect(run(process.execPath, ['use.mjs'], join(folder, 'home')).split(/\s/)).toEqual(
      expect.arrayContaining(['compile', 'sheet', 'writePdf']),
    );
  });
  it('does as a library what its README shows', () => {
    const home = join(folder, 'home');
    const [, example = ''] = /```js\n([\s\S]*?)```/.exec(readFileSync(join(installed, 'README.md'), 'utf8')) ?? [];
    writeFileSync(join(home, 'example.mjs'), example);
    cpSync(DEMO, join(home, 'check.yaml'));
    expect(run(process.execPath, ['example.mjs'], home)).toBe('');
    expect(readFileSync(join(home, 'check.pdf')).subarray(0, 8).toString()).toBe('%PDF-1.7');
    writeFileSync(join(home, 'check.yaml'), 'fitting: check-valve\n');
    rmSync(join(home, 'check.pdf'));
    expect(spawnSync(process.execPath, ['example.mjs'], { cwd: home, encoding: 'utf8' }).stderr).toContain("'duty'");
    expect(existsSync(join(home, 'check.pdf'))).toBe(false);
  }, 60_000);
  it('has types that hold by themselves, with nothing of ours or of the engine known beforehand', () => {
    const home = join(folder, 'home');
    const lines = [
      "import { compile, type Compiled } from 'valvewright';",
      "import { loadAssets } from 'valvewright/files';",
      "const made: Compiled = compile({ fitting: { name: 'a.yaml', text: '' } }, loadAssets());",
      'export const codes: readonly string[] = made.found.map((one) => one.code);',
    ];
    writeFileSync(join(home, 'use.ts'), lines.join('\n'));
    const options = ['--ignoreConfig', '--noEmit', '--strict', '--target', 'es2022', '--module', 'nodenext', 'use.ts'];
    expect(run(join(ROOT, 'node_modules', '.bin', 'tsc'), options, home)).toBe('');
  }, 60_000);
});
