/** What a description may sensibly hold, and what is taken where a workshop says nothing. Bounds catch slips of the pen, not bad designs. */
import type { Bounds } from '../base/asking.ts';
import { type Fact, factTable } from './fact.ts';

const CUSTOM = 'common practice, no source';
type Range = readonly [id: string, least: number, most: number, unit: string, what: string];
type Usual = readonly [id: string, value: number, unit: string, what: string];

/** Least and most that are believed. Both ends are allowed themselves; outside, the reader refuses and says the bound. */
const RANGES: readonly Range[] = [
  ['duty.pressure', 0.1, 20, 'bar', 'working pressure of a small boiler plant'],
  ['duty.flow', 1, 50_000, 'ml/min', 'water that a check valve passes'],
  ['duty.evaporation', 0.05, 200, 'kg/h', 'what a small boiler steams'],
  ['duty.surface', 10, 100_000, 'cm2', 'heating surface of a small boiler'],
  ['pump.bore', 2, 50, 'mm', 'bore of a feed pump'],
  ['pump.stroke', 2, 100, 'mm', 'stroke of a feed pump'],
  ['pump.speed', 1, 3000, '/min', 'strokes of a feed pump a minute'],
  ['pipe.outside', 1, 30, 'mm', 'outside of a pipe'],
  ['pipe.wall', 0.2, 5, 'mm', 'wall of a pipe'],
  ['ball', 1.5, 25, 'mm', 'a valve ball'],
  ['seat-bore', 1, 25, 'mm', 'bore under a valve ball'],
  ['lift', 0.1, 10, 'mm', 'lift of a valve ball'],
  ['plug-lift', 1, 20, 'mm', 'lift of the plug of a stop valve'],
  ['stem', 2, 20, 'mm', 'stem of a valve spindle'],
  ['packing', 0.8, 10, 'mm', 'width of gland packing'],
  ['wheel', 8, 100, 'mm', 'a handwheel'],
  ['lathe.centre-height', 20, 300, 'mm', 'centre height of a bench lathe'],
  ['lathe.between-centres', 50, 2000, 'mm', 'between centres of a bench lathe'],
  ['lathe.spindle-bore', 3, 100, 'mm', 'hole through the spindle'],
  ['lathe.speed', 10, 10000, '/min', 'speed of a spindle'],
  ['lathe.motor', 20, 10000, 'W', 'motor of a bench lathe'],
  ['lathe.leadscrew', 0.5, 10, 'mm', 'pitch of a leadscrew'],
  ['lathe.gear', 12, 200, 'count', 'teeth of a change gear'],
  ['lathe.gear.count', 1, 20, 'count', 'change gears of one size'],
  ['lathe.over-slide', 5, 300, 'mm', 'axis over the cross slide'],
  ['lathe.travel', 5, 1000, 'mm', 'travel of a slide'],
  ['banjo', 10, 400, 'mm', 'distance of the shafts that carry change wheels'],
  ['banjo.module', 0.3, 4, 'mm', 'diameter of the pitch circle a tooth'],
  ['dial-wheel', 6, 60, 'count', 'teeth of a wheel of a threading dial'],
  ['dial-marks', 1, 32, 'count', 'marks of a threading dial'],
  ['backlash', 0, 2, 'mm', 'lost motion of a slide'],
  ['nose', 0, 2, 'mm', 'radius of a tool’s nose'],
  ['resolution', 0.0005, 1, 'mm', 'the least that an instrument shows'],
  ['minutes', 0, 240, 'min', 'a handling'],
  ['dial.division', 0.001, 1, 'mm', 'one division of a dial'],
  ['dial.turn', 0.1, 50, 'mm', 'one turn of a dial'],
  ['jaw-clearance', 0, 10, 'mm', 'room kept between jaws and cut'],
  ['runout', 0, 1, 'mm', 'run-out of a chuck'],
  ['chuck', 10, 300, 'mm', 'largest diameter that a chuck takes'],
  ['held', 0.005, 2, 'mm', 'band that a process holds'],
  ['difficulty', 1, 100, 'count', 'how hard a process is, beside the easiest'],
  ['blade', 0.5, 6, 'mm', 'width of a parting or grooving blade'],
  ['parts', 2, 200, 'mm', 'largest diameter that is parted off'],
  ['reach', 1, 300, 'mm', 'reach of a boring or threading tool'],
  ['recess', 0.1, 20, 'mm', 'depth of a groove in a bore, a side'],
  ['hole', 0.2, 60, 'mm', 'a drill, reamer, collet, bored hole or bar'],
  ['range.step', 0.01, 25, 'mm', 'step of a set of sizes'],
  ['bar.across', 0.5, 200, 'mm', 'a bar, across flats if it has flats'],
  ['part.diameter', 0.5, 200, 'mm', 'a diameter of a turned part, or across its flats'],
  ['part.length', 0.5, 400, 'mm', 'a length of a turned part: ISO 2768-1 has general tolerances from 0.5 to 400 mm'],
  ['part.quantity', 1, 500, 'count', 'parts of one kind'],
  ['chamfer', 0.1, 10, 'mm', 'a chamfer, measured on the radius'],
  ['radius', 0.1, 25, 'mm', 'a rounded edge, a fillet, or the tool that forms it'],
  ['cone.angle', 2, 170, 'deg', 'included angle of a cone'],
  ['bar.length', 5, 6000, 'mm', 'length of a bar'],
];

/** Taken where the workshop file is silent. */
const USUAL: readonly Usual[] = [
  ['jaw-clearance', 1, 'mm', 'room kept between jaws and cut'],
  ['runout', 0.1, 'mm', 'run-out of a three-jaw after a re-grip'],
  ['chuck', 63, 'mm', 'largest diameter in the jaws of a small three-jaw'],
  ['lathe.centre-height', 90, 'mm', 'centre height of a small bench lathe'],
  ['lathe.over-slide', 0.6, 'ratio', 'axis over the cross slide, of the centre height'],
  ['lathe.between-centres', 300, 'mm', 'between centres of a small bench lathe'],
  ['lathe.spindle-bore', 20, 'mm', 'hole through the spindle of a small bench lathe'],
  ['lathe.speed.from', 100, '/min', 'slowest speed of a small bench lathe'],
  ['lathe.speed.to', 2000, '/min', 'fastest speed of a small bench lathe'],
  ['lathe.motor', 350, 'W', 'motor of a small bench lathe'],
  ['lathe.full-power', 0.5, 'ratio', 'speed from which an electronic drive gives its full power, of the fastest'],
  ['lathe.leadscrew', 2, 'mm', 'pitch of the leadscrew of a small bench lathe'],
  ['lathe.travel.cross', 1, 'ratio', 'travel of the cross slide, of the centre height'],
  ['lathe.travel.top', 50, 'mm', 'travel of the top slide'],
  ['lathe.travel.tailstock', 50, 'mm', 'travel of the tailstock’s barrel'],
  ['slide-clearance', 2, 'mm', 'room kept between what turns and the slides'],
  ['dial.cross.division', 0.02, 'mm', 'one division of a cross slide’s dial'],
  ['dial.cross.turn', 2, 'mm', 'one turn of a cross slide’s dial'],
  ['dial.top.division', 0.02, 'mm', 'one division of a top slide’s dial'],
  ['dial.top.turn', 1, 'mm', 'one turn of a top slide’s dial'],
  ['dial.tailstock.division', 0.05, 'mm', 'one division of a tailstock’s dial'],
  ['dial.tailstock.turn', 2, 'mm', 'one turn of a tailstock’s dial'],
  ['dial.carriage.division', 0.1, 'mm', 'one division of a carriage’s dial'],
  ['dial.carriage.turn', 20, 'mm', 'one turn of a carriage’s dial'],
  ['dial.metric', 0.005, 'mm', 'a dial counts millimetres if its division is a whole multiple of this, else inches'],
  ['chuck.smallest', 2, 'mm', 'least diameter that the jaws of a small three-jaw close on'],
  ['chuck.inside.from', 0.3, 'ratio', 'least bore that the jaws open into, of the largest diameter that they take'],
  ['chuck.inside.to', 0.9, 'ratio', 'greatest bore that the jaws open into, of the same'],
  ['blade.width', 2, 'mm', 'width of a parting blade'],
  ['blade.largest', 20, 'mm', 'largest bar that is parted off on a small lathe'],
  ['shank', 0.75, 'ratio', 'bar of a boring tool, of the smallest hole that it enters'],
  ['nose.HSS', 0.2, 'mm', 'nose of a tool of high-speed steel, stoned by hand'],
  ['nose.carbide', 0.4, 'mm', 'nose of a carbide tip'],
  ['set.most', 500, 'count', 'sizes in one set; more is a slip of the pen'],
];

const row = (id: string, value: number, unit: string, what: string): Fact => ({
  id,
  value,
  unit,
  what,
  source: CUSTOM,
  standing: 'common practice',
});

export const READING = factTable([
  ...RANGES.flatMap(([id, least, most, unit, what]) => [
    row(`read.${id}.least`, least, unit, what),
    row(`read.${id}.most`, most, unit, what),
  ]),
  ...USUAL.map(([id, value, unit, what]) => row(`read.${id}.usual`, value, unit, what)),
]);

/** Throws Error where there is no such range: our fault. */
export function bounds(id: string): Bounds {
  return { least: READING.value(`read.${id}.least`), most: READING.value(`read.${id}.most`) };
}

export function usual(id: string): number {
  return READING.value(`read.${id}.usual`);
}
