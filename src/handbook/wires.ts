/**
 * Pitch diameter measured over three wires, for any symmetric thread: M = d2 + W (1 + cosec a) − (P / 2) cot a, a half the flank angle. The
 * wires' lean to the lead is left out: 1.5 um for M6, 2.0 for M20 (NBS form, from memory).
 */
import { type Len, len, roundHalfEven } from '../base/units.ts';
import type { Standing } from './fact.ts';
import type { Pair } from './iso965-metric.ts';
import { cite } from './sources.ts';

export type WireFactors = { readonly wire: number; readonly pitch: number; readonly best: number };

/** 1 + cosec a; half of cot a; half of sec a. Degrees, included: 60 metric and unified, 55 Whitworth, 47.5 BA. */
export function wireFactors(flankAngle: number): WireFactors {
  if (!(flankAngle > 0 && flankAngle < 180)) throw new RangeError(`no thread has flanks of ${flankAngle} degrees`);
  const a = (flankAngle / 2) * (Math.PI / 180);
  return { wire: 1 + 1 / Math.sin(a), pitch: 1 / Math.tan(a) / 2, best: 1 / Math.cos(a) / 2 };
}

/** What a micrometer reads over three wires. */
export function overWires(pitchDiameter: Len, pitch: Len, wire: Len, flankAngle: number): Len {
  const f = wireFactors(flankAngle);
  return len(roundHalfEven(pitchDiameter + wire * f.wire - pitch * f.pitch));
}

/** Its inverse. */
export function pitchDiameterOf(reading: Len, pitch: Len, wire: Len, flankAngle: number): Len {
  const f = wireFactors(flankAngle);
  return len(roundHalfEven(reading - wire * f.wire + pitch * f.pitch));
}

/** The wire that touches at the pitch diameter, where an error of the angle counts least. */
export function bestWire(pitch: Len, flankAngle: number): Len {
  return len(roundHalfEven(pitch * wireFactors(flankAngle).best));
}

/** From the thinnest that stands proud to the thickest that still touches the flanks. Nothing for angles that were not published. */
export function usableWires(pitch: Len, flankAngle: number): (Pair & { readonly source: string; readonly standing: Standing }) | undefined {
  const row = USABLE.find(([angle]) => angle === flankAngle);
  return (
    row && {
      lo: len(Math.ceil(pitch * row[1])),
      hi: len(Math.floor(pitch * row[2])),
      source: cite('thread-check'),
      standing: 'common practice',
    }
  );
}

/** Degrees; in pitches. */
const USABLE: readonly (readonly [angle: number, thinnest: number, thickest: number])[] = [
  [60, 0.505182, 1.010362],
  [55, 0.50568, 0.82573],
];
