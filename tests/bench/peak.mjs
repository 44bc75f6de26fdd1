/** Loaded before a measured program: when that ends, its peak memory in kB and its processor time in ms go out by channel 3. */
import { writeSync } from 'node:fs';
import process from 'node:process';

process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, `${maxRSS} ${(userCPUTime + systemCPUTime) / 1000}`);
});
