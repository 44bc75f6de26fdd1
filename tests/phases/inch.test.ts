/** The inch lathe: its file as read, the demo planned and proved on it, threads of every family in a part. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { demoFitting, demoWorkshop } from '../fixtures/shop.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const INCH = { name: 'inch-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'inch-lathe.yaml'), 'utf8') };

describe('the inch lathe', () => {
  const { value, found } = readWorkshop(INCH);
  it('is read without a word', () => expect(found).toEqual([]));
  it('has eight threads an inch and dials in thousandths', () => {
    expect(value?.lathe).toMatchObject({ leadscrew: mm(3.175), leadscrewPerInch: 8 });
    expect(value?.lathe.dials.cross).toEqual({ reads: 'travel', division: len(254), turn: mm(2.54), units: 'in', backlash: len(1524) });
  });
  it('has sixty number drills, twenty-six letters and twenty-nine fractions, 1/4 in being E as well', () => {
    expect(value?.tools.drills.length).toBe(60 + 26 + 29 - 1);
  });
  it('plans and proves the demo, every number with a speed that it has', () => {
    const { plan, found: said } = compile({ fitting: demoFitting, workshop: INCH }, { workshop: demoWorkshop });
    expect(said).toEqual([]);
    expect(plan?.parts.filter((p) => !p.proof.holds)).toEqual([]);
    const speeds = (plan?.parts ?? []).flatMap((p) => p.figures.flatMap((f) => f.rpm?.value ?? []));
    expect(speeds.length).toBeGreaterThan(50);
    expect(speeds.filter((s) => ![35, 62, 105, 130, 200, 350, 560, 850, 1350].includes(s))).toEqual([]);
  }, 60_000);
});

const part = (thread: string, tapped: string) => `fitting: turned-part
title: Plug
name: plug
material: PB102
bar: hexagon 1/2 in
first: { letter: A }
second: { letter: B }
outside:
  - { name: thread, thread: ${thread}, length: 3/8 in, shoulder: { letter: C } }
  - { name: head, as-bar: yes, length: 1/4 in }
inside:
  - { name: tapped, thread: ${tapped}, from: second, depth: 5/16 in }
`;

describe('threads in a part', () => {
  it.each([
    ['1/4-40 ME', '5BA', ['1/4-40 ME medium', '5BA normal']],
    ['1/4x28 UNF', '6 BA', ['1/4-28 UNF 2A', '6BA normal']],
    ['5/16-32 ME close', '4BA', ['5/16-32 ME close', '4BA normal']],
  ])(
    '%s and %s',
    (outside, inside, wanted) => {
      const { plan, found } = compile(
        { fitting: { name: 'plug.yaml', text: part(outside, inside) }, workshop: INCH },
        { workshop: demoWorkshop },
      );
      expect(found).toEqual([]);
      const threads = plan?.parts[0]?.part.features.flatMap((f) => (f.kind === 'thread' ? [`${f.thread.name} ${f.thread.cls}`] : []));
      expect(threads).toEqual(wanted);
      expect(plan?.parts.map((p) => p.proof.holds)).toEqual(plan?.parts.map(() => true));
    },
    60_000,
  );
  it.each([
    ['1/4-41 ME', 'read.not-a-thread'],
    ['1/4-40 ME 6g', 'design.part-thread-unknown'],
    ['M6 RH', 'read.not-a-thread'],
  ])('%s is told', (thread, code) => {
    const { found } = compile({ fitting: { name: 'plug.yaml', text: part(thread, '5BA') }, workshop: INCH }, { workshop: demoWorkshop });
    expect(found.map((d) => d.code)).toEqual([code]);
  });
});
