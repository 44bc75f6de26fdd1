import { describe, expect, it } from 'vitest';
import { limits, short, size } from '../../src/drawing/sheet/format.ts';
import type { Plan, PlannedPart } from '../../src/model/plan.ts';
import type { GripPage } from '../../src/model/sheet.ts';
import { sheet, viewOf } from '../../src/phases/sheet.ts';
import { writePdf } from '../../src/render/pdf.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { SMALL_PLAN, SMALL_STAGES, SMALL_WORDS } from '../fixtures/small-plan.ts';
import { ADVANCES, allWords, FONTS } from '../render/assets.ts';
import { readPdf, textOf } from '../render/read-pdf.ts';

const means = { words: allWords(SMALL_WORDS), advances: ADVANCES, language: 'en' };
const made = sheet(SMALL_PLAN, SMALL_STAGES, means);
const grips = (plan: Plan): readonly GripPage[] => viewOf(plan, means).pages.filter((page): page is GripPage => page.kind === 'grip');

/** The plug with the operations of its first grip said `times` over under other ids, so that no page holds them. */
function longer(times: number): Plan {
  const [plug, ...rest] = SMALL_PLAN.parts as readonly [PlannedPart, ...PlannedPart[]];
  const copies = Array.from({ length: times }, (_, i) => i);
  const rename = (id: string, copy: number): string => `${id}~${copy}`;
  const [first, ...setUps] = plug.route.setUps;
  if (!first) throw new Error('the plug has no set-up');
  const operations = plug.route.chosen.flatMap((m) => m.operations).filter((o) => first.operations.includes(o.id));
  const more = copies.flatMap((copy) => operations.map((o) => ({ ...o, id: rename(o.id, copy) })));
  const route = {
    ...plug.route,
    setUps: [{ ...first, operations: [...first.operations, ...more.map((o) => o.id)] }, ...setUps],
    chosen: [...plug.route.chosen, { ...(plug.route.chosen[0] as PlannedPart['route']['chosen'][number]), operations: more }],
  };
  const working = [
    ...plug.chart.working,
    ...copies.flatMap((copy) => plug.chart.working.map((w) => ({ ...w, id: rename(w.id, copy), op: rename(w.op, copy) }))),
  ];
  const figures = [...plug.figures, ...copies.flatMap((copy) => plug.figures.map((f) => ({ ...f, op: rename(f.op, copy) })))];
  return { ...SMALL_PLAN, parts: [{ ...plug, route, chart: { ...plug.chart, working }, figures }, ...rest] };
}

describe('what the sheet says', () => {
  it('pages stand in the order of the day: the mandrel right before the grip that it holds', () => {
    expect(made.view.pages.map((page) => page.key)).toEqual(['cover', 'plug/0', 'mandrel-M10x1/0', 'plug/2', 'closing', 'proof']);
  });

  it('bench work that follows its grip stands on that page, numbered through the part', () => {
    const [first] = grips(SMALL_PLAN);
    expect(first?.blocks.map((block) => block.title)).toEqual(['', 'Then, at the bench']);
    expect(first?.blocks.flatMap((block) => block.rows.map((row) => row.number))).toEqual([
      '10',
      '20',
      '30',
      '40',
      '50',
      '60',
      '70',
      '80',
      '90',
      '100',
      '110',
    ]);
    expect(grips(SMALL_PLAN)[2]?.blocks[0]?.rows.map((row) => row.number)).toEqual(['120', '130']);
  });

  it('a grip names the sheet of the mandrel that holds it, as the pages came to stand', async () => {
    const page = made.view.pages.find((p) => p.key === 'plug/2') as GripPage;
    const sheetNo = made.document.pages.findIndex((p) => p.heading.startsWith('Threaded mandrel')) + 1;
    expect(page.hold[0]?.title).toBe(`Threaded mandrel M10×1, sheet ${sheetNo}`);
  });

  it.each([
    [
      'plug/nose/turn',
      [
        ['Ø 9.90', '+0.05 −0.08', ''],
        ['12.00', '±0.05', 'from B'],
      ],
    ],
    ['plug/relief/groove', [['Ø 8.40', '+0 −0.1', '']]],
    ['plug/nose.thread/screw-cut', [['M10×1', '6g', '']]],
    ['plug/bar/part-off', [['20.40', '+0.2 −0', 'from B']]],
    ['plug/bore/drill', [['Ø 3.70', '', '23 deep']]],
    ['plug/second/face', [['0.50', '0.3 to 0.7', 'off the bar']]],
    ['plug/second/finish', [['0.30', '±0.05', 'off B']]],
    [
      'plug/flats/file-flats',
      [
        ['12.00', '±0.1', ''],
        ['12 to 20', '', 'from B'],
      ],
    ],
  ])('%s: sizes with limits as they are turned to, and their zero', (op, sizes) => {
    const row = grips(SMALL_PLAN)
      .flatMap((p) => p.blocks.flatMap((b) => b.rows))
      .find((r) => r.op === op);
    expect(row?.sizes.map((s) => [s.text, s.limits, s.after])).toEqual(sizes);
  });

  it('the weightiest operation says why, and when to stop', () => {
    const panels = grips(SMALL_PLAN).map((p) =>
      p.blocks
        .flatMap((b) => b.rows)
        .filter((r) => r.panel)
        .map((r) => [r.op, r.panel?.stop.heading]),
    );
    expect(panels).toEqual([[['plug/second/finish', 'Otherwise']], [], [['plug/bore/d-bit', 'Stop if it squeals or picks up']]]);
  });

  it('the seat is looked at where it is finished, and nowhere else', () => {
    expect(grips(SMALL_PLAN).map((p) => p.checkpoint.boxes)).toEqual([
      ['by', 'date'],
      ['by', 'date'],
      ['ml in 30 s', 'ball by magnet', 'by', 'date'],
    ]);
  });

  it('a measured sum is solved for the part that is cut to it', () => {
    const closing = made.view.pages.find((p) => p.key === 'closing');
    const sum = closing?.kind === 'plain' ? closing.sections.find((s) => s.kind === 'boxes' && s.sum !== '') : undefined;
    // asked 1.50 = a − fitted + b, on the drawing 12.00 − 20.00 + 9.50
    expect(sum?.kind === 'boxes' && sum.sum).toBe('cut to a + b − 1.50, ±0.1');
    expect(12 + 9.5 - 1.5).toBe(20);
    const misleading = {
      ...SMALL_PLAN.fitting,
      chains: SMALL_PLAN.fitting.chains.map((chain) => ({ ...chain, links: chain.links.slice(0, 2) })),
    };
    const page = viewOf({ ...SMALL_PLAN, fitting: misleading }, means).pages.find((p) => p.key === 'closing');
    expect(page?.kind === 'plain' && page.sections.some((s) => s.kind === 'boxes' && s.sum !== '')).toBe(false);
  });

  it('a plan whose proof fails is a draft on every page', () => {
    const [plug, ...rest] = SMALL_PLAN.parts as readonly [PlannedPart, ...PlannedPart[]];
    const failed = { ...SMALL_PLAN, parts: [{ ...plug, proof: { ...plug.proof, holds: false } }, ...rest] };
    const { document } = sheet(failed, SMALL_STAGES, means);
    const marked = document.pages.map((page) => page.items.some((item) => item.kind === 'text' && item.text.startsWith('DRAFT')));
    expect(marked).toEqual(document.pages.map(() => true));
    expect(made.document.pages.some((page) => page.items.some((item) => item.kind === 'text' && item.text.startsWith('DRAFT')))).toBe(
      false,
    );
  });
});

describe('where it stands', () => {
  it.each([
    ['as it is', SMALL_PLAN],
    ['twice the operations', longer(1)],
    ['five times', longer(4)],
  ])('%s: nothing leaves the page, nothing lies upon another, nothing is lost', (_, plan) => {
    const { document } = sheet(plan, SMALL_STAGES, means);
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
    const printed = document.pages.flatMap((page) => page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])));
    const numbers = grips(plan).flatMap((p) => p.blocks.flatMap((b) => b.rows.map((r) => r.number)));
    expect(numbers.filter((number) => !printed.includes(number))).toEqual([]);
  });

  it('what does not fit goes on to another sheet, head, hold and picture repeated, the checkpoint once', () => {
    const pages = sheet(longer(1), SMALL_STAGES, means).document.pages.filter((page) => page.heading === 'Plug: First grip');
    expect(pages.length).toBeGreaterThan(1);
    const has = (text: string): readonly boolean[] =>
      pages.map((page) => page.items.some((item) => item.kind === 'text' && item.text.includes(text)));
    expect(has('Bar in the chuck')).toEqual(pages.map(() => true));
    expect(has('headstock')).toEqual(pages.map(() => true));
    expect(has('CHECKPOINT')).toEqual(pages.map((_, i) => i === pages.length - 1));
  });

  it('sizes are set no smaller where there is much to say', () => {
    const sizesOf = (plan: Plan): readonly number[] =>
      sheet(plan, SMALL_STAGES, means).document.pages.flatMap((p) =>
        p.items.flatMap((i) => (i.kind === 'text' && i.text === 'Ø 9.90' ? [i.size] : [])),
      );
    expect(new Set(sizesOf(longer(4)))).toEqual(new Set(sizesOf(SMALL_PLAN)));
  });
});

describe('the PDF read back', () => {
  it('every working dimension is on a page of its own grip, value and limits', async () => {
    const { pages } = await readPdf(await writePdf(made.document, FONTS));
    const lost = SMALL_PLAN.parts.flatMap(({ part, chart, route }) =>
      chart.working.filter((w) => {
        const setUp = route.setUps.find((s) => s.operations.includes(w.op));
        const headings = made.view.pages
          .filter(
            (p) =>
              p.kind === 'grip' &&
              p.part === part.id &&
              (p.setUp === (setUp ? route.setUps.indexOf(setUp) : -1) || p.blocks.some((b) => b.rows.some((r) => r.op === w.op))),
          )
          .map((p) => p.heading);
        const text = made.document.pages
          .flatMap((p, i) => (headings.includes(p.heading) ? [pages[i]] : []))
          .map((p) => (p ? textOf(p) : ''))
          .join(' ');
        // the first face on bar may lie anywhere in its range
        const allowed = w.from === 'bar end' ? `${short(w.limits.lo)} to ${short(w.limits.hi)}` : limits(w.limits);
        return !(text.includes(size(w.limits.target)) && text.includes(allowed));
      }),
    );
    expect(SMALL_PLAN.parts.flatMap((p) => p.chart.working).length).toBeGreaterThan(10);
    expect(lost.map((w) => w.id)).toEqual([]);
  });

  it('the same plan gives the same bytes', async () => {
    const again = sheet(SMALL_PLAN, [...SMALL_STAGES].reverse(), means).document;
    expect(await writePdf(again, FONTS)).toEqual(await writePdf(made.document, FONTS));
  });
});
