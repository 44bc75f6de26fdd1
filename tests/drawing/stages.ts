/** Stages written by hand, in mm, for looking at pictures without a replay. */
import { readFileSync } from 'node:fs';
import { type Len, mm } from '../../src/base/units.ts';
import type { Advances } from '../../src/model/display.ts';
import type { Edge, Outline, Point, Stage } from '../../src/model/stage.ts';

export const ADVANCES = JSON.parse(readFileSync(new URL('../../templates/fonts/advances.json', import.meta.url), 'utf8')) as Advances;

/** One corner: z, d in mm, then what made the edge that begins here: surface and operation. */
export type Corner = readonly [z: number, d: number, surface?: string, by?: string];

/** Edges from corner to corner, without closing along the axis. */
export function outline(corners: readonly Corner[]): Outline {
  return corners.slice(1).map((to, i): Edge => {
    const [z, d, surface = '', by = ''] = corners[i] ?? to;
    return { a: at(z, d), b: at(to[0], to[1]), surface, stage: by === '' ? 'bar' : 'final', by };
  });
}

export function at(z: number, d: number): Point {
  return { z: mm(z), d: mm(d) };
}

export function rectangle(from: number, to: number, low: number, high: number): readonly Point[] {
  return [at(from, low), at(from, high), at(to, high), at(to, low)];
}

/** The seat piece on its mandrel, coupling end out. */
export const SECOND_GRIP: Stage = {
  out: 'second',
  outlines: [
    outline([
      [0, 4.2, 'seat-face', 'g1'],
      [0, 10.6, 'nose', 'g1'],
      [3, 10.6, 'lead', 'g1'],
      [3.6, 10.77, 'seat-thread', 'g1'],
      [8.2, 10.77, 'seat-relief', 'g1'],
      [8.2, 10.4, 'seat-relief', 'g1'],
      [10.4, 10.4, 'A', 'g1'],
      [10.4, 16, 'rim', 'g1'],
      [15.4, 16, 'C', 'turn'],
      [15.4, 8.4, 'relief', 'relief'],
      [17.6, 8.4, 'relief-wall', 'relief'],
      [17.6, 8.77, 'coupling', 'turn'],
      [24.29, 8.77, 'chamfer', 'relief'],
      [24.4, 8.55, 'B', 'face'],
      [24.4, 7.8, 'cone', 'cone'],
      [21.54, 4.5, 'bore', 'd-bit'],
      [0, 4.5, 'seat-face', 'g1'],
      [0, 4.2],
    ]),
  ],
  threads: [
    { polygon: [at(3.6, 10.77), at(4.2, 11.95), at(8.2, 11.95), at(8.2, 10.77)], side: 'outside', surface: 'seat-thread' },
    { polygon: [at(17.6, 8.77), at(17.6, 9.95), at(23.7, 9.95), at(24.29, 8.77)], side: 'outside', surface: 'coupling-thread' },
  ],
  taken: [
    { polygon: rectangle(24.4, 24.9, 4.2, 18), by: 'face' },
    { polygon: rectangle(15.4, 24.4, 9.95, 18), by: 'turn' },
    { polygon: rectangle(15.4, 17.6, 8.4, 9.95), by: 'relief' },
    { polygon: [at(24.4, 4.2), at(24.4, 7.8), at(21.54, 4.5), at(0, 4.5), at(0, 4.2)], by: 'd-bit' },
  ],
  before: [
    outline([
      [0, 4.2, 'seat-face', 'g1'],
      [0, 10.6, 'nose', 'g1'],
      [3, 10.6, 'lead', 'g1'],
      [3.6, 10.77, 'seat-thread', 'g1'],
      [8.2, 10.77, 'seat-relief', 'g1'],
      [8.2, 10.4, 'seat-relief', 'g1'],
      [10.4, 10.4, 'A', 'g1'],
      [10.4, 16, 'rim', 'g1'],
      [15.9, 16, '', ''],
      [15.9, 18, 'bar', ''],
      [24.9, 18, 'sawn', 'part'],
      [24.9, 4.2, 'pilot', 'g1'],
      [0, 4.2],
    ]),
  ],
};

/** The first grip: bar in jaws, seat end out (mirrored on paper). The bar runs on into the headstock. */
export const FIRST_GRIP: Stage = {
  out: 'first',
  outlines: [
    outline([
      [0, 4.2, 'seat-face', 'face2'],
      [0, 10.6, 'nose', 'nose'],
      [3, 10.6, 'lead', 'chamfer'],
      [3.6, 10.77, 'seat-thread', 'thread'],
      [8.2, 10.77, 'seat-relief', 'relief'],
      [8.2, 10.4, 'seat-relief', 'relief'],
      [10.4, 10.4, 'A', 'relief'],
      [10.4, 16, 'rim', 'rim'],
      [15.9, 16, 'rim-step', 'rim'],
      [15.9, 18, 'bar', ''],
      [75, 18, 'sawn', ''],
      [75, 0, '', ''],
      [30, 0, 'pilot', 'drill'],
      [28.8, 4.2, 'pilot', 'drill'],
      [0, 4.2],
    ]),
  ],
  threads: [{ polygon: [at(3.6, 10.77), at(4.2, 11.95), at(8.2, 11.95), at(8.2, 10.77)], side: 'outside', surface: 'seat-thread' }],
  taken: [
    { polygon: rectangle(-0.5, 0, 0, 18), by: 'face2' },
    { polygon: rectangle(0, 15.9, 16, 18), by: 'rim' },
    { polygon: rectangle(0, 10.4, 11.95, 16), by: 'turn' },
    { polygon: rectangle(0, 3, 10.6, 11.95), by: 'nose' },
    { polygon: [at(0, 0), at(0, 4.2), at(28.8, 4.2), at(30, 0)], by: 'drill' },
  ],
  before: [
    outline([
      [-0.5, 0, 'sawn', ''],
      [-0.5, 18, 'bar', ''],
      [75, 18, 'sawn', ''],
      [75, 0],
    ]),
  ],
};

export const len = (value: number): Len => mm(value);
