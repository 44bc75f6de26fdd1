/**
 * npm run bench, second table: time and states of the search of orders. First the demo's parts as they are, with the time that the rules
 * take for the candidates; then made-up parts of 5 to 45 operations, built like a turned part: both ends faced, sections turned, relieved,
 * chamfered and threaded, a hole centred, drilled and bored, one parting off, the bench at the end. It prints and does not judge.
 */
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const ROUNDS = Number(process.argv[2] ?? 31);
const WARM = 300;
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const SPEC = here('../../specs/fittings/launch-feed-check-valve.yaml');
const modules = await Promise.all(['compile.js', 'files.js', 'phases/candidates.js', 'phases/order.js'].map((path) => import(here(`../../dist/${path}`))));
const [{ compile }, { loadAssets }, { candidates }, { order }] = modules;

const { plan } = compile({ fitting: { name: 'demo.yaml', text: readFileSync(SPEC, 'utf8') } }, loadAssets());
const row = (...cells) => console.log(cells.map((cell, i) => (i === 0 ? String(cell).padEnd(24) : String(cell).padStart(13))).join(''));
const sums = { rules: 0, order: 0 };
row('demo, warm', 'operations', 'combinations', 'states', 'rules ms', 'order ms');
for (const { part } of plan.parts) {
  const c = candidates(part, plan.workshop);
  const rules = median(() => candidates(part, plan.workshop));
  const ms = median(() => order(c, plan.workshop));
  if (part.use === 'fitting') sums.rules += rules;
  if (part.use === 'fitting') sums.order += ms;
  const { route } = order(c, plan.workshop);
  row(part.id, operationsOf(route), c.methods.reduce((n, m) => n * m.any.length, 1), route.states, rules.toFixed(1), ms.toFixed(1));
}
row("the fitting's own parts", '', '', '', sums.rules.toFixed(1), sums.order.toFixed(1));

console.log('');
row('made up', 'operations', 'states', 'order ms', 'as good', 'proved');
for (let size = 5; size <= 45; size += 5) {
  const c = madeUp(size);
  const { route } = order(c, plan.workshop);
  row('', operationsOf(route), route.states, median(() => order(c, plan.workshop)).toFixed(1), Number(route.asGood).toPrecision(3), route.proved === 'best' ? 'best' : 'best found');
}

function operationsOf(route) {
  return route.setUps.flatMap((s) => s.operations).length;
}

/** By the clock, in ms; the first rounds only warm up. On a busy machine take more rounds: the median forgets what came between. */
function median(work) {
  for (const began = performance.now(); performance.now() - began < WARM; ) work();
  const times = Array.from({ length: ROUNDS }, () => {
    const before = performance.now();
    work();
    return performance.now() - before;
  });
  return times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)];
}

/** `size` operations; three in five are done from the first end. */
function madeUp(size) {
  const steps = [['turn', 'groove', 'chamfer', 'screw-cut'], ['centre', 'drill', 'bore'], ['turn', 'chamfer']];
  const features = ends(size).flatMap(({ end, count }) => featuresOf(end, count, steps));
  const all = features.flatMap((f) => f.any[0].operations);
  const at = (end) => all.filter((o) => o.ways[end] && o.verb !== 'part-off');
  const cut = all.find((o) => o.verb === 'part-off');
  const strict = (first, then) => ({ first: first.id, then: then.id, force: 'strict', because: { rule: 'any', grounds: {} } });
  const befores = [
    ...features.flatMap((f) => f.any[0].operations.slice(1).map((o, i) => strict(f.any[0].operations[i], o))),
    ...['first', 'second'].flatMap((end) => at(end).slice(1).map((o) => strict(at(end)[0], o))),
    ...at('first').map((o) => ({ ...strict(o, cut), force: 'preferred' })),
  ];
  const grip = (id, out, more) => ({ id: `p/${id}`, kind: 'jaws', out, on: [], from: 0, to: id.length, diameter: 1, ready: [], gone: [], hides: [], lightOnly: false, runout: 1, because: [], ...more });
  const held = at('first').find((o) => o.verb === 'turn') ?? at('first')[0];
  const grips = [
    grip('bar', 'first', { kind: 'bar', gone: [cut.id] }),
    grip('jaws', 'second', { ready: [held.id], hides: at('second').slice(-2).map((o) => o.id) }),
    grip('mandrel', 'second', { kind: 'threaded-mandrel', ready: [held.id], tooling: { kind: 'd-bit', diameter: 1, length: 1 } }),
    grip('turned-jaws', 'first', { ready: at('second').slice(0, 2).map((o) => o.id) }),
  ];
  const surfaces = features.map((f, i) => ({ shape: 'cylinder', id: f.feature, feature: f.feature, role: 'free', side: 'outside', size: { lo: i, hi: i, target: i }, from: 0, to: 1 }));
  return { part: { id: 'p', surfaces, features: [], dimensions: [], length: 1 }, methods: features, grips, befores, refused: [] };
}

function ends(size) {
  const first = Math.round((size - 1) * 0.6);
  return [{ end: 'first', count: first }, { end: 'second', count: size - 1 - first }, { end: 'bar', count: 1 }];
}

function featuresOf(end, count, steps) {
  const lists = end === 'bar' ? [['part-off']] : [['face']];
  for (let left = count - 1, i = 0; left > 0; i++) {
    const next = steps[i % steps.length].slice(0, left);
    lists.push(next);
    left -= next.length;
  }
  return lists.map((verbs, i) => {
    const feature = `p/${end}${i}`;
    const operations = verbs.map((verb) => operation(feature, verb, end));
    return { feature, any: [{ feature, name: 'only', because: { rule: 'any', grounds: {} }, operations, rank: 0 }] };
  });
}

function operation(feature, verb, end) {
  const way = { cuts: [], sweeps: [] };
  const key = ['face', 'turn'].includes(verb) ? 'turning' : verb === 'drill' ? `drill ${feature}` : verb;
  const ways = end === 'bar' ? { first: way } : { [end]: way };
  return { id: `${feature}/${verb}`, feature, verb, tool: { kind: verb, key, material: 'HSS' }, ways, light: false, because: [], says: [] };
}
