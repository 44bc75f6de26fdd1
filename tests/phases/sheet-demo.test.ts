/** The demo's own sheet, from its YAML to its pages: what a turner would ask of it, and what a printer would. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { limits, short, size } from '../../src/drawing/sheet/format.ts';
import { loadAssets } from '../../src/files.ts';
import type { GripPage } from '../../src/model/sheet.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { writePdf } from '../../src/render/pdf.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { ADVANCES, allWords, FONTS } from '../render/assets.ts';
import { readPdf, textOf } from '../render/read-pdf.ts';

const DEMO = fileURLToPath(new URL('../../specs/fittings/launch-feed-check-valve.yaml', import.meta.url));
const done = compile({ fitting: { name: 'launch-feed-check-valve.yaml', text: readFileSync(DEMO, 'utf8') } }, loadAssets());
const { plan, stages = [] } = done;
if (!plan) throw new Error(`the demo has no plan: ${JSON.stringify(done.found)}`);
const { view, document } = sheet(plan, stages, { words: allWords(), advances: ADVANCES, language: 'en' });
const grips = view.pages.filter((page): page is GripPage => page.kind === 'grip');

describe('the sheet of the demo', () => {
  it('nothing leaves a page, nothing lies upon another', () => {
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });

  it('every operation of every part stands on a page, once, in its order', () => {
    const shown = (part: string): readonly string[] =>
      grips.filter((p) => p.part === part).flatMap((p) => p.blocks.flatMap((b) => b.rows.map((r) => r.op)));
    for (const { part, route } of plan.parts) expect(shown(part.id)).toEqual(route.setUps.flatMap((s) => s.operations));
  });

  it('a mandrel made in place has its page right before the grip that it holds', () => {
    const held = grips.flatMap((page, i) => (page.hold[0]?.title.startsWith('Threaded mandrel') ? [{ page, before: grips[i - 1] }] : []));
    expect(held.length).toBeGreaterThan(0);
    for (const { page, before } of held) {
      const no = document.pages.findIndex((p) => p.heading === before?.heading) + 1;
      expect(page.hold[0]?.title).toContain(`sheet ${no}`);
      expect(before?.name).toContain('THREADED MANDREL');
    }
  });

  it('every working dimension is read back from the PDF, on a page of its part', async () => {
    const { pages } = await readPdf(await writePdf(document, FONTS));
    const text = (part: string): string => {
      const headings = new Set(grips.filter((p) => p.part === part).map((p) => p.heading));
      return document.pages.flatMap((p, i) => (headings.has(p.heading) && pages[i] ? [textOf(pages[i])] : [])).join(' ');
    };
    const lost = plan.parts.flatMap(({ part, chart }) => {
      const printed = text(part.id);
      return chart.working.filter((w) => {
        // the first face on bar may lie anywhere in its range; what is turned to its hole counts from that
        const shaft = part.features.find((f) => f.kind === 'outside' && f.cylinder === w.makes);
        const under = shaft?.kind === 'outside' ? shaft.madeTo?.clear : undefined;
        const hole = part.features.find((f) => f.kind === 'hole' && f.cylinder === w.makes);
        const over = hole?.kind === 'hole' ? hole.madeTo?.clear : undefined;
        const allowed =
          w.from === 'bar end'
            ? `${short(w.limits.lo)} to ${short(w.limits.hi)}`
            : under
              ? `less ${size(under.lo)} to ${size(under.hi)}`
              : over
                ? `the work as turned, +${short(over.hi)} \u22120`
                : limits(w.limits);
        return !(printed.includes(size(w.limits.target)) && printed.includes(allowed));
      });
    });
    expect(lost.map((w) => w.id)).toEqual([]);
  });

  it('names no mark, no id and no missing word', () => {
    const texts = document.pages.flatMap((p) => p.items.flatMap((i) => (i.kind === 'text' ? [i.text] : [])));
    expect(texts.filter((text) => /[{}]|undefined|NaN|\[object/.test(text))).toEqual([]);
    expect(texts.filter((text) => /\bM\d+x\d/.test(text))).toEqual([]);
  });
});
