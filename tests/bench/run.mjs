/**
 * npm run bench: the whole process that makes the demo's sheet, against a plain pdfkit program that writes as many pages of the same
 * density; run in turn, medians, by the clock and by the processor. It prints and does not judge: machines differ, the ratio less so.
 */
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { densityOf, toldOf } from './density.mjs';
import { printProof } from './proof.mjs';

const ROUNDS = Number(process.argv[2] ?? 7);
const AIM = { ratio: 0.9, megabytes: 150, look: 2, picture: 3 };
/** Rounds of all pictures before the clock counts, and as many that it counts. */
const WARM = 20;
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const SPEC = here('../../specs/fittings/launch-feed-check-valve.yaml');
const folder = mkdtempSync(join(tmpdir(), 'valvewright-bench-'));

try {
  const { density, drawn } = await demo();
  const [plain, given] = [join(folder, 'plain.pdf'), join(folder, 'density.json')];
  writeFileSync(given, JSON.stringify(density));
  const lines = execFileSync(process.execPath, [here('plain.mjs'), plain, given], { encoding: 'utf8' }).trim();
  const programs = {
    'bare node': ['-e', '0'],
    'plain pdfkit': [here('plain.mjs'), plain, given],
    valvewright: [here('../../dist/cli/main.js'), 'sheet', SPEC, '--out', folder],
    'look thread': [here('../../dist/cli/main.js'), 'look', 'thread', 'M10x1'],
    'look speed': [here('../../dist/cli/main.js'), 'look', 'speed', 'PB102', '12', 'mm'],
  };
  const runs = {};
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, argv] of Object.entries(programs)) (runs[name] ??= []).push(await measure(argv));
  }
  console.log(`${toldOf(density, lines)}; ${ROUNDS} rounds`);
  print(runs);
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
  return { density: densityOf(document), drawn };
}

function measure(argv) {
  return new Promise((resolve, reject) => {
    const began = process.hrtime.bigint();
    const child = spawn(process.execPath, ['--import', here('peak.mjs'), ...argv], { stdio: ['ignore', 'ignore', 'inherit', 'pipe'] });
    let told = '';
    child.stdio[3].on('data', (data) => (told += data));
    child.on('close', (code) => {
      const ms = Number(process.hrtime.bigint() - began) / 1e6;
      const [peak, cpu] = told.split(' ').map(Number);
      if (code === 0) resolve({ ms, cpu, megabytes: peak / 1024 });
      else reject(new Error(`${argv[0]} ended with ${code}`));
    });
  });
}

function print(runs) {
  const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
  const rows = Object.entries(runs).map(([name, all]) => {
    const [ms, cpu] = ['ms', 'cpu'].map((what) => median(all.map((run) => run[what])));
    return { name, ms, cpu, megabytes: Math.max(...all.map((run) => run.megabytes)) };
  });
  const ms = (value) => `${value.toFixed(0).padStart(6)} ms`;
  for (const row of rows) console.log(`${row.name.padEnd(14)} ${ms(row.ms)} ${ms(row.cpu)} of processor   ${row.megabytes.toFixed(0).padStart(5)} MB (peak)`);
  const [plain, own] = ['plain pdfkit', 'valvewright'].map((name) => rows.find((row) => row.name === name));
  const ratio = (what) => (own[what] / plain[what]).toFixed(2);
  console.log(`ratio ${ratio('ms')}, of processor time ${ratio('cpu')} (aim: ${AIM.ratio}), peak ${own.megabytes.toFixed(0)} MB (aim: under ${AIM.megabytes})`);
  const bare = rows.find((row) => row.name === 'bare node');
  for (const row of rows.filter((each) => each.name.startsWith('look'))) console.log(`${row.name}: ${(row.ms / bare.ms).toFixed(2)} of bare node (aim: under ${AIM.look})`);
}

/**
 * The pictures of the demo's grips, all of them in turn, again and again: rounds that warm the process up and are not counted, then the best
 * of as many, as others use the machine too.
 */
async function printPictures(drawn) {
  const { drawStage } = await import('../../dist/drawing/stage.js');
  const best = drawn.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < 2 * WARM; round++) {
    for (const [i, { asked }] of drawn.entries()) {
      const began = process.hrtime.bigint();
      drawStage(asked);
      const ms = Number(process.hrtime.bigint() - began) / 1e6;
      if (round >= WARM) best[i] = Math.min(best[i], ms);
    }
  }
  const mean = best.reduce((sum, ms) => sum + ms, 0) / best.length;
  console.log(`a grip's picture ${mean.toFixed(1)} ms (mean of ${best.length}, warm), slowest ${Math.max(...best).toFixed(1)} ms (aim: under ${AIM.picture})`);
}
