/** Torque and thrust of drills, give of bars, tapers, times and rates of removal: tables and worked examples as printed. */
import { inch, mm, toMm } from '../../../src/base/units.ts';
import { angleOf, slideAlong, taperOf } from '../../../src/handbook/cones.ts';
import { surfaceSpeed, turnsAMinute } from '../../../src/handbook/cutting.ts';
import * as force from '../../../src/handbook/cutting-force.ts';
import { feedFactor, powerOfTorque, thrustFactor, torqueFactor } from '../../../src/handbook/drill-load.ts';
import { pointLength } from '../../../src/handbook/drills.ts';
import * as stiff from '../../../src/handbook/stiffness.ts';
import { tapping } from '../../../src/handbook/tapping-torque.ts';
import * as times from '../../../src/handbook/times.ts';
import { type Figure, figures, type Given, relative } from './figure.ts';

const MH31 = "Machinery's Handbook 31, p. 1153 (online.flippingbook.com/view/954192180/1304)";
/** Table 8, SI: feed in mm a turn, Ff. */
const FEEDS: readonly (readonly [feed: number, factor: number])[] = [
  ...([
    [0.01, 0.025],
    [0.03, 0.06],
    [0.05, 0.091],
    [0.08, 0.133],
    [0.1, 0.158],
    [0.12, 0.183],
  ] as const),
  ...([
    [0.15, 0.219],
    [0.18, 0.254],
    [0.2, 0.276],
    [0.22, 0.298],
    [0.25, 0.33],
    [0.3, 0.382],
  ] as const),
  ...([
    [0.35, 0.432],
    [0.4, 0.48],
    [0.45, 0.528],
    [0.5, 0.574],
    [0.55, 0.62],
    [0.65, 0.708],
  ] as const),
  ...([
    [0.75, 0.794],
    [0.9, 0.919],
    [1, 1],
    [1.25, 1.195],
  ] as const),
];
/** Table 9, SI: diameter, FT, FM. (8.80 is printed with FT 5.96, where the power of the others gives 5.70: left out.) */
const DIAMETERS: readonly (readonly [diameter: number, thrust: number, torque: number])[] = [
  ...([
    [1.6, 1.46, 2.33],
    [2.4, 2.02, 4.84],
    [3.2, 2.54, 8.12],
    [4, 3.03, 12.12],
    [4.8, 3.51, 16.84],
  ] as const),
  ...([
    [5.6, 3.97, 22.22],
    [6.4, 4.42, 28.26],
    [7.2, 4.85, 34.93],
    [8, 5.28, 42.22],
    [9.5, 6.06, 57.53],
  ] as const),
  ...([
    [11, 6.81, 74.9],
    [12.5, 7.54, 94.28],
    [14.5, 8.49, 123.1],
    [16, 9.19, 147],
    [17.5, 9.87, 172.8],
  ] as const),
  ...([
    [22, 11.86, 260.8],
    [24, 12.71, 305.1],
    [25.5, 13.34, 340.2],
    [27, 13.97, 377.1],
    [28.5, 14.58, 415.6],
  ] as const),
];
/** Included degrees, taper an inch. (4, 15 and 22½ are not clear in the copy: left out.) */
const TAPERS: readonly (readonly [angle: number, taper: number])[] = [
  ...([
    [1, 0.01746],
    [2, 0.0349],
    [3, 0.05236],
    [5, 0.08732],
    [7.5, 0.13108],
    [10, 0.17498],
    [20, 0.35266],
  ] as const),
  ...([
    [25, 0.44338],
    [30, 0.5359],
    [40, 0.72794],
    [45, 0.82842],
    [50, 0.93262],
  ] as const),
];
const inches = (length: number): number => length / inch(1);
const drilled = (d: number, feed: number, turns: number): number => force.removalRate(d, 0, times.travel(turns, feed));

export const loadFigures: readonly Figure[] = [
  ...figures(
    `${MH31}, table 8, SI`,
    0.001,
    FEEDS.map(([feed, factor]): Given => [`Ff at ${feed}`, () => feedFactor(feed), factor]),
  ),
  ...relative(
    `${MH31}, table 9, SI, thrust`,
    0.004,
    DIAMETERS.map(([d, thrust]): Given => [`FT at ${d}`, () => thrustFactor(d), thrust]),
  ),
  ...relative(
    `${MH31}, table 9, SI, torque`,
    0.004,
    DIAMETERS.map(([d, , torque]): Given => [`FM at ${d}`, () => torqueFactor(d), torque]),
  ),
  ...figures(
    'Turning and boring tapers (1902), Derry Collard Co: equivalent tapers of degrees',
    0.00006,
    TAPERS.map(([angle, taper]): Given => [`${angle} degrees`, () => taperOf(angle), taper]),
  ),
  ...figures('hobby-machinist.com, drill tip lengths', 0.0006, [
    ['number 37 at 118, in', () => inches(pointLength(inch(0.104))), 0.031],
    ['13/32 at 135, in', () => inches(pointLength(inch(0.406), 135)), 0.084],
  ]),
  ...figures('hobby-machinist.com, a taper angle from both ends: 0.218 to 0.146 over 0.758', 0.01, [
    ['included', () => angleOf((0.218 - 0.146) / 0.758), 5.43],
    ['half', () => angleOf((0.218 - 0.146) / 0.758) / 2, 2.72],
  ]),
  ...figures('US Navy, enginemechanics.tpub.com/14076: taper a foot from 1 in to 2 in', 0.001, [
    ['2 in long', () => 12 * taperOf(angleOf((2 - 1) / 2)), 6],
    ['6 in long', () => 12 * taperOf(angleOf((2 - 1) / 6)), 2],
  ]),
  ...figures('hobby-machinist.com/threads/64859: the slide moved 1 in at 30 degrees', 0.0001, [
    ['cross slide, in', () => times.fineFeed(1, 30), 0.5],
    ['and back: slide for 1 in of diameter, in', () => inches(slideAlong(inch(1), 60)), 1],
  ]),
  ...relative('a worked example of drilling 12.7 by 60 at 25 m/min and 0.3 (code.policylink.org/comparte/17078001)', 0.0005, [
    ['turns a minute', () => turnsAMinute(25, mm(12.7)), 626.57],
    ['mm a minute', () => times.travel(turnsAMinute(25, mm(12.7)), 0.3), 187.97],
    ['minutes', () => times.turningTime(60, 0.3, turnsAMinute(25, mm(12.7))) / 60, 0.3192],
    ['mm³ a second', () => drilled(12.7, 0.3, turnsAMinute(25, mm(12.7))) / 60, 396.91],
  ]),
  ...relative('expertsmind.com, drilling 40 by 50 at 520 a minute and 0.25 (its own count of turns, 527, is a slip)', 0.002, [
    ['point', () => toMm(pointLength(mm(40))), 12],
    ['minutes over 65', () => times.turningTime(65, 0.25, 520) / 60, 0.5],
    ['mm³ a minute', () => drilled(40, 0.25, 520), 163_362.82],
  ]),
  ...figures('qammunity.org/12040095: 75 mm at 400 a minute', 0.01, [['m/min', () => surfaceSpeed(400, mm(75)), 94.25]]),
  ...figures('Tungaloy 2020-2021, p. L030: 150 mm at 250 a minute (printed with 3.14, cut off)', 1, [
    ['m/min', () => surfaceSpeed(250, mm(150)), 117],
  ]),
  ...figures('tools.gera.services, lathe spindle: 0.1 in by 0.012 at 300 ft/min', 0.01, [
    ['in³ a minute', () => 0.1 * 0.012 * 300 * 12, 4.32],
    ['hp at the spindle, 1 hp for each', () => force.motorPower(2.54, 0.3048, 91.44, 2730.3, 0.8) / 745.7, 5.4],
  ]),
  ...figures('E. Isakov, Cutting Tool Engineering, July 2019, in inches', 0.00005, [
    ['second moment of 1 in, in⁴', () => stiff.secondMoment(1), 0.0491],
    ['207.8 lbf on 4 in, in', () => Math.round(stiff.cantilever(207.8, 4, 1, 30e6) * 1000) / 1000, 0.003],
  ]),
  ...figures('machinecalcs.com, boring bar: 100 lbf, 4 in out, 1 in thick, 29 Mpsi (told by its stress of 4.074 ksi)', 0.000001, [
    ['give, in', () => stiff.cantilever(100, 4, 1, 29e6), 0.001498],
  ]),
  ...figures('machinecalcs.com, boring bar: what holds it to 0.001 in', 0.0005, [
    ['thickness, in', () => (stiff.cantilever(100, 4, 1, 29e6) / 0.001) ** 0.25, 1.106],
  ]),
  ...figures('Machinery’s Handbook 31, p. 1152: P = M n / 9550', 0.0001, [
    ['kW of 9.55 N m at 1000', () => powerOfTorque(9.55, 1000), 1],
    ['kW of 5.677 N m at 800, arithmetic', () => powerOfTorque(5.677, 800), 0.4756],
  ]),
  ...figures('Grove Components, tap terminology, groveco.co.uk', 0.001, [
    ['lead of a taper tap', () => tapping.value('tap.lead.taper'), 10],
    ['of a second', () => tapping.value('tap.lead.second'), 5],
    ['of a bottoming tap', () => tapping.value('tap.lead.bottom'), 2],
  ]),
  ...figures('Yamawa 2016-17, p. 781, cutting forces and coefficients of taps', 0.001, [
    ['St 44-2', () => tapping.value('tap.kc.mild'), 3700],
    ['X6CrNi18-10', () => tapping.value('tap.kc.stainless'), 4200],
    ['CuZn40', () => tapping.value('tap.kc.brass'), 2300],
    ['plug hand tap, steel, coarse', () => tapping.value('tap.k.steel.coarse'), 1.35],
    ['plug hand tap, brass, fine', () => tapping.value('tap.k.brass.fine'), 1.12],
  ]),
];
