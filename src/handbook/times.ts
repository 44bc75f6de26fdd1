/** How long a cut takes, in seconds, and the fine feeds of a top slide that is set over. mm, turns a minute, mm a turn, m/min. */

import { cite } from './sources.ts';
import type { Relation } from './valve-ball.ts';

/** mm/min. */
export function travel(turns: number, feed: number): number {
  return turns * feed;
}

/** Turning or drilling a length: 60 L N / (f n). */
export function turningTime(length: number, feed: number, turns: number, cuts: number = 1): number {
  return (60 * length * cuts) / (feed * turns);
}

/** Facing at one speed: 60 (D1 − D2) N / (2 f n). */
export function facingTime(from: number, to: number, feed: number, turns: number, cuts: number = 1): number {
  return (60 * (from - to) * cuts) / (2 * feed * turns);
}

/** Facing at one cutting speed: 60 π (D1 + D2)(D1 − D2) N / (4000 f vc). */
export function facingTimeAt(from: number, to: number, feed: number, vc: number, cuts: number = 1): number {
  return (60 * Math.PI * (from + to) * (from - to) * cuts) / (4000 * feed * vc);
}

/** Degrees between top slide and axis at which so many units of slide go one unit in: asin(1 / ratio). */
export function fineFeedAngle(ratio: number): number {
  if (!(ratio >= 1)) throw new RangeError(`no slide goes 1 in ${ratio}`);
  return (Math.asin(1 / ratio) * 180) / Math.PI;
}

/** How far in the tool goes for a travel of the slide; twice that on diameter. */
export function fineFeed(slide: number, angle: number): number {
  return slide * Math.sin((angle * Math.PI) / 180);
}

/** Travel of a top slide set over for screw-cutting, for a depth a side. */
export function slideTravel(depth: number, angle: number): number {
  return depth / Math.cos((angle * Math.PI) / 180);
}

export const timeRelations: readonly Relation[] = [
  { id: 'turning-time', formula: 't = 60 L N / (f n)', unit: 's', source: cite('kyocera'), standing: 'standard' },
  { id: 'facing-time', formula: 't = 60 (D1 − D2) N / (2 f n)', unit: 's', source: cite('kyocera'), standing: 'standard' },
  { id: 'fine-feed', formula: 'asin(1 / ratio)', unit: 'deg', source: cite('hall'), standing: 'common practice' },
];
