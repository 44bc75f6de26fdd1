/** Wheels on a lathe: what a thread bears, what is refused and with what nearest, half-nuts, left hand. */
import { describe, expect, it } from 'vitest';
import { inch, mm } from '../../src/base/units.ts';
import { threadOf } from '../../src/fittings/threads.ts';
import type { ThreadSize } from '../../src/model/part.ts';
import { type Lathe, wheelsFor } from '../../src/rules/wheels.ts';
import { shop } from '../fixtures/shop.ts';

const GEARS = [20, 25, 30, 35, 40, 40, 45, 50, 55, 60, 65, 80];
const threadNamed = (name: string): ThreadSize => {
  const found = threadOf(name, 'outside', '6g');
  if (!found) throw new Error(`no thread ${name}`);
  return found;
};
const on = (lathe: Partial<Lathe>, name: string, more: Partial<ThreadSize> = {}) =>
  wheelsFor({ ...shop.lathe, gears: GEARS, ...lathe }, { thread: { ...threadNamed(name), ...more }, length: mm(20) });
const used = (lathe: Partial<Lathe>, name: string, more: Partial<ThreadSize> = {}) => {
  const found = on(lathe, name, more);
  return 'wheels' in found ? found.wheels : undefined;
};
const INCH = { leadscrew: inch(1 / 8), leadscrewPerInch: 8 };

describe('wheels', () => {
  it('M10x1 from 2 mm: two wheels and an idler, exact, half-nuts anywhere, no error told', () =>
    expect(used({}, 'M10x1')).toEqual({ drivers: [40], driven: [80], idler: 40, error: 0, halfNuts: 'anywhere' }));
  it('M10x1 from 8 threads an inch with 127: exact, half-nuts closed whatever the dial', () => {
    const dial = { wheels: [16], marks: 8 };
    const wheels = used({ ...INCH, gears: [...GEARS, 127], threadingDial: dial }, 'M10x1');
    expect(wheels).toMatchObject({ error: 0, halfNuts: 'closed' });
    expect([...(wheels?.driven ?? [])]).toContain(127);
  });
  it('M10x1 from 8 threads an inch with 63: 125 millionths, closed, and what it comes to', () => {
    const wheels = used({ ...INCH, gears: [30, 63, 75, 80] }, 'M10x1');
    expect((wheels?.error ?? 0) * 1e6).toBeCloseTo(125, 0);
    expect(wheels?.halfNuts).toBe('closed');
    // 6.7 x 1 x 9.974^0.2 = 10.6133 mm; x 125e-6 = 0.0013; x cot 30 = 0.0023
    expect(wheels?.over).toMatchObject({ engaged: mm(10.6133), off: 13, acts: 23, tolerance: mm(0.112) });
  });
  it('an inch thread from a metric screw is reckoned exactly, not from its rounded pitch', () => {
    const wheels = used({ leadscrew: mm(2), gears: [...GEARS, 127] }, 'M10x1', { pitch: mm(25.4 / 26), perInch: 26 });
    expect(wheels?.error).toBe(0);
  });
  it('M10x1.5 from 2 mm goes by the dial where its wheel is a multiple of three', () => {
    expect(used({ threadingDial: { wheels: [15], marks: 15 } }, 'M10')).toMatchObject({
      halfNuts: 'dial',
      dial: { wheel: 15, every: 3, lines: 5 },
    });
    expect(used({ threadingDial: { wheels: [14], marks: 14 } }, 'M10')?.halfNuts).toBe('closed');
  });
  it('a banjo that bridges less leaves fewer trains, or none', () => {
    const banjo = { module: mm(1), centres: mm(200), slot: { from: mm(40), to: mm(60) }, boss: mm(13) };
    expect(on({ banjo }, 'M10x1')).toEqual({ none: {} });
  });
});

describe('refused', () => {
  it('no wheels, no train', () => expect(on({ gears: [] }, 'M10x1')).toEqual({ none: {} }));
  it('a pitch that no train comes near is refused with the nearest and what it would come to', () => {
    const found = on({ gears: [20, 60, 65, 80] }, 'M10x1');
    const nearest = 'none' in found ? found.none.nearest : undefined;
    expect(nearest?.scored.train.drivers.length).toBeGreaterThan(0);
    expect(nearest?.lead.bearable).toBe(false);
    expect(nearest?.lead.share).toBeGreaterThan(0.5);
  });
  it('what is borne goes by the engaged length: a short thread bears what a long one does not', () => {
    const lathe: Lathe = { ...shop.lathe, leadscrew: inch(1 / 16), leadscrewPerInch: 16, gears: [40, 65, 30, 80, 50, 47] };
    const thread = threadNamed('M16x1');
    const at = (length: number) => 'wheels' in wheelsFor(lathe, { thread, length: mm(length) });
    expect([at(1), at(20)]).toEqual([true, false]);
  });
});

describe('left hand', () => {
  const left = { hand: 'left' as const };
  it('by the tumbler, by a second idler that is left in the box, or by nothing', () => {
    expect(used({ tumbler: true }, 'M10x1', left)?.leftBy).toBe('tumbler');
    expect(used({}, 'M10x1', left)?.leftBy).toBe(20);
    expect(on({ gears: [40, 80, 45] }, 'M10x1', left)).toEqual({ none: { wayRound: 'one only' } });
    expect(used({ gears: [40, 80, 45], tumbler: true }, 'M10x1', left)?.leftBy).toBe('tumbler');
    expect(used({ gears: [40, 80, 45] }, 'M10x1')?.leftBy).toBeUndefined();
    expect(used({}, 'M10x1')?.leftBy).toBeUndefined();
  });
});
