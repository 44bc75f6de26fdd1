/** Tooling that is made in place a second time has a second sheet, and what is held on it then names that one. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { compile } from '../../src/compile.ts';
import { loadAssets } from '../../src/files.ts';
import type { GripPage } from '../../src/model/sheet.ts';
import { sheet } from '../../src/phases/sheet.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const read = (path: string): string => readFileSync(join(ROOT, 'specs', path), 'utf8');
/** Its flange is soldered to the cap, which is held on the mandrel long after the seat piece was. */
const text = read('fittings/hand-pump-delivery-check.yaml').replace('outlet: union', 'outlet: flanged');

describe('a mandrel made in place twice', () => {
  const assets = loadAssets();
  const { plan, stages = [] } = compile({ fitting: { name: 'check.yaml', text } }, assets);
  if (!plan) throw new Error('the valve is not planned');
  const { view } = sheet(plan, stages, { ...assets, words: words(assets.words) });
  const pages = view.pages.filter((page): page is GripPage => page.kind === 'grip');
  const held = JSON.stringify(pages).match(/Threaded mandrel[^"]*sheet \d+/g) ?? [];
  it('is on two sheets, each told where it serves', () => {
    const made = plan.sequence.filter(
      ({ part, setUp }) => setUp === 0 && plan.parts.some((p) => p.part.id === part && p.part.kind === 'threaded-mandrel'),
    );
    expect(made.length).toBeGreaterThan(new Set(made.map(({ part }) => part)).size);
    const told = held.map((each) => Number(/sheet (\d+)/.exec(each)?.[1]));
    expect(told.length).toBeGreaterThan(1);
    expect(new Set(told).size).toBe(made.length);
  });
});
