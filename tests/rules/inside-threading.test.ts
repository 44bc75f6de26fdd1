/** Several inside threading tools in one workshop: the thickest that enters the bore and reaches the last full thread, as with boring tools. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { nameOfTool } from '../../src/phases/sheet/operations.ts';
import { wordsIn } from '../../src/phases/sheet/said.ts';
import { type Change, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const ONE = 'threading-inside: { smallest: 9 mm, reach: 25 mm }';
const drawer = (...tools: readonly string[]): readonly Change[] => [
  [ONE, `threading-inside: [${tools.join(', ')}]`],
  ['taps: [M3, M4, M5, M6, M8, M10x1, M12x1]', 'taps: []'],
];
const SMALL = '{ smallest: 6 mm, reach: 12 mm }';
const LARGE = '{ smallest: 9 mm, reach: 25 mm }';
const bush = (thread: string, full: number): readonly string[] => [
  ...['first: { letter: A }', 'second: { letter: B }', 'outside: [{ name: barrel, diameter: 18 mm, length: 30 mm }]'],
  `inside: [{ name: bore, thread: ${thread}, from: first, depth: ${full + 6} mm, full: ${full} mm, bottom: point }]`,
];
const toolIn = (lines: readonly string[], changes: readonly Change[]) => {
  const planned = ownPart(planOwn(lines, changes));
  return { planned, tool: planned.route.chosen.flatMap((m) => m.operations).find((o) => o.verb === 'screw-cut')?.tool };
};

describe('which inside threading tool is taken', () => {
  const changes = drawer(SMALL, LARGE);
  // M8: tapping bore 6.647 to 6.912; M12x1: 10.917 to 11.153 (ISO 965-1)
  it('is the one that enters the bore', () => {
    expect(toolIn(bush('M8', 8), changes).tool?.enters).toBe(mm(6));
  });
  it('is the thickest of those that do', () => {
    expect(toolIn(bush('M12x1', 8), changes).tool?.enters).toBe(mm(9));
  });
  it('is a thinner one where only that reaches', () => {
    const slim = drawer('{ smallest: 6 mm, reach: 25 mm }', '{ smallest: 9 mm, reach: 6 mm }');
    expect(toolIn(bush('M12x1', 10), slim).tool?.enters).toBe(mm(6));
  });
  it('is said by its bore, and only where there are several', () => {
    const say = wordsIn(words(loadWords('en')), 'mm');
    const named = (all: readonly Change[]): string => {
      const { tool } = toolIn(bush('M12x1', 8), all);
      return tool ? nameOfTool(tool, say) : '';
    };
    expect(named(changes)).toBe('inside threading tool for bores from 9');
    expect(named(drawer(LARGE))).toBe('inside threading tool');
  });
});

describe('what none of them can do', () => {
  it('is refused with the reach of the one that enters', () => {
    const refused = refusedOf(planOwn(bush('M8', 16), drawer(SMALL, LARGE))).find((one) => one.because.rule === 'threading-reach');
    expect(refused && [refused.has, refused.wants]).toEqual([mm(12), mm(16)]);
  });
  it('is refused with the thinnest where none enters', () => {
    const refused = refusedOf(planOwn(bush('M6', 8), drawer(SMALL, LARGE))).find((one) => one.because.rule === 'threading-reach');
    expect(refused?.has).toBe(mm(6));
    expect(refused?.most !== undefined && refused.most < mm(6)).toBe(true);
  });
  it('is refused by the proof, which asks the reach of the tool that is used', () => {
    const compiled = planOwn(bush('M8', 8), drawer(SMALL, LARGE));
    const { part, route, chart } = ownPart(compiled);
    if (!compiled.plan) throw new Error('no plan');
    const { workshop } = compiled.plan;
    const short = workshop.tools.threadingInside.map((one) => (one.smallest === mm(6) ? { ...one, reach: mm(5) } : one));
    const asked: Proved = { part, route, chart, workshop: { ...workshop, tools: { ...workshop.tools, threadingInside: short } } };
    expect(prove(asked).claims.some((one) => one.kind === 'reach' && !one.holds && one.about === 'part/bore.thread/screw-cut')).toBe(true);
  });
});
