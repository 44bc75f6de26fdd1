/** The built program, run as a process of its own. */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { code, ROOT } from '../house/sources.ts';

export const MAIN = join(ROOT, 'dist', 'cli', 'main.js');
export const DEMO = join(ROOT, 'specs', 'fittings', 'launch-feed-check-valve.yaml');

export type Ran = { readonly exit: number | null; readonly out: string; readonly err: string };

/** `where`: folder to run in; `environment` comes on top of a bare one. Throws when the build is older than its sources. */
export function runBuilt(argv: readonly string[], where: string, environment: Readonly<Record<string, string>> = {}, main = MAIN): Ran {
  if (main === MAIN) demandFresh();
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...argv], {
    cwd: where,
    encoding: 'utf8',
    env: { PATH: process.env.PATH ?? '', ...environment },
  });
  return { exit: status, out: stdout, err: stderr };
}

export function demandFresh(): void {
  const built = existsSync(MAIN) ? statSync(MAIN).mtimeMs : 0;
  const newest = Math.max(...code().map(({ path }) => statSync(join(ROOT, path)).mtimeMs));
  if (built < newest) throw new Error('dist/ is older than src/: npm run build');
}
