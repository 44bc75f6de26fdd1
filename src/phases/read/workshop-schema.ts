/** The keys of a workshop file. What they mean when absent stands in workshop.ts. */

import * as z from 'zod';
import { choice, count, flag, length, line, list, madeOnce, quantity, record } from '../../base/asking.ts';
import { processes } from '../../handbook/capability.ts';
import { handlings } from '../../handbook/handling.ts';
import { bounds } from '../../handbook/reading.ts';
import { WISHES } from '../../model/wish.ts';
import { latheSchema } from './lathe-schema.ts';
import { sizes } from './sizes.ts';
import { toolsSchema } from './tools-schema.ts';

const chuck = () => length(bounds('chuck'));
const threeJaw = () =>
  record({
    'run-out': length(bounds('runout')).optional(),
    largest: chuck().optional(),
    smallest: length(bounds('hole')).optional(),
    inside: record({ from: chuck(), to: chuck() })
      .refine(({ from, to }) => from <= to, { params: { problem: 'read.range-backwards', grounds: {} } })
      .optional(),
  });

const holding = () =>
  record({
    'three-jaw': threeJaw().optional(),
    collets: sizes(bounds('hole')).optional(),
    sleeves: flag().optional(),
    'kept-sleeves': sizes(bounds('hole')).optional(),
    'soft-jaws': flag().optional(),
    'four-jaw': flag().optional(),
    mandrels: flag().optional(),
  });

const bar = () =>
  record({
    material: line(),
    section: choice(['round', 'hexagon']),
    across: sizes(bounds('bar.across')),
    length: length(bounds('bar.length')),
  });

const holds = () =>
  list(record({ process: choice(processes()), diameter: length(bounds('held')).optional(), length: length(bounds('held')).optional() }));

const instrument = () => record({ name: line(), reads: length(bounds('resolution')).optional() });
const handling = () => record(Object.fromEntries(handlings.map((id) => [id, quantity('time', bounds('minutes')).optional()])));
const difficulty = () => list(record({ process: choice(processes()), weight: count(bounds('difficulty')) }));

export const workshopSchema = madeOnce(() =>
  record({
    workshop: line(),
    lathe: latheSchema().optional(),
    holding: holding().optional(),
    tools: toolsSchema().optional(),
    measuring: list(z.union([instrument(), line()])).optional(),
    shelf: list(bar()).optional(),
    holds: holds().optional(),
    handling: handling().optional(),
    difficulty: difficulty().optional(),
    sheet: record({
      units: choice([...WISHES.units]).optional(),
      paper: choice([...WISHES.paper]).optional(),
      type: choice([...WISHES.type]).optional(),
    }).optional(),
    habits: record({
      'first-end': z.record(z.string(), choice(['first', 'second'])).optional(),
      avoid: list(line()).optional(),
      'die-below': length(bounds('hole')).optional(),
    }).optional(),
  }),
);
export type WorkshopKeys = z.output<ReturnType<typeof workshopSchema>>;
