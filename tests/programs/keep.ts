/**
 * The last step of a build: runs the demo once with the program in one file, and keeps beside it what the engine made of its text
 * (src/cli/kept.ts). Bundled and run by build.mjs: node keep.mjs FOLDER sheet DEMO --out SOMEWHERE
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { setEngine } from '../../src/cli/engine.ts';
import { KEPT, opened, scriptOf } from '../../src/cli/kept.ts';

const [folder = ''] = process.argv.splice(2, 1);
// what is kept holds for an engine that is set as the command sets it; nothing is to be forgotten on the way
setEngine();
setFlagsFromString('--no-flush-bytecode');
const script = scriptOf(folder);
await opened(script, folder).start();
setFlagsFromString('--flush-bytecode');
if (process.exitCode === 0) writeFileSync(join(folder, KEPT), script.createCachedData());
