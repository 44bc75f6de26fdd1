/** Findings of the design, pointed at the key that they are about. */
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/base/diagnostics.ts';
import { CHECK_VALVE_PLACES } from '../../src/fittings/check-valve/places.ts';
import { TURNED_PART_PLACES } from '../../src/fittings/turned-part/places.ts';
import { placeFindings } from '../../src/phases/read/placed.ts';
import { planOwn } from '../fixtures/own-part.ts';

const FILE = { name: 'a.yaml', text: 'fitting: check-valve\npipe: { outside: 6 mm, wall: 0.8 mm }\nball: 6 mm\n' };
const finding = (code: string): Diagnostic => ({ code, severity: 'error', grounds: {} });

describe("a part of one's own that no order makes", () => {
  const lines = ['first: { letter: A }', 'second: { letter: B }', 'outside:', '  - { name: pin, diameter: 6 h9, length: 20 mm }'];
  const placeOf = (more: readonly string[]) => {
    const { found, noRoutes } = planOwn([...lines, ...more]);
    expect(found.map(({ code }) => code)).toEqual(['plan.no-route']);
    return [noRoutes?.[0]?.about?.feature, found[0]?.place?.line, found[0]?.place?.col];
  };
  it('points at the hole that no tool makes', () => {
    const hole = ['inside:', '  - { name: bore, diameter: 3.05 H7, from: first, depth: 9 mm, bottom: flat }'];
    expect(placeOf(hole)).toEqual(['bore', 10, 5]);
  });
  it('points at what goes on at its side', () => {
    expect(placeOf(['side:', '  - { name: hole, cross-hole: 2.03 ±0.002, on: pin, at: 9 mm }'])).toEqual(['hole', 10, 5]);
  });
  it('points at a slot that no saw cuts, at its end', () => {
    const slot = ', slot: { width: 0.6 mm, depth: 1 mm }';
    const { found, noRoutes } = planOwn([...lines.slice(0, 1), `second: { letter: B${slot} }`, ...lines.slice(2)]);
    expect(noRoutes?.[0]?.about).toEqual({ feature: 'B', end: 'second', slot: true });
    expect([found[0]?.code, found[0]?.place?.line, found[0]?.place?.col]).toEqual(['plan.no-route', 6, 28]);
  });
  it('points at no line where it is one of tooling, or of a fitting that was designed', () => {
    const none = { ...finding('plan.no-route'), grounds: { feature: '', end: '' } };
    expect(placeFindings([none], FILE, TURNED_PART_PLACES)).toEqual([none]);
    const unknown = { ...finding('plan.no-route'), grounds: { feature: 'bore', end: '' } };
    expect(placeFindings([unknown], FILE, TURNED_PART_PLACES)).toEqual([unknown]);
  });
  it('points at an end by its key', () => {
    const file = { name: 'a.yaml', text: 'fitting: turned-part\nsecond: { letter: B }\n' };
    const end = { ...finding('plan.no-route'), grounds: { feature: 'B', end: 'second' } };
    expect(placeFindings([end], file, TURNED_PART_PLACES)[0]?.place).toMatchObject({ line: 2, col: 9 });
  });
});

describe('a diameter closer than what makes it', () => {
  const lines = (pin: string, bore: string) => [
    ...['first: { letter: A }', 'second: { letter: B }', 'outside:', `  - { name: pin, diameter: ${pin}, length: 20 mm }`],
    ...['inside:', `  - { name: bore, diameter: ${bore}, from: first, depth: through }`],
  ];
  it.each([
    ['12 h5', '6 mm', 8],
    ['12 mm', '6.05 H6', 10],
  ])('is pointed at in the file: outside %s, inside %s', (pin, bore, line) => {
    const { found } = planOwn(lines(pin, bore));
    expect(found.map(({ code, place }) => [code, place?.line, place?.col])).toEqual([['chart.cannot-be-met', line, 5]]);
  });
});

describe('a length closer than the cuts that add up to it', () => {
  it('is pointed at the piece that is as long', () => {
    const { found } = planOwn([
      ...['first: { letter: A }', 'second: { letter: B }', 'outside:', '  - { name: front, diameter: 8 mm, length: 20 mm }'],
      '  - { name: rear, diameter: 12 mm, length: 20 ±0.002 }',
    ]);
    expect(found.map(({ code, place }) => [code, place?.line])).toEqual([['chart.cannot-be-met', 9]]);
  });
});

describe('placeFindings', () => {
  it.each([
    ['design.pipe-wall', { line: 2, col: 30, endCol: 36 }],
    ['design.ball-crowds-seat', { line: 3, col: 7, endCol: 11 }],
  ])('%s', (code, place) => {
    expect(placeFindings([finding(code)], FILE, CHECK_VALVE_PLACES)).toEqual([{ ...finding(code), place: { file: 'a.yaml', ...place } }]);
  });
  it.each(['design.thread-unknown', 'plan.no-route', 'constructor'])('%s has no place where nothing of it was written', (code) => {
    expect(placeFindings([finding(code)], FILE, CHECK_VALVE_PLACES)).toEqual([finding(code)]);
  });
  it('leaves a place that is there', () => {
    const placed = { ...finding('design.pipe-wall'), place: { file: 'b.yaml', line: 9, col: 9 } };
    expect(placeFindings([placed], FILE, CHECK_VALVE_PLACES)).toEqual([placed]);
  });
});
