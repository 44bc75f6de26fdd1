/** Threads of every family: their tables as tables, what must hold of each, and the names that people write. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inch, len, mm } from '../../src/base/units.ts';
import { commonDrills } from '../../src/handbook/common-set.ts';
import type { ThreadLimits } from '../../src/handbook/iso965-metric.ts';
import { engagement, holeFor, tappingDrills } from '../../src/handbook/metric-tapping.ts';
import { insideShear, outsideShear, stressAreaOf } from '../../src/handbook/thread-strength.ts';
import { hasClass, inchThreads, nearestThreads, sideOf, thread, threadNames } from '../../src/handbook/threads.ts';
import { whitworthTolerance } from '../../src/handbook/whitworth-threads.ts';

const ALL = threadNames.map((name) => [name] as const);
const of = (name: string) => {
  const found = thread(name);
  if (!found) throw new Error(`no ${name}`);
  return found.thread;
};
const every = (name: string): { readonly outside: readonly ThreadLimits[]; readonly inside: readonly ThreadLimits[] } => {
  const t = of(name);
  const some = (side: 'outside' | 'inside') => t[side].flatMap((cls) => t.limits(side, cls) ?? []);
  return { outside: some('outside'), inside: some('inside') };
};

describe('each thread', () => {
  it.each(ALL)('%s: has limits of every class it names; minor under pitch under major; bolt within nut', (name) => {
    const t = of(name);
    const { outside, inside } = every(name);
    expect(outside.length).toBe(t.outside.length);
    expect(inside.length).toBe(t.inside.length);
    expect(outside.length).toBeGreaterThan(0);
    for (const l of [...outside, ...inside]) {
      for (const pair of [l.major, l.pitchDiameter, l.minor]) expect(pair.lo).toBeLessThan(pair.hi);
      expect(l.minor.hi).toBeLessThan(l.pitchDiameter.hi);
      expect(l.minor.lo).toBeLessThan(l.pitchDiameter.lo);
      expect(l.pitchDiameter.hi).toBeLessThan(l.major.hi);
      expect(l.pitchDiameter.lo).toBeLessThan(l.major.lo);
      expect(l.source).not.toBe('');
    }
    for (const bolt of outside)
      for (const nut of inside) {
        expect(bolt.major.hi).toBeLessThanOrEqual(nut.major.lo);
        expect(bolt.pitchDiameter.hi).toBeLessThanOrEqual(nut.pitchDiameter.lo);
        expect(bolt.minor.hi).toBeLessThanOrEqual(nut.minor.lo);
        expect(bolt.root).toBeLessThanOrEqual(bolt.minor.lo);
      }
  });
  it.each(ALL)('%s: strips over less than its whole cylinder; its stress area lies between core and pitch', (name) => {
    const t = of(name);
    const [bolt, nut] = [every(name).outside[0], every(name).inside[0]];
    const area = (d: number) => (Math.PI / 4) * (d / 10_000) ** 2;
    expect(stressAreaOf(t)).toBeGreaterThan(area(t.basic.root));
    expect(stressAreaOf(t)).toBeLessThan(area(t.basic.pitchDiameter));
    if (!bolt || !nut) return;
    const cylinder = Math.PI * (t.nominal / 10_000) ** 2;
    for (const strip of [outsideShear(bolt, nut, t.nominal), insideShear(bolt, nut, t.nominal)]) {
      expect(strip).toBeGreaterThan(0);
      expect(strip).toBeLessThan(cylinder);
    }
  });
  it('each name stands once and finds itself', () => {
    expect(new Set(threadNames).size).toBe(threadNames.length);
    expect(threadNames.filter((name) => thread(name)?.thread.name !== name)).toEqual([]);
  });
});

describe('tables as tables', () => {
  const families = [...new Set(inchThreads.map((t) => t.family))];
  it.each(families)('%s: no doubles; sizes rise, or fall, among those of one pitch', (family) => {
    const rows = inchThreads.filter((t) => t.family === family);
    const sizes = rows.map((t) => `${t.nominal}/${t.pitch}`);
    expect(sizes.filter((size, i) => sizes.indexOf(size) !== i)).toEqual([]);
    for (const pitch of new Set(rows.map((t) => t.pitch))) {
      const alike = rows.filter((t) => t.pitch === pitch).map((t) => t.nominal);
      expect(alike).toEqual([...alike].sort((a, b) => a - b));
    }
  });
  it('coarse is coarser than fine is coarser than extra fine, of one size', () => {
    for (const a of inchThreads.filter((t) => t.family === 'UNC'))
      for (const b of inchThreads.filter((t) => ['UNF', 'UNEF'].includes(t.family) && t.nominal === a.nominal))
        expect(a.pitch).toBeGreaterThan(b.pitch);
    for (const a of inchThreads.filter((t) => t.family === 'BSW'))
      for (const b of inchThreads.filter((t) => t.family === 'BSF' && t.nominal === a.nominal)) expect(a.pitch).toBeGreaterThan(b.pitch);
  });
  it('BA: pitch 0.9^n to the hundredth, major 6 p^1.2 to the tenth but for 13', () => {
    for (let n = 0; n <= 16; n++) {
      const t = of(`${n}BA`);
      expect(Math.abs(t.pitch - mm(0.9 ** n))).toBeLessThanOrEqual(mm(0.0051));
      const rule = 6 * (t.pitch / 10_000) ** 1.2;
      expect(Math.abs(t.nominal - mm(rule))).toBeLessThanOrEqual(n === 13 ? mm(0.11) : mm(0.051));
    }
  });
  it('ISO 228: class B has twice the tolerance of A', () => {
    for (const t of inchThreads.filter((each) => each.family === 'G')) {
      const [a, b] = ['A', 'B'].map((cls) => t.limits('outside', cls)?.pitchDiameter);
      expect((b?.hi ?? 0) - (b?.lo ?? 0)).toBe(2 * ((a?.hi ?? 0) - (a?.lo ?? 0)));
    }
  });
  it('BS 84: 1/4 in 20, 0.0039 in on effective', () => expect(whitworthTolerance(0.25, 0.05)).toBeCloseTo(0.0039, 4));
  it('a printed drill leaves some thread, and no drill of them more than all', () => {
    for (const t of inchThreads)
      for (const { drill } of t.usual) {
        const share = engagement(t, drill, t.form.bases[0] ?? '5/8 H');
        expect(share, t.name).toBeGreaterThan(30);
        expect(share, t.name).toBeLessThan(108);
      }
  });
});

/** As people write them. */
const NAMES: readonly (readonly [written: string, name: string, cls?: string])[] = [
  ['M10x1', 'M10x1'],
  ['M10×1', 'M10x1'],
  ['M10', 'M10'],
  ['m10 x 1.0', 'M10x1'],
  ['M10x1.5', 'M10'],
  ['M10x1-6H', 'M10x1', '6H'],
  ['M10x1 6g', 'M10x1', '6g'],
  ['1/4-40 ME', '1/4-40 ME'],
  ['ME 1/4x40', '1/4-40 ME'],
  ['1/4 x 40 ME', '1/4-40 ME'],
  ['1/4" x 40 ME', '1/4-40 ME'],
  ['1/4-40', '1/4-40 ME'],
  ['¼ x 40 ME', '1/4-40 ME'],
  ['3/8 BSP', 'G3/8'],
  ['G3/8', 'G3/8'],
  ['G 3/8 B', 'G3/8', 'B'],
  ['1 BSP', 'G1'],
  ['2BA', '2BA'],
  ['2 BA', '2BA'],
  ['No 4 BA', '4BA'],
  ['1/4 UNF', '1/4-28 UNF'],
  ['1/4-28 UNF-2A', '1/4-28 UNF', '2A'],
  ['#4-40', '#4-40 UNC'],
  ['4-40 UNC', '#4-40 UNC'],
  ['No.10-32', '#10-32 UNF'],
  ['1/4 BSW close', '1/4-20 BSW', 'close'],
  ['3/8 BSF', '3/8-20 BSF'],
  ['1/4 brass', '1/4-26 brass'],
  ['5/16 x 26 BSB', '5/16-26 brass'],
];
/** A class, and the side that it belongs to by its own name. */
const SIDES: readonly (readonly [name: string, cls: string, side?: string])[] = [
  ['M10', '6g', 'outside'],
  ['M10', '6H', 'inside'],
  ['1/4-20 UNC', '2B', 'inside'],
  ['1/4-20 BSW', 'medium'],
  ['G3/8', 'A', 'outside'],
];
describe('names', () => {
  it.each(NAMES.map(([written, name, cls]) => ({ written, name, cls })))('$written is $name', ({ written, name, cls }) => {
    expect(thread(written)?.thread.name).toBe(name);
    expect(thread(written)?.cls).toBe(cls);
  });
  it('left hand is told', () => expect(thread('M12x1 LH')).toMatchObject({ left: true, thread: { name: 'M12x1' } }));
  it.each(['', 'M', 'M31', '1/3-40 ME', '17BA', 'G2', '1/4 XYZ', 'ten', 'M10x0.9', '1/4', '__proto__', 'constructor'])(
    '%j is none',
    (written) => expect(thread(written)).toBeUndefined(),
  );
  it('no text makes it throw', () =>
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (text) => {
        const found = thread(text);
        expect(found === undefined || typeof found.thread.name === 'string').toBe(true);
        expect(nearestThreads(text).length).toBeGreaterThan(0);
      }),
    ));
  it.each([
    ['M10x0.9', 'M10x1'],
    ['1/4-41 ME', '1/4-40 ME'],
    ['3BAA', '3BA'],
  ])('%s: %s is among the nearest', (written, near) => expect(nearestThreads(written)).toContain(near));
  it.each(SIDES.map(([name, cls, side]) => ({ name, cls, side })))('$name $cls: $side', ({ name, cls, side }) => {
    expect(sideOf(of(name), cls)).toBe(side);
    expect(hasClass(of(name), cls)).toBe(true);
    expect(hasClass(of(name), '9z')).toBe(false);
  });
});

describe('holes', () => {
  it.each(inchThreads.map((t) => [t.name] as const))('%s: share of thread and its inverse agree', (name) => {
    const t = of(name);
    for (const basis of t.form.bases)
      for (const share of [50, 75, 100]) expect(engagement(t, holeFor(t, share, basis), basis)).toBeCloseTo(share, 1);
  });
  it('the basis of a rack goes with the form', () => {
    const bases = ['M6', '1/4-40 ME', '2BA', '1/4-20 UNC'].map((name) => {
      const nut = of(name).limits('inside', of(name).inside[0] ?? '');
      return nut && tappingDrills(nut, commonDrills)[0]?.basis;
    });
    expect(bases).toEqual(['5/8 H', 'Whitworth depth', 'BA depth', '5/8 H']);
  });
  it('a whole depth is 100 %', () =>
    expect(engagement(of('1/4-40 ME'), len(inch(0.25) - inch(1.280654 / 40)), 'Whitworth depth')).toBeCloseTo(100, 1));
});
