/** Speeds of a spindle as a workshop file writes them: the steps of its pulleys, or a range. */
import * as z from 'zod';
import { list, quantity, record } from '../../base/asking.ts';
import { bounds } from '../../handbook/reading.ts';
import type { Workshop } from '../../model/workshop.ts';

const speed = () => quantity('speed', bounds('lathe.speed'));
const range = () =>
  record({ from: speed(), to: speed() }).refine(({ from, to }) => from <= to, {
    params: { problem: 'read.range-backwards', grounds: {} },
  });

export const speeds = () => z.union([list(speed()), range()]);

/** Steps by rising speed. */
export function stepsOrRange(said: z.output<ReturnType<typeof speeds>>): Workshop['lathe']['speeds'] {
  return Array.isArray(said) ? { steps: [...said].sort((a, b) => a - b) } : said;
}
