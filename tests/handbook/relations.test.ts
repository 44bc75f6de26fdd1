/** Relations of valves, spindles, flow, forces: inverse functions invert, areas grow, edges refuse. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { squareCorners, squareWithin } from '../../src/handbook/bar-stock.ts';
import { drillLoad } from '../../src/handbook/cutting-force.ts';
import * as flow from '../../src/handbook/flow.ts';
import { fitLimits } from '../../src/handbook/iso286.ts';
import { nearestReamer, reamerFor, reamers } from '../../src/handbook/reamers.ts';
import { reliefArea, superheatFactor } from '../../src/handbook/relief-steam.ts';
import * as spindle from '../../src/handbook/spindle.ts';
import { pairsOfSquare, squareOn, squarePairs, wheelSquare } from '../../src/handbook/squares.ts';
import { cantilever, propped, stickOutFor } from '../../src/handbook/stiffness.ts';
import { feedForRoughness, gradeRoughness, noseRoughness, usualRoughness } from '../../src/handbook/surface.ts';
import { fineFeed, fineFeedAngle } from '../../src/handbook/times.ts';
import { boreArea } from '../../src/handbook/valve-ball.ts';
import * as cone from '../../src/handbook/valve-cone.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-7 * Math.max(1, Math.abs(b)));

describe('a ball on a cone, a cone on an edge', () => {
  it('lift of an area of a lift is the lift', () =>
    fc.assert(
      fc.property(number(2, 20), number(30, 150), number(0.001, 0.2), (d, angle, share) => {
        close(cone.ballConeLift(d, angle, cone.ballConeArea(d, angle, share * d)), share * d);
        const lift = share * cone.plugFullLift(d, angle);
        close(cone.plugLift(d, angle, cone.plugArea(d, angle, lift) ?? Number.NaN) ?? Number.NaN, lift);
      }),
    ));
  it('area grows with lift, up to the whole bore', () =>
    fc.assert(
      fc.property(number(2, 20), number(20, 170), number(0, 0.98), (d, angle, share) => {
        const full = cone.plugFullLift(d, angle);
        const [low, high] = [share * full, (share + 0.01) * full].map((lift) => cone.plugArea(d, angle, lift) ?? Number.NaN);
        expect(low).toBeLessThan(high ?? Number.NaN);
        close(cone.plugArea(d, angle, full) ?? Number.NaN, boreArea(d));
        expect(cone.ballConeArea(d, angle, share)).toBeLessThan(cone.ballConeArea(d, angle, share + 0.01));
      }),
    ));
  it('a blunter plug opens faster: 1.41 from 60 to 90 at the first turn', () => {
    const [sharp, blunt] = [60, 90].map((angle) => cone.plugArea(6, angle, 1e-6) ?? Number.NaN);
    expect((blunt ?? 0) / (sharp ?? 1)).toBeCloseTo(Math.SQRT2, 4);
  });
  it('the edges refuse', () => {
    expect(cone.plugArea(6, 90, 6.01)).toBeUndefined();
    expect(cone.plugArea(6, 90, -1)).toBeUndefined();
    expect(cone.plugLift(6, 90, 100)).toBeUndefined();
    expect(() => cone.coneContact(5, 180)).toThrow(RangeError);
    expect(cone.plugShare(6, 90, 5)).toBe(1);
    expect(cone.plugShare(6, 90, 0)).toBe(0);
  });
});

describe('flow', () => {
  it('area of a flow of an area is the area; more area or drop, more flow', () =>
    fc.assert(
      fc.property(number(0.1, 100), number(0.01, 20), (area, drop) => {
        close(flow.orificeArea(0.62, flow.orificeFlow(0.62, area, drop, 998), drop, 998), area);
        expect(flow.orificeFlow(0.62, area, drop * 1.01, 998)).toBeGreaterThan(flow.orificeFlow(0.62, area, drop, 998));
        close(flow.kvForWater(flow.orificeFlow(0.62, area, 1, 1000), 1, 1000), flow.kvOfArea(0.62, area));
      }),
    ));
  it('Napier holds below 0.58 of the inlet only, and agrees with a choked nozzle within 5 %', () => {
    expect(flow.napier(8, 1, 4.7)).toBeUndefined();
    expect(flow.napier(8, 1, 4.6)).toBe(flow.napier(8, 1));
    expect((flow.napier(8, 1) ?? 0) / flow.chokedFlux(1.135, 8, 0.240328)).toBeCloseTo(1, 1);
  });
  it('vapour chokes: beyond the limit a lower outlet adds nothing', () => {
    const at = (p2: number) => flow.vapourFlow(12.9, 8, p2, 4.161, 1.3, 0.72);
    expect(at(5)).toBeGreaterThan(at(6));
    expect(at(1)).toBe(at(2));
    expect(at(5)).toBeCloseTo(1171, -1);
  });
  it('speed in a pipe: 6.79 kg/h at 5 bar in a bore of 6 is 25 m/s', () =>
    expect(flow.pipeSpeed(6.79, boreArea(6), 0.374804)).toBeCloseTo(25, 1));
  it('superheat is tabled from its first row, and not across the gap', () => {
    expect(superheatFactor(500, 423)).toBeCloseTo(1, 2);
    expect(superheatFactor(50, 423)).toBeUndefined();
    expect(superheatFactor(5000, 550)).toBeUndefined();
    expect(superheatFactor(700, 2000)).toBeUndefined();
    expect(reliefArea(10, 50, 423, 0.975)).toBeUndefined();
  });
});

describe('spindles', () => {
  const screw = { mean: 5.35, lead: 1, flankAngle: 60, friction: 0.15 };
  it('raising costs more than lowering; without friction the work is the lead', () =>
    fc.assert(
      fc.property(number(1, 1000), number(0, 0.3), (force, friction) => {
        const s = { ...screw, friction };
        expect(spindle.raisingTorque(force, s)).toBeGreaterThan(spindle.loweringTorque(force, s));
        close(spindle.raisingTorque(force, { ...s, friction: 0 }), force / (2 * Math.PI));
        expect(spindle.screwEfficiency(force, s)).toBeLessThanOrEqual(1 + 1e-9);
      }),
    ));
  it('M6 locks itself, a steep screw does not, and some friction locks for good', () => {
    expect(spindle.locksItself(screw)).toBe(true);
    expect(spindle.locksItself({ ...screw, lead: 12 })).toBe(false);
    expect(() => spindle.raisingTorque(1, { ...screw, lead: 30, friction: 0.9 })).toThrow(RangeError);
  });
  it('packing: a box and its packing agree; widths are tabled to 150', () => {
    expect(spindle.packingOf(spindle.stuffingBore(4, 1.5), 4)).toBe(1.5);
    expect([spindle.packingWidth(0, 'any'), spindle.packingWidth(151, 'any')]).toEqual([undefined, undefined]);
    expect([2, 4, 20].map(spindle.smallPackingWidth)).toEqual([1.2, 1.4, 3]);
  });
});

describe('squares and reamers', () => {
  it('pairs rise, none stands twice, and each leaves a flat', () => {
    const keys = squarePairs.map((p) => `${p.round}/${p.across}/${p.source}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { round, across } of squarePairs) {
      const s = squareOn(round, across);
      expect(s.flat).toBeGreaterThan(0);
      expect(across / round).toBeGreaterThan(0.74);
      expect(across / round).toBeLessThan(0.83);
    }
  });
  it('a full-cornered square and its round invert', () =>
    fc.assert(
      fc.property(fc.integer({ min: 1000, max: 300_000 }), (d) => {
        expect(Math.abs(squareCorners(squareWithin(mm(d / 10_000))) - d)).toBeLessThanOrEqual(1);
      }),
    ));
  it('corners are round or sharp, and no square is larger than its bar', () => {
    expect(squareOn(mm(6), mm(4.9)).corners).toBe('round');
    expect(squareOn(mm(8), mm(5)).corners).toBe('sharp');
    expect(() => squareOn(mm(4), mm(5))).toThrow(RangeError);
    expect([pairsOfSquare(mm(5)).length, wheelSquare(mm(4.5))]).toEqual([1, undefined]);
  });
  it.each(reamers.filter((size) => size <= mm(25)).map((size) => [size / 10_000] as const))('a reamer of %d cuts inside H7', (size) => {
    const [reamer, hole] = [reamerFor(mm(size), 7), fitLimits(mm(size), 'H7')];
    if (!reamer || !hole) throw new Error(`no reamer of ${size}`);
    expect(reamer.lo).toBeGreaterThan(hole.lo);
    expect(reamer.hi).toBeLessThan(hole.hi);
    expect(reamer.lo).toBeLessThan(reamer.hi);
    expect(nearestReamer(mm(size))).toBe(mm(size));
  });
  it('no reamer beyond the table of grades', () => expect(reamerFor(mm(31), 7)).toBeUndefined());
});

describe('the rest inverts too', () => {
  it('stick-out and give, feed and roughness, angle and ratio', () =>
    fc.assert(
      fc.property(number(1, 100), number(2, 20), number(1, 50), (length, d, ratio) => {
        close(stickOutFor(cantilever(30, length, d, 200_000), 30, d, 200_000), length);
        close(noseRoughness(feedForRoughness(ratio, 0.4), 0.4), ratio);
        close(fineFeed(ratio, fineFeedAngle(ratio)), 1);
        expect(propped(30, length, length / 2, d, 200_000)).toBeLessThan(cantilever(30, length, d, 200_000));
      }),
    ));
  it('the edges refuse', () => {
    expect([gradeRoughness(0), gradeRoughness(13), usualRoughness('weld')]).toEqual([undefined, undefined, undefined]);
    expect(drillLoad('wood', 5, 0.1)).toBeUndefined();
    expect(() => fineFeedAngle(0.5)).toThrow(RangeError);
  });
});
