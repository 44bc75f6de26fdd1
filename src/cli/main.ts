#!/usr/bin/env node
/** Starts the program: as the build kept it, where a command plans and this is the engine that kept it; else in pieces. */
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { setEngine } from './engine.ts';
import { kept } from './kept.ts';

setEngine();
const { start } = kept(fileURLToPath(new URL('.', import.meta.url)), process.argv[2]) ?? (await import('./program.ts'));
await start();
