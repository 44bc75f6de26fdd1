/** Loaded before a measured program: when that ends, its peak memory in kB goes out by channel 3. */
import { writeSync } from 'node:fs';
import process from 'node:process';

process.on('exit', () => writeSync(3, String(process.resourceUsage().maxRSS)));
