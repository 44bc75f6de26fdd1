/**
 * Pipe threads that do not seal on the thread, ISO 228-1, G1/16 to G1: Whitworth form, class A (half the tolerance) and B outside, one class
 * inside ('nut'). The standard sets no limits on the outside minor and the inside major; what the form leaves is given there.
 */
import { len, mm } from '../base/units.ts';
import type { ThreadLimits } from './iso965-metric.ts';
import { cite } from './sources.ts';
import { micron, type ThreadRecord, WHITWORTH_FORM } from './thread-form.ts';

type N = number;
/** mm, but for threads an inch. The pitches and depths are the standard's rounded ones. Last: tapping drill. */
const ROWS: readonly (readonly [
  size: string,
  perInch: N,
  pitch: N,
  depth: N,
  d: N,
  d2: N,
  d1: N,
  dLeast: N,
  d2A: N,
  d2B: N,
  d2Nut: N,
  d1Nut: N,
  drill: N,
])[] = [
  ['1/16', 28, 0.907, 0.581, 7.723, 7.142, 6.561, 7.509, 7.035, 6.928, 7.249, 6.843, 6.8],
  ['1/8', 28, 0.907, 0.581, 9.728, 9.147, 8.566, 9.514, 9.04, 8.933, 9.254, 8.848, 8.8],
  ['1/4', 19, 1.337, 0.856, 13.157, 12.301, 11.445, 12.907, 12.176, 12.051, 12.426, 11.89, 11.8],
  ['3/8', 19, 1.337, 0.856, 16.662, 15.806, 14.95, 16.412, 15.681, 15.556, 15.931, 15.395, 15.25],
  ['1/2', 14, 1.814, 1.162, 20.955, 19.793, 18.631, 20.671, 19.651, 19.509, 19.935, 19.172, 19],
  ['5/8', 14, 1.814, 1.162, 22.911, 21.749, 20.587, 22.627, 21.607, 21.465, 21.891, 21.128, 21],
  ['3/4', 14, 1.814, 1.162, 26.441, 25.279, 24.117, 26.157, 25.137, 24.995, 25.421, 24.658, 24.5],
  ['1', 11, 2.309, 1.479, 33.249, 31.77, 30.291, 32.889, 31.59, 31.41, 31.95, 30.931, 30.75],
];

export const pipeThreads: readonly ThreadRecord[] = ROWS.map((row) => {
  const [size, perInch, pitch, , d, d2, d1, , , , , , drill] = row;
  const self: ThreadRecord = {
    name: `G${size}`,
    family: 'G',
    form: WHITWORTH_FORM,
    nominal: mm(d),
    pitch: mm(pitch),
    perInch,
    basic: { major: mm(d), pitchDiameter: mm(d2), minor: mm(d1), root: mm(d1) },
    outside: ['A', 'B'],
    inside: ['nut'],
    usual: [{ drill: mm(drill), source: cite('pipe-drills'), standing: 'common practice' }],
    source: cite('iso-228'),
    standing: 'standard',
    limits: (side, cls) => limits(self, row, side, cls),
  };
  return self;
});

function limits(thread: ThreadRecord, row: (typeof ROWS)[number], side: ThreadLimits['side'], cls: string): ThreadLimits | undefined {
  const [, , , depth, d, d2, d1, dLeast, d2A, d2B, d2Nut, d1Nut] = row;
  const least = { A: d2A, B: d2B }[cls];
  const { name, nominal, pitch } = thread;
  const frame = {
    name,
    cls,
    side,
    nominal,
    pitch,
    hand: 'right',
    flankAngle: WHITWORTH_FORM.flankAngle,
    listed: 'standard',
    source: cite('iso-228'),
    standing: 'standard',
  } as const;
  if (side === 'inside') {
    if (cls !== 'nut') return undefined;
    const top = micron(d + d2Nut - d2);
    const minor = { lo: mm(d1), hi: mm(d1Nut) };
    return { ...frame, major: { lo: mm(d), hi: top }, majorOpen: true, pitchDiameter: { lo: mm(d2), hi: mm(d2Nut) }, minor, root: top };
  }
  if (least === undefined) return undefined;
  const root = len(mm(least) - mm(depth));
  return {
    ...frame,
    major: { lo: mm(dLeast), hi: mm(d) },
    pitchDiameter: { lo: mm(least), hi: mm(d2) },
    minor: { lo: root, hi: mm(d1) },
    root,
  };
}
