/** The smallest parts of those that came by chance and were planned wrongly once, or refused without a reason. Each shows one rule. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import type { Compiled } from '../../src/compile.ts';
import type { Route, SetUp } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const ENDS = ['first: { letter: A }', 'second: { letter: B }'];
const part = (outside: readonly string[], inside: readonly string[] = [], more: readonly string[] = []): readonly string[] => [
  ...ENDS,
  ...['outside:', ...outside.map((line) => `  - { ${line} }`)],
  ...(inside.length > 0 ? ['inside:', ...inside.map((line) => `  - { ${line} }`)] : []),
  ...more,
];

const failing = (compiled: Compiled): readonly string[] =>
  ownPart(compiled).proof.claims.flatMap((one) => (one.holds ? [] : [`${one.kind} ${one.about}`]));
const orderOf = (compiled: Compiled): readonly string[] => ownPart(compiled).route.setUps.flatMap((setUp) => setUp.operations);

describe('a thread right through', () => {
  const through = planOwn(
    part(
      ['name: body, diameter: 18 mm, length: 8 mm'],
      ['name: bore, thread: M6, from: first, depth: through'],
      ['lengths:', '  - { from: A, to: B, size: 8 ±0.5 }'],
    ),
  );
  it('may be tapped in the bar: its far end is faced, and its mouth there is opened after that', () => {
    const order = orderOf(through);
    expect(order.indexOf('part/bore.thread/tap')).toBeLessThan(order.indexOf('part/B/face'));
    expect(order.indexOf('part/B/face')).toBeLessThan(order.indexOf('part/bore.far-chamfer/chamfer'));
    expect(failing(through)).toEqual([]);
  });
  it('behind a larger hole has its far mouth opened too', () => {
    const behind = planOwn(
      part(
        ['name: body, diameter: 18 mm, length: 16 mm'],
        [
          'name: mouth, diameter: 9 mm, from: first, depth: 5 mm, bottom: flat, role: clearance',
          'name: bore, thread: M6, from: first, depth: through',
        ],
      ),
    );
    expect(orderOf(behind)).toContain('part/bore.far-chamfer/chamfer');
    expect(failing(behind)).toEqual([]);
  });
});

describe('the start of a thread behind a thin nose', () => {
  it('goes down to just under the root, not to the nose', () => {
    const compiled = planOwn(
      part([
        'name: nose, diameter: 4 mm, length: 17 mm',
        'name: thread, thread: M12x1, length: 6 mm, starts: first',
        'name: head, diameter: 15 mm, length: 10 mm',
      ]),
    );
    const start = ownPart(compiled).part.surfaces.find((one) => one.id === 'part/thread.chamfer');
    expect(start?.shape === 'cone' && start.mouth.target).toBeGreaterThan(100_000);
    expect(failing(compiled)).toEqual([]);
  });
});

describe('a hole that ends in a point', () => {
  const pointed = (hole: string): Compiled =>
    planOwn(part(['name: body, diameter: 22 mm, length: 20 mm'], [`name: bore, ${hole}, from: first, bottom: point, role: clearance`]));
  it('that is shallow is centred no deeper than its drill goes', () => {
    const compiled = pointed('diameter: 4.6 mm, depth: 1.2 mm');
    expect(failing(compiled)).toEqual([]);
  });
  it('of which no drill is in the drawer is refused for want of it', () => {
    expect(refusedOf(pointed('diameter: 14.6 mm, depth: 8 mm')).map(({ because, lacks }) => [because.rule, lacks])).toContainEqual([
      'no-drill-of-size',
      'drill-14.6',
    ]);
  });
  it('closer than any drill leaves it is refused', () => {
    expect(refusedOf(pointed('diameter: 6 H8, depth: 8 mm')).map(({ because }) => because.rule)).toContain('drill-too-coarse');
  });
});

const setUpOf = (route: Route, op: string): SetUp | undefined => route.setUps.find(({ operations }) => operations.includes(op));
const covered = (long: number, hole: number): readonly string[] =>
  part(
    [`name: shank, diameter: 12 h9, length: ${long} mm`],
    [],
    [`side:`, `  - { name: eye, cross-hole: ${hole} mm, on: shank, at: ${long / 2} }`],
  );

describe('a pin with a cross hole', () => {
  const pin = (at: number): Compiled =>
    planOwn(
      part(
        ['name: shank, diameter: 18 h9, length: 30 mm', 'name: head, diameter: 24 mm, length: 3 mm'],
        [],
        ['side:', `  - { name: eye, cross-hole: 4 mm, on: shank, at: ${at} }`],
      ),
    );
  const held = (compiled: Compiled) =>
    ownPart(compiled).candidates.grips.filter(
      (grip) => grip.on.includes('part/shank') && grip.out === 'second' && grip.kind !== 'vee-block',
    );
  // room of 1 mm beside the hole, and so much of the shank on either side of it
  it('near its end is held on the shank between hole and head', () => {
    const grips = held(pin(5));
    expect(grips.map(({ from }) => from)).toEqual(grips.map(() => mm(8)));
    expect(grips.length).toBeGreaterThan(0);
    expect(failing(pin(5))).toEqual([]);
  });
  it('in the middle may be held on either side of it', () => {
    const sides = new Set(held(pin(15)).map(({ to }) => to < mm(15)));
    expect([...sides].sort()).toEqual([false, true]);
  });
  it('that covers it is held on all of it, and drilled after that', () => {
    const compiled = planOwn(covered(8, 5));
    const { route, proof } = ownPart(compiled);
    const [on, drilled] = [setUpOf(route, 'part/B/face'), setUpOf(route, 'part/eye/cross-drill')];
    expect(on?.grip).toMatchObject({ kind: 'collet', on: ['part/shank'], lightOnly: true });
    expect(route.setUps.indexOf(on as SetUp)).toBeLessThan(route.setUps.indexOf(drilled as SetUp));
    expect(proof.holds).toBe(true);
    // the other way about, jaws close over the hole
    const { part, chart, figures } = ownPart(compiled);
    const later = route.setUps.filter((one) => one !== on && one !== drilled);
    const setUps = [...later, ...[drilled, on].flatMap((one) => one ?? [])];
    const workshop = compiled.plan?.workshop;
    const damaged = workshop && prove({ part, chart, figures, workshop, route: { ...route, setUps } });
    const failed = damaged?.claims.flatMap((one) => (one.holds ? [] : [[one.kind, one.about, one.grounds.reason]]));
    expect(failed).toEqual([['grip', on?.grip.id, 'hole']]);
  });
  it('that covers it where nothing else can be held is refused with what there is and what it takes', () => {
    // 6 long, the hole 4, room of 1 on either side: nothing; a third of 12 h9 is the least, and all of it is too short for the vee
    const refused = refusedOf(planOwn(covered(6, 4)));
    expect(refused).toContainEqual(
      expect.objectContaining({
        what: 'part/shank.collet.second',
        because: { rule: 'holes-under-hold', grounds: {} },
        has: 0,
        wants: mm(3.594),
      }),
    );
  });
});

describe('a knurl', () => {
  const knurled = (changes: Parameters<typeof planOwn>[1] = []): Compiled =>
    planOwn(
      part(
        ['name: grip, diameter: 18 mm, length: 12 mm, knurl: yes'],
        ['name: bore, diameter: 6 mm, from: first, depth: through, role: clearance'],
      ),
      changes,
    );
  it('is held in jaws that are bored to it when it has been rolled', () => {
    const { route } = ownPart(knurled());
    const hold = route.setUps.find(({ grip }) => grip.on.includes('part/grip'));
    expect([hold?.grip.kind, hold?.grip.knurled]).toEqual(['bored-jaws', true]);
    const order = route.setUps.flatMap(({ operations }) => operations);
    expect(order.indexOf('part/grip.knurl/knurl')).toBeLessThan(order.indexOf(hold?.operations[0] ?? ''));
  });
  it('is held by nothing where no jaws can be bored', () => {
    const rules = refusedOf(knurled([[/soft-jaws: yes/, 'soft-jaws: no']])).map(({ because }) => because.rule);
    expect(rules).toContain('knurl-crushed');
  });
});

describe('a short blind thread', () => {
  it('is not held on a mandrel whose own relief would leave no thread in it', () => {
    const compiled = planOwn(
      part(
        ['name: tail, diameter: 12 mm, length: 9 mm, knurl: yes', 'name: head, diameter: 18.8 mm, length: 2.5 mm, role: sealing'],
        ['name: bore, thread: M5, from: first, depth: 5.7 mm'],
      ),
    );
    expect(refusedOf(compiled).flatMap(({ what, because }) => (what.includes('mandrel') ? [because.rule] : []))).toEqual(['mandrel-short']);
  });
});
