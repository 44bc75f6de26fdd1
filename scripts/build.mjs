/** Fills dist/ anew: types checked and every file of src emitted, so that the package is both a command and a library. Run: npm run build */
import { spawnSync } from 'node:child_process';
import { chmodSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');

rmSync(join(root, 'dist'), { recursive: true, force: true });
const { status } = spawnSync(process.execPath, [compiler, '-p', root], { stdio: 'inherit' });
if (status !== 0) process.exit(status ?? 1);
chmodSync(join(root, 'dist', 'cli', 'main.js'), 0o755);
