/** The kinds of fitting that can be asked for, each with the schema of its file. A new kind is a new row. */
import type * as z from 'zod';
import { checkValveSchema } from './check-valve/asked.ts';
import { plugSchema } from './plug/asked.ts';
import { spindleSchema } from './spindle/asked.ts';
import { stopValveSchema } from './stop-valve/asked.ts';
import { dBitSchema, gaugeNutSchema, mandrelSchema } from './tooling/asked.ts';
import { turnedPartSchema } from './turned-part/schema.ts';
import { unionSchema } from './union/asked.ts';

/** What stands after `fitting:`, and the schema of the whole file; the schema's value is what that kind's design takes. */
export type FittingKinds = Readonly<Record<string, () => z.ZodType>>;

export const FITTING_KINDS = {
  'check-valve': checkValveSchema,
  'stop-valve': stopValveSchema,
  spindle: spindleSchema,
  union: unionSchema,
  plug: plugSchema,
  mandrel: mandrelSchema,
  'd-bit': dBitSchema,
  'gauge-nut': gaugeNutSchema,
  'turned-part': turnedPartSchema,
} as const satisfies FittingKinds;
