/**
 * The whole program in one file, beside it what the engine had made of its text when the build ran it once: an eighth of a run went into
 * reading text that is the same every time. Only the engine that made it takes it back; for any other it is as if it were not there.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import process from 'node:process';
import { Script } from 'node:vm';

export type Program = { start(): Promise<void> };
type Opened = (require: NodeJS.Require, module: { exports: unknown }, path: string) => void;

/** Commands that use most of the program. The others are quicker in pieces. */
const PLANS: readonly (string | undefined)[] = ['sheet', 'check', 'why', 'exercise', 'mark', 'reopen'];
export const WHOLE = 'whole.js';
/** Of this engine: another one would not take it. */
export const KEPT = `whole-${process.version}-${process.arch}.kept`;

/** `folder`: where both files stand. Nothing where they do not, or are of another engine. */
export function kept(folder: string, command: string | undefined): Program | undefined {
  if (!PLANS.includes(command)) return undefined;
  const cachedData = readIfThere(join(folder, KEPT));
  const script = cachedData && scriptOf(folder, cachedData);
  return script && script.cachedDataRejected !== true ? opened(script, folder) : undefined;
}

/** The file is one function in plain ASCII: its module around it (tests/programs/build.mjs). */
export function scriptOf(folder: string, cachedData?: Buffer): Script {
  const filename = join(folder, WHOLE);
  return new Script(readFileSync(filename, 'latin1'), { filename, ...(cachedData ? { cachedData } : {}) });
}

export function opened(script: Script, folder: string): Program {
  const path = join(folder, WHOLE);
  const module = { exports: {} };
  (script.runInThisContext() as Opened)(createRequire(path), module, path);
  return module.exports as Program;
}

function readIfThere(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}
