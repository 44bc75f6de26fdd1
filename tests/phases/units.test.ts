/** The demo on the inch lathe, printed in inches: every figure inside its limits, the plan the same as behind a sheet in millimetres. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import type { GripPage } from '../../src/model/sheet.ts';
import { sheet, viewOf } from '../../src/phases/sheet.ts';
import { writeText } from '../../src/render/text.ts';
import { demoFitting, demoWorkshop } from '../fixtures/shop.ts';
import { filesUnder, ROOT } from '../house/sources.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

const text = readFileSync(join(ROOT, 'specs', 'workshops', 'inch-lathe.yaml'), 'utf8');
const made = (workshop: string) =>
  compile({ fitting: demoFitting, workshop: { name: 'inch-lathe.yaml', text: workshop } }, { workshop: demoWorkshop });
const { plan, stages = [], wish } = made(text);
if (!plan) throw new Error('the demo has no plan on the inch lathe');
const means = { words: allWords(), advances: ADVANCES, language: 'en' };
const inch = sheet(plan, stages, { ...means, units: 'inch' });
const rows = inch.view.pages
  .filter((page): page is GripPage => page.kind === 'grip')
  .flatMap((page) => page.blocks.flatMap((block) => block.rows));

describe('the demo in inches', () => {
  it('is as it was read by eye', async () => {
    await expect(writeText(inch.view, inch.document)).toMatchFileSnapshot(
      join(ROOT, 'tests', 'goldens', 'inch', 'launch-feed-check-valve.txt'),
    );
  });

  it('prints every size that is turned to, with its limits, inside the limits of the plan', () => {
    const workings = new Map(plan.parts.flatMap(({ chart }) => chart.working.map((w) => [w.id as string, w])));
    const sizes = rows.flatMap((row) =>
      row.sizes.flatMap((shown) => (workings.has(shown.dim) ? [{ shown, limits: workings.get(shown.dim)?.limits }] : [])),
    );
    expect(sizes.length).toBeGreaterThan(100);
    for (const { shown, limits } of sizes) {
      if (shown.after.startsWith('the work as turned')) {
        // bored to its shaft: 'the work as turned, +0.002 −0'
        const [, over] = /\+([\d.]+) \u22120/.exec(shown.after) ?? [];
        const clear = clearOf(shown.dim);
        expect([clear.lo, Number(over) * INCH <= clear.hi + HALF]).toEqual([0, true]);
        continue;
      }
      if (shown.limits === '') {
        // turned to its hole: 'the hole as drilled, less 0.0031 to 0.0059'
        const [, least, most] = /less ([\d.]+) to ([\d.]+)$/.exec(shown.after) ?? [];
        const clear = clearOf(shown.dim);
        expect([Number(least) * INCH >= clear.lo - HALF, Number(most) * INCH <= clear.hi + HALF]).toEqual([true, true]);
        continue;
      }
      const [least, most] = bandOf(`${shown.text} ${shown.limits}`);
      expect([
        shown.dim,
        shown.text,
        shown.limits,
        least * INCH >= (limits?.lo ?? 0) - HALF,
        most * INCH <= (limits?.hi ?? 0) + HALF,
      ]).toEqual([...[shown.dim, shown.text, shown.limits, true, true]]);
    }
  });

  it.each(['mm', 'inch'] as const)(
    'its plan is that behind a sheet in %s',
    (units) => {
      const other = made(text.replace(/^sheet:.*$/m, `sheet: { units: ${units} }`));
      expect(other.wish).toEqual({ units });
      expect(other.plan?.mark).toBe(plan.mark);
      expect(JSON.stringify(other.plan)).toBe(JSON.stringify(plan));
      expect(wish).toEqual({ units: 'inch' });
    },
    60_000,
  );

  it('has no millimetre but in the names of threads and of things that are sold by it', () => {
    const said = JSON.stringify(viewOf(plan, { ...means, units: 'inch' })).match(/[^"]{0,30}\\bmm\\b/g) ?? [];
    expect(said.filter((where) => !/Ball 6 mm|wires of [\\d.]+ mm|pitch 1 mm|the 6 mm/.test(where))).toEqual([]);
  });
});

/** How close the shaft of that dimension is made to its hole. */
function clearOf(dim: string): { readonly lo: number; readonly hi: number } {
  const parts = plan?.parts ?? [];
  const surface = parts.flatMap(({ chart }) => chart.working).find((one) => one.id === dim)?.makes;
  const features = parts.flatMap(({ part }) => part.features);
  const feature = features.find((f) => (f.kind === 'outside' || f.kind === 'hole') && f.cylinder === surface);
  if ((feature?.kind !== 'outside' && feature?.kind !== 'hole') || !feature.madeTo) throw new Error(`'${dim}' is printed without limits`);
  return feature.madeTo.clear;
}

/** Lengths of a sheet are written by its manner alone: what is written past it stays in millimetres. */
it('no page writes a length past the manner of its sheet', () => {
  const past =
    /import \{[^}]*\b(size|diameter|short|limits|range|depth|passes|figure)\b[^}]*\} from '[^']*sheet\/format.ts'|\bshowMm\(|\btoMm\(/;
  const files = filesUnder('src/phases/sheet', '.ts').concat(filesUnder('src/phases', 'sheet.ts'));
  expect(files.length).toBeGreaterThan(10);
  expect(files.filter((file) => past.test(file.text)).map((file) => file.path)).toEqual([]);
});

/** 0.1 um in an inch; what was stated in inches was rounded by half a unit when it was read. */
const INCH = 254_000;
const HALF = 0.5001;

/** 'Ø 0.469 +0.002 −0.004', 'No. 5 Ø 0.2055 +0.003 −0', '0.039 0.002 to 0.078': the least and the greatest that it allows, in inches. */
function bandOf(shown: string): readonly [number, number] {
  const text = shown.replaceAll('\u2212', '-');
  const range = /([\d.]+) to ([\d.]+)$/.exec(text);
  if (range) return [Number(range[1]), Number(range[2])];
  const [, size, even, up, down] = /(-?[\d.]+) (?:±([\d.]+)|\+([\d.]+) -([\d.]+))$/.exec(text) ?? [];
  if (size === undefined) throw new Error(`no size with limits in '${shown}'`);
  return [Number(size) - Number(even ?? down), Number(size) + Number(even ?? up)];
}
