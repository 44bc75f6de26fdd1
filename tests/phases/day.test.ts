/** The order of the day: against all interleavings, what it never does, and what its proof refuses. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ASKING } from '../../src/compile/asking.ts';
import type { Plan, Sequence } from '../../src/model/plan.ts';
import { proveDay } from '../../src/phases/prove-day.ts';
import { type Asking, type Sequenced, sequence } from '../../src/phases/sequence.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

// ---- small days ------------------------------------------------------------------------------------------------------------
/** What holds a set-up: 'bar' puts out what stood in the spindle; 'bench' leaves it; a mandrel is 'M' or 'N'; 'j' are jaws bored for it. */
type Hold = 'bar' | 'bench' | 'M' | 'N' | 'j' | 'k';
type SmallPart = { readonly holds: readonly Hold[]; readonly waits: readonly (readonly [setUp: number, part: number])[] };
const MANDRELS = { M: 20, N: 45 } as const;
const isMandrel = (hold: string): hold is keyof typeof MANDRELS => hold in MANDRELS;

function planned(parts: readonly SmallPart[]): readonly Sequenced[] {
  const own = parts.map(({ holds, waits }, p) => {
    const operations = holds.map((_, i) => ({ id: `${p}/f${i}/do`, feature: `${p}/f${i}`, tool: { kind: 'none' } }));
    const setUps = holds.map((hold, i) => ({ no: i, grip: { id: `${p}/${hold}`, kind: hold }, operations: [`${p}/f${i}/do`] }));
    const waitsFor = waits.map(([setUp, other]) => ({ feature: `${p}/f${setUp}`, part: `${other}`, why: 'joined' }));
    return { part: { id: `${p}`, use: 'fitting', features: [], waitsFor }, route: { setUps, chosen: [{ operations }] } };
  });
  const asked = Object.entries(MANDRELS).filter(([id]) => parts.some(({ holds }) => holds.includes(id as Hold)));
  const made = asked.map(([id, minutes]) => ({
    part: { id, use: 'tooling made in place', features: [] },
    route: { setUps: [{ no: 1, grip: { id: `${id}/bar`, kind: 'bar' }, operations: [] }], chosen: [] },
    time: { whole: minutes * 60 },
  }));
  return [...own, ...made] as unknown as readonly Sequenced[];
}

const kindOf = (grip: { readonly kind: string }): string => grip.kind;
const ASKED: Asking = {
  holds: ({ grip }) => [kindOf(grip)].filter(isMandrel),
  wants: () => [],
  bored: (grip) => (['j', 'k'].includes(kindOf(grip)) ? kindOf(grip) : undefined),
};

const smallDay = fc
  .array(fc.array(fc.constantFrom<Hold>('bar', 'bench', 'M', 'N', 'M', 'j', 'k'), { minLength: 1, maxLength: 3 }), {
    minLength: 1,
    maxLength: 4,
  })
  .filter((parts) => parts.flat().length <= 8)
  .chain((parts) =>
    fc.tuple(
      ...parts.map((holds, p) => {
        const wait = fc.tuple(fc.nat(holds.length - 1), fc.nat(Math.max(0, p - 1)));
        return fc.array(wait, { maxLength: p === 0 ? 0 : 1 }).map((waits): SmallPart => ({ holds, waits }));
      }),
    ),
  );

// ---- the slow way ----------------------------------------------------------------------------------------------------------
type Stop = readonly [part: number, setUp: number];
type Cost = readonly [makings: number, minutes: number, borings: number, aside: number];

/** Every order that keeps each part's own and what waits for what. */
function allDays(parts: readonly SmallPart[]): readonly (readonly Stop[])[] {
  const days: (readonly Stop[])[] = [];
  const go = (day: readonly Stop[], done: readonly number[]): void => {
    const open = parts.flatMap(({ holds, waits }, p) => {
      const next = done[p] ?? 0;
      const free = waits.every(([setUp, other]) => next < setUp || (done[other] ?? 0) === parts[other]?.holds.length || setUp < next);
      return next < holds.length && free ? [p] : [];
    });
    if (day.length === parts.flatMap(({ holds }) => holds).length) days.push(day);
    for (const p of open)
      go(
        [...day, [p, done[p] ?? 0]],
        done.map((n, i) => (i === p ? n + 1 : n)),
      );
  };
  go(
    [],
    parts.map(() => 0),
  );
  return days;
}

function costOf(parts: readonly SmallPart[], day: readonly Stop[]): Cost {
  let [makings, minutes, borings, aside, stands] = [0, 0, 0, 0, ''];
  for (const [i, [p, setUp]] of day.entries()) {
    const hold = parts[p]?.holds[setUp] ?? 'bench';
    const before = day[i - 1];
    if (before && before[0] !== p && before[1] + 1 < (parts[before[0]]?.holds.length ?? 0)) aside += 1;
    if (hold === 'bench') continue;
    const anew = hold !== stands;
    if (anew && isMandrel(hold)) [makings, minutes] = [makings + 1, minutes + MANDRELS[hold]];
    if (anew && (hold === 'j' || hold === 'k')) borings += 1;
    stands = hold === 'bar' ? '' : hold;
  }
  return [makings, minutes, borings, aside];
}

const compare = (a: Cost, b: Cost): number => a.map((x, i) => x - (b[i] ?? 0)).find((d) => d !== 0) ?? 0;
const stopsOf = (day: Sequence): readonly Stop[] => day.flatMap((e) => (isMandrel(e.part) ? [] : [[Number(e.part), e.setUp] as const]));
const usual = (parts: readonly SmallPart[]): readonly Stop[] => parts.flatMap(({ holds }, p) => holds.map((_, i) => [p, i] as const));

describe('the order of the day', () => {
  it('against all interleavings: no other makes less tooling anew, bores fewer jaws, lays fewer parts aside, in that order', () => {
    fc.assert(
      fc.property(smallDay, (parts) => {
        const { sequence: day, day: figures } = sequence(planned(parts), ASKED);
        const least = allDays(parts)
          .map((one) => costOf(parts, one))
          .sort(compare)[0];
        expect(costOf(parts, stopsOf(day))).toEqual(least);
        expect([figures.makings, figures.atLeast, figures.aside, figures.proved]).toEqual([least?.[0], least?.[0], least?.[3], 'best']);
        expect(day.filter((e) => isMandrel(e.part)).length).toBe(least?.[0]);
      }),
      { numRuns: 150 },
    );
  });
  it('never changes a part\u2019s own order, makes tooling no oftener than part by part, and its proof holds', () => {
    fc.assert(
      fc.property(smallDay, (parts) => {
        const all = planned(parts);
        const { sequence: day } = sequence(all, ASKED);
        for (const [p, { holds }] of parts.entries())
          expect(day.flatMap((e) => (e.part === `${p}` ? [e.setUp] : []))).toEqual(holds.map((_, i) => i));
        expect(compare(costOf(parts, stopsOf(day)), costOf(parts, usual(parts)))).toBeLessThanOrEqual(0);
        const proof = proveDay({ parts: all as never, sequence: day, ...ASKED });
        expect(proof.claims.filter((c) => !c.holds)).toEqual([]);
        expect(proof.claims.filter((c) => c.kind === 'stays in the chuck').length).toBeGreaterThanOrEqual(
          day.filter((e, i) => e.on !== undefined && e.on !== i && isMandrel(day[e.on]?.part ?? '')).length,
        );
      }),
      { numRuns: 150 },
    );
  });
  it('cut short, is a day all the same, with a bound that is no more than the best', () => {
    fc.assert(
      fc.property(smallDay, (parts) => {
        const best = sequence(planned(parts), ASKED).day;
        const { sequence: day, day: cut } = sequence(planned(parts), ASKED, 2);
        expect(stopsOf(day).length).toBe(usual(parts).length);
        expect(cut.atLeast).toBeLessThanOrEqual(best.makings);
        expect(cut.makings).toBeGreaterThanOrEqual(best.makings);
      }),
      { numRuns: 60 },
    );
  });
  it('leaves parts as they are listed where nothing is shared', () => {
    const parts: readonly SmallPart[] = [
      { holds: ['bar', 'bench'], waits: [] },
      { holds: ['bar', 'M'], waits: [] },
      { holds: ['bar', 'bar'], waits: [] },
    ];
    expect(stopsOf(sequence(planned(parts), ASKED).sequence)).toEqual(usual(parts));
  });
  it('bores jaws once for two parts of one size', () => {
    const parts: readonly SmallPart[] = [
      { holds: ['bar', 'j'], waits: [] },
      { holds: ['bar', 'j'], waits: [] },
    ];
    const { sequence: day } = sequence(planned(parts), ASKED);
    expect(day).toEqual([
      { part: '0', setUp: 0 },
      { part: '1', setUp: 0 },
      { part: '1', setUp: 1, on: 2 },
      { part: '0', setUp: 1, on: 2 },
    ]);
  });
});

// ---- damage ------------------------------------------------------------------------------------------------------------------
describe('the proof of the day', () => {
  const planOf = (spec: string): Plan => {
    const found = everyPlan.find((one) => one.spec === spec);
    if (!found) throw new Error(`no plan of ${spec}`);
    return found.plan;
  };
  /** Places of stops change; what they trust is told by the places that those had. */
  const failing = (plan: Plan, change: (day: Sequence) => Sequence) => {
    const day = change(plan.sequence);
    const moved = day.map((e) => (e.on === undefined ? e : { ...e, on: day.indexOf(plan.sequence[e.on] as Sequence[number]) }));
    return proveDay({ parts: plan.parts, sequence: moved, ...ASKING }).claims.filter((c) => !c.holds);
  };
  const at = (day: Sequence, part: string, setUp: number): number => day.findIndex((e) => e.part === part && e.setUp === setUp);
  const moved = (day: Sequence, from: number, to: number): Sequence => {
    const entry = day[from] as Sequence[number];
    const rest = day.filter((_, i) => i !== from);
    const place = to > from ? to - 1 : to;
    return [...rest.slice(0, place), entry, ...rest.slice(place)];
  };
  const blowDown = planOf('blow-down-valve');

  it('holds for every plan, and no mandrel is made that stands there still', () => {
    for (const { spec, plan } of everyPlan) {
      expect([spec, plan.day?.proof.claims.filter((c) => !c.holds)]).toEqual([spec, []]);
      const inPlace = plan.parts.filter(({ part }) => part.use === 'tooling made in place').map(({ part }) => part.id);
      const asked = plan.sequence.some((e) => e.on !== undefined && inPlace.includes(plan.sequence[e.on]?.part ?? ''));
      const made = plan.sequence.filter((e) => inPlace.includes(e.part) && e.setUp === 0).length;
      if (asked) expect([spec, made]).toEqual([spec, plan.day?.makings]);
    }
  });
  it('one mandrel holds bonnet and body after each other where both have their other grips behind them', () => {
    const on = (part: string, setUp: number) => blowDown.sequence[at(blowDown.sequence, part, setUp)]?.on;
    expect(on('body', 4)).toBe(on('bonnet', 1));
    expect(on('branch', 2)).not.toBe(on('body', 4));
    expect([blowDown.day?.makings, blowDown.day?.atLeast, blowDown.day?.proved]).toEqual([2, 2, 'best']);
    expect(planOf('steam-supply-valve').day?.makings).toBe(3);
  });
  it('refuses a hold on a mandrel that was out of the chuck between two parts', () => {
    const found = failing(blowDown, (day) => moved(day, at(day, 'gland-nut', 0), Math.max(at(day, 'body', 4), at(day, 'bonnet', 1))));
    expect(found.map(({ kind, grounds }) => [kind, grounds.out])).toEqual([['stays in the chuck', 'gland-nut']]);
  });
  it('accepts bench work between two parts on it', () => {
    const body = blowDown.sequence.filter((e) => e.part === 'body').length - 1;
    const last = Math.max(at(blowDown.sequence, 'body', 4), at(blowDown.sequence, 'bonnet', 1));
    expect(failing(blowDown, (day) => moved(day, at(day, 'branch', 1), at(day, 'branch', 2)))).toEqual([]);
    expect(failing(blowDown, (day) => moved(day, at(day, 'body', body), last + 2))).toEqual([]);
  });
  it.each<readonly [string, Plan, (day: Sequence) => Sequence, readonly (readonly [string, string])[]]>([
    ['a mandrel not made', blowDown, (day) => day.filter((_, i) => i !== day[at(day, 'branch', 2)]?.on), [['stays in the chuck', '']]],
    [
      'solder before the branch is ready',
      blowDown,
      (day) => moved(day, at(day, 'body', 2), at(day, 'branch', 2)),
      [['order of the day', 'waits']],
    ],
    [
      'a part out of its own order',
      blowDown,
      (day) => moved(day, at(day, 'follower', 0) + 1, at(day, 'spindle', 2)),
      [['order of the day', 'own']],
    ],
    ['a gauge nut after its thread', blowDown, (day) => moved(day, at(day, 'gauge-nut-M3', 0), day.length), [['order of the day', 'tool']]],
  ])('refuses %s', (_, plan, change, kinds) => {
    const found = failing(plan, change).map(({ kind, grounds }) => [kind, grounds.why ?? grounds.out]);
    expect([...new Set(found.map((one) => JSON.stringify(one)))]).toEqual(kinds.map((one) => JSON.stringify(one)));
  });
  it('refuses a spigot turned before the hole that it is turned to', () => {
    const demo = planOf('launch-feed-check-valve');
    const found = failing(demo, (day) => moved(day, at(day, 'body', 1), at(day, 'branch', 2) + 1));
    expect(found.map(({ kind, grounds }) => [kind, grounds.why])).toEqual([['order of the day', 'hole']]);
  });
});
