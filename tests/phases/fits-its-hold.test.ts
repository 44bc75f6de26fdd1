/** What is of one size closes on the work as it came out, or the proof refuses the plan: each kind of hold, sound and spoilt. */
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import type { SetUp } from '../../src/model/plan.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { type Change, ownPart, planOwn } from '../fixtures/own-part.ts';

const pin = (diameter: string): readonly string[] => [
  ...['first: { letter: A }', 'second: { letter: B }', 'outside:', `  - { name: shank, diameter: ${diameter}, length: 20 mm }`],
  ...['  - { name: head, diameter: 16 mm, length: 4 mm, chamfer: 0.5 ±0.1, chamfer-at: second }'],
];

function soundOf(diameter: string, changes: readonly Change[] = []): Proved {
  const compiled = planOwn(pin(diameter), changes);
  const { part, route, chart } = ownPart(compiled);
  if (!compiled.plan) throw new Error('no plan');
  return { part, route, chart, workshop: compiled.plan.workshop };
}

const holdOf = ({ route }: Proved): SetUp['grip'] | undefined => route.setUps.find(({ grip }) => grip.on.includes('part/shank'))?.grip;

/** Kinds and what they are about. */
const failing = (asked: Proved): readonly string[] => prove(asked).claims.flatMap((one) => (one.holds ? [] : [`${one.kind} ${one.about}`]));

function turnedTo(sound: Proved, lo: number, hi: number): Proved {
  const limits = { lo: mm(lo), hi: mm(hi), target: len((mm(lo) + mm(hi)) / 2) };
  const working = sound.chart.working.map((one) =>
    one.makes === 'part/shank' && one.measures === 'diameter' ? { ...one, limits: { ...one.limits, ...limits } } : one,
  );
  return { ...sound, chart: { ...sound.chart, working } };
}

function heldBy(sound: Proved, change: (grip: SetUp['grip']) => SetUp['grip']): Proved {
  const setUps = sound.route.setUps.map((setUp) => (setUp.grip.on.includes('part/shank') ? { ...setUp, grip: change(setUp.grip) } : setUp));
  return { ...sound, route: { ...sound.route, setUps } };
}

describe('work in a collet', () => {
  const sound = soundOf('10 mm');
  const hold = holdOf(sound);
  const refused = [`fits its hold ${hold?.id}`];

  it('is turned to what that closes on, and proved', () => {
    expect(hold?.kind).toBe('collet');
    expect(failing(sound)).toEqual([]);
    expect(
      prove(sound)
        .claims.filter(({ kind }) => kind === 'fits its hold')
        .map(({ about }) => about),
    ).toEqual([hold?.id]);
  });
  // general tolerance of the drawing: 9.8 to 10.2
  it.each([
    ['smaller than that closes on, though inside the drawing', 9.82, 9.86],
    ['smaller at one end of its limits only', 9.84, 10],
    ['larger than goes in', 10.02, 10.06],
  ])('is refused when it is %s', (_, lo, hi) => {
    expect(failing(turnedTo(sound, lo, hi))).toEqual(refused);
  });
  it('is refused when no such collet is there', () => {
    const { holding } = sound.workshop;
    expect(failing({ ...sound, workshop: { ...sound.workshop, holding: { ...holding, collets: [] } } })).toEqual(refused);
  });
  it('is refused when nobody says which', () => {
    const unsaid = heldBy(sound, (grip) => {
      const { takes: _, ...rest } = grip;
      return rest;
    });
    expect(failing(unsaid)).toEqual(refused);
  });
});

describe('work in a sleeve that is made', () => {
  const sound = soundOf('12.3 h9');
  const hold = holdOf(sound);

  it('goes into it and is closed on', () => {
    expect(hold?.tooling?.kind).toBe('split-sleeve');
    expect(failing(sound)).toEqual([]);
  });
  it('is refused when the sleeve is bored smaller than the work', () => {
    const small = heldBy(sound, (grip) =>
      grip.tooling?.kind === 'split-sleeve' ? { ...grip, tooling: { ...grip.tooling, work: mm(12.2) } } : grip,
    );
    expect(failing(small)).toEqual([`fits its hold ${hold?.id}`]);
  });
  it('is refused when it is bored so wide that it does not close', () => {
    const wide = heldBy(sound, (grip) =>
      grip.tooling?.kind === 'split-sleeve' ? { ...grip, tooling: { ...grip.tooling, work: mm(13) } } : grip,
    );
    expect(failing(wide)).toEqual([`fits its hold ${hold?.id}`]);
  });
});

describe('jaws that are bored to the work', () => {
  it('follow it: nothing is claimed of their size', () => {
    const asked = soundOf('12.3 mm, knurl: yes');
    expect(prove(asked).claims.some(({ kind }) => kind === 'fits its hold')).toBe(false);
  });
});
