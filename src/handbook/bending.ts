/**
 * How far stepped work gives under a tool: a cantilever of round lengths, hollow or solid, with or without a centre at its end. The give
 * under the load by the theorem of Castigliano: the integral of M m / (E I). mm, N, MPa. The chuck, the centre and the bed give besides.
 */
import { cite } from './sources.ts';
import { secondMoment } from './stiffness.ts';
import type { Relation } from './valve-ball.ts';

/** From the jaws outward, one after the other. */
export type Length = { readonly long: number; readonly outside: number; readonly inside: number };

/** Give at `at` from the jaws under a force there. Beyond the last length nothing gives more. */
export function giveOf(lengths: readonly Length[], at: number, modulus: number, force: number): number {
  return (force / modulus) * influence(lengths, at, at);
}

/** The same where a centre holds the end at `end` from the jaws. */
export function giveOnCentre(lengths: readonly Length[], at: number, end: number, modulus: number, force: number): number {
  const [own, cross, held] = [influence(lengths, at, at), influence(lengths, at, end), influence(lengths, end, end)];
  return held > 0 ? (force / modulus) * Math.max(0, own - cross ** 2 / held) : 0;
}

/** The same of work that turns between two centres, `end` apart: simply supported, so that it is free to bend at either. */
export function giveBetween(lengths: readonly Length[], at: number, end: number, modulus: number, force: number): number {
  const far = end - at;
  let from = 0;
  let sum = 0;
  for (const { long, outside, inside } of lengths) {
    const to = Math.min(from + long, end);
    const near = cubes(Math.min(from, at), Math.min(to, at)) * far ** 2;
    const beyond = cubes(end - Math.max(to, at), end - Math.max(from, at)) * at ** 2;
    if (to > from) sum += (near + beyond) / (3 * end ** 2 * (secondMoment(outside) - secondMoment(inside)));
    from += long;
  }
  return end > 0 ? (force / modulus) * sum : 0;
}

const cubes = (from: number, to: number): number => Math.max(0, to ** 3 - from ** 3);

/** The integral of (a - x)(b - x) / I from the jaws to the nearer of both. */
function influence(lengths: readonly Length[], a: number, b: number): number {
  let from = 0;
  let sum = 0;
  for (const { long, outside, inside } of lengths) {
    const to = Math.min(from + long, a, b);
    if (to > from) sum += (over(a, b, to) - over(a, b, from)) / (secondMoment(outside) - secondMoment(inside));
    from += long;
  }
  return sum;
}

const over = (a: number, b: number, x: number): number => a * b * x - ((a + b) * x ** 2) / 2 + x ** 3 / 3;

export const bendingRelations: readonly Relation[] = [
  { id: 'stepped', formula: 'y = F ∫ (a − x)² / (E I) dx', unit: 'mm', source: cite('beams'), standing: 'derived' },
  { id: 'between', formula: 'y = F a² b² / (3 E I L)', unit: 'mm', source: cite('beams'), standing: 'derived' },
];
