/** Findings of the design, pointed at the key that they are about. */
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/base/diagnostics.ts';
import { CHECK_VALVE_PLACES } from '../../src/fittings/check-valve/places.ts';
import { placeFindings } from '../../src/phases/read/placed.ts';

const FILE = { name: 'a.yaml', text: 'fitting: check-valve\npipe: { outside: 6 mm, wall: 0.8 mm }\nball: 6 mm\n' };
const finding = (code: string): Diagnostic => ({ code, severity: 'error', grounds: {} });

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
