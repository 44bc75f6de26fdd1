/** What may be varied in a check valve. */
import { mm } from '../../base/units.ts';
import { ballSizes } from '../../handbook/balls.ts';
import { boreAtContact } from '../../handbook/valve-ball.ts';
import { TENTH } from '../limits.ts';
import { nearOf, stepsAbout, type Vary } from '../vary.ts';
import type { CheckValveAsked } from './asked.ts';

const STEP = 0.1;

export const CHECK_VALVE_VARIES: readonly Vary<CheckValveAsked>[] = [
  {
    ...{
      key: 'ball',
      unit: 'mm',
      of: 'ball',
      shows: ['bore', 'contact', 'lift', 'curtain', 'chamber', 'speed', 'crack', 'lag', 'edge-load'],
    },
    values: (now, { pipe }) => {
      const system = pipe.outside % TENTH === 0 ? 'metric' : 'inch';
      return nearOf(
        ballSizes.filter((ball) => ball.system === system).map((ball) => ball.diameter),
        now,
      );
    },
    with: (asked, value) => ({ ...asked, ball: mm(value) }),
  },
  {
    ...{
      key: 'bore',
      unit: 'mm',
      of: 'bore',
      shows: ['contact', 'speed', 'lift', 'curtain', 'chamber', 'crack', 'seat-force', 'edge-load'],
    },
    values: (now, _asked, { tools }) => {
      const drawer = [...tools.silverSteel, ...tools.dBits, ...tools.reamers].filter((d) => d > mm(now / 2) && d < mm(now * 2));
      return nearOf([...drawer, ...stepsAbout(now, STEP).map(mm)], now);
    },
    with: (asked, value, { ball }) => ({ ...asked, bore: mm(value), ...(ball === undefined ? {} : { ball: mm(ball) }) }),
  },
  {
    ...{ key: 'angle', unit: 'deg', of: 'contact', shows: ['bore', 'lift', 'curtain', 'chamber', 'speed', 'crack', 'edge-load'] },
    values: (now) => stepsAbout(now, 1),
    with: (asked, value, { ball = 0 }) => ({ ...asked, ball: mm(ball), bore: mm(boreAtContact(ball, value)) }),
  },
  {
    ...{ key: 'lift', unit: 'mm', of: 'lift', shows: ['curtain', 'fall', 'lag', 'hammer'] },
    values: (now) => stepsAbout(now, STEP),
    with: (asked, value) => ({ ...asked, lift: mm(value) }),
  },
  {
    ...{
      key: 'pressure',
      unit: 'bar',
      of: 'pressure',
      shows: ['temperature', 'seat-force', 'edge-load', 'wall-margin', 'strip.seat', 'pipe-carries', 'test-pressure'],
    },
    values: (now) => stepsAbout(now, 1),
    with: (asked, value) => ({ ...asked, duty: { ...asked.duty, pressure: value } }),
  },
];
