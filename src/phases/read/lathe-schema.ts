/** The keys of `lathe` in a workshop file. What they mean when absent stands in lathe.ts. */
import * as z from 'zod';
import { choice, count, flag, length, line, list, quantity, record } from '../../base/asking.ts';
import { moduleNamed, pitchNamed } from '../../handbook/pitches.ts';
import { bounds } from '../../handbook/reading.ts';
import { speeds } from './speeds.ts';

const speed = () => quantity('speed', bounds('lathe.speed'));
const dial = () =>
  record({
    reads: choice(['diameter', 'travel']).optional(),
    division: length(bounds('dial.division')).optional(),
    turn: length(bounds('dial.turn')).optional(),
    units: choice(['mm', 'in']).optional(),
    backlash: length(bounds('backlash')).optional(),
  });
const wheels = () => record({ teeth: count(bounds('lathe.gear')), count: count(bounds('lathe.gear.count')).optional() });
const shafts = () => length(bounds('banjo'));
const banjo = () =>
  record({
    module: length(bounds('banjo.module'), moduleNamed),
    centres: shafts(),
    slot: record({ from: shafts(), to: shafts() }).refine(({ from, to }) => from <= to, {
      params: { problem: 'read.range-backwards', grounds: {} },
    }),
    boss: length(bounds('hole')),
  });
const threadingDial = () => record({ wheels: list(count(bounds('dial-wheel'))), marks: count(bounds('dial-marks')) });
const power = () => record({ 'up-to': speed().optional(), 'full-power-from': speed() });
const travel = () => length(bounds('lathe.travel')).optional();

export const latheSchema = () =>
  record({
    'centre-height': length(bounds('lathe.centre-height')).optional(),
    'over-slide': length(bounds('lathe.over-slide')).optional(),
    'between-centres': length(bounds('lathe.between-centres')).optional(),
    'spindle-bore': length(bounds('lathe.spindle-bore')).optional(),
    nose: choice(['screwed', 'flanged', 'cam']).optional(),
    speeds: speeds().optional(),
    motor: quantity('power', bounds('lathe.motor')).optional(),
    torque: z.union([power(), list(power())]).optional(),
    leadscrew: length(bounds('lathe.leadscrew'), pitchNamed).optional(),
    gears: list(z.union([wheels(), count(bounds('lathe.gear'))])).optional(),
    banjo: banjo().optional(),
    'half-nuts': flag().optional(),
    tumbler: flag().optional(),
    reverse: flag().optional(),
    'threading-dial': z.union([threadingDial(), flag()]).optional(),
    dials: record({
      cross: dial().optional(),
      top: dial().optional(),
      tailstock: dial().optional(),
      carriage: dial().optional(),
    }).optional(),
    travel: record({ cross: travel(), top: travel(), tailstock: travel() }).optional(),
    'tailstock-taper': line().optional(),
    'tool-post': choice(['quick-change', 'clamped']).optional(),
    'jaw-clearance': length(bounds('jaw-clearance')).optional(),
    'slide-clearance': length(bounds('jaw-clearance')).optional(),
  });
export type LatheKeys = z.output<ReturnType<typeof latheSchema>>;
