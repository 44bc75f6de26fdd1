import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/base/nearest.ts';

describe('nearest', () => {
  it.each([
    ['chek', ['sheet', 'check', 'why'], 'check'],
    ['hseet', ['sheet', 'check', 'why'], 'sheet'],
    ['WHY', ['sheet', 'check', 'why'], 'why'],
    ['matrial', ['material', 'threads'], 'material'],
    ['ab', ['ac', 'bb', 'abc'], 'abc'],
    ['m', ['"', 'cm', 'in', 'mm'], 'mm'],
    ['m', ['"', '/'], undefined],
    ['wrench', ['sheet', 'check', 'why'], undefined],
    ['', ['sheet'], undefined],
    ['x', [], undefined],
  ])('%j among %j: %j', (written, known, expected) => {
    expect(nearest(written, known)).toBe(expected);
  });
});
