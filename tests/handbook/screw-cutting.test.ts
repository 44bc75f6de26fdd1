/** Threading dial, error of the pitch, depth of the tool, top slide: published figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Len, len, mm, toMm } from '../../src/base/units.ts';
import { type HalfNuts, halfNutsFor } from '../../src/handbook/half-nuts.ts';
import { flankFactor, leadError, longestEngagement } from '../../src/handbook/lead-error.ts';
import { firstPass, modifiedInfeed, passCount, passesFor } from '../../src/handbook/thread-passes.ts';
import { infeedOf, runOn, setOver, slideTravel, toolDepth } from '../../src/handbook/thread-tool.ts';
import { leadOf, perInch } from '../../src/handbook/trains.ts';

const DIAL = 'a lathe manual, manualshive.com 1594343, p. 19: wheel of 16, 8 threads an inch, 8 marks';
describe('half-nuts', () => {
  it.each([
    // its row for 4, any place, would meet a second groove half the time: left out; so is 19, printed as one mark where two serve
    [5, 2],
    [5.5, 1],
    [6.5, 1],
    [7, 2],
    [8, 0],
    [9, 2],
    [9.5, 1],
    [10, 4],
    [11, 2],
    [12, 8],
    [13, 2],
    [14, 4],
    [15, 2],
    [16, 0],
    [18, 4],
    [20, 8],
    [22, 4],
    [24, 0],
    [26, 4],
    [28, 8],
    [30, 4],
    [32, 0],
    [36, 8],
    [38, 4],
    [40, 0],
    [44, 8],
    [48, 0],
    [52, 8],
    [56, 0],
  ])(`%f threads an inch: on %i marks, 0 for any place (${DIAL})`, (threads, lines) => {
    const pitch = { units: 508_000, per: threads * 2 };
    const nuts = halfNutsFor({ leadscrew: perInch(8), pitch, exact: true, dial: { wheels: [16], marks: 8 } });
    expect(nuts.by === 'dial' ? nuts.lines : nuts.by === 'anywhere' ? 0 : -1).toBe(lines);
  });
  it.each([
    [1.5, 14, 0.7, 2],
    [1.5, 14, 1.75, 2],
    [1.5, 14, 1, 7],
    [1.5, 15, 1.25, 3],
    [1.5, 16, 0.4, 4],
    [1.5, 16, 0.8, 2],
    [1.5, 18, 1, 9],
    [2, 14, 1.75, 2],
    [2, 15, 1.5, 5],
    [3, 15, 1.25, 3],
    [3, 14, 1.75, 2],
  ] as const)('leadscrew %f, wheel of %i, pitch %f: on %i of its teeth (arithmetic)', (lead, wheel, pitch, lines) => {
    const nuts = halfNutsFor({
      leadscrew: leadOf(mm(lead)),
      pitch: leadOf(mm(pitch)),
      exact: true,
      dial: { wheels: [wheel], marks: wheel },
    });
    expect(nuts).toMatchObject({ by: 'dial', lines });
  });
  const of = (lead: number, pitch: number, more: object = {}): HalfNuts['by'] =>
    halfNutsFor({ leadscrew: leadOf(mm(lead)), pitch: leadOf(mm(pitch)), exact: true, ...more }).by;
  it.each([
    [2, 1, 'anywhere'],
    [2, 0.5, 'anywhere'],
    [2, 2, 'anywhere'],
    [2, 0.75, 'closed'],
    [2, 1.25, 'closed'],
    [1.5, 1, 'closed'],
  ] as const)('leadscrew of %f mm, pitch %f mm, no dial: %s', (lead, pitch, asks) => expect(of(lead, pitch)).toBe(asks));
  it('a pitch that is only nearly right, and a lathe without half-nuts, keep them closed', () => {
    expect([of(2, 1, { exact: false }), of(2, 1, { halfNuts: false })]).toEqual(['closed', 'closed']);
  });
  it('of the wheels that there are, the one with most marks', () =>
    expect(
      halfNutsFor({ leadscrew: leadOf(mm(3)), pitch: leadOf(mm(1.25)), exact: true, dial: { wheels: [14, 16, 15, 20], marks: 20 } }),
    ).toEqual({ by: 'dial', wheel: 20, every: 5, lines: 4, marks: 20 }));
});

describe('error of the pitch', () => {
  it.each([
    [55, 1.92, 'a lecture on thread measurement, scribd 333659626'],
    [60, 1.732, 'cot 30 degrees'],
    [47.5, 2.273, 'cot 23.75 degrees'],
  ])('flanks of %f degrees: %f of pitch diameter', (angle, factor, _source) =>
    expect(Math.abs(flankFactor(angle) - factor)).toBeLessThan(0.002),
  );
  it('606 millionths over 10 mm are 6 um, and 10.5 of pitch diameter (arithmetic)', () =>
    expect(leadError({ error: -0.000606, engaged: mm(10), flankAngle: 60, tolerance: mm(0.112) })).toMatchObject({
      off: 61,
      acts: 105,
      bearable: true,
    }));
  it('either sign counts alike, and half of the tolerance is the end', () => {
    const at = (error: number) => leadError({ error, engaged: mm(10), flankAngle: 60, tolerance: mm(0.1) });
    expect(at(0.002)).toEqual(at(-0.002));
    expect([at(0.0028).bearable, at(0.0029).bearable]).toEqual([true, false]);
  });
  it('M10x1 is engaged over 10.6 mm at most: 6.7 P d^0.2', () => expect(toMm(longestEngagement(mm(10), mm(1)))).toBeCloseTo(10.62, 2));
});

const SHARP = 'Sumitomo, catalogue 2019-20, p. 415: nose 0.13; a little deeper than the basic form';
const INSIDE = 'a tool catalogue 2021-22, docs.steelcam.org page 311, inside threads of 60 degrees, whole depth';
describe('depth of the tool', () => {
  it.each([
    [1, 0.65],
    [1.25, 0.84],
    [1.5, 1.03],
    [1.75, 1.22],
    [2, 1.41],
  ])(`pitch %f: %f (${SHARP})`, (pitch, depth) => {
    const ours = toMm(toolDepth({ pitch: mm(pitch), flankAngle: 60, side: 'outside' }, mm(0.13)));
    expect(depth - ours).toBeGreaterThan(0);
    expect(depth - ours).toBeLessThan(0.03);
  });
  it.each([
    [0.5, 0.289],
    [0.7, 0.404],
    [0.75, 0.433],
    // its depth for 0.8, 0.544, is that of no thread of 0.8: left out
    [1, 0.577],
    [1.25, 0.722],
    [1.5, 0.866],
    [1.75, 1.01],
    [2, 1.155],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a depth in mm
    [2.5, 1.443],
    [3, 1.732],
    [25.4 / 28, 0.524],
    [25.4 / 24, 0.611],
    [25.4 / 20, 0.733],
    [25.4 / 18, 0.815],
  ])(`pitch %f: %f (${INSIDE})`, (pitch, depth) =>
    expect(Math.abs(toMm(toolDepth({ pitch: mm(pitch), flankAngle: 60, side: 'inside' }, mm(0.0721688 * pitch))) - depth)).toBeLessThan(
      0.001,
    ),
  );
  it.each([
    [60, 0.144338, 0.613435, 'ISO 68-1'],
    [55, 0.137329, 0.640327, 'BS 84'],
    [47.5, 0.1808346, 0.6, 'BS 93'],
  ])('flanks of %f degrees, the root its own radius of %f pitches: %f pitches (%s)', (flankAngle, nose, depth, _source) =>
    expect(Math.abs(toMm(toolDepth({ pitch: mm(10), flankAngle, side: 'outside' }, mm(nose * 10))) - depth * 10)).toBeLessThan(0.003),
  );
});

describe('passes', () => {
  /** A catalogue's lists for inside threads of 60 degrees: the passes are its own, they add up to its depth. */
  it.each([
    [0.5, 0.289, [0.158, 0.131]],
    [0.7, 0.404, [0.221, 0.183]],
    [0.75, 0.433, [0.168, 0.138, 0.127]],
    [0.8, 0.544, [0.224, 0.185, 0.135]],
    [1, 0.577, [0.224, 0.185, 0.168]],
    [1.25, 0.722, [0.228, 0.188, 0.173, 0.133]],
    [1.5, 0.866, [0.237, 0.196, 0.179, 0.138, 0.116]],
    [1.75, 1.01, [0.277, 0.228, 0.209, 0.161, 0.135]],
    [2, 1.155, [0.283, 0.234, 0.214, 0.164, 0.138, 0.122]],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a depth in mm
    [2.5, 1.443, [0.323, 0.267, 0.244, 0.187, 0.158, 0.139, 0.125]],
    [3, 1.732, [0.387, 0.32, 0.293, 0.225, 0.189, 0.167, 0.151]],
  ] as const)(`pitch %f, depth %f: published passes and ours (${INSIDE})`, (_pitch, depth, passes) => {
    expect(passes.reduce((sum: number, one) => sum + one, 0)).toBeCloseTo(depth, 2);
    const whole: Len = mm(depth);
    for (const group of ['brass', 'bronze', '303'] as const) {
      const ours = modifiedInfeed(whole, passCount(whole, firstPass(group, 'inside'), mm(0.03)), mm(0.01));
      expect(ours.reduce((sum, one) => sum + one, 0)).toBe(whole);
      expect(ours.length).toBeGreaterThan(passes.length);
      expect(Math.max(...ours)).toBeLessThanOrEqual(mm(Math.max(...passes)));
    }
  });
  it('inside lighter than outside, as published: pitch 1.0, 0.15 and 0.20 (Mitsubishi)', () =>
    expect(firstPass('brass', 'inside') / firstPass('brass')).toBeCloseTo(0.15 / 0.2, 6));
});

/** Its tables for steel: pitch, depth a side, passes. 'When you … cut stainless steel, please increase the number of passes by 2-3 times.' */
const STAINLESS = 'Mitsubishi Materials, standard of depth of cut, external and internal thread';
describe('passes in stainless', () => {
  it.each([
    ['outside', 0.75, 0.46, 4],
    ['outside', 1, 0.61, 5],
    ['outside', 1.25, 0.77, 6],
    ['outside', 1.5, 0.92, 6],
    ['outside', 1.75, 1.07, 7],
    ['outside', 2, 1.23, 8],
    ['outside', 2.5, 1.53, 10],
    ['outside', 3, 1.84, 11],
    ['inside', 0.75, 0.43, 5],
    ['inside', 1, 0.58, 6],
    ['inside', 1.25, 0.72, 6],
    ['inside', 1.5, 0.87, 6],
    ['inside', 1.75, 1.01, 7],
    ['inside', 2, 1.15, 8],
  ] as const)(`%s, pitch %f, depth %f: the table's passes for steel are %i (${STAINLESS})`, (side, _pitch, depth, steel) => {
    const [whole, step, least] = [mm(depth), mm(0.01), mm(0.05)];
    const ours = passesFor('316', side, whole, step);
    expect(ours.reduce((sum, one) => sum + one, 0)).toBe(whole);
    expect(Math.min(...ours)).toBeGreaterThanOrEqual(least);
    expect(Math.max(...ours)).toBeLessThanOrEqual(firstPass('316', side));
    // twice as many, but where none may be under the least; three times, and one for the last step
    expect(ours.length).toBeGreaterThanOrEqual(Math.min(2 * steel, Math.floor(whole / least) - 2));
    expect(ours.length).toBeLessThanOrEqual(3 * steel + 1);
    expect(ours.length).toBeGreaterThanOrEqual(passesFor('mild steel', side, whole, step).length);
  });
  it('more and lighter than in mild steel, never under the least, whatever the depth and the dial', () => {
    const depths = fc.integer({ min: 3000, max: 20_000 }).map(len);
    fc.assert(
      fc.property(depths, fc.constantFrom(100, 125, 127, 250, 254), fc.constantFrom('outside', 'inside'), (about, step, side) => {
        const deep = len(Math.round(about / step) * step);
        const [hard, mild] = [passesFor('316', side, deep, len(step)), passesFor('mild steel', side, deep, len(step))];
        expect(hard.reduce((sum, one) => sum + one, 0)).toBe(deep);
        expect([...hard].sort((a, b) => b - a)).toEqual(hard);
        expect(Math.min(...hard)).toBeGreaterThanOrEqual(Math.round(500 / step) * step);
        // no fewer, but where none could be finer
        if (hard.length < mild.length) expect(deep / hard.length).toBeLessThan(2 * 500);
        expect(hard[0]).toBeLessThanOrEqual((mild[0] ?? 0) + step);
      }),
      { numRuns: 300 },
    );
  });
});

describe('top slide', () => {
  it.each([
    [60, 29.5],
    [55, 27],
    [47.5, 23.25],
  ])('flanks of %f degrees: set over %f', (angle, over) => expect(setOver(angle)).toBe(over));
  it.each([
    [0.92, 29.5, 1.057, 'NAVEDTRA 14345 fig. 6-91: 1.149 times'],
    [0.6, 29.5, 0.689, 'a lathe manual, PM-1440E p. 14: 0.69 for 0.6'],
    [1, 27, 1.1223, 'cos 27 degrees'],
  ])('%f deep at %f: moves %f (%s)', (depth, angle, moves, _source) =>
    expect(Math.abs(toMm(slideTravel(mm(depth), angle)) - moves)).toBeLessThan(0.0006),
  );
  it('along the flank from a pitch of 1.25 on', () =>
    expect([1, 1.25, 1.5].map((p) => infeedOf(mm(p)))).toEqual(['straight', 'flank', 'flank']));
  it('80 turns, pitch 1.5, half a second: 1 mm (arithmetic)', () => expect(runOn(mm(1.5), 80, 0.5)).toBe(len(10_000)));
});
