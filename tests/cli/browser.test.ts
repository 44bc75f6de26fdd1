/** A smoke test: the core and the PDF writer, bundled into one file, plan and print the demo in a browser without a disk. */
import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { loadAssets, loadFonts } from '../../src/files.ts';
import { ROOT } from '../house/sources.ts';
import { DEMO } from './built.ts';

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const PATIENCE = 120_000;
const ENTRY = "export { compile, sheet, words, writePdf } from './src/index.ts';";

const inputs = { fitting: { name: 'launch-feed-check-valve.yaml', text: readFileSync(DEMO, 'utf8') } };
const assets = loadAssets();
const fonts = Object.fromEntries(Object.entries(loadFonts()).map(([font, bytes]) => [font, Buffer.from(bytes).toString('base64')]));

let browser: Browser;
let bundle = '';
beforeAll(async () => {
  const { outputFiles, warnings } = await build({
    stdin: { contents: ENTRY, resolveDir: ROOT, loader: 'ts' },
    ...{ bundle: true, write: false, format: 'iife', globalName: 'valvewright', platform: 'browser', target: 'es2022', logLevel: 'silent' },
    // pdfkit looks beside itself for a colour profile that is not asked for here
    define: { global: 'globalThis', 'import.meta.url': '"file:///"' },
  });
  expect(warnings.map((w) => w.text)).toEqual([]);
  bundle = outputFiles[0]?.text ?? '';
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', headless: true, args: QUIET });
}, PATIENCE);
afterAll(async () => {
  await browser?.close();
});

type Made = {
  readonly plan: string;
  readonly pages: number;
  readonly head: string;
  readonly tail: string;
  readonly asked: readonly string[];
};

describe('in a browser', () => {
  it('the same plan is made, its sheet is printed, and nothing is fetched', async () => {
    const page = await browser.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.setContent('<!doctype html><title>bench</title>');
    await page.addScriptTag({ content: bundle });
    const made = (await page.evaluate(`(${IN_BROWSER})(${JSON.stringify({ inputs, assets, fonts })})`)) as Made;
    expect(made.head).toBe('%PDF-');
    expect(made.tail).toContain('%%EOF');
    expect(JSON.parse(made.plan)).toEqual(JSON.parse(JSON.stringify(compile(inputs, assets).plan)));
    expect(asked).toEqual([]);
  });
});

/** Runs in the page, as text: what stands here knows nothing of this file. */
const IN_BROWSER = `async ({ inputs, assets, fonts }) => {
  const { compile, sheet, words, writePdf } = globalThis.valvewright;
  const { plan, stages } = compile(inputs, assets);
  const { document } = sheet(plan, stages, { words: words(assets.words), advances: assets.advances, language: 'en' });
  const bytes = await writePdf(document, Object.fromEntries(
    Object.entries(fonts).map(([font, text]) => [font, Uint8Array.from(atob(text), (c) => c.charCodeAt(0))])));
  const text = (part) => String.fromCharCode(...part);
  return { plan: JSON.stringify(plan), head: text(bytes.slice(0, 5)), tail: text(bytes.slice(-16)) };
}`;
