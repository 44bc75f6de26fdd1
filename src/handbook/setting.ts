/**
 * Minutes beside those of handling.ts: what each kind of hold takes (a kind of handling that a workshop times itself, and so much more), work
 * by hand, and tooling before its own plan is known. No published table for small lathes was found: for planning only.
 */
import { type Fact, type FactTable, factTable } from './fact.ts';

/** `as`: the handling that it is like, '' for none. */
type Hold = readonly [kind: string, as: string, more: number, what: string];
const HOLDS: readonly Hold[] = [
  ['bar', 'set-bar', 0, 'bar in the three-jaw'],
  ['bar-and-centre', 'set-bar', 0, 'bar in the three-jaw, drawn out'],
  ['centre', '', 1, 'the tailstock centre brought up besides'],
  ['plug', '', 1, 'a plug pushed into the work besides, and out again'],
  ['stub', 'set-bar', 2, 'the same jaw at the same mark, the indicator tried on it'],
  ['blank', 'set-bar', 0, 'a sawn blank, its end just out of the jaws'],
  ['between-centres', 'reverse', 4, 'both centres in and cleaned, the dog put on, the tailstock set'],
  ['hexagon', 'set-bar', 1, 'by its flats, pushed home'],
  ['collet', 'set-bar', 2, 'the collet put in place of the chuck'],
  ['threaded-mandrel', 'set-bar', 1, 'screwed on a mandrel that stands in the chuck, its rim tried'],
  ['stub-mandrel', 'set-bar', 0, 'wrung on a spigot that stands in the chuck'],
  ['jaws', 'reverse', 0, 'turned end for end in the three-jaw'],
  ['sleeve', 'reverse', 0, 'a split sleeve between jaws and work'],
  ['threaded-sleeve', 'reverse', 1, 'screwed into a split threaded sleeve, its length set'],
  ['bored-jaws', 'reverse', 14, 'soft jaws put in and bored besides'],
  ['four-jaw', 'four-jaw', 0, 'four-jaw chuck, set by the indicator'],
  ['vee-block', '', 4, 'laid in the vee and clamped, its axis brought under the drill'],
  ['bench', '', 1, 'in the soft jaws of the vice'],
];
type Row = readonly [id: string, minutes: number, what: string];
const ROWS: readonly Row[] = [
  ['make.threaded-mandrel', 60, 'a threaded mandrel made in place'],
  ['make.stub-mandrel', 25, 'a spigot turned to a bore, in place'],
  ['make.tube-plug', 20, 'a plug turned to a bore and parted off'],
  ['make.d-bit', 60, 'a D-bit turned, filed, hardened and tempered'],
  ['make.gauge-nut', 40, 'a gauge nut made'],
  ['make.split-sleeve', 20, 'a sleeve turned, bored and slit'],
  ['make.threaded-sleeve', 25, 'a sleeve drilled, tapped and slit'],
  ['make.guide-roller', 30, 'a roller of the filing guide, hardened'],
  ['make.guide-pin', 15, 'a pin of the filing guide'],
  ['pass', 0.2, 'between two cuts: back, and the dial to its next reading'],
  ['work.stone', 1, 'a few strokes on a fine stone'],
  ['work.knurl', 3, 'a knurl run along'],
  ['work.saw-off', 4, 'sawn off'],
  ['work.file-flats', 6, 'a flat filed and measured'],
  ['work.file-square', 6, 'a flat of a square, with a guide'],
  ['work.file-hexagon', 6, 'a flat of a hexagon, with a guide'],
  ['work.slit', 4, 'slit along with a saw, its burrs taken off'],
  ['work.saw-slot', 6, 'a slot marked out, sawn across an end, filed to its width, its burrs taken off'],
  ['work.file-half', 15, 'half of a D-bit filed or ground away, measured as it goes'],
  ['work.drill-bolt-holes', 4, 'each hole of a flange: marked out, centre-punched, drilled'],
  ['work.cross-drill', 6, 'marked out, centre-popped, drilled'],
  ['work.cross-ream', 3, 'a reamer turned through by hand, square, and drawn out'],
  ['work.solder', 15, 'cleaned, fluxed, heated, left to cool, cleaned again'],
  ['work.harden', 15, 'heated, quenched, polished, tempered'],
  ['work.gauge', 2, 'the mate or the gauge tried on'],
];

/** Minutes: 'hold.four-jaw' is what that hold takes beyond the handling that it is like. */
export const setting: FactTable = factTable([
  ...HOLDS.map(([kind, as, more, what]) => row(`hold.${kind}`, more, as === '' ? what : `${what}; on top of '${as}'`)),
  ...ROWS.map(([id, minutes, what]) => row(id, minutes, what)),
  { ...row('feed.hand', 100, 'as fast as a wheel is turned steadily under cut (60 to 120)'), unit: 'mm/min' },
  { ...row('approach', 2, 'a tool begins this far off the work'), unit: 'mm' },
  { ...row('hand-tap.length', 10, 'length of thread that the minutes of hand-tap are for'), unit: 'mm' },
]);

/** The handling that a hold is like; undefined where it is like none. */
export function holdLike(kind: string): string | undefined {
  return HOLDS.find(([one, as]) => one === kind && as !== '')?.[1];
}

function row(id: string, value: number, what: string): Fact {
  return { id, value, unit: 'min', what, source: 'common practice, no source', standing: 'common practice' };
}
