/** What may be varied in a stop valve. */
import { mm } from '../../base/units.ts';
import { stopCones } from '../../handbook/duty.ts';
import { stepsAbout, stepsUpTo, type Vary } from '../vary.ts';
import type { StopValveAsked } from './asked.ts';

const HALF = 1 / 2;

export const STOP_VALVE_VARIES: readonly Vary<StopValveAsked>[] = [
  {
    ...{
      key: 'bore',
      unit: 'mm',
      of: 'bore',
      shows: ['full-lift', 'travel', 'turns', 'opens', 'kv', 'steam-flow', 'close-force', 'torque', 'rim'],
    },
    values: (now) => stepsAbout(now, HALF),
    with: (asked, value) => ({ ...asked, bore: mm(value) }),
  },
  {
    ...{ key: 'cone', also: 'angle', unit: 'deg', of: 'cone', shows: ['full-lift', 'travel', 'turns', 'first-turn'] },
    values: () => stopCones,
    with: (asked, value, { bore }) => ({ ...asked, cone: value, ...(bore === undefined ? {} : { bore: mm(bore) }) }),
  },
  {
    ...{ key: 'lift', unit: 'mm', of: 'travel', shows: ['turns-to-stop', 'opens', 'kv', 'steam-flow'] },
    values: (now) => stepsUpTo(now, HALF),
    with: (asked, value, { bore }) => ({ ...asked, lift: mm(value), ...(bore === undefined ? {} : { bore: mm(bore) }) }),
  },
  {
    ...{
      key: 'pressure',
      unit: 'bar',
      of: 'pressure',
      shows: ['temperature', 'steam-flow', 'close-force', 'torque', 'rim', 'wall-margin', 'pipe-carries', 'test-pressure'],
    },
    values: (now) => stepsAbout(now, 1),
    with: (asked, value) => ({ ...asked, duty: { ...asked.duty, pressure: value } }),
  },
];
