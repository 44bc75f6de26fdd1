/**
 * What a valve's duty asks: speeds of water, what a pump yields, how much more than it steams a boiler is fed, how late a ball may seat; the
 * physical data of water and copper that go with it; and the factors of strength. Each row says what it rests on.
 */
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

type Row = readonly [id: string, value: number, unit: string, what: string, source: SourceId, standing: Standing, place?: string];

const JUDGED = 'common practice';
const ROWS: readonly Row[] = [
  ['speed.most', 2.54, 'm/s', 'greatest speed of feed water at the peak of a stroke', 'rose', JUDGED, '500 feet a minute in pump pipes'],
  ['speed.better', 1.78, 'm/s', 'better speed; the limit where water runs by its weight', 'rose', JUDGED, '350 feet a minute'],
  ['pump.yields', 0.8, 'ratio', 'delivered of what a small pump sweeps (0.70 to 0.85)', 'rose', JUDGED],
  ['pump.peak', Math.PI, 'ratio', 'peak to mean of what a single-acting crank pump sweeps', 'here', 'derived', 'half a sine, once a turn'],
  ['feed.over-steam', 1.5, 'ratio', 'feed that a boiler is given, of what it steams', 'steam-maths', JUDGED],
  ['lag.most', 30, 'deg', 'crank turned before a ball is down again: more is back-flow and hammer', 'custom', JUDGED, 'judgement'],
  ['lift.injector', 1 / 3, 'ratio', 'lift of an injector check, of its ball', 'perry', JUDGED],
  ['minutes', 60, 'count', 'minutes of an hour, seconds of a minute', 'here', 'derived', 'definition'],
  ['vary.steps', 5, 'count', 'sizes tried to either side of the one that stands', 'custom', JUDGED],
  ['quarter', 90, 'deg', 'a quarter of a turn: there the plunger is fastest', 'here', 'derived'],
  ['land', 2, 'ratio', 'length of a seat’s land before a wider inlet, in bores', 'custom', JUDGED],
  ['inlet.over', 0.5, 'mm', 'least that such an inlet is wider than its land, on diameter', 'custom', JUDGED],
  ['inlet.most', 2, 'mm', 'most that such an inlet is wider than its land, on diameter', 'custom', JUDGED],
  ['water.cold', 998.2, 'kg/m3', 'density of cold water (20 °C)', 'water-data', 'from memory'],
  ['water.bulk', 2.2, 'GPa', 'bulk modulus of cold water', 'water-data', 'from memory'],
  ['copper.modulus', 117, 'GPa', 'modulus of a copper pipe', 'water-data', 'from memory'],
  // strength
  [
    'share.tensile',
    8,
    'ratio',
    'of tensile strength: the old factor of small boilers',
    'alloy-data',
    'from memory',
    'factor of model boilers',
  ],
  ['share.proof', 1.5, 'ratio', 'of proof stress', 'alloy-data', 'from memory', 'factor of pressure-vessel rules'],
  ['share.hot', 0.8, 'ratio', 'of cold strength at the temperature of steam to 10 bar', 'custom', JUDGED, 'judgement'],
  ['share.shear', 0.6, 'ratio', 'shear strength of tensile strength', 'alloy-data', 'from memory'],
  ['braze.most', 177, 'degC', 'brazed copper systems are tabled to this for saturated steam', 'b31-9', JUDGED],
  ['copper.most', 200, 'degC', 'copper pipe is permitted to this', 'lr-ssc', 'standard'],
  ['gunmetal.most', 225, 'degC', 'leaded gunmetal in water and steam fittings', 'kemper', JUDGED],
  ['cast-bronze.most', 260, 'degC', 'cast bronze fittings are permitted to this', 'lr-ssc', 'standard'],
  [
    'test',
    2,
    'ratio',
    'cold water test of a new fitting, of working pressure, where the local code says nothing else',
    'model-test',
    JUDGED,
  ],
  // the hand at a stop valve
  ['seat.ring', 0.25, 'mm', 'width of the ring on which a hand-shut cone bears', 'custom', JUDGED, 'judgement'],
  ['seat.stress', 30, 'N/mm2', 'stress on that ring when it is shut tight (20 to 40)', 'custom', JUDGED, 'judgement'],
  ['packing.stress', 3, 'N/mm2', 'stress in nipped packing', 'pvs-2017', 'from memory', 'figure for a hand-nipped gland'],
  ['packing.friction', 0.1, 'ratio', 'friction of greased or graphited packing (0.05 to 0.10)', 'pvs-2017', 'from memory'],
  ['rim.most', 30, 'N', 'what two fingers give at the rim of a small wheel (20 to 30)', 'custom', JUDGED, 'judgement'],
];

/** Lengths in mm, speeds in m/s, stresses in N/mm2; the rest as its unit says. */
export const dutyFacts: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source, standing, place]) => ({ id, value, unit, what, source: cite(source, place), standing })),
);

/** Included angles of plugs that are turned, degrees; common practice, no source. */
export const stopCones: readonly number[] = [45, 60, 75, 90, 105, 120];
