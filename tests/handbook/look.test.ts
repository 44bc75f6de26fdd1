/** Look-ups: what they answer, in figures; and the nearest for what is not known. The words are tried in tests/cli/look.test.ts. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { type Answer, type Ask, COMMON_SHOP, type Found, type Shop, type Value } from '../../src/handbook/look/answer.ts';
import { lookBall } from '../../src/handbook/look/ball.ts';
import { lookDrill } from '../../src/handbook/look/drill.ts';
import { lookFit } from '../../src/handbook/look/fit.ts';
import { lookGears } from '../../src/handbook/look/gears.ts';
import { lookMaterial } from '../../src/handbook/look/material.ts';
import { available, lookSpeed } from '../../src/handbook/look/speed.ts';
import { lookSquare } from '../../src/handbook/look/square.ts';
import { lookSteam } from '../../src/handbook/look/steam.ts';
import { lookThread } from '../../src/handbook/look/thread.ts';
import { lookWire } from '../../src/handbook/look/wire.ts';

type Look = (ask: Ask) => Found;
const SHOP: Shop = { name: 'Shed', drills: [mm(9), mm(9.1)], reamers: [mm(4.5)], speeds: { steps: [100, 250, 500, 900] }, tool: 'HSS' };
const found = (look: Look, words: string, shop: Shop = COMMON_SHOP): Answer => {
  const answer = look({ words, shop });
  if (!('answer' in answer)) throw new Error(`'${words}' is not known`);
  return answer.answer;
};
/** Values of a row, in mm or as they are. */
const values = (answer: Answer, part: string, label: string, about?: string): readonly (number | string)[] =>
  answer.parts
    .filter((p) => p.title === part)
    .flatMap((p) => p.rows.filter((r) => r.label === label && (about === undefined || r.about === about)))
    .flatMap((r) => r.values.flatMap(plain));
function plain(value: Value): readonly (number | string)[] {
  switch (value.kind) {
    case 'length':
      return [value.value / 10_000];
    case 'limits':
      return [value.lo / 10_000, value.hi / 10_000];
    case 'number':
      return [Number(value.value.toFixed(value.places))];
    case 'span':
      return [value.lo, value.hi];
    case 'name':
      return [value.name];
    case 'word':
      return [value.id];
  }
}

/** From printed tables: see figures/. */
const ROWS: readonly (readonly [
  look: Look,
  words: string,
  part: string,
  label: string,
  expected: readonly (number | string)[],
  source: string,
])[] = [
  [lookThread, 'M10x1', 'outside', 'pitch-diameter', [9.212, 9.324], 'mastik.pt p. 712'],
  [lookThread, 'M10x1 6H', 'inside', 'minor', [8.917, 9.153], 'mastik.pt p. 711'],
  [lookThread, 'M10×1', 'strength', 'stress-area', [64.49], 'ISO 898-1'],
  [lookThread, '2BA', 'inside', 'minor', [3.73, 4.034], 'BS 93:1951'],
  [lookThread, '3/8 BSP', 'inside', 'minor', [14.95, 15.395], 'ISO 228-1'],
  [lookThread, '1/4-40 ME', 'form', 'per-inch', [40], 'Model Engineer threads'],
  [lookThread, 'M10x1', 'making', 'undercut', [8.4, 2.1, 3.5], 'DIN 76-1'],
  [lookWire, 'M10x1', 'wires', 'best-wire', [0.5774], 'Thread Check p. 130'],
  [lookWire, 'M10x1 0.58 mm', 'wires', 'over', [10.086, 10.198], 'M = d2 + 3 W − 0.866025 P'],
  [lookDrill, '3.8', 'size', 'point-118', [1.1416], '0.3004 d'],
  [lookDrill, '#29', 'size', 'diameter', [3.4544], 'docslib 5335266'],
  [lookDrill, '6.8', 'use', 'taps', ['M8', 'G1/16'], 'ISO 2306; 0685.com'],
  [lookBall, '6 mm', 'size', 'lift-pump', [0.75, 1], 'Perry: D/8 to D/6'],
  [lookFit, '10 h7', 'shaft', 'limits', [9.985, 10], 'ISO 286-1'],
  [lookFit, '10 mm H7/g6', 'together', 'play', [5, 29], 'ISO 286-1'],
  [lookFit, '25 m', 'general', 'limits', [24.8, 25.2], 'ISO 2768-1'],
  [lookSteam, '7 bar', 'state', 'temperature', [170.48], 'IF97'],
  [lookSteam, '8 bar abs', 'state', 'temperature', [170.41], 'IF97'],
  [lookSteam, '0 bar', 'state', 'temperature', [99.97], 'IF97'],
  [lookSquare, '6 mm', 'across', 'full-round', [8.4853], 'd = 1.4142 a'],
  [lookSquare, '4 on 5', 'one', 'flat', [0.5], 'geometry'],
  [lookSquare, '5', 'on-round', 'pair', [0.5, 3], 'ISO 237'],
  [lookMaterial, 'PB102', 'strengths', 'strength', [460, 380, 325, 140], 'John Hood & Co.'],
  [lookMaterial, 'gunmetal', 'cutting', 'machinability', [84], 'alloy data sheets'],
  [lookGears, '1.0 mm', 'train', 'on-leadscrew', ['80', '60', '50'], 'arithmetic: 2 mm by 40/80, 30/60, 25/50'],
  [lookGears, 'M10x1', 'passes-outside', 'depth-rounded', [0.61], 'Mitsubishi, pitch 1.0'],
  [lookGears, 'M10', 'passes-outside', 'set-over', [29.5], 'NAVEDTRA 14345 fig. 6-91'],
  [lookGears, 'M10', 'passes-outside', 'slide-travel', [1.06], '0.92 / cos 29.5'],
  [lookGears, 'M10x1', 'coming-back', 'half-nuts', ['nuts.anywhere'], 'a whole multiple'],
  [lookGears, '40 tpi', 'coming-back', 'half-nuts', ['nuts.closed'], 'inch thread, metric screw'],
  [lookSpeed, 'PB102 12 mm', 'turn-rough', 'surface-speed', [25, 40, 'usually', 30], 'bench set'],
];

describe('answers', () => {
  it.each(ROWS)('%o %s: %s %s is %j (%s)', (look, words, part, label, expected) => {
    expect(values(found(look, words), part, label)).toEqual(expected);
  });
  it.each(ROWS)('%o %s: has its sources', (look, words) => {
    const { sources } = found(look, words);
    expect(sources.length).toBeGreaterThan(0);
    expect(new Set(sources.map((s) => s.source)).size).toBe(sources.length);
  });
  it('one class shows one side', () => {
    expect(found(lookThread, 'M10x1 6H').parts.map((p) => p.title)).not.toContain('outside');
    expect(found(lookThread, 'M10x1').parts.map((p) => p.title)).toContain('outside');
  });
  it("a workshop's own drills and speeds are used", () => {
    expect(values(found(lookThread, 'M10x1', SHOP), 'tapping', 'drill', '9.0')[0]).toBe(92);
    expect(found(lookThread, 'M10x1', SHOP).parts.flatMap((p) => p.rows.filter((r) => r.label === 'drill')).length).toBe(2);
    expect(values(found(lookSpeed, 'PB102 12 mm', SHOP), 'turn-rough', 'turns')).toEqual([500]);
    expect(values(found(lookDrill, '9', SHOP), 'rack', 'have')).toEqual(['yes']);
    expect(values(found(lookDrill, '8.9', SHOP), 'rack', 'rack-over')).toEqual([9]);
    expect(
      found(lookBall, '6 mm', SHOP)
        .parts.filter((p) => p.title === 'bore')
        .map((p) => p.about),
    ).toEqual(['4.50']);
  });
  it.each([
    [796, { steps: [100, 250, 500, 900] }, 500],
    [50, { steps: [100, 250] }, 100],
    [796, { from: 100, to: 600 }, 600],
    [796, { from: 100, to: 2500 }, 750],
    [60, { from: 100, to: 2500 }, 100],
  ])('%d turns wanted, %j: %d', (turns, speeds, expected) => expect(available(turns, { speeds })).toBe(expected));
  it("a workshop's own leadscrew and wheels are used, exactly", () => {
    const lathe = { leadscrew: mm(3.175), leadscrewPerInch: 8, gears: [30, 63, 75, 80] };
    const answer = found(lookGears, 'M10x1', { ...SHOP, lathe });
    expect(values(answer, 'train', 'error')[0]).toBe(125);
    expect(values(answer, 'train', 'tolerance-share').slice(0, 2)).toEqual([2, 'bears']);
    expect(values(found(lookGears, '26 tpi', { ...SHOP, lathe: { ...lathe, gears: [20, 65, 80] } }), 'train', 'error')[0]).toBe(0);
  });
  it('what the wheels are out is told over a length, and for what threads that will do; not where they are exact', () => {
    const off = found(lookGears, '19 tpi', SHOP);
    // 25.4/19 mm wants 1.33684, 40/60 of 2 mm gives 1.33333: 0.0656 mm short over 25 mm
    expect(values(off, 'train', 'lead-off')[0]).toBe(0.0656);
    expect(off.notes).toContain('gears-short');
    expect(found(lookGears, '1.0 mm', SHOP).notes).not.toContain('gears-short');
  });
  it('carbide is faster where there is carbide', () => {
    const at = (tool: Shop['tool']) => Number(values(found(lookSpeed, 'PB102 12', { ...COMMON_SHOP, tool }), 'turn-rough', 'turns')[0]);
    expect(at('carbide')).toBeGreaterThan(at('HSS'));
  });
});

describe('what is not known gets the nearest', () => {
  it.each<readonly [look: Look, words: string, near: string]>([
    [lookThread, 'M10x0.9', 'M10x1'],
    [lookThread, 'M10x1 9g', 'M10x1 6g'],
    [lookWire, 'M10x0.9', 'M10x1'],
    [lookWire, 'M10x1 6H', 'M10x1 6g'],
    [lookDrill, '3.85', '3.8 mm'],
    [lookDrill, 'big', '3.8'],
    [lookBall, '5.1', '5 mm'],
    [lookBall, 'round', '1.5 mm'],
    [lookFit, '10 h3', '10 h6'],
    [lookFit, 'loose', '10 h7'],
    [lookFit, '1000 m', '25 m'],
    [lookSpeed, 'PB103 12 mm', 'PB102'],
    [lookSpeed, 'PB102', 'PB102 12 mm'],
    [lookSteam, '7', '7 bar'],
    [lookSteam, '500 bar', '7 bar'],
    [lookSquare, 'x', '6 mm'],
    [lookSquare, '8 on 6', '4.9 on 6'],
    [lookMaterial, 'PB12', 'PB102'],
    [lookGears, 'coarse', '40 tpi'],
  ])('%o %j: %s', (look, words, near) => {
    const answer = look({ words, shop: COMMON_SHOP });
    expect('near' in answer && answer.near).toContain(near);
  });
});
