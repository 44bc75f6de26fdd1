/** What adds up when a spindle stands in the valve that it is for: how far it goes from shut until the plug's back meets the bonnet. */
import { type Len, minus, mm, toMm } from '../../base/units.ts';
import { plugFullLift } from '../../handbook/valve-cone.ts';
import type { Chain, Part } from '../../model/part.ts';
import { type Book, note } from '../book.ts';
import { atLeast, travelChain } from '../chains.ts';
import { about, ratio, size, TENTH, tidy } from '../limits.ts';
import { drawn, stated } from '../links.ts';
import type { SpindleAsk } from '../spindle.ts';
import type { SpindleAsked } from './asked.ts';

/** From the flat of the tip to the circle on which the cone meets the edge of its seat. */
export function tipToCircle(bore: Len, { angle, tip }: SpindleAsk['cone']): Len {
  return mm(toMm(minus(bore, tip)) / ((2 / 1) * Math.tan(((angle / 2) * Math.PI) / ratio('turn.half'))));
}

/** None where the room in the valve is not told. */
export function chainsOf(asked: SpindleAsked, cone: SpindleAsk['cone'], part: Part): readonly Chain[] {
  if (asked.room === undefined) return [];
  const band = size('band.length');
  const room = about(asked.room, band, 'room in the valve');
  const circle = about(tipToCircle(asked.bore, cone), band, 'cone');
  return [
    travelChain({
      id: 'travel',
      housing: [stated({ item: 'valve', from: 'seat', to: 'bonnet', limits: room, sign: 1, by: 'bench', says: 'link.room-of-valve' })],
      moving: [
        drawn(part, 'Q', 'B', -1),
        stated({ item: part.id, from: 'Q', to: 'circle', limits: circle, sign: 1, by: 'bench', says: 'link.tip-to-circle' }),
      ],
      // no finer than it is measured
      asks: atLeast(tidy(mm(plugFullLift(toMm(asked.bore), cone.angle)), TENTH, 'up'), 'full bore'),
      open: 'above',
      proof: 'proof.travel',
    }),
  ];
}

export function noteTravel({ room, bore }: SpindleAsked, cone: SpindleAsk['cone'], plug: Len, book: Book): void {
  if (room === undefined) return;
  const [r, L, c] = [toMm(room), toMm(plug), toMm(tipToCircle(bore, cone))];
  note(book, 'travel', [r - (L - c), 'mm', 'r - (L - c)', { r, L, c }]);
}
