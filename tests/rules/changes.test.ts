/** What would help where nothing finishes: one change, one tool that serves several features, or two changes together. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { why, whyNot } from '../../src/phases/why.ts';
import { showWhyNot, showWhyPart } from '../../src/render/why.ts';
import { type Change, ownPart, planOwn } from '../fixtures/own-part.ts';

const say = words(loadWords());
const ENDS = ['first: { letter: A }', 'second: { letter: B }'];
const bush = (holes: readonly string[]) => [...ENDS, 'outside: [{ name: rim, diameter: 20 mm, length: 30 mm }]', 'inside:', ...holes];
const NO_BORING: Change = [/ {2}boring:\n(?: {4}-.*\n)+/, '  boring: []\n'];
const RUNNING = (diameter: number, end: string) =>
  `  - { name: ${end}-bore, diameter: ${diameter} ±0.02, from: ${end}, depth: 8 mm, bottom: flat, letter: ${end === 'first' ? 'C' : 'D'}, role: running }`;
const PASSAGE = '  - { name: passage, diameter: 6 mm, from: first, depth: through, role: clearance }';

describe('what would help', () => {
  it('is one tool that serves two features, told once', () => {
    const { noRoutes, found } = planOwn(bush([RUNNING(12, 'first'), RUNNING(10, 'second'), PASSAGE]), [NO_BORING]);
    const none = noRoutes?.[0];
    expect(none?.wouldHelp).toEqual([]);
    expect(none?.wouldHelpByOne?.map((all) => all.map((r) => [r.what, r.lacks]))).toEqual([
      [
        ['part/first-bore/bore', 'boring'],
        ['part/second-bore/bore', 'boring'],
      ],
    ]);
    const told = none ? showWhyNot(whyNot(none), say) : '';
    expect(told).toContain('One change for all 2 of these: ');
    expect(told).not.toContain('Two together');
    expect(found.map((f) => [f.grounds.wouldHelp, f.grounds.pairs])).toEqual([[1, 0]]);
  });
  it('is one tool alone where only one feature wants it', () => {
    const { noRoutes } = planOwn(bush([RUNNING(12, 'first'), PASSAGE]), [NO_BORING]);
    expect(noRoutes?.[0]?.wouldHelp.map((r) => r.what)).toEqual(['part/first-bore/bore']);
    expect(noRoutes?.[0]?.wouldHelpByOne).toBeUndefined();
  });
  it('is an end left as the blade leaves it, where nothing can hold the part to face it; followed, the part is made', () => {
    const tube = (role: string): readonly string[] => [
      ...['first: { letter: A, role: register }', `second: { letter: B${role} }`],
      ...['outside: [{ name: tube, diameter: 20 mm, length: 25 mm }]'],
      ...['inside: [{ name: bore, diameter: 18.5 mm, from: first, depth: through }]'],
    ];
    const helps = (role: string) => planOwn(tube(role)).noRoutes?.flatMap((none) => none.wouldHelp.map((r) => r.what)) ?? [];
    expect(helps('')).toContain('part/B/as-parted');
    const [none] = planOwn(tube('')).noRoutes ?? [];
    expect(none ? showWhyNot(whyNot(none), say) : '').toContain("'role: free'");
    expect(ownPart(planOwn(tube(', role: free'))).proof.holds).toBe(true);
    // an end that something sits on is not left so
    expect(helps(', role: register')).not.toContain('part/B/as-parted');
  });
  it('is the die of a thread that no wheels come near, and a gauge nut that is at hand; followed, the part is made', () => {
    const pin = [
      ...['first: { letter: A }', 'second: { letter: B }', 'outside:'],
      ...['  - { name: end, thread: 4BA, length: 7 mm }', '  - { name: body, diameter: 6 mm, length: 18 mm }'],
    ];
    const [none] = planOwn(pin).noRoutes ?? [];
    expect(none?.wouldHelp.map((r) => r.because.rule)).toContain('no-die');
    const die: Change = [/ {2}dies: \[/, '  dies: [4BA, '];
    const nut = planOwn(pin, [die]);
    expect(nut.noRoutes?.map((one) => one.part)).toEqual(['gauge-nut-4BA']);
    expect(nut.found.map((f) => say.say(`error.${f.code}.do`, f.grounds)).join()).toContain("'gauge-nuts'");
    const made = ownPart(planOwn(pin, [die, ['  files: yes', '  gauge-nuts: [4BA]\n  files: yes']]));
    expect(made.proof.holds).toBe(true);
    expect(made.route.chosen.find((m) => m.feature === 'part/end.thread')?.name).toBe('die');
  });
  it('is a pair where two things are wanting, and the advice says so', () => {
    const square = 'side: [{ name: square, square: 8 mm, on: rim, at: 5 mm, length: 8 mm }]';
    const changes: readonly Change[] = [NO_BORING, ['files: yes', 'files: no']];
    const outside = 'outside: [{ name: rim, diameter: 12 mm, length: 30 mm }]';
    const holes = ['inside:', '  - { name: bore, diameter: 7 ±0.02, from: second, depth: 8 mm, bottom: flat, letter: D, role: running }'];
    const { noRoutes, found } = planOwn([...ENDS, outside, ...holes, square], changes);
    expect(noRoutes?.[0]?.wouldHelp).toEqual([]);
    const pairs = noRoutes?.[0]?.wouldHelpPairs?.map((pair) => pair.map((r) => r.because.rule).sort()) ?? [];
    expect(pairs).toContainEqual(['no-boring-tool', 'no-file']);
    const said = found.map((f) => say.say(`error.${f.code}.do`, f.grounds));
    expect(said[0]).toContain(`the pairs that are listed as a help (${pairs.length})`);
  });
});

describe('an order that is not proved best', () => {
  it('is told with what no order can undercut, and only then', () => {
    const compiled = planOwn([...ENDS, 'outside: [{ name: rim, diameter: 20 mm, length: 20 mm }]']);
    const planned = ownPart(compiled);
    const { plan } = compiled;
    if (!plan) throw new Error('no plan');
    const told = (route: typeof planned.route): string => {
      const [part] = why({ ...plan, parts: [{ ...planned, route }] }).parts;
      return part ? showWhyPart(part, say) : '';
    };
    expect(told(planned.route)).not.toContain('No order can cost less');
    const atLeast = { ...planned.route.cost, setUps: 1 };
    expect(told({ ...planned.route, proved: 'best found within the limit', atLeast })).toContain('No order can cost less than 1 set-up, ');
  });
});
