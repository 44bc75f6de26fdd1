/**
 * Fills dist/ anew. Run: npm run build
 * - every file of src checked and emitted as it stands: the library, with its types;
 * - the command (dist/cli) bundled with the packages it uses, in pieces that are loaded when needed: reading hundreds of small files
 *   took a third of a short command's time;
 * - the command once more in one file, its templates compiled (ready.ts), and what the engine makes of all that in a run (src/cli/kept.ts);
 * - the licences of what went into the bundle.
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const dist = join(root, 'dist');
/** Programs that only the build runs. */
const STEPS = join(dist, 'steps');
/** Whoever calls what is left out is told so. */
const told = (name) => `() => { throw new Error('${name} is left out of this program'); }`;
/** In place of a function or a class. */
const uncalled = (name) => `const told = ${told(name)}; export default function () { told(); }`;
/** In place of a class that others make one of while they are loaded. */
const unused = (name) => `const told = ${told(name)}; export default function () { return new Proxy({}, { get: told }); }`;
const uncalledOnes = (name, ones) => `const told = ${told(name)}; export { ${ones.map((one) => `told as ${one}`).join(', ')} };`;
/** A glyph asks this for its sign as it is read. */
const isMark = "export const isMark = (codePoint) => /^\\p{M}$/u.test(String.fromCodePoint(codePoint));";
/**
 * What pdfkit brings and no sheet asks for, and what is slow to load: fonts in their packed form, breaking text into lines, how signs of other
 * scripts join, and locking a file. What stands in its place.
 */
const LEFT_OUT = {
  'brotli/decompress.js': uncalled('brotli'),
  linebreak: uncalled('linebreak'),
  dfa: unused('dfa'),
  'unicode-trie': unused('unicode-trie'),
  'unicode-properties': uncalledOnes('unicode-properties', ['getCategory', 'getCombiningClass', 'getScript', 'isDigit']) + isMark,
  '@noble/ciphers/aes': uncalledOnes('@noble/ciphers', ['cbc', 'ecb']),
};
/** Packages that are CommonJS inside ask for Node's own modules by this name. */
const REQUIRE = "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

const ALL = { bundle: true, platform: 'node', target: 'node20', logLevel: 'warning', plugins: [leftOut()] };
// names stay, so that what an internal fault prints can be read
const SHORT = { legalComments: 'none', minifyWhitespace: true, minifySyntax: true };

rmSync(dist, { recursive: true, force: true });
emit();
rmSync(join(dist, 'cli'), { recursive: true, force: true });
const packages = await bundle();
writeFileSync(join(dist, 'LICENSES.txt'), packages.map(licence).join('\n'));
chmodSync(join(dist, 'cli', 'main.js'), 0o755);
await whole();
await keep();
rmSync(STEPS, { recursive: true });

function emit() {
  const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');
  const { status } = spawnSync(process.execPath, [compiler, '-p', root], { stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

/** Gives the folders of the packages that went in. */
async function bundle() {
  const { metafile } = await build({
    entryPoints: [join(root, 'src/cli/main.ts')],
    outdir: join(dist, 'cli'),
    absWorkingDir: root,
    ...{ splitting: true, format: 'esm', metafile: true, banner: { js: REQUIRE }, ...ALL, ...SHORT },
  });
  for (const path of Object.keys(metafile.outputs)) dropRequire(join(root, path));
  const folders = Object.keys(metafile.inputs).flatMap((path) => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []);
  return [...new Set(folders)].sort();
}

/**
 * One function around its module, all ASCII, so that it is read a byte a letter. The bundler leaves the letters in patterns as they are:
 * a ± among them, read as two letters, once found no tolerance in a description.
 */
async function whole() {
  const { outputFiles } = await build({
    entryPoints: [join(root, 'src/cli/program.ts')],
    write: false,
    absWorkingDir: root,
    ...{ format: 'cjs', charset: 'ascii', ...ALL, ...SHORT },
    define: { 'import.meta.url': 'fileUrl' },
    plugins: [leftOut(), await readyTemplates()],
    banner: { js: "(function (require, module, __filename) { const fileUrl = require('node:url').pathToFileURL(__filename).href;" },
    footer: { js: '})' },
  });
  const escaped = outputFiles[0].text.replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
  writeFileSync(join(dist, 'cli', 'whole.js'), escaped);
}

function leftOut() {
  const setup = (to) => {
    to.onResolve({ filter: /./ }, ({ path }) => (path in LEFT_OUT ? { path, namespace: 'left-out' } : undefined));
    to.onLoad({ filter: /./, namespace: 'left-out' }, ({ path }) => ({ contents: LEFT_OUT[path] }));
  };
  return { name: 'left out', setup };
}

/** Puts templates that Handlebars has compiled in place of src/cli/ready.ts, which has none. */
async function readyTemplates() {
  const { readyModule } = await import(pathToFileURL(await step('ready')).href);
  const contents = readyModule();
  return { name: 'templates', setup: (to) => to.onLoad({ filter: /src[\\/]cli[\\/]ready\.ts$/ }, () => ({ contents, loader: 'js' })) };
}

/** In a process of its own: the engine keeps what its runs used. */
async function keep() {
  const folder = mkdtempSync(join(tmpdir(), 'valvewright-build-'));
  const demo = join(root, 'specs/fittings/launch-feed-check-valve.yaml');
  const workshop = join(root, 'specs/workshops/bench-lathe.yaml');
  const { status, stderr } = spawnSync(process.execPath, [await step('keep'), join(dist, 'cli'), demo, workshop, folder], { encoding: 'utf8' });
  rmSync(folder, { recursive: true, force: true });
  if (status !== 0) throw new Error(`the demo was not printed: ${stderr}`);
}

/** A step of the build that is written in TypeScript, as a program inside the package. */
async function step(name) {
  const outfile = join(STEPS, `${name}.mjs`);
  await build({ entryPoints: [join(root, 'tests/programs', `${name}.ts`)], outfile, format: 'esm', banner: { js: REQUIRE }, ...ALL });
  return outfile;
}

/** Most pieces hold nothing that is CommonJS inside: making a `require` for each took a tenth of a short command's time. */
function dropRequire(path) {
  const text = readFileSync(path, 'utf8');
  const bare = text.replace(`${REQUIRE}\n`, '');
  if (!/\brequire\b/.test(bare)) writeFileSync(path, bare);
}

function licence(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
  const file = readdirSync(join(root, folder)).find((each) => /^(licen[cs]e|copying)/i.test(each));
  const text = file && existsSync(join(root, folder, file)) ? readFileSync(join(root, folder, file), 'utf8').trim() : '';
  return `${'-'.repeat(80)}\n${name} ${version} (${license ?? 'see its package'})\n\n${text}\n`;
}
