/** What a turner found who read the sheets of single parts: each a page that was wrong, generally, and how it is said now. */
import { describe, expect, it } from 'vitest';
import { threading } from '../../src/handbook/thread-passes.ts';
import type { Row } from '../../src/model/sheet.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { evened } from '../../src/rules/tidy.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { gripsOf, planned, rowsOf, view, words } from '../fixtures/views.ts';
import { ADVANCES } from '../render/assets.ts';

const rowsIn = (spec: string): readonly Row[] => gripsOf(spec).flatMap(rowsOf);
const row = (spec: string, end: string): Row => {
  const found = rowsIn(spec).find((one) => one.op.endsWith(end));
  if (!found) throw new Error(`no row ${end} of ${spec}`);
  return found;
};
const all = everyPlan.flatMap(({ spec, plan }) => plan.parts.map((part) => ({ spec, plan, ...part })));
const cautions = (spec: string): readonly string[] =>
  view(spec).pages.flatMap((page) =>
    page.kind === 'plain' ? page.sections.flatMap((s) => (s.kind === 'cautions' ? s.cautions.map(({ title }) => title) : [])) : [],
  );

describe('a hold of one size', () => {
  const held = all.flatMap(({ spec, part, route, chart }) =>
    route.setUps.flatMap(({ grip }) =>
      grip.takes
        ? grip.on.flatMap((on) =>
            chart.working
              .filter((w) => w.makes === on && w.measures === 'diameter' && w.stage === 'final')
              .map((w) => ({ spec, part, grip, takes: grip.takes as NonNullable<typeof grip.takes>, limits: w.limits })),
          )
        : [],
    ),
  );
  it('takes in whatever the turning before it may leave: collets and sleeves close by a tenth, and open by nothing', () => {
    expect(held.length).toBeGreaterThan(10);
    for (const { takes, limits } of held) expect([limits.lo >= takes.lo, limits.hi <= takes.hi]).toEqual([true, true]);
  });
  it('is named as it is engraved, and holds no longer than it bears', () => {
    for (const { spec, plan } of everyPlan)
      for (const page of gripsOf(spec).filter((one) => one.hold[0]?.title.startsWith('Collet'))) {
        const size = Number(page.hold[0]?.title.replace(/^Collet /, '').replace(/, and a centre$/, ''));
        expect(plan.workshop.holding.collets).toContain(size * 10_000);
        const [long] = page.hold[0]?.text.match(/^[\d.]+/) ?? [];
        expect(Number(long)).toBeLessThanOrEqual(30);
      }
  });
  it('gives its length to the tenth: nobody holds 58.315', () => {
    for (const { spec } of everyPlan)
      for (const page of gripsOf(spec)) expect(page.hold[0]?.text ?? '').not.toMatch(/\d\.\d\d+ in the (jaws|collet|sleeve)/);
  });
});

describe('measured from', () => {
  it('a blade or saw is set from a face that is seen outside, not from the floor of a bore', () => {
    for (const { part, route, chart } of all) {
      const severed = route.chosen.flatMap((m) => m.operations).filter((op) => op.verb === 'part-off' || op.verb === 'saw-off');
      for (const w of chart.working.filter((one) => severed.some((op) => op.id === one.op))) {
        const from = part.surfaces.find((s) => s.id === w.from);
        expect(from === undefined || from.side).not.toBe('inside');
      }
    }
    // 11 of well and 15.5 of stem behind it
    const parted = gripsOf('bearing-oiler')
      .filter((page) => page.part === 'bearing-oiler')
      .flatMap(rowsOf);
    expect(parted.find(({ title }) => title === 'Part off')?.sizes[0]).toMatchObject({ text: '26.50', after: 'from A' });
  });
  it('a carriage that counts from the other end than the length goes by what lies between them, measured', () => {
    // 27.00 over all, the tang's shoulder 18.00 from A: 9 of 0.1 mm from B, if B came out at 27.00
    const tang = row('wheel-spindle', 'tang/turn');
    expect([tang.sizes[1]?.text, tang.sizes[1]?.after, tang.dial]).toEqual(['18.00', 'from A', 'cross 2t\ncarriage 90 div']);
    expect(tang.under).toContain('carriage by measure: A to B, less 18.00');
    // in the grip in which a face was cut by the same dial nothing is to be reckoned
    expect(rowsIn('taper-plug').some((one) => one.under.includes('by measure'))).toBe(false);
  });
  it('depths on a mandrel count from the face as it stands, half a millimetre over the drawing', () => {
    const tap = rowsIn('regulator-rod').find((one) => one.op.startsWith('mandrel') && one.title.startsWith('Tap'));
    if (!tap) throw new Error('no tap on the mandrel');
    expect([tap.sizes[0]?.after, tap.under]).toEqual([expect.stringContaining('to 10.5 from M'), expect.stringContaining('floor at 13.5')]);
  });
  it('and the picture draws such a size from where that face stood', () => {
    const { plan, stages } = planned('coupling-mandrel');
    const { drawn } = sheet(plan, stages, { words, advances: ADVANCES, language: 'en' });
    const [asked] = drawn.flatMap(({ key, asked: a }) => (key.startsWith('mandrel') && a ? [a] : []));
    const long = asked?.lengths.map(({ from, to, text }) => [Math.abs(from - to), Math.round(Number(text[0]) * 10_000)]) ?? [];
    expect(long.length).toBeGreaterThan(2);
    for (const [drawnAs, said] of long) expect(drawnAs).toBe(said);
  });
});

describe('limits', () => {
  it('that are nearly even are even: one figure to remember; not where that costs a quarter of the band', () => {
    expect(evened(50_000 as never, 54_000 as never, 52_100 as never, 100 as never)).toEqual({ lo: 50_200, hi: 54_000 });
    expect(evened(50_000 as never, 54_000 as never, 53_000 as never, 100 as never)).toEqual({ lo: 50_000, hi: 54_000 });
    expect(evened(50_000 as never, 54_000 as never, 52_100 as never, 3_900 as never)).toEqual({ lo: 50_000, hi: 54_000 });
  });
  it('a fit is aimed at near its middle: 8 h8 is 7.978 to 8.000, and 7.99', () => {
    expect(row('tail-shaft', 'rear/turn').sizes[0]?.text).toBe('Ø 7.99');
  });
  it('a plug for a tube is turned to the hundredth', () => {
    expect(row('oil-cup', 'plug/turn').sizes[0]?.text).toBe('Ø 16.62');
  });
});

describe('threads', () => {
  it('a tap that meets a narrower bore past its relief, or the end of a drill, goes no further: the bottoming tap finishes', () => {
    expect(row('packing-sleeve', 'gland.thread/tap').under).toContain('finish with the bottoming tap; on the floor at 12');
    expect(row('adjusting-screw', 'bore.thread/tap').under).toContain('bottoming');
    expect(row('oil-cup', 'plug-thread.thread/tap').under).toContain('on until its lead is through');
  });
  it('outside one says how far it goes where nothing shows its end, and not where a relief does', () => {
    // 10 of M8 from B; the nose, and the step down to it, are turned when it has been turned end for end
    expect(row('jet-holder', 'thread.thread/screw-cut').sizes).toEqual([
      expect.objectContaining({ text: 'M8', after: expect.stringContaining('to 10 from B') }),
    ]);
    expect(row('oilway-screw', 'thread.thread/screw-cut').sizes).toEqual([expect.objectContaining({ text: 'M5', after: '' })]);
  });
  it('a second is left to open the half-nuts in, by a relief or before a shoulder', () => {
    const stops = all.flatMap(({ figures }) =>
      figures.flatMap(({ screw, rpm, wheels }) => (screw?.stop && rpm && wheels ? [screw.stop] : [])),
    );
    expect(stops.length).toBeGreaterThan(20);
    // 150 turns of 1 mm are 2.5 mm in a second
    for (const spec of ['adjusting-screw', 'gland-nut'])
      expect(Number(rowsIn(spec).find((one) => one.title.startsWith('Screw-cut'))?.rpm)).toBe(150);
    // M3 right up to its shoulder, without a relief
    const fine = rowsIn('blower-spindle').find((one) => one.title === 'Screw-cut M3');
    expect([fine?.rpm, fine?.under]).toEqual(['100', expect.stringContaining('no room past the thread: take the last turn by hand')]);
  });
  it('metal that hardens is never shaved: no pass under its least, one without feed', () => {
    const least = threading.value('least.hardens') * 10_000;
    const cut = all.filter(({ part }) => part.stock.material === '316').flatMap(({ figures }) => figures.filter((f) => f.screw));
    expect(cut.length).toBeGreaterThan(2);
    for (const { passes = [], screw } of cut) expect([Math.min(...passes) >= least, screw?.spring]).toEqual([true, 1]);
  });
  it('passes along the top slide grow no deeper', () => {
    for (const { figures } of all)
      for (const { screw } of figures) {
        const list = screw?.topSlide?.passes ?? [];
        expect([...list].sort((a, b) => b - a)).toEqual(list);
      }
  });
});

describe('words', () => {
  it('flats are told by their place: where they begin and end', () => {
    expect(row('regulator-rod', 'flats/file-flats').sizes[1]).toMatchObject({ text: '11 to 17', after: 'from A' });
    expect(row('wheel-spindle', 'square/file-square').sizes[1]).toMatchObject({ text: '7', after: 'long, from B' });
  });
  it('the file that a saw begins in is among the tools to have ready', () => {
    const ready = view('oilway-screw').pages.flatMap((page) =>
      page.kind === 'plain' ? page.sections.flatMap((s) => (s.kind === 'notes' && s.title === 'Tools to have ready' ? s.items : [])) : [],
    );
    expect(ready).toEqual(expect.arrayContaining(['file', 'hacksaw']));
  });
  it('a slot is as wide as it says, and as deep', () => {
    expect(row('oilway-screw', 'slot/saw-slot').sizes.map(({ text }) => text)).toEqual(['1.20', 'wide, 1.6 deep']);
  });
  it('a drill in a wider hole touches nothing at the face: its dial says what stands there when it is at nought', () => {
    expect(row('jet-holder', 'jet/drill-to-size').dial).toBe('tailstock 7t 28 from the point level with the face');
    expect(row('jet-holder', 'way/drill-to-size').dial).toBe('tailstock 4t 20 from the lips');
    expect(row('coned-nipple', 'bore/drill-to-size').dial).not.toContain('from');
  });
  it('several chamfers of a grip are told apart, and a groove is not grooved', () => {
    const titles = rowsIn('locked-plug').map(({ title }) => title);
    expect(titles).toEqual(expect.arrayContaining(['Chamfer land', 'Chamfer tip', 'Cut ring groove']));
    expect(rowsIn('pump-adaptor').find(({ title }) => title.includes('in the mouth'))?.title).toBe('Cone in the mouth, 60° included');
  });
  it('dangers are those of the work that is done: sawn off is not parted, a D-bit on the way is hardened', () => {
    expect(cautions('drift')).not.toContain('Parting off');
    expect(cautions('coupling-mandrel')).not.toContain('Parting off');
    expect(cautions('strainer-body')).toEqual(expect.arrayContaining(['Parting off', 'Hardening']));
    expect(cautions('gland-nut')).not.toContain('Hardening');
  });
});

describe('pictures', () => {
  it('a detail has a letter that no face has', () => {
    const { plan, stages } = planned('blower-spindle');
    const { drawn } = sheet(plan, stages, { words, advances: ADVANCES, language: 'en' });
    const details = drawn.flatMap(({ asked, picture }) =>
      picture.items.flatMap((item) =>
        item.kind === 'text' && / \(\d+:1\)$/.test(item.text) ? [{ letters: asked.letters, text: item.text }] : [],
      ),
    );
    expect(details.length).toBeGreaterThan(1);
    for (const { letters, text } of details) expect(letters).not.toContain(text[0]);
    expect(details.some(({ letters }) => letters?.includes('Z'))).toBe(true);
  });
  it('a tool too narrow for its number has it along its shank', () => {
    const { plan, stages } = planned('feed-pipe-union');
    const { drawn } = sheet(plan, stages, { words, advances: ADVANCES, language: 'en' });
    const numbers = drawn.flatMap(({ picture }) =>
      picture.items.flatMap((item) => (item.kind === 'text' && item.text === '130' ? [item] : [])),
    );
    // in its ring, and upright on the tool that turns the spigot
    expect(numbers.map(({ turn }) => turn !== undefined).sort()).toEqual([false, true]);
  });
  it('a check valve stands with its union nuts, its nipples and the pipes', () => {
    for (const spec of ['launch-feed-check-valve', 'hand-pump-delivery-check']) {
      const { arrangement } = planned(spec).plan.fitting;
      const shown = [...(arrangement?.stands ?? []), ...(arrangement?.branches ?? [])].map(({ part }) => part);
      expect(shown.filter((part) => part === 'union-nut').length).toBe(2);
      expect(shown.filter((part) => part === 'nipple').length).toBe(2);
      expect(arrangement?.rings?.filter(({ item }) => item === 'pipe').length).toBe(2);
    }
  });
});
