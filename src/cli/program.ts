/** The program: the terminal, the commands, and the phases, each loaded only when a command asks for it. */
import process from 'node:process';
import { consoleOf } from './console.ts';
import { run } from './run.ts';
import type { Tools } from './tools.ts';

const tools: Tools = {
  compile: async (inputs, assets) => (await import('../compile.ts')).compile(inputs, assets),
  print: async (...all) => (await import('./print.ts')).print(...all),
};

/** One run, asked for as this process was; its exit code is set. */
export async function start(): Promise<void> {
  // a reader that closes early (`| head`) is no fault
  process.stdout.on('error', (cause: NodeJS.ErrnoException) => {
    if (cause.code !== 'EPIPE') throw cause;
  });
  process.exitCode = await run(process.argv.slice(2), tools, consoleOf(process.stdout, process.stderr, process.env, process.stdin));
}
