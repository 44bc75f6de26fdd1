#!/usr/bin/env node
/** The program: the terminal, the commands, and the phases, each loaded only when a command asks for it. */
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { consoleOf } from './console.ts';
import { run } from './run.ts';
import type { Tools } from './tools.ts';

/**
 * How much of a function runs, in bytes of the engine's own code, before its optimising compiler looks at it: fifteen times the usual. A run
 * is short and nearly all of it runs for the first time; what was optimised early did not earn its cost. A long run is optimised as ever.
 */
const PATIENCE = 1_000_000;
setFlagsFromString(`--interrupt-budget=${PATIENCE}`);

const tools: Tools = {
  compile: async (inputs, assets) => (await import('../compile.ts')).compile(inputs, assets),
  print: async (...all) => (await import('./print.ts')).print(...all),
};

// a reader that closes early (`| head`) is no fault
process.stdout.on('error', (cause: NodeJS.ErrnoException) => {
  if (cause.code !== 'EPIPE') throw cause;
});
process.exitCode = await run(process.argv.slice(2), tools, consoleOf(process.stdout, process.stderr, process.env, process.stdin));
