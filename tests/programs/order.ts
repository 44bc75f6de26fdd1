/** npm run order -- FILE.sop [STATES]: the least order of an instance of the sequential ordering problem, through the search of src/base. */
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { readSop } from './sop/read.ts';
import { solveSop } from './sop/solve.ts';

const [file, limit = '3000000'] = process.argv.slice(2);
if (file === undefined || !(Number(limit) > 0)) {
  console.error('npm run order -- FILE.sop [STATES]');
  process.exit(1);
}
const sop = readSop(readFileSync(file, 'utf8'));
const began = performance.now();
const solved = solveSop(sop, Number(limit));
const seconds = (performance.now() - began) / 1000;
const rows = [
  ['instance', `${sop.name}, ${sop.nodes} nodes`],
  ['value', String(solved.value)],
  ['bound', `${solved.exact ? solved.value : solved.atLeast} (assignment at the start: ${solved.root})`],
  ['proved', solved.exact ? 'yes' : `no: at most ${solved.value - solved.atLeast} from the best`],
  ['as good', solved.exact ? `${solved.ways} orders` : 'not counted'],
  ['states', `${solved.states} in the last run, ${solved.statesInAll} in all`],
  ['time', `${seconds.toFixed(2)} s`],
  ['order', solved.order.join(' ')],
];
for (const [label = '', text] of rows) console.log(`${label.padEnd(10)}${text}`);
