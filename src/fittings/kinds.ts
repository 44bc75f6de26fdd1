/** The kinds of fitting that can be asked for, each with the schema of its file. A new kind is a new row. */
import type { z } from 'zod';
import { checkValveSchema } from './check-valve/asked.ts';
import { stopValveSchema } from './stop-valve/asked.ts';
import { turnedPartSchema } from './turned-part/asked.ts';

/** What stands after `fitting:`, and the schema of the whole file; the schema's value is what that kind's design takes. */
export type FittingKinds = Readonly<Record<string, z.ZodType>>;

export const FITTING_KINDS = {
  'check-valve': checkValveSchema,
  'stop-valve': stopValveSchema,
  'turned-part': turnedPartSchema,
} as const satisfies FittingKinds;
