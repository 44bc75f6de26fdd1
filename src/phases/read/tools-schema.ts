/** The keys of `tools` in a workshop file. What they mean when absent stands in tools.ts. */
import * as z from 'zod';
import { ask, choice, flag, length, line, list, record } from '../../base/asking.ts';
import { nearest } from '../../base/nearest.ts';
import type { Problem } from '../../base/quantity.ts';
import { shown } from '../../base/written.ts';
import { centreDrills } from '../../handbook/centre-drills.ts';
import { bounds } from '../../handbook/reading.ts';
import { handedThread } from '../../handbook/thread-name.ts';
import { drillSizes, sizes } from './sizes.ts';
import { speeds } from './speeds.ts';

const hole = () => length(bounds('hole'));
const material = () => choice(['HSS', 'carbide']).optional();
const nose = () => length(bounds('nose')).optional();
/** A tool that goes into a hole: the smallest hole, how deep, and the bar that it is made of. */
const inside = () => ({ smallest: hole(), reach: length(bounds('reach')), shank: hole().optional() });
const turner = () =>
  record({
    name: line().optional(),
    hand: choice(['right', 'left', 'both']).optional(),
    'nose-radius': nose(),
    material: material(),
  });
const parting = () =>
  record({
    width: length(bounds('blade')),
    largest: length(bounds('parts')),
    reach: length(bounds('reach')).optional(),
    material: material(),
  });
const centreDrill = () => record({ name: line(), pilot: hole(), mouth: hole() });

/** A centre drill of the standard, by what stands on it: A1.6/3.35. */
const centreDrillName = () =>
  ask({ type: 'string' }, (value): string | Problem => {
    const word = String(value).replace(/\s/g, '').toUpperCase();
    const found = centreDrills.find((c) => c.name === word || c.name === `A${word}`);
    const names = centreDrills.map((c) => c.name);
    return (
      found?.name ?? {
        problem: 'read.not-a-centre-drill',
        grounds: { word: shown(String(value)), near: nearest(word, names) ?? '', names: names.join(', ') },
      }
    );
  });

export const toolsSchema = () =>
  record({
    material: material(),
    turning: z.union([list(turner()), flag()]).optional(),
    'nose-radius': nose(),
    chamfering: flag().optional(),
    parting: z.union([parting(), flag()]).optional(),
    grooving: record({ width: length(bounds('blade')), material: material() }).optional(),
    boring: list(record({ ...inside(), 'nose-radius': nose(), material: material() })).optional(),
    'threading-outside': flag().optional(),
    'threading-inside': z.union([record(inside()), list(record(inside()))]).optional(),
    'threading-tip': choice(['sharp', 'rounded']).optional(),
    'centre-drills': list(z.union([centreDrill(), centreDrillName()])).optional(),
    drills: drillSizes(bounds('hole')).optional(),
    reamers: sizes(bounds('hole')).optional(),
    'silver-steel': sizes(bounds('hole')).optional(),
    taps: list(handedThread()).optional(),
    dies: list(handedThread()).optional(),
    'd-bits': sizes(bounds('hole')).optional(),
    'flat-d-bits': sizes(bounds('hole')).optional(),
    counterbores: list(record({ size: hole(), pilot: hole() })).optional(),
    'grooving-inside': record({
      width: length(bounds('blade')),
      smallest: hole(),
      reach: length(bounds('reach')),
      deep: length(bounds('recess')),
    }).optional(),
    'gauge-nuts': list(handedThread()).optional(),
    files: flag().optional(),
    'filing-guide': flag().optional(),
    knurling: flag().optional(),
    'radius-tools': sizes(bounds('radius')).optional(),
    'round-nosed': sizes(bounds('radius')).optional(),
    'drill-press': z.union([flag(), record({ speeds: speeds() })]).optional(),
    torch: flag().optional(),
  });
export type ToolsKeys = z.output<ReturnType<typeof toolsSchema>>;
