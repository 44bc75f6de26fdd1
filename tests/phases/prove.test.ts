/** A sound route is proved; each kind of damage is refused by the claim that should refuse it; a change that breaks nothing is accepted. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { replayer } from '../../src/geometry/replay.ts';
import { finishedOf, sameRing } from '../../src/geometry/ring.ts';
import type { Claim, ClaimKind, Grip, Operation, Route, SetUp, Working } from '../../src/model/plan.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { id, limits, seatChart, seatPiece, seatRoute, seatWorkshop } from '../fixtures/seat-piece.ts';

const SOUND: Proved = { part: seatPiece, route: seatRoute, chart: seatChart, workshop: seatWorkshop };
const say = words({ 'proof.hbs': readFileSync(new URL('../../templates/en/proof.hbs', import.meta.url), 'utf8') });
const told = (claim: Claim): string =>
  say.say(`claim.${claim.kind.replaceAll(' ', '-')}.${claim.holds ? 'holds' : 'fails'}`, claim.grounds);

// ---- damage ---------------------------------------------------------------------------------------------------------------------
type Damage = (asked: Proved) => Proved;
const onRoute = (asked: Proved, change: Partial<Route>): Proved => ({ ...asked, route: { ...asked.route, ...change } });
const onSetUps = (asked: Proved, change: (setUp: SetUp) => SetUp): Proved => onRoute(asked, { setUps: asked.route.setUps.map(change) });
const onOperations = (asked: Proved, change: (operation: Operation) => Operation): Proved =>
  onRoute(asked, { chosen: asked.route.chosen.map((method) => ({ ...method, operations: method.operations.map(change) })) });
const onWorking = (asked: Proved, dim: string, change: Partial<Working>): Proved => ({
  ...asked,
  chart: { ...asked.chart, working: asked.chart.working.map((one) => (one.id === id(dim) ? { ...one, ...change } : one)) },
});
/** A damage that hits nothing would prove nothing. */
const hit = <T>(before: T, after: T): T => {
  if (JSON.stringify(before) === JSON.stringify(after)) throw new Error('nothing was changed');
  return after;
};
const freely: Damage = (asked) => onRoute(asked, { befores: [] });
const drop =
  (name: string): Damage =>
  (asked) =>
    onSetUps(asked, (setUp) => ({ ...setUp, operations: setUp.operations.filter((op) => op !== id(name)) }));
const move =
  (name: string, where: 'before' | 'after', other: string): Damage =>
  (asked) =>
    onSetUps(asked, (setUp) => {
      if (!setUp.operations.includes(id(name))) return setUp;
      const rest = setUp.operations.filter((op) => op !== id(name));
      const at = rest.indexOf(id(other)) + (where === 'after' ? 1 : 0);
      return { ...setUp, operations: [...rest.slice(0, at), id(name), ...rest.slice(at)] };
    });
const widen =
  (dim: string, lo: number, hi: number, target?: number): Damage =>
  (asked) =>
    onWorking(asked, dim, { limits: limits(lo, hi, target) });
const hold =
  (no: number, change: Partial<Grip>): Damage =>
  (asked) =>
    onSetUps(asked, (setUp) => (setUp.no === no ? { ...setUp, grip: { ...setUp.grip, ...change } } : setUp));
/** The operation once more, under another name, after `other`. */
const again =
  (name: string, other: string): Damage =>
  (asked) => {
    const twice = asked.route.chosen.flatMap((method) => method.operations).filter((one) => one.id === id(name));
    const copies = twice.map((one) => ({ ...one, id: `${one.id}-again` }));
    const chosen = [
      ...asked.route.chosen,
      { feature: id('again'), name: 'again', because: { rule: 'test', grounds: {} }, operations: copies, rank: 0 },
    ];
    const working = asked.chart.working
      .filter((one) => one.op === id(name))
      .map((one) => ({ ...one, op: `${one.op}-again`, id: `${one.id}.again` }));
    const withIt = onSetUps(onRoute(asked, { chosen }), (setUp) => {
      const at = setUp.operations.indexOf(id(other)) + 1;
      return at === 0
        ? setUp
        : { ...setUp, operations: [...setUp.operations.slice(0, at), id(`${name}-again`), ...setUp.operations.slice(at)] };
    });
    return { ...withIt, chart: { ...asked.chart, working: [...asked.chart.working, ...working] } };
  };
const both =
  (...all: readonly Damage[]): Damage =>
  (asked) =>
    all.reduce((one, next) => next(one), asked);
const drillTo =
  (size: number): Damage =>
  (asked) => ({
    ...asked,
    chart: {
      ...asked.chart,
      working: asked.chart.working.map((one) => (one.op === id('bore/drill') ? { ...one, limits: limits(size, size) } : one)),
    },
  });

const REFUSED: readonly (readonly [what: string, damage: Damage, kind: ClaimKind, about: string])[] = [
  ['a strict before broken', move('S/finish', 'before', 'bore/drill'), 'order', 'seat-face-after-drill'],
  ['a step left out that leaves no mark', drop('bore/centre'), 'order', 'bore/centre'],
  ['a chamfer left out', drop('coupling.chamfer/chamfer'), 'shape', ''],
  ['a shoulder left out', drop('nose/turn'), 'shape', ''],
  ['a finishing cut left out', drop('bore/d-bit'), 'shape', ''],
  ['a relief left out', drop('coupling.relief/groove'), 'every surface stays', 'coupling.wall'],
  ['a length widened past its limit', widen('A-E', 13.88, 14.05), 'dimension', 'A-E'],
  ['a length through two cuts widened', widen('A-seat-thread.wall', 2, 2.3), 'dimension', 'seat-thread.wall-A'],
  ['a diameter widened past its limit', widen('D.bore', 4.47, 4.55), 'dimension', 'bore'],
  ['a mouth widened past its limit', widen('D.cone', 7.7, 8), 'dimension', 'cone'],
  ['a mouth so wide that the face goes', widen('D.cone', 7.7, 8.39), 'every surface stays', 'E'],
  ['a mouth wider than its face', widen('D.cone', 7.7, 8.8), 'shape', ''],
  ['a length measured from what is not made yet', (asked) => onWorking(asked, 'S-N', { from: id('B') }), 'datum there', 'nose/turn'],
  ['a length measured from what was cut away', (asked) => onWorking(asked, 'A-E', { from: 'bar end' }), 'datum there', 'E/finish'],
  [
    'a cut without a size',
    (asked) => ({ ...asked, chart: { ...asked.chart, working: asked.chart.working.filter((one) => one.id !== id('S-N')) } }),
    'datum there',
    'nose/turn',
  ],
  ['work set by a face that is not there', hold(3, { datum: id('B') }), 'datum there', 'seat-thread.thread.mandrel.second'],
  [
    'jaws on a thread',
    hold(3, { kind: 'jaws', from: mm(3.4), to: mm(8.2), diameter: mm(11.9) }),
    'grip',
    'seat-thread.thread.mandrel.second',
  ],
  [
    'jaws where there is nothing',
    hold(3, { kind: 'jaws', from: mm(16), to: mm(20), diameter: mm(30) }),
    'grip',
    'seat-thread.thread.mandrel.second',
  ],
  [
    'jaws on a rim too short',
    hold(3, { kind: 'jaws', on: [id('flange')], from: mm(10.4), to: mm(15.4), diameter: mm(16) }),
    'grip',
    'seat-thread.thread.mandrel.second',
  ],
  ['a mandrel before there is a thread', both(freely, drop('seat-thread.thread/screw-cut')), 'grip', 'seat-thread.thread.mandrel.second'],
  ['a light hold for heavy work', hold(1, { lightOnly: true }), 'grip', 'bar.first'],
  ['the cone cut after the seat was finished', both(freely, move('cone/cone', 'after', 'bore/d-bit')), 'kept untouched', 'bore'],
  ['the seat gone through again', again('bore/d-bit', 'bore/d-bit'), 'kept untouched', 'bore'],
  ['the seat face cut again', again('S/finish', 'flange/turn'), 'kept untouched', 'S'],
  [
    'the start of a thread cut after the thread',
    both(freely, move('coupling.chamfer/chamfer', 'after', 'coupling.thread/screw-cut')),
    'kept untouched',
    'coupling.thread',
  ],
  ['a steered tool without its start', drop('bore/bore-start'), 'guide', 'bore/d-bit'],
  [
    'a start too short to steer',
    (asked) => onOperations(asked, (one) => (one.id === id('bore/bore-start') ? shallower(one) : one)),
    'guide',
    'bore/d-bit',
  ],
  ['parted off too early', both(freely, move('bar/part-off-second', 'before', 'nose/turn')), 'held', 'nose/turn'],
  ['jaws too far out', hold(1, { from: mm(20) }), 'held', 'bar/part-off-second'],
  ['a groove right through the wall', widen('D.seat-thread.relief', 4, 4), 'held', 'seat-thread.relief/groove'],
  [
    'a tool that does not reach',
    (asked) => onOperations(asked, (one) => (one.id === id('bore/bore-start') ? deeper(one) : one)),
    'reach',
    'bore/bore-start',
  ],
  [
    'a bar too thick to part',
    (asked) => ({ ...asked, workshop: { ...seatWorkshop, tools: { ...seatWorkshop.tools, parting: { width: mm(2), deepest: mm(16) } } } }),
    'reach',
    'bar/part-off-second',
  ],
  ['a centre after the drill', both(freely, move('bore/centre', 'after', 'bore/drill')), 'no air', 'bore/centre'],
  ['stock that may be nothing', widen('S-S', 0, 0.4), 'no air', 'S/finish'],
  ['a drill that leaves the seat nothing', drillTo(4.5), 'no air', 'bore/d-bit'],
  ['a wall too thin', drillTo(10.2), 'wall', ''],
  [
    'a speed that the lathe has not',
    (asked) => ({ ...asked, figures: [{ op: id('S/face'), rpm: { value: 3000, vc: 80, bound: 'vc' } }] }),
    'speed exists',
    'S/face',
  ],
];

const reaching = (operation: Operation, beyond: number): Operation => {
  const way = operation.ways.second;
  if (!way) throw new Error('no way');
  const sweeps = way.sweeps.map((sweep) => (sweep.take === 'bore' ? { ...sweep, to: { ...sweep.to, beyond: mm(beyond) } } : sweep));
  return { ...operation, ways: { second: { ...way, sweeps, reach: mm(beyond) } } };
};
const shallower = (operation: Operation): Operation => reaching(operation, 4);
const deeper = (operation: Operation): Operation => reaching(operation, 9);

describe('a proof', () => {
  it('holds for a route as a turner would do it', () => {
    const proof = prove(SOUND);
    expect(proof.claims.filter((one) => !one.holds).map(told)).toEqual([]);
    expect(proof.holds).toBe(true);
    expect(proof.claims.filter((one) => one.kind === 'every surface stays')).toHaveLength(seatPiece.surfaces.length);
    expect(new Set(proof.claims.map((one) => one.kind)).size).toBe(12);
  });
  it.each(REFUSED)('refuses %s', (_, damage, kind, about) => {
    const proof = prove(hit(SOUND, damage(SOUND)));
    expect(proof.holds).toBe(false);
    const failed = proof.claims.filter((one) => !one.holds && one.kind === kind);
    const names = failed.map((one) => one.about.replace(`${seatPiece.id}/`, ''));
    expect(
      about === '' ? names.length > 0 : names.includes(about),
      proof.claims
        .filter((one) => !one.holds)
        .map(told)
        .join('\n'),
    ).toBe(true);
    for (const one of proof.claims) expect(told(one)).not.toBe('');
  });
  it.each<readonly [string, Damage, ClaimKind, string, string]>([
    ['parted off too early', both(freely, move('bar/part-off-second', 'before', 'nose/turn')), 'held', 'nose/turn', 'nothing-held'],
    ['a groove right through', widen('D.seat-thread.relief', 4, 4), 'held', 'seat-thread.relief/groove', 'falls-off'],
    ['a cut on what a groove cut loose', widen('D.seat-thread.relief', 4, 4), 'held', 'seat-thread.chamfer/chamfer', 'not-joined'],
    ['jaws too far out', hold(1, { from: mm(20) }), 'held', 'bar/part-off-second', 'in-the-hold'],
    ['jaws on a thread', hold(3, { kind: 'jaws' }), 'grip', 'seat-thread.thread.mandrel.second', 'kept'],
    ['jaws on nothing', hold(3, { kind: 'jaws', diameter: mm(30) }), 'grip', 'seat-thread.thread.mandrel.second', 'nothing'],
    ['too little in the jaws', hold(1, { from: mm(90) }), 'grip', 'bar.first', 'short'],
    ['heavy cuts in a light hold', hold(1, { lightOnly: true }), 'grip', 'bar.first', 'heavy'],
    [
      'no thread for a mandrel',
      both(freely, drop('seat-thread.thread/screw-cut')),
      'grip',
      'seat-thread.thread.mandrel.second',
      'no-thread',
    ],
  ])('says of %s why', (_, damage, kind, about, reason) => {
    const found = prove(hit(SOUND, damage(SOUND))).claims.find((one) => one.kind === kind && one.about === id(about));
    expect(found?.grounds.reason).toBe(reason);
  });
  it.each(seatRoute.setUps.flatMap((setUp) => setUp.operations))('refuses a route without %s', (op) => {
    const proof = prove(drop(op.slice(seatPiece.id.length + 1))(SOUND));
    expect(proof.claims.filter((one) => !one.holds && one.kind === 'order').map((one) => one.about)).toEqual([op]);
  });
  it.each<readonly [string, Damage]>([
    ['the rim turned after the thread', move('flange/turn', 'after', 'seat-thread/turn')],
    ['chamfer before relief', move('seat-thread.chamfer/chamfer', 'before', 'seat-thread.relief/groove')],
    ['the start of the bore before the coupling', move('bore/bore-start', 'after', 'E/finish')],
    ['a longer hold', hold(1, { to: mm(120) })],
    ['a limit drawn in', widen('A-E', 13.98, 14.02)],
  ])('accepts %s', (_, damage) => {
    expect(
      prove(hit(SOUND, damage(SOUND)))
        .claims.filter((one) => !one.holds)
        .map(told),
    ).toEqual([]);
  });
  it('measures nothing outside its worst corners at any of a hundred others', () => {
    const proof = prove(SOUND);
    const run = replayer(seatPiece, seatRoute, seatChart);
    const corners = Array.from({ length: 100 }, (_, k) =>
      Object.fromEntries(
        seatChart.working.map(({ id: dim, limits: of }, i) => [dim, (k * 2654435761 + i * 40503 * (k + 1)) % 7 < 3 ? of.lo : of.hi]),
      ),
    );
    for (const values of corners) {
      const finished = finishedOf(seatPiece, run(values).end);
      expect(sameRing(finished.ring, seatPiece.ring)).toBe(true);
      for (const { id: about, a, b } of seatPiece.dimensions) {
        const worst = proof.claims.find((one) => one.kind === 'dimension' && one.about === about)?.worst;
        const measured = (finished.extents.get(b)?.z[1] ?? Number.NaN) - (finished.extents.get(a)?.z[0] ?? Number.NaN);
        expect(measured).toBeGreaterThanOrEqual((worst?.lo ?? len(0)) - 0.5);
        expect(measured).toBeLessThanOrEqual((worst?.hi ?? len(0)) + 0.5);
      }
    }
  });
});
