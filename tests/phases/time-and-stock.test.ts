/** Time and bar of whole packs: what holds for any plan, and the demo's figures added up. */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { loadAssets } from '../../src/files.ts';
import { handlings } from '../../src/handbook/handling.ts';
import { holdLike, setting } from '../../src/handbook/setting.ts';
import type { Figures, Plan } from '../../src/model/plan.ts';
import { times } from '../../src/phases/times.ts';
import { cuttingTime } from '../../src/rules/cutting-time.ts';
import { walkRemoval } from '../../src/rules/removal.ts';
import { demoFitting, shop } from '../fixtures/shop.ts';

const assets = loadAssets();
const planFor = (packs: number): Plan => {
  const { plan } = compile({ fitting: demoFitting, packs }, assets);
  if (!plan) throw new Error('the demo is not planned');
  return plan;
};
const [one, two, six] = [planFor(1), planFor(2), planFor(6)];

describe('time', () => {
  it('adds up: operations and holds to set-ups, set-ups to parts, parts to the pack', () => {
    for (const { time, route, part } of one.parts) {
      if (!time) throw new Error(`${part.id} has no time`);
      expect(time.operations.map((o) => o.op)).toEqual(route.setUps.flatMap((s) => s.operations));
      expect(time.whole).toBe(time.hold + time.cutting + time.handling);
      expect(time.setUps.reduce((sum, s) => sum + s.whole, 0)).toBe(time.whole);
    }
    const { parts, clean, whole } = one.time ?? { parts: [], clean: 0, whole: 0 };
    expect(whole).toBe(parts.reduce((sum, p) => sum + p.each * p.times, clean));
  });

  it.each(one.parts.map((p) => [p.part.id, p] as const))(
    '%s: a finer feed, a slower spindle or more passes never take less',
    (_, planned) => {
      const { part, route, chart, figures } = planned;
      const slower: readonly ((f: Figures) => Figures)[] = [
        (f) => ({ ...f, ...(f.feed === undefined ? {} : { feed: f.feed / 2 }) }),
        (f) => ({ ...f, ...(f.rpm ? { rpm: { ...f.rpm, value: Math.ceil(f.rpm.value / 2) } } : {}) }),
        (f) => ({ ...f, ...(f.passes ? { passes: [...f.passes, mm(0.1)] } : {}) }),
      ];
      const now = times({ part, route, chart, figures }, shop);
      for (const change of slower) {
        const then = times({ part, route, chart, figures: figures.map(change) }, shop);
        then.operations.forEach((o, i) => {
          expect(o.cutting + o.handling).toBeGreaterThanOrEqual((now.operations[i]?.cutting ?? 0) + (now.operations[i]?.handling ?? 0));
        });
      }
    },
  );

  it.each(one.parts.map((p) => [p.part.id, p] as const))('%s: whatever has a speed takes time in the cut', (_, { time, figures }) => {
    const turning = figures.filter((f) => f.rpm !== undefined).map((f) => f.op);
    const idle = (time?.operations ?? []).filter((o) => turning.includes(o.op) && o.cutting === 0);
    expect(idle).toEqual([]);
  });

  it('grows with the length that is turned', () => {
    const planned = one.parts.find((p) => p.part.id === 'seat-piece');
    if (!planned) throw new Error('no seat piece');
    const { part, route, chart, figures } = planned;
    const longer = {
      ...part,
      length: len(part.length * 2),
      surfaces: part.surfaces.map((s) => (s.shape === 'face' ? { ...s, z: len(s.z * 2) } : s)),
    };
    const turned = walkRemoval(part, route, chart).filter((r) => r.operation.verb === 'turn');
    expect(turned.length).toBeGreaterThan(0);
    for (const removal of turned) {
      const own = figures.find((f) => f.op === removal.operation.id) ?? { op: removal.operation.id };
      expect(cuttingTime(longer, removal, own)).toBeGreaterThan(cuttingTime(part, removal, own));
    }
  });

  it('every hold has its minutes, and those of a four-jaw are more than those of a three-jaw', () => {
    const kinds = [
      'bar',
      'bar-and-centre',
      'jaws',
      'bored-jaws',
      'four-jaw',
      'hexagon',
      'collet',
      'sleeve',
      'stub',
      'threaded-mandrel',
      'stub-mandrel',
      'bench',
    ];
    for (const kind of kinds) {
      const like = holdLike(kind);
      expect(setting.value(`hold.${kind}`)).toBeGreaterThanOrEqual(0);
      if (like !== undefined) expect(handlings).toContain(like);
    }
    const minutes = (kind: string): number => setting.value(`hold.${kind}`) + (shop.handling[holdLike(kind) ?? ''] ?? 0);
    expect(minutes('four-jaw')).toBeGreaterThan(minutes('jaws'));
  });

  it("takes the workshop's own minutes", () => {
    const planned = one.parts.find((p) => p.part.id === 'cap');
    if (!planned) throw new Error('no cap');
    const { part, route, chart, figures } = planned;
    const slow = times({ part, route, chart, figures }, { handling: { ...shop.handling, measure: (shop.handling.measure ?? 0) + 1 } });
    expect(slow.handling).toBeGreaterThan(times({ part, route, chart, figures }, shop).handling);
  });
});

describe('bar', () => {
  it.each([
    ['one', one],
    ['two', two],
    ['six', six],
  ] as const)('for %s: every piece once, no bar overrun, kerf and hold left', (_, plan) => {
    const { kinds = [], blanks = [], packs = 0 } = plan.stock ?? {};
    for (const { part } of plan.parts.filter((p) => p.part.use === 'fitting' && p.part.stock.from === 'bar')) {
      const cut = kinds.flatMap((k) => [...k.bars.flatMap((b) => b.pieces), ...k.short]).filter((p) => p.part === part.id);
      expect(cut.length).toBe(part.quantity * packs);
      const blank = blanks.find((b) => b.part === part.id);
      expect(blank?.uses).toBeGreaterThan(part.length);
      expect(blank?.hold).toBeGreaterThan(0);
    }
    for (const kind of kinds)
      for (const bar of kind.bars) {
        const used = bar.pieces.reduce((sum, p) => sum + p.takes, 0);
        expect(used + bar.left).toBe(bar.length);
        for (const p of bar.pieces)
          if (kind.way === 'through') expect(bar.left).toBeGreaterThanOrEqual(blanks.find((b) => b.part === p.part)?.hold ?? 0);
      }
  });

  it('more of them never take less bar, nor less time', () => {
    for (const [less, more] of [
      [one, two],
      [two, six],
    ] as const) {
      for (const kind of less.stock?.kinds ?? []) {
        const other = more.stock?.kinds.find((k) => k.material === kind.material && k.section === kind.section && k.across === kind.across);
        expect(other?.uses).toBeGreaterThanOrEqual(kind.uses);
      }
      expect(more.time?.whole).toBeGreaterThan(less.time?.whole ?? 0);
    }
  });

  it('a bar that does not go through the spindle is sawn: every blank has its own hold', () => {
    const text = assets.workshop.text.replace('spindle-bore: 20 mm', 'spindle-bore: 17 mm');
    const { plan } = compile({ fitting: demoFitting, workshop: { name: 'narrow.yaml', text } }, assets);
    const wide = plan?.stock?.kinds.find((k) => toMm(k.across) === 18);
    const blank = plan?.stock?.blanks.find((b) => b.part === 'body');
    expect(wide?.way).toBe('sawn');
    expect(wide?.bars.flatMap((b) => b.pieces).find((p) => p.part === 'body')?.takes).toBe(
      (blank?.uses ?? 0) + (blank?.hold ?? 0) + (blank?.kerf ?? 0),
    );
    expect(one.stock?.kinds.find((k) => toMm(k.across) === 18)?.way).toBe('through');
  });

  it('a finished part weighs less than the bar that it takes', () => {
    for (const { part, grams } of one.stock?.finished ?? []) {
      const kind = one.stock?.kinds.find((k) => [...k.bars.flatMap((b) => b.pieces), ...k.short].some((p) => p.part === part));
      expect(grams).toBeGreaterThan(0);
      expect(grams).toBeLessThan(kind?.grams ?? 0);
    }
  });
});
