/**
 * What is done with the hands between cuts, in minutes, for one piece on a small lathe worked by hand. No published table for lathes of this
 * class was found: for planning only, and to be changed by a workshop's own.
 */
import { type Fact, type FactTable, factTable } from './fact.ts';

type Row = readonly [id: string, least: number, usual: number, most: number, what: string];
const ROWS: readonly Row[] = [
  ['set-bar', 1, 2, 4, 'set a bar in the chuck and its stick-out'],
  ['reverse', 3, 6, 12, 'turn a part end for end, protect it and clock its run-out'],
  ['four-jaw', 8, 12, 20, 'fit the four-jaw chuck and clock the work to 0.02'],
  ['change-tool', 0.5, 1, 2, 'change a tool in a quick-change post'],
  ['change-tool-clamped', 2, 4, 8, 'change a tool in a clamped post and shim it to height'],
  ['tailstock-tool', 0.5, 1, 2, 'fit or change a drill in the tailstock'],
  ['change-wheels', 8, 12, 20, 'set up change wheels for a thread'],
  ['feed-wheels', 5, 8, 15, 'put the wheels back for feeding'],
  ['set-over', 2, 3, 6, 'set the top slide over for a thread or a cone'],
  ['touch-off', 0.3, 0.5, 1, 'touch off and set a dial to nought'],
  ['measure', 0.4, 0.7, 1.5, 'measure once with the micrometer'],
  ['thread-pass', 0.4, 0.6, 1, 'one pass of a thread, 20 mm long, with its return'],
  ['peck', 0.1, 0.2, 0.4, 'draw the drill out, clear it and go back'],
  ['hand-tap', 1.5, 3, 6, 'tap 10 mm deep by hand in the lathe'],
  ['deburr', 0.2, 0.4, 0.8, 'take the burr off an edge'],
  ['clean-down', 3, 5, 10, 'clean down'],
];

/** Minutes: 'set-bar' is the usual figure, 'set-bar.least' and 'set-bar.most' what it may come to. */
export const handling: FactTable = factTable(
  ROWS.flatMap(([id, least, usual, most, what]) => [row(id, usual, what), row(`${id}.least`, least, what), row(`${id}.most`, most, what)]),
);

/** Every kind of handling that a workshop may time, in the table's order: its post is of one kind only. */
export const handlings: readonly string[] = ROWS.map(([id]) => id).filter((id) => id !== 'change-tool-clamped');

function row(id: string, value: number, what: string): Fact {
  return { id, value, unit: 'min', what, source: 'common practice, no source', standing: 'common practice' };
}
