/**
 * A large diameter reduced to a small one (common practice, no source): what is short against what it is deep is faced down, cut by cut
 * inwards; what is long is roughed along, the deeper and the faster the thinner it gets. Depths are held against published ones.
 */
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import type { Figures } from '../../src/model/plan.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { type Change, ownPart, planOwn } from '../fixtures/own-part.ts';

const THICK: Change = ['across: [6, 8, 10, 12, 14, 16, 18, 20, 22, 25]', 'across: [25, 30]'];
const STEEL: Change = ['across: [16, 20, 22, 25], length: 250 mm', 'across: [16, 20, 22, 25, 30], length: 250 mm'];
const pin = (long: number, more = ''): readonly string[] => [
  ...['bar: round 30 mm', 'first: { letter: A }', 'second: { letter: B }', 'outside:'],
  `  - { name: shank, diameter: 6 h9, length: ${long} mm, role: register${more}, shoulder: { letter: C, role: sealing } }`,
  '  - { name: flange, as-bar: yes, length: 6 mm }',
];
const planned = (lines: readonly string[], changes: readonly Change[] = [THICK], material = 'PB102') =>
  ownPart(planOwn(lines, changes, material));
function at({ figures }: { readonly figures: readonly Figures[] }, step: string): Figures {
  const found = figures.find(({ op }) => op.endsWith(step));
  if (!found) throw new Error(`no ${step}`);
  return found;
}
const verbs = (part: ReturnType<typeof planned>) =>
  part.route.setUps.flatMap((s) => s.operations.filter((id) => id.includes('/shank/')).map((id) => id.slice(id.lastIndexOf('/') + 1)));
const sum = (passes: readonly number[] = []): number => passes.reduce((all, one) => all + one, 0);

describe('a short shank on a thick bar', () => {
  const part = planned(pin(5));
  const down = at(part, '/face-down');
  const last = at(part, '/turn-to-size');
  it('is faced down and then turned to size, and that is proved', () => {
    expect(verbs(part)).toEqual(['face-down', 'turn-to-size']);
    expect(part.proof.holds).toBe(true);
  });
  it('in cuts along the axis that end at the shoulder, measured before the last, at the speed of the outside', () => {
    expect(sum(down.passes)).toBe(mm(5));
    expect(down.measure).toBe((down.passes?.length ?? 0) - 1);
    // 30 m/min of phosphor bronze at 30 mm is 318 turns; facing goes by nine tenths of it
    expect(down.rpm?.value).toBeLessThanOrEqual((0.9 * 30 * 1000) / (Math.PI * 30));
    expect(down.dial).toMatchObject({ which: 'top', total: mm(5) });
  });
  it('the cross slide stops each at one reading, and leaves the cuts to size', () => {
    expect(down.along).toMatchObject({ which: 'cross', total: mm(30 - 6.58) });
    expect(sum(last.passes)).toBe(mm(0.3));
    expect(last.rpm?.value).toBeGreaterThan(4 * (down.rpm?.value ?? Number.NaN));
    expect(part.chart.working.filter(({ op }) => op.endsWith('/face-down')).map(({ stage }) => stage)).toEqual(['rough', 'final']);
  });
  it('takes a third of the cuts that turning along would', () => {
    const turned = part.candidates.methods.find(({ feature }) => feature === 'part/shank')?.any.map(({ name, rank }) => [name, rank]);
    expect(turned).toEqual([
      ['turn', 1],
      ['face-down', 0],
    ]);
    expect((down.passes?.length ?? 0) + (last.passes?.length ?? 0)).toBeLessThan(36 / 2);
  });
});

describe('is turned along all the same', () => {
  const names = (part: ReturnType<typeof planned>) =>
    part.candidates.methods.find((m) => m.feature === 'part/shank')?.any.map((m) => m.name);
  it('where it is long for what it is deep', () => expect(names(planned(pin(12)))).toEqual(['turn']));
  it('where a fillet is left in its corner', () => expect(names(planned(pin(5, ', fillet: 1 mm')))).toEqual(['turn']));
  it('where little is to go', () => expect(names(planned(pin(5).map((line) => line.replace('6 h9', '24 h9'))))).toEqual(['turn']));
});

describe('a plan with it that is spoilt is refused', () => {
  const part = planned(pin(5));
  const compiled = planOwn(pin(5), [THICK]);
  const workshop = compiled.plan?.workshop as Proved['workshop'];
  const sound: Proved = { part: part.part, route: part.route, chart: part.chart, figures: part.figures, workshop };
  const refusedBy = (asked: Proved): readonly string[] => prove(asked).claims.flatMap(({ kind, holds }) => (holds ? [] : [kind]));
  it('turned to size before it is faced down', () => {
    const setUps = sound.route.setUps.map((s) => {
      const [down, last] = ['part/shank/face-down', 'part/shank/turn-to-size'];
      const swapped = s.operations.map((id) => (id === down ? last : id === last ? down : id));
      return { ...s, operations: swapped };
    });
    expect(refusedBy({ ...sound, route: { ...sound.route, setUps } })).toContain('order');
  });
  it('faced down under size', () => {
    const working = sound.chart.working.map((one) =>
      one.id === 'part/D.shank.rough' ? { ...one, limits: { ...one.limits, lo: mm(5.4), target: mm(5.5), hi: mm(5.6) } } : one,
    );
    expect(refusedBy({ ...sound, chart: { ...sound.chart, working } })).toContain('no air');
  });
  it('at a speed that the lathe has not, once it is thinner', () => {
    const figures = (sound.figures ?? []).map((one) =>
      one.op.endsWith('/turn-to-size') ? { ...one, faster: [{ across: mm(6.2), after: 1, rpm: 9000 }] } : one,
    );
    expect(refusedBy({ ...sound, figures })).toEqual(['speed exists']);
  });
});

describe('a long shank on a thick bar', () => {
  /** mm a side; a handout for lathes of full size ("maximum depth of cut", high-speed steel): plain steel 0.76, brass 1.3, stainless 0.76. */
  const MOST = { PB102: 0.76, '230M07': 0.76 };
  const cuts = (material: 'PB102' | '230M07', long: number) =>
    at(planned(pin(long), [material === 'PB102' ? THICK : STEEL], material), '/turn');
  it.each([
    ['PB102', 12, 30],
    ['PB102', 30, 36],
    ['230M07', 30, 30],
  ] as const)('of %s, %i mm long, in at most %i cuts', (material, long, most) => {
    const { passes = [] } = cuts(material, long);
    expect(sum(passes)).toBe(mm(12.01));
    expect(passes.length).toBeLessThanOrEqual(most);
    expect(toMm(Math.max(...passes) as never)).toBeLessThanOrEqual(MOST[material]);
    // 24 mm of diameter by the deepest of the handout
    expect(passes.length).toBeGreaterThanOrEqual(Math.ceil(12 / MOST[material]));
  });
  it('is cut the deeper the thinner it is, as long as it does not give, and lighter at the end', () => {
    const { passes = [] } = cuts('PB102', 30);
    const deepest = passes.indexOf(Math.max(...passes) as never);
    expect(deepest).toBeGreaterThan(0);
    expect(passes.slice(0, deepest + 1)).toEqual([...passes.slice(0, deepest + 1)].sort((a, b) => a - b));
    expect(passes.at(-1)).toBeLessThan(passes[0] ?? 0);
  });
  it('is set faster where it is half as thick', () => {
    const { rpm, faster = [] } = cuts('PB102', 30);
    const speeds = [rpm?.value ?? 0, ...faster.map((one) => one.rpm)];
    expect(faster.map(({ across }) => Math.round(toMm(across)))).toEqual([14, 7]);
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
    // never over the cutting speed of the bronze
    for (const { across, rpm: turns } of faster) expect((turns * Math.PI * toMm(across)) / 1000).toBeLessThanOrEqual(30);
  });
});
