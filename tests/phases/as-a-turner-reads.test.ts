/** What a turner found who read the sheets: each a page that was wrong, generally, and how it is said now. */
import { describe, expect, it } from 'vitest';
import { toMm } from '../../src/base/units.ts';
import { INCH } from '../../src/drawing/sheet/inch.ts';
import type { GripPage, Row } from '../../src/model/sheet.ts';
import { wordsIn } from '../../src/phases/sheet/said.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { holdsOf, planOwn } from '../fixtures/own-part.ts';
import { gripsOf, planned, rowsOf, words } from '../fixtures/views.ts';
import { ADVANCES } from '../render/assets.ts';

const grip = (spec: string, part: string, setUp: number): GripPage => {
  const page = gripsOf(spec).find((one) => one.part === part && one.setUp === setUp);
  if (!page) throw new Error(`no page ${part}/${setUp}`);
  return page;
};
const row = (page: GripPage, end: string): Row => {
  const found = rowsOf(page).find((one) => one.op.endsWith(end));
  if (!found) throw new Error(`no row ${end} on ${page.key}`);
  return found;
};
const allRows = everyPlan.flatMap(({ spec }) => gripsOf(spec).flatMap((page) => rowsOf(page).map((one) => ({ spec, page, row: one }))));
const figures = everyPlan.flatMap(({ spec, plan }) => plan.parts.flatMap((part) => part.figures.map((one) => ({ spec, plan, part, one }))));

describe('a hold', () => {
  it('on tooling made in place names the sheet on which that was made last', () => {
    for (const { spec, plan } of everyPlan)
      for (const [i, entry] of plan.sequence.entries()) {
        const asks = plan.parts.find((one) => one.part.id === entry.part)?.route.setUps[entry.setUp]?.grip.tooling;
        const before = plan.sequence[i - 1];
        const made = plan.parts.find((one) => one.part.id === before?.part)?.part.use === 'tooling made in place';
        if (!asks || !made || !before) continue;
        const first = plan.sequence.slice(0, i).findLastIndex((one) => one.part === before.part && one.setUp === 0);
        const times = plan.sequence.slice(0, i).filter((one) => one.part === before.part && one.setUp === 0).length;
        const [held] = grip(spec, entry.part, entry.setUp).hold;
        expect(`${held?.title}${held?.text}`).toContain(
          `{sheet:${before.part}/${plan.sequence[first]?.setUp}${times > 1 ? `@${times}` : ''}}`,
        );
      }
  });
  it('in which a face is cut says that places count from it: never that no length is made', () => {
    const bare = everyPlan.flatMap(({ spec }) =>
      gripsOf(spec).filter(
        (page) =>
          page.hold[1]?.title === words.say('datum.none') && rowsOf(page).some((one) => one.sizes.some((s) => / from [A-Z]/.test(s.after))),
      ),
    );
    expect(bare.map((page) => page.key)).toEqual([]);
    expect(grip('steam-supply-valve', 'body', 0).hold[1]?.title).toBe('P, made in this grip');
  });
});

describe('what the tailstock carries', () => {
  it('a centre that stays goes by its drill, its depth and its mouth, and nobody measures its pilot', () => {
    const centre = row(grip('drain-spindle', 'spindle', 0), 'Z.centre/centre');
    expect(centre.title).toBe('Centre for the tailstock');
    expect(centre.note).toContain('1.06');
    expect([centre.sizes[0]?.text, centre.dial !== '', centre.measure]).toEqual(['A0.5/1.06', true, 'nothing']);
  });
  it('chips are cleared by steps of a drill, not by what is left over', () => {
    const steps = figures.flatMap(({ part, one }) =>
      (one.says ?? []).flatMap(({ id, grounds }) => {
        const tool = part.route.chosen.flatMap((m) => m.operations).find((op) => op.id === one.op)?.tool;
        return id === 'say.pecks' && grounds.next !== '' ? [Number(grounds.next) / toMm(tool?.size ?? (0 as never))] : [];
      }),
    );
    expect(steps.length).toBeGreaterThan(10);
    // a diameter, let down to half a millimetre
    expect(steps.filter((share) => share < 0.6 || share > 1.01)).toEqual([]);
  });
  it('a hole deeper than the flutes of a usual drill says so: 2 mm, 36 deep, flutes of 24 (DIN 338)', () => {
    const long = figures.filter(({ one }) => (one.says ?? []).some(({ id }) => id === 'say.drill.long'));
    expect(long.map(({ spec }) => spec)).toContain('pump-adaptor');
    expect(row(grip('pump-adaptor', 'pump-adaptor', 0), 'bore/drill-to-size').under).toContain('24 long');
    const usual = rowsOf(grip('steam-supply-valve', 'bonnet', 0)).find((one) => one.title === 'Drill, through');
    expect(usual?.under).toContain('clear every');
    expect(usual?.under).not.toContain('flutes');
  });
  it('a drill that opens a hole which goes on is held back; it breaks through nowhere', () => {
    const drilled = rowsOf(grip('steam-supply-valve', 'body', 0)).filter((one) => one.title.startsWith('Drill'));
    expect(drilled.map((one) => [one.title, one.says.join()])).toEqual([
      ['Drill under size, through', ''],
      ['Drill under size', 'It opens out a hole: hold the drill back'],
    ]);
  });
});

describe('what is cut', () => {
  it('a start for a D-bit is its size and no less: its own shank is the gauge', () => {
    const starts = everyPlan.flatMap(({ plan }) =>
      plan.parts.flatMap(({ route, chart }) =>
        route.chosen
          .flatMap((m) => m.operations)
          .filter((op) => op.verb === 'bore-start')
          .flatMap((op) =>
            chart.working
              .filter((w) => w.op === op.id)
              .map((w) => ({
                w,
                bit: route.chosen.flatMap((m) => m.operations).find((d) => d.verb === 'd-bit' && d.feature === op.feature)?.tool.size,
              })),
          ),
      ),
    );
    expect(starts.length).toBeGreaterThan(0);
    for (const { w, bit } of starts) expect(w.limits.lo).toBe(bit);
  });
  it('a relief wider than its tool is plunged side by side, and its width stands once', () => {
    const reliefs = allRows.filter(({ row: one }) => one.op.endsWith('/groove') && one.note.includes('side by side'));
    expect(reliefs.length).toBeGreaterThan(5);
    for (const { row: one } of reliefs) expect(one.note.includes('wide')).toBe(!one.sizes.some((s) => s.after.includes('from')));
  });
  it('a knurl has its speed, slower than the turning of that rim', () => {
    const page = grip('steam-supply-valve', 'handwheel', 0);
    const [knurl, rim] = [row(page, '/knurl'), row(page, 'rim/turn')];
    expect(Number(knurl.rpm)).toBeGreaterThan(0);
    expect(Number(knurl.rpm)).toBeLessThan(Number(rim.rpm));
  });
  it("a D-bit's end is backed off", () => {
    expect(row(grip('seat-d-bit', 'd-bit-4.5', 0), 'file-half').note).toContain('backed off 8°');
  });
});

describe('dangers at the foot of a page', () => {
  const dangers = (...where: Parameters<typeof grip>): string =>
    grip(...where)
      .cautions.map(({ text }) => text)
      .join(' ');
  it('a rod catches a part that has a bore; one without drops into a tray', () => {
    expect(dangers('wash-out-plug', 'plug', 0)).toMatch(/a tray under it/);
    expect(dangers('steam-supply-valve', 'union-nut', 0)).toMatch(/a rod up the bore/);
  });
  it('cutting off a stub is parting; what is soldered in swings round', () => {
    expect(dangers('steam-supply-valve', 'body', 3)).toMatch(/swings round.*No hand near the blade/);
    expect(dangers('steam-supply-valve', 'body', 0)).not.toMatch(/swings/);
  });
});

describe('under the drill press', () => {
  const page = () => grip('steam-supply-valve', 'body', 1);
  it('the speed is told as about so many, by the drill and the metal: 26 m/min and 9 mm are 900 and something', () => {
    const turns = rowsOf(page())
      .filter((one) => one.op.endsWith('/cross-drill'))
      .map((one) => one.rpm);
    expect(turns).toEqual(['about 850', 'about 850']);
  });
  it('it is one of its own where the workshop says which it has', () => {
    const part = [
      'first: { letter: A }',
      'second: { letter: B }',
      'outside:',
      '  - { name: pin, diameter: 8 mm, length: 20 mm }',
      'side:',
      '  - { name: hole, cross-hole: 3 mm, on: pin, at: 10 mm }',
    ];
    const compiled = planOwn(part, [['  drill-press: yes', '  drill-press: { speeds: [500 /min, 1200 /min, 2400 /min] }']]);
    expect(holdsOf(compiled)).toContain('vee-block');
    const press = compiled.plan?.parts.flatMap((one) => one.figures.flatMap((f) => f.press ?? []));
    expect(press?.map(({ value, about }) => [value, about])).toEqual([[2400, undefined]]);
  });
  it('a hole that meets a bore goes no further; the second of a pair wants the work turned over', () => {
    const [first, second] = rowsOf(page());
    expect(first?.note).toContain('into the bore and no further');
    expect(second?.note).toContain('turned half round');
  });
  it('each balloon points to its hole in the cut half', () => {
    const { plan, stages } = planned('steam-supply-valve');
    const { drawn } = sheet(plan, stages, { words, advances: ADVANCES, language: 'en' });
    const asked = drawn.find((one) => one.key === 'body/1')?.asked;
    expect(asked?.balloons.map((one) => one.half)).toEqual(['above', 'above']);
  });
});

describe('a spigot is turned to its hole, as a drill left that', () => {
  const shafts = everyPlan.flatMap(({ spec, plan }) =>
    plan.parts.flatMap(({ part, chart }) =>
      part.features.flatMap((f) =>
        f.kind === 'outside' && f.madeTo?.by ? [{ spec, plan, part, chart, shaft: f, by: f.madeTo.by, clear: f.madeTo.clear }] : [],
      ),
    ),
  );
  const placeOf = (plan: (typeof everyPlan)[number]['plan'], part: string, feature: string): number => {
    const route = plan.parts.find((one) => one.part.id === part)?.route;
    const made = new Set(route?.chosen.flatMap((m) => m.operations).flatMap((op) => (op.feature === feature ? [op.id] : [])));
    return plan.sequence.findLastIndex((e) => e.part === part && route?.setUps[e.setUp]?.operations.some((op) => made.has(op)));
  };
  it('is there in every valve with a branch', () => expect(shafts.length).toBeGreaterThan(4));
  it('after the hole is drilled, and before it is soldered in', () => {
    for (const { plan, part, shaft, by } of shafts) {
      const here = placeOf(plan, part.id, shaft.id);
      const host = plan.parts.find((one) => one.part.id === by.part)?.part;
      const joints =
        host?.features.flatMap((f) => (f.kind === 'side' && f.does === 'branch' && f.joins?.part === part.id ? [f.id] : [])) ?? [];
      expect(joints.length).toBe(by.holes.length);
      for (const hole of by.holes) expect(placeOf(plan, by.part, hole)).toBeGreaterThanOrEqual(0);
      for (const hole of by.holes) expect(placeOf(plan, by.part, hole)).toBeLessThan(here);
      for (const joint of joints) expect(placeOf(plan, by.part, joint)).toBeGreaterThan(here);
    }
  });
  it('each part goes on where it was left: its set-ups in their own order, each once', () => {
    for (const { plan } of everyPlan)
      for (const { part, route } of plan.parts.filter((one) => one.part.use === 'fitting'))
        expect(plan.sequence.filter((e) => e.part === part.id).map((e) => e.setUp)).toEqual(route.setUps.map((_, i) => i));
  });
  it('its limits are those of every hole that a drill may leave, and the proof held at them', () => {
    for (const { plan, part, shaft, by, clear, chart } of shafts) {
      const host = plan.parts.find((one) => one.part.id === by.part)?.part;
      const on = part.surfaces.find((one) => one.id === shaft.cylinder);
      const cut = chart.working.find((w) => w.makes === shaft.cylinder && w.stage === 'final');
      for (const id of by.holes) {
        const hole = host?.features.find((f) => f.id === id);
        const size = hole?.kind === 'side' ? hole.size : undefined;
        // a drilled hole comes out over its drill, by up to 0.15
        expect([size?.lo, (size?.hi ?? 0) - (size?.lo ?? 0)]).toEqual([size?.target, 1500]);
        expect(on?.shape === 'cylinder' && [on.size.lo, on.size.hi]).toEqual([(size?.lo ?? 0) - clear.hi, (size?.hi ?? 0) - clear.lo]);
      }
      expect([cut?.limits.lo, cut?.limits.hi]).toEqual(on?.shape === 'cylinder' ? [on.size.lo, on.size.hi] : []);
    }
  });
  it('its row counts from the hole and not from a figure; two of them go each to its own', () => {
    const turned = row(grip('steam-supply-valve', 'branch', 2), 'spigot/turn');
    expect([turned.title, turned.sizes[0]?.limits, turned.sizes[0]?.after]).toEqual([
      'Turn spigot to its hole',
      '',
      'the hole as drilled, less 0.08 to 0.15',
    ]);
    expect(turned.note).toContain('each to its own hole');
    expect(row(grip('launch-feed-check-valve', 'branch', 2), 'spigot/turn').note).not.toContain('each');
    expect(row(grip('steam-supply-valve', 'body', 1), 'outlet/cross-drill').note).toContain('measure it as drilled');
  });
});

describe('in inches', () => {
  const inch = wordsIn(words, 'inch');
  it('pressures of the tests are asked for in psi', () => {
    expect(inch.say('test.cold-water.box-a')).toBe('seat, psi');
    expect(wordsIn(words, 'mm').say('test.cold-water.box-a')).toBe('seat, bar');
  });
  it('a fraction that was asked for is told as that fraction; a pressure wave by the second', () => {
    expect(INCH.derived(7.1438, 'mm')).toBe('9/32 in');
    // 1410 m/s / 0.3048 is 4626, to three places
    expect(INCH.derived(1410, 'm/s')).toBe('4630 ft/s');
    expect(INCH.derived(2.54, 'm/s')).toBe('500 ft/min');
  });
  it('the least of a range is never over its greatest: rod of 7/32 in as bought', () => {
    expect(INCH.range(55_562 as never, 55_562 as never)).toBe('0.21875 – 0.21875');
  });
  it('a whole number and its fraction stand on one line', () => {
    const said = inch.say('once.material', { material: 'Saw off 1 7/8 first' });
    expect(said).toContain('1\u00a07/8');
  });
});
