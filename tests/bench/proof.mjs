/**
 * How long the demo's proof takes in a warm process: one replay of every part, and the whole proof with all its corners. The number of
 * replays is printed. Run by run.mjs, or alone after npm run build and with the sources bundled: node tests/bench/proof.mjs
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const AIM = { replay: 10, proof: 300 };
/** Rounds before the clock counts, and rounds that it counts. */
const WARM = 15;
const ROUNDS = 15;
const here = (path) => fileURLToPath(new URL(path, import.meta.url));

export async function printProof() {
  const { compile, replay, prove } = await bundled();
  const file = (path) => ({ name: path.split('/').at(-1), text: readFileSync(here(`../../${path}`), 'utf8') });
  const { plan } = compile({ fitting: file('specs/fittings/launch-feed-check-valve.yaml') }, { workshop: file('specs/workshops/bench-lathe.yaml') });
  const cases = plan.parts.map(({ part, route, chart, figures }) => ({ part, route, chart, figures, workshop: plan.workshop }));
  // a route's replay at its targets is kept with it: a copy of the route is carried out again
  const fresh = () => cases.map((one) => ({ ...one, route: structuredClone(one.route) }));
  const replays = median(fresh, (copies) => copies.forEach(({ part, route, chart }) => replay(part, route, chart)));
  let count = 0;
  const proof = median(fresh, (copies) => (count = copies.reduce((sum, one) => sum + prove(one).replays, 0)));
  console.log(`replay         ${replays.toFixed(1).padStart(6)} ms, every part of the demo once, ${cases.length} parts (aim: under ${AIM.replay})`);
  console.log(`whole proof    ${proof.toFixed(0).padStart(6)} ms, ${count} replays (aim: under ${AIM.proof})`);
}

/** `before`: what each round is run with, made while the clock stands. */
function median(before, run) {
  for (let round = 0; round < WARM; round++) run(before());
  const all = Array.from({ length: ROUNDS }, () => {
    const given = before();
    const began = performance.now();
    run(given);
    return performance.now() - began;
  }).sort((a, b) => a - b);
  return all[Math.floor(ROUNDS / 2)];
}

/** The phases as they are, in one file: the package's own face does not show them. */
async function bundled() {
  const folder = mkdtempSync(join(here('../../out'), 'proof-'));
  const outfile = join(folder, 'proof.mjs');
  try {
    const contents = ['compile', 'geometry/replay', 'phases/prove'].map((name) => `export * from ${JSON.stringify(here(`../../src/${name}.ts`))};`).join('\n');
    const stdin = { contents, resolveDir: here('../../'), loader: 'ts' };
    await build({ stdin, bundle: true, platform: 'node', format: 'esm', packages: 'external', outfile, logLevel: 'error' });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await printProof();
