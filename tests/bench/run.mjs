/**
 * npm run bench: the whole process that makes the demo's sheet, against a plain pdfkit program that writes as many pages of the same
 * density; run in turn, medians. It prints and does not judge: machines differ, the ratio less so.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { printProof } from './proof.mjs';

const ROUNDS = Number(process.argv[2] ?? 7);
const AIM = { ratio: 1.5, megabytes: 150, look: 2, picture: 3 };
/** Rounds of each picture in the warm process. */
const WARM = 20;
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const SPEC = here('../../specs/fittings/launch-feed-check-valve.yaml');
const folder = mkdtempSync(join(tmpdir(), 'valvewright-bench-'));

try {
  const { density, drawn } = await demo();
  const programs = {
    'bare node': ['-e', '0'],
    'plain pdfkit': [here('plain.mjs'), join(folder, 'plain.pdf'), JSON.stringify(density)],
    valvewright: [here('../../dist/cli/main.js'), 'sheet', SPEC, '--out', folder],
    'look thread': [here('../../dist/cli/main.js'), 'look', 'thread', 'M10x1'],
    'look speed': [here('../../dist/cli/main.js'), 'look', 'speed', 'PB102', '12', 'mm'],
  };
  const runs = {};
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, argv] of Object.entries(programs)) (runs[name] ??= []).push(await measure(argv));
  }
  print(runs, density);
  await printPictures(drawn);
  await printProof();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function demo() {
  const [{ compile, sheet, words }, { loadAssets }] = await Promise.all(['index.js', 'files.js'].map((path) => import(here(`../../dist/${path}`))));
  const assets = loadAssets();
  const { plan, stages } = compile({ fitting: { name: 'demo.yaml', text: readFileSync(SPEC, 'utf8') } }, assets);
  const { document, drawn } = sheet(plan, stages, { words: words(assets.words), advances: assets.advances, language: 'en' });
  const { pages } = document;
  const items = pages.flatMap((page) => page.items);
  const texts = items.filter((item) => item.kind === 'text');
  const paths = items.filter((item) => item.kind === 'path');
  const mean = (total, count) => Math.max(1, Math.round(total / Math.max(1, count)));
  const density = {
    pages: pages.length,
    texts: mean(texts.length, pages.length),
    letters: mean(texts.reduce((sum, t) => sum + t.text.length, 0), texts.length),
    paths: mean(paths.length, pages.length),
    points: mean(paths.reduce((sum, p) => sum + p.segments.length, 0), paths.length),
  };
  return { density, drawn };
}

function measure(argv) {
  return new Promise((resolve, reject) => {
    const began = process.hrtime.bigint();
    const child = spawn(process.execPath, ['--import', here('peak.mjs'), ...argv], { stdio: ['ignore', 'ignore', 'inherit', 'pipe'] });
    let peak = '';
    child.stdio[3].on('data', (data) => (peak += data));
    child.on('close', (code) => {
      const ms = Number(process.hrtime.bigint() - began) / 1e6;
      if (code === 0) resolve({ ms, megabytes: Number(peak) / 1024 });
      else reject(new Error(`${argv[0]} ended with ${code}`));
    });
  });
}

function print(runs, density) {
  const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
  console.log(`${density.pages} pages; on each ${density.texts} texts of ${density.letters} letters, ${density.paths} paths of ${density.points} points; ${ROUNDS} rounds`);
  const rows = Object.entries(runs).map(([name, all]) => ({ name, ms: median(all.map((r) => r.ms)), megabytes: Math.max(...all.map((r) => r.megabytes)) }));
  for (const { name, ms, megabytes } of rows) console.log(`${name.padEnd(14)} ${ms.toFixed(0).padStart(6)} ms (median)   ${megabytes.toFixed(0).padStart(5)} MB (peak)`);
  const [plain, own] = ['plain pdfkit', 'valvewright'].map((name) => rows.find((row) => row.name === name));
  console.log(`ratio ${(own.ms / plain.ms).toFixed(2)} (aim: ${AIM.ratio}), peak ${own.megabytes.toFixed(0)} MB (aim: under ${AIM.megabytes})`);
  const bare = rows.find((row) => row.name === 'bare node');
  for (const row of rows.filter((each) => each.name.startsWith('look'))) console.log(`${row.name}: ${(row.ms / bare.ms).toFixed(2)} of bare node (aim: under ${AIM.look})`);
}

/** The pictures of the demo's grips, each drawn again and again in a warm process: the best of its rounds, as others use the machine too. */
async function printPictures(drawn) {
  const { drawStage } = await import('../../dist/drawing/stage.js');
  const best = drawn.map(({ asked }) => {
    const times = Array.from({ length: WARM }, () => {
      const began = process.hrtime.bigint();
      drawStage(asked);
      return Number(process.hrtime.bigint() - began) / 1e6;
    });
    return Math.min(...times);
  });
  const mean = best.reduce((sum, ms) => sum + ms, 0) / best.length;
  console.log(`a grip's picture ${mean.toFixed(1)} ms (mean of ${best.length}, warm), slowest ${Math.max(...best).toFixed(1)} ms (aim: under ${AIM.picture})`);
}
