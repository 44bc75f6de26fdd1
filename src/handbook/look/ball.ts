/** `look ball`: is it sold, which bores suit it, and for each the angle, the lifts and the chamber. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len, showMm, toMm } from '../../base/units.ts';
import { ballMaterials, ballOf, ballSizes } from '../balls.ts';
import { practice } from '../practice.ts';
import { cite } from '../sources.ts';
import { centreAboveEdge, contactAngle, liftForFullArea, ringChamber } from '../valve-ball.ts';
import { type Ask, type Found, figure, grounds, length, type Part, row, rowAbout, type Shop, span, word } from './answer.ts';

export function lookBall({ words, shop }: Ask): Found {
  const read = readQuantity(words, 'length');
  const size = typeof read === 'number' ? len(read) : undefined;
  const ball = size === undefined ? undefined : ballOf(size);
  if (!ball) return { unknown: words, near: near(size) };
  const d = ball.diameter;
  return {
    answer: {
      subject: 'ball',
      name: ball.name,
      parts: [sizePart(d), ...boresFor(d, shop).map((bore) => borePart(toMm(d), bore)), materialPart()],
      notes: ['ball-magnet', 'ball-lift'],
      sources: grounds(
        ball,
        ballMaterials[0],
        { source: cite('here', 'geometry of ball and edge'), standing: 'derived' },
        { source: cite('perry', 'lifts'), standing: 'common practice' },
        { source: cite('artisan', 'angle of contact'), standing: 'common practice' },
      ),
    },
  };
}

function near(size: Len | undefined): readonly string[] {
  const by = [...ballSizes].sort(
    (a, b) => Math.abs(a.diameter - (size ?? 0)) - Math.abs(b.diameter - (size ?? 0)) || a.diameter - b.diameter,
  );
  return by.slice(0, 3).map((b) => b.name);
}

/** Bores within the proposed band for which there is a reamer or a drill: two of each, the nearest to the usual share. */
function boresFor(ball: Len, shop: Shop): readonly Len[] {
  const [low, high, usual] = ['low', 'high', 'usual'].map((end) => practice.value(`ball.bore.${end}`) * ball);
  if (low === undefined || high === undefined || usual === undefined) return [];
  const nearestTwo = (sizes: readonly Len[]) =>
    sizes
      .filter((s) => s >= low && s <= high)
      .sort((a, b) => Math.abs(a - usual) - Math.abs(b - usual) || a - b)
      .slice(0, 2);
  return [...new Set([...nearestTwo(shop.reamers), ...nearestTwo(shop.drills)])].sort((a, b) => a - b);
}

function sizePart(d: Len): Part {
  const share = (id: string) => len(Math.round(practice.value(id) * d));
  return {
    title: 'size',
    rows: [
      row('diameter', length(d)),
      row('inches', figure(toMm(d) / 25.4, 'in', 4)),
      row('bore-band', span(toMm(share('ball.bore.low')), toMm(share('ball.bore.high')), 'mm', 2)),
      row('lift-pump', span(toMm(share('ball.lift.pump.low')), toMm(share('ball.lift.pump.high')), 'mm', 2)),
    ],
  };
}

function borePart(ball: number, bore: Len): Part {
  const d = toMm(bore);
  return {
    title: 'bore',
    about: showMm(bore),
    rows: [
      row('share', figure(d / ball, '', 3)),
      row('contact', figure(contactAngle(ball, d), '°', 1)),
      row('centre', figure(centreAboveEdge(ball, d), 'mm', 3)),
      row('full-lift', figure(liftForFullArea(ball, d), 'mm', 3)),
      row('chamber', figure(ringChamber(ball, d), 'mm', 2)),
    ],
  };
}

function materialPart(): Part {
  return {
    title: 'materials',
    rows: ballMaterials.map((m) =>
      rowAbout('ball-material', m.id, word(`magnetic.${m.magnetic}`), word(m.forSteam ? 'for-steam' : 'not-for-steam')),
    ),
  };
}
