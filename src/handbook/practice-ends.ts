/** Proportions of the ends of fittings: a plain end that takes the pipe itself, a flange soldered on a spigot. Each row carries its source. */
import { type FactTable, factTable, type Standing } from './fact.ts';

const CUSTOM = 'common practice, no source';
const MEMORY = 'ISO 4017 and ISO 4032, from memory';
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];

const ROWS: readonly Row[] = [
  ['thread.fine.least', 0.6, 'mm', 'least pitch of a fine thread that is proposed: 40 threads an inch'],
  ['thread.fine.tries', 12, 'count', 'sizes of fine thread, from the least that would do, that are tried for one that suits'],
  ['end.ledge', 0.3, 'mm', 'least ledge round the bore that a pipe in its socket comes to stand on'],
  ['end.shoulder', 2, 'mm', 'shoulder of a branch over its spigot where it has no collar for a spanner, on diameter'],
  [
    'cross-hole.over-wanted',
    1.5,
    'mm',
    'the hole for a spigot may be drilled this much over, for a drill that there is: the spigot is turned to it, its wall the thicker',
  ],
  ['flange.thick', 4, 'mm', 'thickness of a small flange: three walls of its spigot, and enough to be held by its rim'],
  ['flange.short', 0.2, 'mm', 'the spigot stops this short of the face of its flange, so that the face alone meets the joint'],
  ['flange.collar', 2.5, 'mm', 'collar behind a flange over its spigot, on diameter'],
  ['flange.neck', 7, 'mm', 'length of that collar: room for nuts, and for a spanner on them'],
  ['flange.bolts', 4, 'count', 'bolts of a small flange'],
  ['flange.bolt', 3, 'mm', 'bolts of a small flange: M3'],
  ['flange.bolt.hole', 3.4, 'mm', 'hole for an M3 bolt, medium series', 'ISO 273, from memory', 'from memory'],
  ['flange.bolt.corners', 6.1, 'mm', 'across the corners of an M3 head or nut, rounded up', MEMORY, 'from memory'],
  ['flange.bolt.clear', 0.5, 'mm', 'between the collar and the corners of a nut'],
  ['flange.edge', 1, 'ratio', 'from the middle of a bolt to the rim, of its hole'],
  ['flange.circle.band', 0.2, 'mm', 'either way on a bolt circle that is marked out and centre-punched: the holes have that play'],
];

export const endsPractice: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = CUSTOM, standing = 'common practice']) => ({ id, value, unit, what, source, standing })),
);
