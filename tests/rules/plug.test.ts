/** A plug in a thin tube: where it is asked for, what it asks for, where it is refused, and what the proof says to a spoilt one. */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import type { Grip, PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { type Change, holdsOf, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';
import { shop } from '../fixtures/shop.ts';

/** A tube under a short head that is threaded from its own end: for that there is nothing but the tube to hold by. */
const cup = ({ tube = '18 mm', bore = '16.6 H9', deep = '23 mm', head = 'thread: M10x1', role = 'clearance' } = {}): readonly string[] => [
  'first: { letter: A }',
  'second: { letter: B, role: register }',
  'outside:',
  `  - { name: shell, diameter: ${tube}, length: 24 mm, shoulder: { letter: C } }`,
  '  - { name: head, diameter: 20 mm, length: 5 mm }',
  'inside:',
  `  - { name: well, diameter: ${bore}, from: first, depth: ${deep}, bottom: flat, letter: D, role: ${role} }`,
  `  - { name: mouth, ${head}, from: second, depth: through }`,
];
const NO_SOFT_JAWS: Change = ['soft-jaws: yes', 'soft-jaws: no'];
const plugOf = (part: PlannedPart): Grip['plug'] => part.route.setUps.find((s) => s.grip.plug)?.grip.plug;
const rulesOf = (lines: readonly string[], changes: readonly Change[] = []): readonly string[] =>
  refusedOf(planOwn(lines, changes)).map((r) => r.because.rule);

describe('a plug in a thin tube', () => {
  const compiled = planOwn(cup());
  it('fills a wall that gives even in bored jaws, and the part is proved', () => {
    const part = ownPart(compiled);
    expect(holdsOf(compiled)).toEqual(['bar', 'bored-jaws']);
    expect(plugOf(part)?.bore).toBe('part/well');
    expect(compiled.plan?.parts.map((p) => [p.part.use, p.proof.holds])).toEqual([
      ['fitting', true],
      ['tooling made to fit', true],
    ]);
    expect(part.route.cost.tooling).toBe(1);
  });
  it('is a part of its own, turned when the bore can be tried on it, right before the hold that it serves', () => {
    const [part, plug] = compiled.plan?.parts ?? [];
    expect(compiled.plan?.sequence.map((s) => `${s.part} ${s.setUp}`)).toEqual(['part 0', `${plug?.part.id} 0`, 'part 1']);
    const size = (p: PlannedPart | undefined, name: string) =>
      p?.part.surfaces.flatMap((s) => (s.id === `${p.part.id}/${name}` && s.shape === 'cylinder' ? [s.size] : []))[0];
    const [bore, body] = [size(part, 'well'), size(plug, 'plug')];
    // 0.02 looser, on the hundredth: 16.643 less 0.02 is 16.62
    expect(body && bore && [toMm(len(Math.floor((bore.hi - body.hi) / 100) * 100)), body.hi % 100, body.lo < bore.lo]).toEqual([
      0.02,
      0,
      true,
    ]);
  });
  it('stops short of the end that is pushed home, and of a tap that runs on from the other end', () => {
    const plug = plugOf(ownPart(compiled));
    // the well is 23 deep; the thread begins at its floor, and a second tap leads by five pitches of 1
    expect([toMm(plug?.from ?? len(0)), toMm(plug?.to ?? len(0))]).toEqual([1, 18]);
    const grip = ownPart(compiled).route.setUps[1]?.grip;
    expect(toMm(grip?.to ?? len(0))).toBe(19);
  });
  it('stands with a split sleeve where there are no jaws to bore: both are made', () => {
    const sleeved = planOwn(cup(), [NO_SOFT_JAWS]);
    expect(holdsOf(sleeved)).toEqual(['bar', 'sleeve']);
    expect(ownPart(sleeved).route.cost.tooling).toBe(2);
    expect(sleeved.plan?.parts.map((p) => p.part.use)).toEqual(['fitting', 'tooling made to fit', 'tooling made to fit']);
  });
  it.each([
    ['a wall that bored jaws hold', cup({ bore: '14 H9' }), [] as readonly Change[], false],
    ['the same wall in three jaws through a sleeve', cup({ bore: '14.6 H9' }), [NO_SOFT_JAWS], true],
    ['a wall that three jaws hold', cup({ bore: '14 H9' }), [NO_SOFT_JAWS], false],
  ])('%s: plugged or not', (_what, lines, changes, plugged) =>
    expect(plugOf(ownPart(planOwn(lines, changes))) !== undefined).toBe(plugged),
  );
  it.each([
    ['limits too wide', cup({ bore: '16.6 mm' }), 'plug-bore-loose', [0.4, 0.06]],
    ['a sealing bore', cup({ role: 'sealing' }), 'kept-surface', []],
    ['too short a tube', cup({ deep: '8 mm' }), 'plug-short', [4, 14.4]],
  ])('is refused for %s, with the figures', (_what, lines, rule, figures) => {
    const refused = refusedOf(planOwn(lines)).find((r) => r.because.rule === rule && r.what.endsWith('.plugged'));
    expect(
      refused && [refused.has, refused.wants ?? refused.most].flatMap((l) => (l === undefined ? [] : [Math.round(toMm(l) * 100) / 100])),
    ).toEqual(figures);
  });
  it('of loose limits is named as what would help', () =>
    expect(planOwn(cup({ bore: '16.6 mm' }), [NO_SOFT_JAWS]).noRoutes?.flatMap((n) => n.wouldHelp.map((r) => r.because.rule))).toContain(
      'plug-bore-loose',
    ));
  it.each([
    ['stub-mandrel', ['bar', 'bored-jaws'], true],
    ['tube-plug', ['bar', 'stub-mandrel'], false],
  ])('gives way to a habit, and comes in by one: where %s is avoided', (kind, holds, plugged) => {
    const tube = [
      'first: { letter: A, role: register }',
      'second: { letter: B, role: register }',
      'outside: [{ name: shell, diameter: 18 mm, length: 20 mm }]',
      'inside: [{ name: bore, diameter: 16.6 H8, from: first, depth: through, role: running }]',
    ];
    const avoiding = planOwn(tube, [['# One line for each kind of bar', `habits: { avoid: [${kind}] }\n# One line for each kind of bar`]]);
    expect(holdsOf(avoiding)).toEqual(holds);
    expect(plugOf(ownPart(avoiding)) !== undefined).toBe(plugged);
  });
  it('is not asked for where a hold ends at a shoulder: the thin neck behind it is not touched, wherever its shoulder comes out', () => {
    const compiled = planOwn([
      'first: { letter: A, role: register }',
      'second: { letter: B, role: register }',
      'outside:',
      '  - { name: body, diameter: 15.5 mm, length: 7.8 mm }',
      '  - { name: tail, thread: M8, length: 13 mm, starts: second }',
      'inside: [{ name: bore, diameter: 4.8 mm, from: first, depth: through }]',
    ]);
    const part = ownPart(compiled);
    const relief = part.part.surfaces.flatMap((s) => (s.shape === 'cylinder' && s.id === 'part/tail.relief' ? [s.size.target] : []));
    const held = part.route.setUps[1]?.grip;
    expect([held?.kind, toMm(held?.to ?? len(0)), plugOf(part)]).toEqual(['sleeve', 7.8, undefined]);
    // three jaws press in a wall of less than a tenth of the diameter: this neck would not stand it
    expect(relief.map((d) => d - mm(4.8) < 2 * 0.1 * mm(15.5))).toEqual([true]);
    expect(part.proof.holds).toBe(true);
  });
  it('is told in the reasons', () => expect(rulesOf(cup())).toContain('thin-wall-round'));
});

describe('a plug that is spoilt', () => {
  const sound = ownPart(planOwn(cup()));
  const failing = (change: (grip: Grip) => Grip): readonly unknown[] => {
    const setUps = sound.route.setUps.map((s) => (s.grip.plug ? { ...s, grip: change(s.grip) } : s));
    const { claims } = prove({ part: sound.part, route: { ...sound.route, setUps }, chart: sound.chart, workshop: shop });
    return claims.filter((c) => !c.holds).map((c) => [c.kind, c.grounds.reason]);
  };
  const plug = (grip: Grip) => {
    if (!grip.plug) throw new Error('no plug');
    return grip.plug;
  };
  it('by nothing, it holds', () => expect(failing((grip) => grip)).toEqual([]));
  it.each<readonly [string, (grip: Grip) => Grip, string]>([
    ['left out', ({ plug: _plug, ...grip }) => grip, 'thin'],
    ['too short for the hold', (grip) => ({ ...grip, plug: { ...plug(grip), to: mm(12) } }), 'plug'],
    ['not pushed home', (grip) => ({ ...grip, plug: { ...plug(grip), from: mm(6) } }), 'plug'],
    [
      'turned for another bore',
      (grip) => {
        const { tooling, ...rest } = plug(grip);
        if (tooling.kind !== 'tube-plug') throw new Error('another kind');
        const by = mm(0.3);
        const bore = { ...tooling.bore, lo: len(tooling.bore.lo - by), hi: len(tooling.bore.hi - by) };
        return { ...grip, plug: { ...rest, tooling: { ...tooling, bore } } };
      },
      'plug',
    ],
  ])('%s, it is refused', (_what, change, reason) => expect(failing(change)).toContainEqual(['grip', reason]));
});
