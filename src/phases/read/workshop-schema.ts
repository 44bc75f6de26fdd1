/** The keys of a workshop file. What they mean when absent stands in workshop.ts. */

import { z } from 'zod';
import { choice, count, flag, length, line, list, quantity, record } from '../../base/asking.ts';
import { processes } from '../../handbook/capability.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';
import { drillSizes, sizes } from './sizes.ts';

const hole = () => length(bounds('hole'));
const speed = () => quantity('speed', bounds('lathe.speed'));
const speedRange = record({ from: speed(), to: speed() }).refine(({ from, to }) => from <= to, {
  params: { problem: 'read.range-backwards', grounds: {} },
});
const dial = record({
  reads: choice(['diameter', 'travel']),
  division: length(bounds('dial.division')),
  turn: length(bounds('dial.turn')),
});
/** A tool that goes into a hole: the smallest hole, and how deep. */
const inside = record({ smallest: hole(), reach: length(bounds('reach')) });

const lathe = record({
  'centre-height': length(bounds('lathe.centre-height')),
  'between-centres': length(bounds('lathe.between-centres')),
  'spindle-bore': length(bounds('lathe.spindle-bore')),
  nose: choice(['screwed', 'flanged', 'cam']).optional(),
  speeds: z.union([list(speed()), speedRange]),
  motor: quantity('power', bounds('lathe.motor')),
  leadscrew: length(bounds('lathe.leadscrew')),
  gears: list(count(bounds('lathe.gear'))).optional(),
  dials: record({ cross: dial, top: dial, tailstock: dial, carriage: dial.optional() }),
  'jaw-clearance': length(bounds('jaw-clearance')).optional(),
});

const holding = record({
  'three-jaw': record({ 'run-out': length(bounds('runout')).optional(), largest: length(bounds('chuck')).optional() }).optional(),
  collets: sizes(bounds('hole')).optional(),
  sleeves: flag().optional(),
  'soft-jaws': flag().optional(),
  'four-jaw': flag().optional(),
  mandrels: flag().optional(),
});

const tools = record({
  material: choice(['HSS', 'carbide']).optional(),
  turning: flag().optional(),
  chamfering: flag().optional(),
  parting: record({ width: length(bounds('blade')), largest: length(bounds('parts')) }).optional(),
  grooving: record({ width: length(bounds('blade')) }).optional(),
  boring: list(inside).optional(),
  'threading-outside': flag().optional(),
  'threading-inside': inside.optional(),
  'centre-drills': list(record({ name: line(), pilot: hole(), mouth: hole() })).optional(),
  drills: drillSizes(bounds('hole')).optional(),
  reamers: sizes(bounds('hole')).optional(),
  'silver-steel': sizes(bounds('hole')).optional(),
  taps: list(thread()).optional(),
  dies: list(thread()).optional(),
  'd-bits': sizes(bounds('hole')).optional(),
  'gauge-nuts': list(thread()).optional(),
  files: flag().optional(),
  'filing-guide': flag().optional(),
  knurling: flag().optional(),
  'drill-press': flag().optional(),
  torch: flag().optional(),
});

const bar = record({
  material: line(),
  section: choice(['round', 'hexagon']),
  across: sizes(bounds('bar.across')),
  length: length(bounds('bar.length')),
});

const holds = list(
  record({ process: choice(processes()), diameter: length(bounds('held')).optional(), length: length(bounds('held')).optional() }),
);

export const workshopSchema = record({
  workshop: line(),
  lathe,
  holding: holding.optional(),
  tools: tools.optional(),
  measuring: list(line()).optional(),
  shelf: list(bar).optional(),
  holds: holds.optional(),
  habits: record({
    'first-end': z.record(z.string(), choice(['first', 'second'])).optional(),
    avoid: list(line()).optional(),
    'die-below': hole().optional(),
  }).optional(),
});
export type WorkshopKeys = z.output<typeof workshopSchema>;
