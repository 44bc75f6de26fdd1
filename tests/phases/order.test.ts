import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import type { Method, Route } from '../../src/model/plan.ts';
import { candidates } from '../../src/phases/candidates.ts';
import { combinations } from '../../src/phases/order/combinations.ts';
import { withoutDominated } from '../../src/phases/order/dominated.ts';
import { problemOf } from '../../src/phases/order/problem.ts';
import { BENCH, costOf, search } from '../../src/phases/order/search.ts';
import { order } from '../../src/phases/order.ts';
import { handlingOf } from '../../src/rules/handling.ts';
import { fittingFor, lines, orderOf, partOf, routeOf, shop, withHabits, withHolding, withTools } from '../fixtures/shop.ts';

/** Read by eye before they were written down; each answers: would it hold, is it true, can each tool get in, is anything needless? */
const PLANS: readonly (readonly [part: string, lines: readonly string[]])[] = [
  [
    'seat-piece',
    [
      'bar first: S/rough, bore/centre, bore/drill, S/finish, flange/turn, seat-thread/turn, nose/turn, seat-thread.relief/groove, seat-thread.chamfer/chamfer, seat-thread.thread/screw-cut, bar/part-off-second',
      'bench : flats/file-flats',
      'threaded-mandrel second: E/face, coupling/turn, coupling.relief/groove, coupling.chamfer/chamfer, coupling.thread/screw-cut, bore/bore-start, cone/cone, bore/d-bit',
      'bench : bore/stone',
    ],
  ],
  [
    'body',
    [
      'bar first: P/rough, chamber/centre, chamber/drill, seat-socket/drill, barrel/turn, bar/part-off-second-with-stub',
      'vee-block : outlet/cross-drill',
      'bench : flats/file-flats, branch/solder',
      'stub first: P/finish, seat-socket/bore, seat-socket.chamfer/chamfer, seat-socket.thread/tap, bar/cut-stub-second',
      'threaded-mandrel second: T/face, cap-socket/drill, cap-socket/bore, chamber/bore, cap-socket.chamfer/chamfer, cap-socket.thread/tap',
    ],
  ],
  [
    'cap',
    [
      'bar first: Q/rough, cap-thread/turn, stem/turn, cap-thread.relief/groove, cap-thread.chamfer/chamfer, cap-thread.thread/screw-cut, Q/finish, bar/part-off-second',
      'hexagon second: T/face',
    ],
  ],
  [
    'union-nut',
    [
      'bar first: M/face, hole/centre, hole/drill-to-size, socket/bore, socket.chamfer/chamfer, socket.thread/tap, bar/part-off-second',
      'hexagon second: T/face',
    ],
  ],
];

describe('order', () => {
  it.each(PLANS)('%s comes out as a turner would make it', (part, expected) => {
    expect(lines(routeOf(part))).toEqual(expected);
  });

  it('gives the same answer whatever the order of features and of the drawer', () => {
    const part = partOf('seat-piece');
    const turned = {
      ...part,
      features: [...part.features].reverse(),
      surfaces: [...part.surfaces].reverse(),
      dimensions: [...part.dimensions].reverse(),
    };
    const drawer = withTools({ drills: [...shop.tools.drills].reverse(), boring: [...shop.tools.boring].reverse() });
    const other = order(candidates(turned, drawer), drawer).route;
    expect(other && lines(other)).toEqual(lines(routeOf('seat-piece')));
  });

  it('bores the seat in one setting with its thread where a tool reaches, coupling end first, and needs no D-bit', () => {
    const long = withTools({ boring: [...shop.tools.boring, { smallest: mm(4), reach: mm(25) }] });
    const route = routeOf('seat-piece', long);
    expect(route.cost).toMatchObject({ setUps: 2, tooling: 1, broken: 0 });
    expect(lines(route)[2]).toMatch(/^threaded-mandrel first: S\/face, .*seat-thread.thread\/screw-cut, bore\/bore$/);
    // the plan with the D-bit is found too, as good in set-ups, and costs one more piece of tooling
    expect(route.runnersUp).toContainEqual(
      expect.objectContaining({
        grips: ['seat-piece/part-off-second.first', 'seat-piece/seat-thread.thread.mandrel.second'],
        cost: expect.objectContaining({ setUps: 2, tooling: 2 }),
      }),
    );
  });

  it('knows coupling end first with a D-bit as good in set-ups, and says which preferences it breaks', () => {
    const upsideDown = ['seat-piece/part-off-first.second', 'seat-piece/coupling.thread.mandrel.first'];
    expect(routeOf('seat-piece').runnersUp).toContainEqual(
      expect.objectContaining({ grips: upsideDown, cost: expect.objectContaining({ setUps: 2, tooling: 2 }) }),
    );
    const habit = routeOf('seat-piece', withHabits({ firstEnd: { 'seat-piece': 'second' } }));
    expect(lines(habit)[0]).toMatch(/^bar second: .*bore\/bore-start, cone\/cone, bore\/d-bit, bar\/part-off-first$/);
    expect(new Set(habit.broken.map((b) => b.because.rule))).toEqual(new Set(['seat-last-of-all', 'seat-face-before-seat']));
  });

  it('keeps habits where they finish, says which decided, and lets them give way where they do not', () => {
    const die = routeOf('seat-piece', withHabits({ dieBelow: mm(11) }));
    expect(lines(die).join()).toMatch(/seat-thread.thread\/screw-cut.*coupling.thread\/die/);
    expect(die.habits).toEqual(['die-below']);
    const first = routeOf('seat-piece', withHabits({ firstEnd: { 'seat-piece': 'first' } }));
    expect(lines(first)).toEqual(lines(routeOf('seat-piece')));
    expect(first.habits).toBeUndefined();
    // there is no other way to hold or to finish the seat: the habit gives way
    const stubborn = routeOf('seat-piece', withHabits({ avoid: ['d-bit', 'threaded-mandrel'] }));
    expect(lines(stubborn)).toEqual(lines(routeOf('seat-piece')));
  });

  it('refuses with figures where nothing holds, and names the single changes that would help', () => {
    const { route, none } = orderOf('seat-piece', withHolding({ mandrels: false, softJaws: false }));
    expect(route).toBeUndefined();
    const refusal = (rule: string, what: string) =>
      none?.refused.find((r) => r.because.rule === rule && r.what.startsWith(`seat-piece/${what}`));
    expect(refusal('grip-short', 'flange')).toMatchObject({ has: mm(4.5), wants: mm(4.8) });
    expect(refusal('finished-thread', 'seat-thread')).toBeDefined();
    expect(refusal('boring-reach', 'bore')).toMatchObject({ has: mm(8) });
    expect(none?.wouldHelp.map((r) => r.because.rule)).toContain('no-mandrels');
  });

  it('keeps every strict before in every plan', () => {
    for (const part of fittingFor().parts) {
      const route = routeOf(part.id);
      const at = new Map(route.setUps.flatMap((s) => s.operations).map((id, i) => [id, i]));
      const late = route.befores.filter(
        (b) => b.force === 'strict' && b.when === undefined && (at.get(b.first) ?? 0) > (at.get(b.then) ?? 0),
      );
      expect(late).toEqual([]);
    }
  });
});

// ---- a slow and plain oracle: every permutation with every hold ----------------------------------------------------------------
function cheapest(part: string, methods: readonly Method[], c = candidates(partOf(part), shop)): number {
  const p = problemOf(c, methods, handlingOf(shop));
  const takes = handlingOf(shop);
  const made = new Map(p.operations.flatMap((o) => (o.tool.made ? [[o.tool.key, o.tool.made] as const] : [])));
  const start = [...made.values()].reduce((n, ask) => n + 1e12 + 1e2 * takes.make(ask), 0) + methods.reduce((n, m) => n + m.rank, 0);
  let best = Number.POSITIVE_INFINITY;
  const walk = (done: readonly number[], grip: number, tool: number, used: readonly number[], cost: number): void => {
    if (cost >= best) return;
    if (done.length === p.operations.length) {
      best = cost;
      return;
    }
    const isDone = (id: string): boolean => done.some((d) => p.operations[d]?.id === id);
    p.operations.forEach((o, i) => {
      if (done.includes(i)) return;
      const holds = o.ways.bench ? [BENCH] : p.grips.map((_, g) => g);
      for (const g of holds) {
        const masks = p.grips[g];
        const end = masks ? masks.grip.out : 'bench';
        const binds = p.befores.filter((b) => b.when === undefined || (b.when.op === o.id && b.when.from === end));
        if (binds.some((b) => b.force === 'strict' && b.then === o.id && !isDone(b.first))) continue;
        if (p.befores.some((b) => b.force === 'strict' && b.first === o.id && b.when?.op === o.id && b.when.from === end && isDone(b.then)))
          continue;
        if (!o.ways[end]) continue;
        if (masks && (masks.grip.hides.includes(o.id) || (masks.grip.lightOnly && !o.light))) continue;
        const leaves = p.operations.filter((k) => ['part-off', 'saw-off', 'cut-stub'].includes(k.verb)).map((k) => k.id);
        if (masks?.grip.gone.some(isDone)) continue;
        if (leaves.includes(o.id) && !masks?.grip.gone.includes(o.id)) continue;
        if (g === BENCH && !leaves.every(isDone)) continue;
        const ready = masks
          ? [
              ...masks.grip.ready.filter((id) => p.operations.some((k) => k.id === id)),
              ...(masks.grip.kind === 'bar' || masks.grip.kind === 'stub' ? [] : leaves),
            ]
          : [];
        if (g !== grip && !ready.every(isDone)) continue;
        const broken = binds.filter((b) => b.force === 'preferred' && b.then === o.id && !isDone(b.first)).length;
        const newTool = g === BENCH ? tool : (p.tools[p.all.findIndex((k) => k.id === o.id && k.tool.key === o.tool.key)] ?? -1);
        const change = newTool === tool ? 0 : 1e6 + 1e2 * takes.change(o.tool);
        const setUp = g === BENCH || g === grip || !masks ? 0 : 1e14 + 1e2 * takes.hold(masks.grip);
        const paid = used.some((u) => JSON.stringify(p.grips[u]?.grip.tooling) === JSON.stringify(masks?.grip.tooling));
        const tooling = setUp > 0 && masks?.grip.tooling && !paid ? 1e12 + 1e2 * takes.make(masks.grip.tooling) : 0;
        walk([...done, i], g, newTool, setUp > 0 ? [...used, g] : used, cost + broken * 1e9 + change + setUp + tooling);
      }
    });
  };
  walk([], BENCH, BENCH, [], start);
  return best;
}

it('leaves out a drill of its own where the boring tool that is needed elsewhere does as well, all else being the same', () => {
  const c = candidates(partOf('body'), shop);
  const chamber = (any: typeof c) => any.methods.find((m) => m.feature === 'body/chamber')?.any.map((m) => m.name);
  expect(chamber(c)).toEqual(['drill-again', 'bore']);
  expect(chamber(withoutDominated(c, handlingOf(shop)))).toEqual(['bore']);
  // a boring tool that takes long to set is no better: both are looked at
  const slow = { ...shop, handling: { ...shop.handling, 'change-tool': 9 } };
  expect(chamber(withoutDominated(c, handlingOf(slow)))).toEqual(['drill-again', 'bore']);
});

it.each(['seat-piece', 'branch', 'body', 'union-nut', 'cap'])('leaving out dominated methods makes %s no dearer', (part) => {
  const all = candidates(partOf(part), shop);
  // what is seated short against the jaws is asked only where nothing else holds
  const c = { ...all, grips: all.grips.filter((grip) => !grip.seated) };
  const kept = combinations(withoutDominated(c, handlingOf(shop))).length;
  const costs = combinations(c).flatMap(
    (methods) =>
      search(problemOf(c, methods, handlingOf(shop)), () => 0, {
        states: 1e6,
        atMost: Number.POSITIVE_INFINITY,
        width: Number.POSITIVE_INFINITY,
      })?.cost ?? [],
  );
  expect(kept).toBeLessThanOrEqual(combinations(c).length);
  expect(routeOf(part).cost).toEqual(costOf(Math.min(...costs)));
});

describe('the search against all permutations', () => {
  it.each(['union-nut', 'nipple', 'cap'])('%s', (part) => {
    const c = candidates(partOf(part), shop);
    const chosen: Route = routeOf(part);
    const p = problemOf(c, chosen.chosen, handlingOf(shop));
    const found = search(p, () => 0, { states: 1e6, atMost: Number.POSITIVE_INFINITY, width: Number.POSITIVE_INFINITY });
    expect(found?.exact).toBe(true);
    expect(found?.cost).toBe(cheapest(part, chosen.chosen));
    expect(costOf(found?.cost ?? 0)).toEqual(chosen.cost);
  });
});
