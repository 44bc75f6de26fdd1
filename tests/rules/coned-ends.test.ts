/** A cone at each end: of one piece, or of two that lean against each other, held by the bore where nothing outside is left (common practice). */
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import type { Cone } from '../../src/model/part.ts';
import type { PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { type Change, holdsOf, ownPart, planOwn } from '../fixtures/own-part.ts';

const ENDS = ['first: { letter: A }', 'second: { letter: B }', 'outside:'];
const nipple = (cone: string, length = 16, bore = '5 mm'): readonly string[] => [
  ...ENDS,
  `  - { name: body, diameter: 10 mm, length: ${length} mm, cone: { at: both, ${cone} } }`,
  `inside: [{ name: bore, diameter: ${bore}, from: first, depth: through }]`,
];
const olive = (bore: string): readonly string[] => [
  ...ENDS,
  '  - { name: front, diameter: 9 mm, length: 4 mm, cone: { at: first, length: 4 mm, tip: 7.5 mm, role: sealing } }',
  '  - { name: back, diameter: 9 mm, length: 4 mm, cone: { at: second, length: 4 mm, tip: 7.5 mm, role: sealing } }',
  `inside: [{ name: bore, diameter: ${bore}, from: first, depth: through }]`,
];
const cones = ({ part }: PlannedPart): readonly Cone[] => part.surfaces.filter((s): s is Cone => s.shape === 'cone');
const codes = (lines: readonly string[]): readonly string[] => planOwn(lines).found.map((one) => one.code);

describe('one piece with a cone at either end', () => {
  const planned = ownPart(planOwn(nipple('angle: 60 deg, tip: 7.5 mm, role: sealing')));
  it('has two that are alike, each small at its own end', () => {
    expect(cones(planned).map((s) => [s.id, s.into, s.includedAngle, toMm(s.mouth.target), s.role])).toEqual([
      ['part/body.first-cone', 'second', 60, 7.5, 'sealing'],
      ['part/body.second-cone', 'first', 60, 7.5, 'sealing'],
    ]);
  });
  it('is held by what is plain between them, each cone cut from its end', () => {
    expect(planned.proof.holds).toBe(true);
    const cut = planned.route.setUps.map(({ grip, operations }) => [grip.out, operations.filter((id) => id.endsWith('/cone'))]);
    expect(cut).toEqual([
      ['first', ['part/body.first-cone/cone']],
      ['second', ['part/body.second-cone/cone']],
    ]);
  });
  // two of (10 - 7.5) / 2 / tan 30 deg = 2.165 mm
  it('has room for both and a land between, or is refused', () => {
    expect(codes(nipple('angle: 60 deg, tip: 7.5 ±0.05', 6, '5 mm'))).not.toContain('design.part-cone-long');
    expect(codes(nipple('angle: 60 deg, tip: 7.5 ±0.05', 4.4, '5 mm'))).toContain('design.part-cone-long');
  });
  it('leaves a rim round a hole at both ends', () => {
    expect(codes(nipple('angle: 60 deg, tip: 7.5 mm', 16, '7.3 mm'))).toContain('design.part-tip-in-hole');
  });
});

describe('two tapers with nothing between them', () => {
  const compiled = planOwn(olive('6 H9'));
  const planned = ownPart(compiled);
  const second = planned.route.setUps[1];
  it('are held by their bore for the second, once the blank of both is turned in the bar', () => {
    expect(holdsOf(compiled)).toEqual(['bar', 'stub-mandrel']);
    expect(planned.proof.holds).toBe(true);
    expect(planned.route.setUps[0]?.operations).toEqual(expect.arrayContaining(['part/front/turn', 'part/front.cone/cone']));
    expect(second?.operations).toEqual(['part/B/face', 'part/back.cone/cone']);
  });
  it('are cut on it in thin cuts', () => {
    const figures = planned.figures.find(({ op }) => op === 'part/back.cone/cone');
    expect(figures?.bound).toBe('bound.spigot');
    expect(Math.max(...(figures?.passes ?? []))).toBeLessThanOrEqual(mm(0.2));
  });
  it('ask for a bore that fits a mandrel', () => {
    expect(planOwn(olive('6 ±0.1')).noRoutes).toHaveLength(1);
  });
  it('ask for a mandrel', () => {
    const none: Change = ['mandrels: yes', 'mandrels: no'];
    expect(planOwn(olive('6 H9'), [none]).noRoutes?.flatMap((one) => one.refused.map((r) => r.because.rule))).toContain(
      'stub-mandrels-not-made',
    );
  });
  it('may not be turned on it: the proof refuses a heavy cut there', () => {
    const { part, route, chart } = planned;
    if (!compiled.plan || !second) throw new Error('no plan');
    const [first] = route.setUps;
    if (!first) throw new Error('no set-up');
    const moved = {
      ...route,
      setUps: [
        { ...first, operations: first.operations.filter((id) => id !== 'part/front/turn') },
        { ...second, operations: ['part/front/turn', ...second.operations] },
      ],
    };
    const { claims } = prove({ part, route: moved, chart, workshop: compiled.plan.workshop });
    expect(claims.find((one) => one.kind === 'grip' && one.about === second.grip.id)?.grounds.reason).toBe('heavy');
  });
  it('may not be coned on a spigot that is there for facing alone', () => {
    const { part, route, chart } = planned;
    if (!compiled.plan || !second) throw new Error('no plan');
    const light = { ...second, grip: { ...second.grip, lightOnly: true } };
    const setUps = route.setUps.map((one) => (one === second ? light : one));
    const { claims } = prove({ part, route: { ...route, setUps }, chart, workshop: compiled.plan.workshop });
    expect(claims.some((one) => one.kind === 'grip' && !one.holds && one.grounds.reason === 'heavy')).toBe(true);
  });
});

describe('a hole with a cone at either end', () => {
  const seat = (hole: string, length = 20): readonly string[] => [
    ...ENDS,
    `  - { name: barrel, diameter: 16 mm, length: ${length} mm }`,
    `inside: [{ name: bore, diameter: 5 mm, ${hole}, cone: { at: both, angle: 60 deg, mouth: 9 mm, role: sealing } }]`,
  ];
  it('has two that are alike, each cut from its end, and is proved', () => {
    const planned = ownPart(planOwn(seat('from: first, depth: through')));
    expect(cones(planned).map((s) => [s.id, s.side, s.into, toMm(s.mouth.target)])).toEqual([
      ['part/bore.first-cone', 'inside', 'second', 9],
      ['part/bore.second-cone', 'inside', 'first', 9],
    ]);
    expect(planned.proof.holds).toBe(true);
    const cut = planned.route.setUps.map(({ grip, operations }) => [grip.out, operations.filter((id) => id.endsWith('-cone/cone'))]);
    expect(cut).toEqual([
      ['first', ['part/bore.first-cone/cone']],
      ['second', ['part/bore.second-cone/cone']],
    ]);
  });
  it('goes right through, and has room for both', () => {
    expect(codes(seat('from: first, depth: 12 mm'))).toContain('design.part-cone-within');
    // two of (9 - 5) / 2 / tan 30 deg = 3.464 mm
    expect(codes(seat('from: first, depth: through', 7))).toContain('design.part-cone-long');
  });
});
