/** Nipples for the day of the test, held by the union nut of the pipe that they stand in for: one without a bore, one that takes a pump. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { couplingCone, couplingLength, couplingSection } from '../coupling.ts';
import { drilledHole } from '../drawer.ts';
import { spannerFlats } from '../flats.ts';
import { about, general, half, ratio, size } from '../limits.ts';
import { partFrom, type Section } from '../outline.ts';
import { reliefOf, type ThreadPair } from '../threads.ts';
import { coneLength, headOf, nutLength, pipeBore, tailOf, tipOf, type UnionAsk } from '../union.ts';

/** The cone of a pipe's nipple, and a solid tail that stands out of the nut. */
export function blankNipple(ask: UnionAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const { head, length } = headSection(ask, pipeBore(ask.pipe));
  const tail = add(nutLength(), size('blank.tail'));
  return partFrom({
    ...{ id: 'blank-nipple', kind: 'blank-nipple', quantity: ask.quantity, use: 'fitting' },
    stock: barFor({ part: 'blank-nipple', material: ask.material, section: 'round', across: headOf(ask), turned: true }, workshop, found),
    first: { letter: 'V', role: 'clearance' },
    second: { letter: 'E', role: 'clearance' },
    sections: [head, { name: 'tail', role: 'clearance', size: about(tailOf(ask), size('band.clearance'), 'passes the nut'), length: tail }],
    lengths: [
      { from: 'V', to: 'H', limits: general(length) },
      { from: 'H', to: 'E', limits: general(tail) },
    ],
  });
}

export type AdaptorAsk = UnionAsk & { readonly pump: ThreadPair; readonly bore: Len };

/** The same cone; flats for a spanner behind the nut, a coupling for the pump's union at the other end. The nut goes on over that. */
export function pumpAdaptor(ask: AdaptorAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const { head, length } = headSection(ask, ask.bore);
  const tail = add(nutLength(), add(size('adaptor.flats'), size('blank.tail')));
  const end = couplingLength(ask.pump);
  const flats = half(size('adaptor.flats'));
  return partFrom({
    ...{ id: 'pump-adaptor', kind: 'pump-adaptor', quantity: ask.quantity, use: 'fitting' },
    stock: barFor({ part: 'pump-adaptor', material: ask.material, section: 'round', across: headOf(ask), turned: true }, workshop, found),
    first: { letter: 'V', role: 'clearance' },
    second: { letter: 'E', role: 'sealing' },
    sections: [
      head,
      {
        ...{ name: 'tail', role: 'clearance', size: about(tailOf(ask), size('band.clearance'), 'passes the nut'), length: tail },
        shoulder: { letter: 'D', role: 'free' },
      },
      couplingSection(ask.pump, 'second'),
    ],
    holes: [
      {
        ...{ name: 'bore', role: 'clearance', size: drilledHole(ask.bore, workshop), opens: ['first', 'second'] },
        ...{ from: len(0), to: add(add(length, tail), end), cone: couplingCone(ask.pump, 'second') },
      },
    ],
    sides: [spannerFlats('tail', tailOf(ask), minus(add(length, tail), flats), flats)],
    lengths: [
      { from: 'V', to: 'H', limits: general(length) },
      { from: 'H', to: 'D', limits: general(tail) },
      { from: 'D', to: 'E', limits: general(end) },
      { from: 'D', to: 'coupling.wall', limits: reliefOf(ask.pump.outside).width },
    ],
  });
}

/** Head and cone as the pipe's own nipple has them, so that the nut and the coupling's cone fit. */
function headSection(ask: UnionAsk, bore: Len): { readonly head: Section; readonly length: Len } {
  const head = headOf(ask);
  const tip = tipOf(bore);
  const length = add(coneLength(head, tip), size('nipple.head'));
  return {
    length,
    head: {
      ...{ name: 'head', role: 'clearance', length },
      size: about(minus(head, size('band.clearance')), size('band.clearance'), 'passes the nut'),
      cone: { at: 'first', angle: ratio('coupling.cone'), mouth: about(tip, size('band.cone.mouth'), 'union cone'), role: 'sealing' },
      shoulder: { letter: 'H', role: 'register' },
    },
  };
}
