/** The demo on the metric lathe and on the inch one: the same valve, and what a turner expects to differ does, by each lathe's own file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { gaugeName } from '../../src/drawing/sheet/inch.ts';
import type { Figures, Operation, Plan } from '../../src/model/plan.ts';
import { viewOf } from '../../src/phases/sheet.ts';
import { demoFitting, demoWorkshop } from '../fixtures/shop.ts';
import { allWords } from '../render/assets.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const INCH = { name: 'inch-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'inch-lathe.yaml'), 'utf8') };
const planOn = (workshop: typeof INCH): Plan => {
  const { plan, found } = compile({ fitting: demoFitting, workshop }, { workshop: demoWorkshop });
  if (!plan) throw new Error(`no plan on ${workshop.name}: ${JSON.stringify(found)}`);
  return plan;
};
const [metric, inch] = [planOn(demoWorkshop), planOn(INCH)];
const figures = (plan: Plan): readonly Figures[] => plan.parts.flatMap((p) => p.figures);
const operations = (plan: Plan): readonly Operation[] =>
  plan.parts.flatMap(({ route }) => {
    const done = new Set(route.setUps.flatMap((s) => s.operations));
    return route.chosen.flatMap((m) => m.operations).filter((o) => done.has(o.id));
  });
const threads = (plan: Plan) =>
  figures(plan).flatMap(({ op, screw, wheels, passes = [], rpm }) => (screw ? [{ op, screw, wheels, passes, rpm }] : []));

describe('the same valve', () => {
  it('has the same parts in the same order, on either lathe, and the same threads', () => {
    const parts = (plan: Plan) => plan.fitting.parts.map((p) => p.id);
    const sizes = (plan: Plan) =>
      plan.fitting.parts.flatMap((p) =>
        p.features.flatMap((f) => (f.kind === 'thread' ? [`${f.id} ${f.thread.name} ${f.thread.cls}`] : [])),
      );
    expect(parts(inch)).toEqual(parts(metric));
    expect(sizes(inch)).toEqual(sizes(metric));
  });
  it('takes its seat from what is in each drawer: 4.5 mm of silver steel, or 3/16 in', () => {
    const seat = (plan: Plan) => plan.fitting.derivations.find((d) => d.of === 'bore')?.value;
    expect([seat(metric), seat(inch)]).toEqual([4.5, 4.7625]);
  });
});

describe('dials', () => {
  it('metric: in fiftieths of a diameter; inch: in thousandths that the slide travels, half as far', () => {
    const cross = (plan: Plan) => figures(plan).flatMap(({ dial }) => (dial?.which === 'cross' ? [dial] : []));
    const turned = (plan: Plan) =>
      plan.parts.flatMap(({ figures: own, chart }) =>
        own.flatMap(({ op, dial, zero }) => {
          const made = chart.working.find((w) => w.op === op && w.measures === 'diameter');
          return dial?.which === 'cross' && zero?.at === 'diameter' && made && op.endsWith('/turn')
            ? [Math.abs(zero.diameter - made.limits.target) / dial.total]
            : [];
        }),
      );
    expect(cross(metric).length).toBeGreaterThan(20);
    expect(cross(inch).length).toBeGreaterThan(20);
    expect(new Set(turned(metric).map((share) => Math.round(share * 100) / 100))).toEqual(new Set([1]));
    expect(new Set(turned(inch).map((share) => Math.round(share * 100) / 100))).toEqual(new Set([2]));
    for (const { turns, divisions, total } of cross(inch)) expect(turns * mm(2.54) + divisions * 254).toBeCloseTo(total, 4);
  });
  it('drills go in by whole divisions of the tailstock, where no length hangs on it', () => {
    const odd = figures(inch).filter(
      ({ dial }) => dial?.which === 'tailstock' && !Number.isInteger(Math.round(dial.divisions * 1e6) / 1e6),
    );
    expect(odd.map(({ op }) => op)).toEqual([]);
  });
  it('fed outward, the inch lathe says how many divisions of slack; the other says that there is some', () => {
    const slack = (plan: Plan) => new Set(figures(plan).flatMap((f) => (f.outward ? [f.slack ?? 'some'] : [])));
    expect(slack(metric)).toEqual(new Set(['some']));
    expect(slack(inch)).toEqual(new Set([6]));
  });
});

describe('threads of 1 mm', () => {
  it('come out exact on a leadscrew of 2 mm, half-nuts anywhere and nothing reversed', () => {
    expect(threads(metric).length).toBeGreaterThan(3);
    for (const { wheels, screw } of threads(metric)) {
      expect(wheels).toMatchObject({ error: 0, halfNuts: 'anywhere' });
      expect((wheels?.drivers[0] ?? 0) / (wheels?.driven[0] ?? 1)).toBe(1 / 2);
      expect(screw.back).toBeUndefined();
    }
  });
  it('by two pairs on eight to the inch, 606 millionths long, half-nuts closed, never back under full power on that nose', () => {
    expect(threads(inch).length).toBeGreaterThan(3);
    for (const { op, wheels, screw } of threads(inch)) {
      const ratio = (wheels?.drivers ?? []).reduce((r, z, i) => (r * z) / (wheels?.driven[i] ?? 1), 1);
      expect(wheels?.drivers.length, op).toBe(2);
      expect(3.175 * ratio).toBeCloseTo(1.000606, 6);
      expect(wheels?.halfNuts).toBe('closed');
      expect(['slowly', 'hand']).toContain(screw.back);
    }
  });
  it('are cut in whole thousandths of the dial', () => {
    for (const { op, passes } of threads(inch))
      expect(
        passes.filter((pass) => pass % 254 !== 0),
        op,
      ).toEqual([]);
  });
  it('in a bore: taps on the one, a single point on the other that has no such taps, stopped before the floor or by hand', () => {
    const inside = (plan: Plan) => operations(plan).filter((o) => /socket|bore/.test(o.feature) && ['tap', 'screw-cut'].includes(o.verb));
    expect(new Set(inside(metric).map((o) => o.verb))).toEqual(new Set(['tap']));
    expect(new Set(inside(inch).map((o) => o.verb))).toEqual(new Set(['screw-cut']));
    const stops = threads(inch).filter((t) => inside(inch).some((o) => o.id === t.op));
    expect(stops.length).toBeGreaterThan(3);
    for (const { op, screw, rpm } of stops) {
      // closed half-nuts want a second to stop in: a turn a second is a pitch
      expect(screw.stop, op).toBeDefined();
      const { runsOn, room } = screw.stop ?? { runsOn: len(0), room: len(0) };
      expect(runsOn, op).toBe(Math.ceil((mm(1) * (rpm?.value ?? 0)) / 60));
      expect(runsOn <= room || rpm?.value === 35, op).toBe(true);
    }
  });
});

describe('drills', () => {
  it('of the inch lathe are on its rack, the cross hole\u2019s too, and go by number, letter or fraction', () => {
    const rack = new Set<number>(inch.workshop.tools.drills);
    const drills = operations(inch).filter((o) => ['drill', 'cross-drill'].includes(o.verb));
    expect(drills.filter((o) => !rack.has(o.tool.size ?? 0)).map((o) => o.id)).toEqual([]);
    expect(drills.filter((o) => gaugeName(o.tool.size ?? len(0)) === undefined).map((o) => o.id)).toEqual([]);
    const names = drills.map((o) => gaugeName(o.tool.size ?? len(0)) ?? '');
    for (const kind of [/^No\. \d+$/, /^letter [A-Z]$/, /^\d+\/\d+ in$/]) expect(names.some((name) => kind.test(name))).toBe(true);
  });
  it('of the metric one are tenths of a millimetre', () => {
    const drills = operations(metric).filter((o) => ['drill', 'cross-drill'].includes(o.verb));
    expect(drills.filter((o) => (o.tool.size ?? 1) % mm(0.1) !== 0)).toEqual([]);
  });
});

describe('bar and time', () => {
  it('bar over 19/32 in is sawn first; through 20 mm all of it goes', () => {
    const sawn = (plan: Plan) => (plan.stock?.kinds ?? []).filter((k) => k.way === 'sawn').map((k) => k.across);
    expect(sawn(metric)).toEqual([]);
    expect(sawn(inch).length).toBeGreaterThan(3);
    expect(Math.min(...sawn(inch)) * (2 / Math.sqrt(3))).toBeGreaterThan(mm((19 / 32) * 25.4));
  });
  it('a clamped post takes longer over each tool', () => {
    expect(inch.time?.whole ?? 0).toBeGreaterThan(metric.time?.whole ?? 0);
  });
});

describe('set-up lines', () => {
  const once = viewOf(metric, { words: allWords(), language: 'en' }).pages.flatMap((page) =>
    page.kind === 'grip' ? [{ page, verbs: page.blocks.flatMap((b) => b.rows.map((r) => r.op)), once: page.once }] : [],
  );
  it.each([
    ['boring edge', 'bore'],
    ['thread tool square', 'screw-cut'],
  ])('%s stands over the grips that use it, and over no other', (said, verb) => {
    const verbOf = new Map(operations(metric).map((o) => [o.id, o.verb]));
    const uses = (ops: readonly string[]) => ops.some((op) => (verbOf.get(op as Operation['id']) ?? '').startsWith(verb));
    expect(once.filter((o) => uses(o.verbs)).length).toBeGreaterThan(0);
    for (const { page, verbs, once: line } of once) expect(line.includes(said), page.key).toBe(uses(verbs));
  });
});
