/** The bonnet: screws into the body, steers the spindle by its running thread, carries the stuffing box and the neck for the gland nut. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, mm } from '../../base/units.ts';
import { proving } from '../../handbook/proving.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor, nextBar } from '../bar.ts';
import { about, between, general, MM, size, stock, tidy } from '../limits.ts';
import { type Hole, type OutlineAsk, partFrom, type Section } from '../outline.ts';
import { insideChamfer, outsideThread, reliefOf } from '../threads.ts';
import { type BonnetLayout, layOutBonnet } from './layout.ts';
import type { StopValveSizes } from './shared.ts';

export function bonnet(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutBonnet(sizes);
  const across = bonnetHexagon(sizes, material, workshop);
  return partFrom({
    id: 'bonnet',
    kind: 'bonnet',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'bonnet', material, section: 'hexagon', across, turned: false }, workshop, found),
    first: { letter: 'N', role: 'register' },
    second: { letter: 'U', role: 'clearance' },
    sections: sectionsOf(sizes, at, across),
    holes: holesOf(sizes, at),
    lengths: lengthsOf(sizes, at),
    // Spindle and plug follow the running thread: it has to be true to the thread that locates the bonnet.
    truths: [{ a: 'bonnet-thread', b: 'running', asks: mm(proving.value('truth.seat')) }],
  });
}

export function bonnetHexagon(sizes: StopValveSizes, material: string, workshop: Workshop): Len {
  const wide = Math.max(sizes.bonnet.outside.major.hi, sizes.gland.outside.major.hi);
  return nextBar({ material, section: 'hexagon' }, tidy(add(len(wide), size('nut.over-thread')), MM, 'near'), workshop);
}

function sectionsOf(sizes: StopValveSizes, at: BonnetLayout, across: Len): readonly Section[] {
  return [
    {
      name: 'bonnet-thread',
      role: 'thread',
      size: sizes.bonnet.outside.major,
      length: at.screwed,
      thread: outsideThread(sizes.bonnet.outside, 'first'),
      shoulder: { letter: 'A', role: 'sealing' },
    },
    {
      ...{ name: 'hexagon', role: 'free', size: stock(across), length: at.hexagon, section: 'hexagon', asStock: true },
      shoulder: { letter: 'B', role: 'free' },
    },
    {
      name: 'neck',
      role: 'thread',
      size: sizes.gland.outside.major,
      length: at.neck,
      thread: outsideThread(sizes.gland.outside, 'second'),
    },
  ];
}

function holesOf(sizes: StopValveSizes, at: BonnetLayout): readonly Hole[] {
  const clear = add(sizes.stem, size('stop.stem.clear'));
  return [
    {
      ...{ name: 'running', role: 'thread', size: sizes.spindle.inside.minor, from: len(0), to: at.bore, opens: ['first'] },
      floor: { letter: 'I', role: 'free' },
      thread: { size: sizes.spindle.inside, to: at.thread, chamfer: insideChamfer(sizes.spindle.inside) },
    },
    {
      ...{ name: 'stem-hole', role: 'clearance', from: at.bore, to: at.boxFloor, opens: ['first', 'second'] },
      size: between(clear, add(clear, size('band.drilled')), clear, 'drilled'),
    },
    {
      ...{ name: 'box', role: 'running', from: at.boxFloor, to: at.length, opens: ['second'] },
      size: about(sizes.box, size('band.plug'), 'packing'),
      floor: { letter: 'X', role: 'register' },
    },
  ];
}

function lengthsOf(sizes: StopValveSizes, at: BonnetLayout): OutlineAsk['lengths'] {
  const band = size('band.length');
  return [
    { from: 'N', to: 'A', limits: about(at.screwed, band, 'travel') },
    { from: 'bonnet-thread.wall', to: 'A', limits: reliefOf(sizes.bonnet.outside).width },
    { from: 'A', to: 'B', limits: general(at.hexagon) },
    { from: 'B', to: 'neck.wall', limits: reliefOf(sizes.gland.outside).width },
    { from: 'A', to: 'U', limits: general(minus(at.length, at.screwed)) },
    { from: 'N', to: 'I', limits: general(at.bore) },
    { from: 'X', to: 'U', limits: about(sizes.boxDepth, band, 'packing') },
  ];
}
