/** Grooves in a bore and flat floors: which tool is refused for which reason, and that with it the part can be made. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const read = (...path: readonly string[]) => readFileSync(join(ROOT, 'specs', ...path), 'utf8');
const bench = read('workshops', 'bench-lathe.yaml');
const planned = (part: string, from: RegExp, to: string) => {
  const text = bench.replace(from, to);
  expect(text).not.toBe(bench);
  return compile({ fitting: { name: 'p.yaml', text: read('fittings', 'parts', `${part}.yaml`) } }, { workshop: { name: 'w.yaml', text } });
};
const TOOL = /grooving-inside: \{[^}]*\}/;
const tool = (width: number, smallest: number, reach: number, deep: number): string =>
  `grooving-inside: { width: ${width} mm, smallest: ${smallest} mm, reach: ${reach} mm, deep: ${deep} mm }`;

describe('a groove in a bore', () => {
  // packing-sleeve: a bore of 10, a groove 2.4 wide to 12.6, its far wall 8 deep; common practice, no source
  it.each<readonly [string, string]>([
    ['recess-narrow', tool(2.5, 8, 25, 1.5)],
    ['recess-mouth', tool(1.5, 10.5, 25, 1.5)],
    ['recess-deep', tool(1.5, 8, 25, 1)],
    ['recess-reach', tool(1.5, 8, 7, 1.5)],
  ])('%s: refused, and told as the change that helps', (rule, line) => {
    const { noRoutes = [] } = planned('packing-sleeve', TOOL, line);
    expect(noRoutes[0]?.refused.map((one) => one.because.rule)).toContain(rule);
  });
});

describe('a flat floor over a smaller hole', () => {
  it('no counterbore whose pilot fits: refused, and bored instead', () => {
    const { plan } = planned('strainer-body', /size: 8 mm, pilot: 4\.5 mm/, 'size: 8 mm, pilot: 5 mm');
    const route = plan?.parts[0]?.route;
    expect(route?.refused.map((one) => one.because.rule)).toContain('counterbore-pilot');
    expect(route?.chosen.find((one) => one.feature === 'strainer-body/mouth')?.name).not.toBe('counterbore');
  });
});
