import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.ts';
import { writeJson } from '../../src/render/json.ts';
import { SMALL_PLAN } from '../fixtures/small-plan.ts';

describe('a plan as JSON', () => {
  it('is read back as it was', () => {
    expect(JSON.parse(writeJson(SMALL_PLAN))).toEqual(JSON.parse(JSON.stringify(SMALL_PLAN)));
  });

  it('does not depend on the order in which records were put together', () => {
    const turned = Object.fromEntries(Object.entries(SMALL_PLAN).reverse()) as unknown as Plan;
    expect(writeJson(turned)).toBe(writeJson(SMALL_PLAN));
    expect(Object.keys(turned)[0]).not.toBe(Object.keys(SMALL_PLAN)[0]);
  });

  it.each([
    ['-0 is 0', -0, '"version": 0'],
    ['lists keep their order', ['b', 'a'], '"b",\n    "a"'],
  ])('%s', (_, version, shown) => {
    expect(writeJson({ ...SMALL_PLAN, version } as unknown as Plan)).toContain(shown);
  });

  it('refuses what JSON has no word for', () => {
    expect(() => writeJson({ ...SMALL_PLAN, version: Number.NaN } as unknown as Plan)).toThrow('NaN');
  });
});
