/**
 * The demo's PDF read back by another program, on either paper, in either type, in either unit: what the plan says of an operation (working
 * dimensions, limits, speed, passes, dial) stands on its grip's page, in its own row, inside the margins, as the plan has it.
 */
import { describe, expect, it } from 'vitest';
import type { Len } from '../../src/base/units.ts';
import type { Manner } from '../../src/drawing/sheet/manner.ts';
import { mannerOf } from '../../src/drawing/sheet/metric.ts';
import { pageOf } from '../../src/drawing/sheet/page.ts';
import type { Figures, Operation, Plan, PlannedPart, Reading, Working } from '../../src/model/plan.ts';
import type { GripPage, SheetView } from '../../src/model/sheet.ts';
import { WISHES } from '../../src/model/wish.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { writePdf } from '../../src/render/pdf.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords, FONTS } from '../render/assets.ts';
import { type ReadPdf, type ReadText, readPdf } from '../render/read-pdf.ts';

const demo = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve');
if (!demo) throw new Error('the demo has no plan');
const { plan, stages } = demo;
const every = WISHES.paper.flatMap((paper) => WISHES.type.flatMap((type) => WISHES.units.map((units) => ({ paper, type, units }))));
type Wish = (typeof every)[number];

/** The texts of each row in the order in which they were written: from its number, at the left edge of its table, to the next one's. */
type ReadRow = { readonly part: string; readonly op: string; readonly texts: readonly ReadText[]; readonly next: number };

function rowsOf(pdf: ReadPdf, headings: readonly string[], view: SheetView, wish: Wish): readonly ReadRow[] {
  const { left, enlarged } = pageOf(wish);
  let sheetNo = 0;
  return view.pages.flatMap((page) => {
    const first = sheetNo;
    while (headings[sheetNo] === page.heading) sheetNo++;
    return page.kind === 'grip' ? pdf.pages.slice(first, sheetNo).flatMap((read) => onSheet(read.texts, page, left * enlarged)) : [];
  });
}

function onSheet(texts: readonly ReadText[], page: GripPage, left: number): readonly ReadRow[] {
  const rows = page.blocks.flatMap((block) => block.rows);
  const starts = texts.flatMap((t, i) => {
    const row = Math.abs(t.x - left) < 0.3 ? rows.find((r) => r.number === t.text) : undefined;
    return row ? [{ row, i, y: t.y }] : [];
  });
  return starts.map(({ row, i }, n) => ({
    part: page.part,
    op: row.op,
    texts: texts.slice(i, starts[n + 1]?.i ?? texts.length),
    next: starts[n + 1]?.y ?? Number.POSITIVE_INFINITY,
  }));
}

const closed = (text: string): string => text.replace(/\s/g, '');

/** A working dimension by its target; a hole by the name of its drill; a rounded edge by its radius; a first face by its range. */
function sizesOf(w: Working, tool: Operation['tool'], manner: Manner): readonly (readonly string[])[] {
  if (w.from === 'bar end') return [[manner.least(w.limits.lo), manner.most(w.limits.hi)]];
  const ends = [w.limits.lo, w.limits.hi, w.limits.target];
  const [lo, hi, target] = ends.map((each) => (each / 2) as Len) as [Len, Len, Len];
  const half = { ...w.limits, lo, hi, target };
  const radius = ends.every((each) => each % 2 === 0) ? [[`R${manner.target(half)}`, manner.limits(half)]] : [];
  const named = tool.size === undefined ? [] : [[manner.diameter(tool.size), manner.limits(w.limits, tool.size)]];
  return [[manner.target(w.limits), manner.limits(w.limits)], ...named, ...radius];
}

/** What is turned to its hole counts from that, and what is bored to its shaft. */
function underHole({ part }: PlannedPart, w: Working, manner: Manner): readonly (readonly string[])[] {
  const shaft = part.features.find((f) => f.kind === 'outside' && f.cylinder === w.makes);
  const clear = shaft?.kind === 'outside' ? shaft.madeTo?.clear : undefined;
  const hole = part.features.find((f) => f.kind === 'hole' && f.cylinder === w.makes);
  const over = hole?.kind === 'hole' ? hole.madeTo?.clear : undefined;
  return [
    ...(clear ? [[manner.target(w.limits), `less ${manner.atLeast(clear.lo)} to ${manner.atMost(clear.hi)}`]] : []),
    ...(over ? [[manner.target(w.limits), `as turned, +${manner.atMost(over.hi)} \u22120`]] : []),
  ];
}

function readingText({ turns, divisions }: Reading): string {
  const rest = Math.round(divisions * 10) / 10;
  return [turns > 0 ? `${turns}t` : '', rest > 0 || turns === 0 ? String(rest) : ''].join('');
}

function figuresOf({ rpm, passes = [], measure, dial, readings = [], wheels }: Figures, verb: string, manner: Manner): readonly string[] {
  const cuts = verb === 'screw-cut' ? [] : measure ? [passes.slice(0, measure), passes.slice(measure)] : [passes];
  const shown = dial && !wheels ? (readings.length > 1 ? readings : [dial]) : [];
  return [...(rpm ? [String(rpm.value)] : []), ...cuts.map((each) => manner.passes(each)), ...shown.map(readingText)];
}

const opsOf = ({ route }: PlannedPart): readonly Operation[] => route.chosen.flatMap((m) => m.operations);

/** What the plan says of an operation and its row does not, each with the operation's id. */
function lost(of: Plan, rows: readonly ReadRow[], manner: Manner): readonly string[] {
  return of.parts.flatMap((planned) =>
    opsOf(planned).flatMap((operation) => {
      const mine = rows.filter((r) => r.part === planned.part.id && r.op === operation.id);
      const said = mine.map((r) => closed(r.texts.map((t) => t.text).join('')));
      const has = (text: string): boolean => said.length > 0 && said.every((row) => row.includes(closed(text)));
      const sizes = planned.chart.working
        .filter((w) => w.op === operation.id)
        .filter((w) => ![...sizesOf(w, operation.tool, manner), ...underHole(planned, w, manner)].some((way) => way.every(has)))
        .map((w) => `${operation.id}: size ${w.id}`);
      const figures = planned.figures.filter((f) => f.op === operation.id).flatMap((f) => figuresOf(f, operation.verb, manner));
      return [...sizes, ...figures.filter((text) => !has(text)).map((text) => `${operation.id}: ${text}`)];
    }),
  );
}

describe.each(every)('$paper, $type type, $units', (wish) => {
  it('every size, limit, speed, pass and dial reading stands in its row, as planned', async () => {
    const { document, view } = sheet(plan, stages, { words: allWords(), advances: ADVANCES, language: 'en', ...wish });
    const pdf = await readPdf(await writePdf(document, FONTS));
    const headings = document.pages.map((page) => page.heading);
    const rows = rowsOf(pdf, headings, view, wish);
    const manner = mannerOf(wish.units);
    expect(rows.length).toBeGreaterThan(80);
    expect(lost(plan, rows, manner)).toEqual([]);
    const [wide, high] = [document.pages[0]?.width ?? 0, document.pages[0]?.height ?? 0];
    const outside = rows.flatMap((r) => r.texts.filter((t) => t.x < 10 || t.x + t.width > wide - 10 || t.y < 10 || t.y > high - 10));
    expect(outside.map((t) => t.text)).toEqual([]);
    // down to the next row's first line, and none above its own
    const astray = rows.flatMap((r) =>
      r.texts.filter((t) => t.y > r.next + 2 || t.y < (r.texts[0]?.y ?? 0) - 4).map((t) => `${r.op}: ${t.text}`),
    );
    expect(astray).toEqual([]);
    const other = {
      ...plan,
      parts: plan.parts.map((p) => ({
        ...p,
        figures: p.figures.map((f) => (f.rpm ? { ...f, rpm: { ...f.rpm, value: f.rpm.value + 1 } } : f)),
      })),
    };
    expect(lost(other, rows, manner).length).toBeGreaterThan(40);
  }, 300_000);
});
