/** A train of wheels drawn: every number inside its own wheel or clear of all of them, every name inside the frame. */
import { expect, it } from 'vitest';
import { capHeight } from '../../src/drawing/measure.ts';
import { drawTrain } from '../../src/drawing/sheet/train.ts';
import { ADVANCES } from '../render/assets.ts';

const FRAME = { width: 70, height: 31 };
const shaft = (label: string, ...wheels: readonly number[]) => ({ label, wheels });

it.each([
  ['a small driver', 20, 60, 80],
  ['a small idler', 50, 30, 80],
  ['the smallest beside the largest', 20, 127, 60],
  ['like ones', 40, 40, 80],
])('%s', (_, a, b, c) => {
  const items = drawTrain({ advances: ADVANCES }, [shaft('spindle', a), shaft('stud', b), shaft('leadscrew', c)], FRAME);
  const wheels = items.flatMap((one) => (one.kind === 'path' && one.stroke ? [circleOf(one.segments)] : []));
  const texts = items.flatMap((one) => (one.kind === 'text' ? [one] : []));
  const numbers = texts.filter(({ text }) => /^\d+$/.test(text));
  expect([wheels.length, numbers.map(({ text }) => Number(text))]).toEqual([3, [a, b, c]]);
  for (const [i, { x, y, width, size }] of numbers.entries()) {
    const corners = [x, x + width].flatMap((at) => [y, y - capHeight(size)].map((up) => ({ x: at, y: up })));
    const within = wheels.map(
      ({ middle, radius }) => corners.filter((one) => Math.hypot(one.x - middle.x, one.y - middle.y) < radius).length,
    );
    expect([wheels.map((_, n) => (n === i ? corners.length : 0)), wheels.map(() => 0)]).toContainEqual(within);
  }
  for (const { x, width } of texts) expect([x >= 0, x + width <= FRAME.width]).toEqual([true, true]);
});

function circleOf(segments: readonly object[]) {
  const points = segments.flatMap((one) => ('x' in one && 'y' in one ? [{ x: Number(one.x), y: Number(one.y) }] : []));
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  return { middle, radius: (Math.max(...xs) - Math.min(...xs)) / 2 };
}
