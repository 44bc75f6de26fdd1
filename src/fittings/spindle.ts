/** A valve spindle: cone and plug, running thread, plain stem through the packing, square for the wheel, thread for its nut. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len, minus } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor } from './bar.ts';
import { centreFor } from './centre.ts';
import { about, between, general, half, size } from './limits.ts';
import { type OutlineAsk, partFrom, type Section } from './outline.ts';
import { outsideThread, reliefOf, type ThreadPair } from './threads.ts';

/** Lengths along the axis, from the tip of the cone to the end for the nut. */
export type SpindleAsk = {
  readonly cone: { readonly angle: number; readonly tip: Len };
  readonly plug: { readonly across: Len; readonly length: Len };
  readonly thread: { readonly pair: ThreadPair; readonly length: Len };
  readonly stem: { readonly across: Len; readonly length: Len };
  readonly square: { readonly across: Len; readonly length: Len };
  readonly end: { readonly pair: ThreadPair; readonly length: Len };
  readonly material: string;
  /** The rod that it is to be made from; the smallest of the shelf that cleans up when absent. */
  readonly rod?: Len;
};

export function spindlePart(ask: SpindleAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const squareAt = add(add(ask.plug.length, ask.thread.length), add(ask.stem.length, half(ask.square.length)));
  return partFrom({
    id: 'spindle',
    kind: 'spindle',
    quantity: 1,
    use: 'fitting',
    stock: rodFor(ask, workshop, found),
    first: { letter: 'Q', role: 'clearance' },
    second: { letter: 'Z', role: 'clearance', ...centreFor(workshop, outsideThread(ask.end.pair.outside, 'second').chamfer.target) },
    sections: sectionsOf(ask),
    sides: [
      {
        ...{
          name: 'square',
          does: 'square',
          on: 'stem',
          role: 'register',
          at: squareAt,
          half: half(ask.square.length),
          count: (1 + 1) * (1 + 1),
        },
        size: between(minus(ask.square.across, size('band.length')), ask.square.across, ask.square.across, 'slides in the wheel'),
      },
    ],
    lengths: lengthsOf(ask),
  });
}

/** A rod of the stated size, its outside turned; else the next one up. */
function rodFor({ material, plug, rod }: SpindleAsk, workshop: Workshop, found: Diagnostic[]): Part['stock'] {
  const ask = { part: 'spindle', material, section: 'round' as const };
  if (rod === undefined) return barFor({ ...ask, across: plug.across, turned: true }, workshop, found);
  const stock = barFor({ ...ask, across: rod, turned: false }, workshop, found);
  if (stock.from !== 'bar') return stock;
  const { asStock: _, ...turned } = stock;
  return turned;
}

function sectionsOf(ask: SpindleAsk): readonly Section[] {
  const stem = between(minus(ask.stem.across, size('band.running')), ask.stem.across, ask.stem.across, 'runs in packing');
  return [
    {
      ...{ name: 'plug', role: 'clearance', size: about(ask.plug.across, size('band.plug'), 'plug'), length: ask.plug.length },
      cone: { at: 'first', angle: ask.cone.angle, mouth: about(ask.cone.tip, size('band.cone.mouth'), 'tip'), role: 'sealing' },
      shoulder: { letter: 'B', role: 'register' },
    },
    {
      ...{ name: 'running', role: 'thread', size: ask.thread.pair.outside.major, length: ask.thread.length },
      thread: outsideThread(ask.thread.pair.outside, 'second', ask.stem.across),
      shoulder: { letter: 'R', role: 'free' },
    },
    {
      ...{ name: 'stem', role: 'running', size: stem, length: add(ask.stem.length, ask.square.length) },
      shoulder: { letter: 'Y', role: 'free' },
    },
    {
      ...{ name: 'end', role: 'thread', size: ask.end.pair.outside.major, length: ask.end.length },
      thread: endThread(ask.end.pair),
    },
  ];
}

/** The last thread has no relief to be weak at: the die runs up to the square. */
const endThread = (pair: ThreadPair) => {
  const { relief: _none, ...rest } = outsideThread(pair.outside, 'second');
  return rest;
};

function lengthsOf(ask: SpindleAsk): OutlineAsk['lengths'] {
  const band = size('band.length');
  return [
    { from: 'Q', to: 'B', limits: about(ask.plug.length, band, 'travel') },
    { from: 'B', to: 'running.wall', limits: reliefOf(ask.thread.pair.outside).width },
    { from: 'B', to: 'R', limits: general(ask.thread.length) },
    { from: 'R', to: 'Y', limits: general(add(ask.stem.length, ask.square.length)) },
    { from: 'Y', to: 'Z', limits: general(ask.end.length) },
  ];
}
