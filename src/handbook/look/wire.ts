/** `look wire`: what a micrometer reads over three wires at the limits of the pitch diameter. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len } from '../../base/units.ts';
import type { ThreadLimits } from '../iso965-metric.ts';
import { cite } from '../sources.ts';
import { hasClass, nearestThreads, thread } from '../threads.ts';
import { bestWire, overWires, usableWires } from '../wires.ts';
import { type Ask, type Found, type Ground, grounds, length, limits, type Part, row, rowAbout } from './answer.ts';

/** 'M10x1', 'M10x1 6h', 'M10x1 0.6 mm'. */
export function lookWire({ words }: Ask): Found {
  const { text, wire } = partWire(words);
  const found = thread(text);
  if (!found) return { unknown: text, near: nearestThreads(text) };
  const { thread: t, cls = t.outside[0] ?? '' } = found;
  const outside = t.limits('outside', cls);
  if (!outside) return { unknown: words, near: hasClass(t, cls) ? t.outside.map((c) => `${t.name} ${c}`) : nearestThreads(text) };
  const usable = usableWires(t.pitch, t.form.flankAngle);
  const sizes = wire === undefined ? roundSizes(usable) : [wire];
  const told = wirePart(outside, sizes);
  const fits = wire === undefined || (usable !== undefined && wire >= usable.lo && wire <= usable.hi);
  return {
    answer: {
      subject: 'wire',
      name: `${t.name} ${outside.cls}`,
      parts: [told.part],
      notes: ['wires-lead', ...(fits ? [] : [usable ? 'wire-unfit' : 'wire-unknown'])],
      sources: grounds(outside, ...told.grounds),
    },
  };
}

/** Best wire and its readings; usable wires where they are published; readings over the wires of `sizes`. */
export function wirePart(outside: ThreadLimits, sizes: readonly Len[]): { readonly part: Part; readonly grounds: readonly Ground[] } {
  const { pitch, flankAngle, pitchDiameter } = outside;
  const over = (wire: Len) =>
    limits({ lo: overWires(pitchDiameter.lo, pitch, wire, flankAngle), hi: overWires(pitchDiameter.hi, pitch, wire, flankAngle) });
  const best = bestWire(pitch, flankAngle);
  const usable = usableWires(pitch, flankAngle);
  const rows = [
    row('best-wire', length(best)),
    ...(usable ? [row('usable-wires', limits(usable))] : []),
    row('over-best', over(best)),
    ...sizes.map((wire) => rowAbout('over', (wire / 10_000).toFixed(2), over(wire))),
  ];
  return {
    part: { title: 'wires', about: outside.cls, rows },
    grounds: [usable ?? { source: cite('thread-check', 'factors'), standing: 'common practice' }],
  };
}

/** A few round sizes that may be used: wires, needles, shanks of drills. */
function roundSizes(usable: { readonly lo: Len; readonly hi: Len } | undefined): readonly Len[] {
  if (!usable) return [];
  for (const step of STEPS) {
    const first = Math.ceil(usable.lo / step) * step;
    const sizes = Array.from({ length: MOST }, (_, i) => len(first + i * step)).filter((size) => size <= usable.hi);
    if (sizes.length > FEW || step === STEPS.at(-1)) return sizes;
  }
  return [];
}
const STEPS: readonly number[] = [5000, 2000, 1000, 500, 200];
const MOST = 6;
const FEW = 1;

function partWire(words: string): { readonly text: string; readonly wire?: Len } {
  const read = /^(.*\S)\s+(\d*\.?\d+(?:\s*(?:mm|in|thou|"))|\d*\.\d+)$/.exec(words.trim());
  if (!read) return { text: words };
  const [, text = '', size = ''] = read;
  const wire = readQuantity(size, 'length');
  return typeof wire === 'number' ? { text, wire: len(wire) } : { text: words };
}
