/**
 * The last step of a build: runs the commands that are asked for most with the program in one file, and keeps beside it what the engine made
 * of its text (src/cli/kept.ts). Bundled and run by build.mjs: node keep.mjs FOLDER DEMO WORKSHOP SOMEWHERE
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { setEngine } from '../../src/cli/engine.ts';
import { KEPT, opened, scriptOf } from '../../src/cli/kept.ts';

const [node = '', own = '', folder = '', demo = '', workshop = '', somewhere = ''] = process.argv;
const RUNS = [
  ['check', demo, '--workshop', workshop],
  ['sheet', demo, '--out', somewhere],
];
// what is kept holds for an engine that is set as the command sets it; nothing is to be forgotten on the way
setEngine();
setFlagsFromString('--no-flush-bytecode');
const script = scriptOf(folder);
const { start } = opened(script, folder);
for (const run of RUNS) {
  process.argv = [node, own, ...run];
  await start();
  if (process.exitCode !== 0) process.exit();
}
setFlagsFromString('--flush-bytecode');
writeFileSync(join(folder, KEPT), script.createCachedData());
