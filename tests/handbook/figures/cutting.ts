/** Speeds, forces, give, times: worked examples and formulas as printed. */
import { len, mm, toMm } from '../../../src/base/units.ts';
import { turnsAMinute } from '../../../src/handbook/cutting.ts';
import * as force from '../../../src/handbook/cutting-force.ts';
import { deepHole, drillFeed } from '../../../src/handbook/drilling.ts';
import { numbersTable } from '../../../src/handbook/numbers.ts';
import { partingDepth } from '../../../src/handbook/parting.ts';
import { reamingStock } from '../../../src/handbook/reaming.ts';
import * as stiff from '../../../src/handbook/stiffness.ts';
import { barArea } from '../../../src/handbook/stock-facts.ts';
import { equalAreaDepth, modifiedInfeed } from '../../../src/handbook/thread-passes.ts';
import * as times from '../../../src/handbook/times.ts';
import { type Figure, figures, type Given, relative, there } from './figure.ts';

const sum = (passes: readonly number[], n: number): number => passes.slice(0, n).reduce((a, b) => a + b, 0) / 10_000;
const infeed = modifiedInfeed(mm(0.94), 6, mm(0.001));
const kc303 = () => force.kienzle(2150, 0.2, 0.08);
const slender = (a: number) => () => stiff.propped(1, 1, a, 1, 1 / stiff.secondMoment(1));
const drill = (name: string, d: number, feed: number) => there(force.drillLoad(name, d, feed), name);

export const cuttingFigures: readonly Figure[] = [
  ...figures('lzqtool.com, drilling: d 15, vc 50, f 0.15, 30 deep', 0.1, [
    ['turns a minute', () => turnsAMinute(50, mm(15)), 1061],
    ['seconds', () => times.turningTime(30, 0.15, turnsAMinute(50, mm(15))), 11.3],
    ['travel at 1350 and 0.2', () => times.travel(1350, 0.2), 270],
  ]),
  ...relative('Kalpakjian and Schmid, turning 12 to 11, gearcalculation.blogspot.com 2026/02', 0.01, [
    ['speed, m/min', () => (400 * Math.PI * 12) / 1000, 15.08],
    ['mm³ a minute', () => force.removalRate(12, 11, 200), 3611],
    ['minutes', () => times.turningTime(150, 0.5, 400) / 60, 0.75],
    ['W at 4 W s/mm³', () => (force.removalRate(12, 11, 200) / 60) * 4, 240.8],
  ]),
  ...relative('Elementary Technical Mathematics, section 1-8, exercise 53, gradesaver.com: 9 9/64 in at 3/128 in a turn, 45 turns', 1e-9, [
    ['turning 9 9/64 in, minutes', () => times.turningTime(585 / 64, 3 / 128, 45) / 60, 26 / 3],
  ]),
  ...figures('questions.collegedunia.com, drilling a plate of 30 with 3 before and 3 behind, 600 turns, 0.3', 0.005, [
    ['minutes', () => times.turningTime(36, 0.3, 600) / 60, 0.2],
  ]),
  ...figures('studyclix.ie, drilling 20 mm through 25 at 20 m/min and 0.25', 0.0005, [
    ['turns a minute', () => Math.round(turnsAMinute(20, mm(20)) * 100) / 100, 318.31],
    ['minutes', () => times.turningTime(25, 0.25, turnsAMinute(20, mm(20))) / 60, 0.314],
  ]),
  ...figures('Mitsubishi Materials, carbide.mmc.co.jp, formulas of turning', 1e-9, [
    ['100 mm at 1000 turns and 100 mm a minute, minutes', () => times.turningTime(100, 100 / 1000, 1000) / 60, 1],
    ['100 mm at 20 mm a minute, minutes', () => times.turningTime(100, 20 / 500, 500) / 60, 5],
  ]),
  ...figures('weight of steel bar a metre, 7850 kg/m3, fantasticeng.com 2019/01', 0.001, [
    ...(
      [
        [6, 0.222],
        [8, 0.395],
        [10, 0.616],
        [12, 0.888],
        [16, 1.578],
        [20, 2.466],
        [25, 3.853],
      ] as const
    ).map(([d, kg]): Given => [`round ${d}`, () => barArea('round', mm(d)) * 0.00785, kg]),
  ]),
  ...figures('theoretical weight of steel, stainless-steel-tube.org: 0.006165 d², 0.006798 s²', 0.05, [
    ['round 100, kg a metre', () => barArea('round', mm(100)) * 0.00785, 61.65],
    ['hexagon 50, kg a metre', () => barArea('hexagon', mm(50)) * 0.00785, 17],
  ]),
  ...relative('its inverse', 1e-9, [
    ['whirling length at the whirling speed', () => stiff.whipLength(10, stiff.whipSpeed(10, 300, 206, 7850), 206, 7850), 300],
  ]),
  ...figures('Mitsubishi Materials, cutting formulas', 0.01, [['kW', () => force.motorPower(3, 0.2, 120, 3100, 0.8) / 1000, 4.65]]),
  ...relative('ISCAR, VDI 3323 group 14, worked out', 0.005, [
    ['kc of 303 at 0.08', kc303, 3563],
    ['force', () => force.turningForce('303', 0.5, 0.08), 142.5],
    ['W at 25 m/min', () => force.powerOf(force.turningForce('303', 0.5, 0.08), 25), 59.4],
    ['N m on 10', () => force.torqueOf(force.turningForce('303', 0.5, 0.08), 10), 0.713],
    ['turns', () => turnsAMinute(25, mm(10)), 796],
  ]),
  ...figures('ISCAR, turning catalogue 2017 p. 558', 0.0001, [
    ['kc of group 6', () => numbersTable.value('kc.silver steel'), 1775],
    ['exponent of group 6', () => numbersTable.value('kc.silver steel.exponent'), 0.24],
    ['kc of group 1', () => numbersTable.value('kc.mild steel'), 1350],
    ['exponent of group 1', () => numbersTable.value('kc.mild steel.exponent'), 0.21],
    ['kc of group 14', () => numbersTable.value('kc.316'), 2150],
    ['kc of group 22', () => numbersTable.value('kc.aluminium'), 800],
    ['kc of group 26', () => numbersTable.value('kc.brass'), 700],
    ['exponent of group 26', () => numbersTable.value('kc.brass.exponent'), 0.27],
  ]),
  ...relative('Kienzle, parting brass 2 wide, f 0.04', 0.005, [
    ['kc', () => force.cuttingStress('brass', 0.04), 1669],
    ['force', () => force.turningForce('brass', 2, 0.04), 133.5],
    ['W at 40 m/min', () => force.powerOf(force.turningForce('brass', 2, 0.04), 40), 89],
    ['N m on 20', () => force.torqueOf(force.turningForce('brass', 2, 0.04), 20), 1.34],
  ]),
  ...figures('Sandvik, threading manual p. 114 and WIDIA 2017 p. 685: 0.94 in six', 0.006, [
    ...[0.23, 0.42, 0.59, 0.73, 0.84, 0.94].map((to, i): Given => [`after pass ${i + 1}`, () => sum(infeed, i + 1), to]),
  ]),
  ...figures('equal areas, depth sqrt(n/N), 0.920 in six', 0.0006, [
    ...[0.376, 0.531, 0.651, 0.751, 0.84, 0.92].map(
      (to, i): Given => [`after pass ${i + 1}`, () => toMm(equalAreaDepth(mm(0.9202), i + 1, 6)), to],
    ),
  ]),
  ...figures('geometry of the top slide, 29.5 degrees', 0.0005, [['0.920 a side', () => times.slideTravel(0.92, 29.5), 1.057]]),
  ...figures("a lathe maker's manual p. 14: 0.69 P for 0.6 P", 0.01, [['slide', () => times.slideTravel(0.6, 29.5), 0.689]]),
  ...figures('E. Isakov, Cutting Tool Engineering, July 2019', 0.5, [['second moment of 25.4', () => stiff.secondMoment(25.4), 20_432]]),
  ...figures('E. Isakov, Cutting Tool Engineering, July 2019, boring bar', 0.0002, [
    ['give', () => stiff.cantilever(911.1, 101.6, 25.4, 206_000), 0.0757],
  ]),
  ...figures('theory of beams', 0.0005, [
    ['303, 6 by 40, 30 N', () => stiff.cantilever(30, 40, 6, 195_000), 0.0516],
    ['the same on diameter', () => 2 * stiff.cantilever(30, 40, 6, 195_000), 0.1032],
  ]),
  ...figures('theory of beams, fixed and pinned', 0.00005, [
    ['303, 6 by 40, at 24', () => stiff.propped(30, 40, 24, 6, 195_000), 0.00152],
    ['worst place, of F L³/(E I)', slender(0.586), 0.009812],
  ]),
  ...relative('theory of beams, give in F/(E d)', 0.01, [
    ...(
      [
        [2, 54],
        [3, 183],
        [4, 435],
        [5, 849],
      ] as const
    ).map(([ratio, give]): Given => [`L/d ${ratio}`, () => stiff.cantilever(1, ratio, 1, 1), give]),
  ]),
  ...relative('Tungaloy 2020-2021 p. L068, K 1.42, 10 mm, 0.2', 0.005, [
    ['torque', () => drill('SUM32', 10, 0.2).torque, 5.677],
    ['thrust', () => drill('SUM32', 10, 0.2).thrust, 2061],
    ['W at 800', () => force.drillPower(1.42, 10, 0.2, 800), 466.3],
  ]),
  ...relative('Mitsubishi course page: 10 mm at 0.3 in steel', 0.2, [['N m', () => drill('S20C', 10, 0.3).torque, 15]]),
  ...relative('tap torque (from memory)', 0.25, [
    ['M6 in 11SMn30', () => force.tapTorque(1, 6, force.cuttingStress('mild steel', 0.1)), 1.64],
  ]),
  ...figures('asin(1/ratio)', 0.001, [
    ...(
      [
        [10, 5.739],
        [20, 2.866],
        [50, 1.146],
        [100, 0.573],
      ] as const
    ).map(([ratio, angle]): Given => [`1 in ${ratio}`, () => times.fineFeedAngle(ratio), angle]),
  ]),
  ...relative('H. Hall, homews.co.uk page 259: 0.5 degrees, 0.1 mm', 0.1, [
    ['in', () => times.fineFeed(0.1, 0.5), 0.00087],
    ['on diameter', () => 2 * times.fineFeed(0.1, 0.5), 0.00175],
  ]),
  ...figures('Kyocera 2021-22 p. 1069, formulas', 0.06, [
    ['25 at 0.12, 1200, four cuts, s', () => times.turningTime(25, 0.12, 1200, 4), 41.7],
  ]),
  ...figures('Kyocera 2021-22 p. 1069, facing', 0.02, [
    ['20 to 0 at 60 m/min, s', () => times.facingTimeAt(20, 0, 0.08, 60), 3.93],
    ['20 to 0 at 955, s', () => times.facingTime(20, 0, 0.08, 955), 7.85],
  ]),
  ...relative('whirl of a bar behind the spindle, derived', 0.02, [
    ['brass 10 by 300', () => stiff.whipSpeed(10, 300, 97, 8470), 3156],
    ['steel 10 by 300', () => stiff.whipSpeed(10, 300, 206, 7850), 4784],
  ]),
  ...figures('a drill maker’s card, studylib 18232362, deep holes', 0.0001, [
    ...(
      [
        [3, 0.9, 0.9],
        [4, 0.8, 0.9],
        [5, 0.7, 0.8],
        [6, 0.625, 0.8],
      ] as const
    ).flatMap(([n, speed, feed]): readonly Given[] => [
      [`${n} diameters, speed`, () => deepHole(len(n * 50_000), mm(5)).speed, speed],
      [`${n} diameters, feed`, () => deepHole(len(n * 50_000), mm(5)).feed, feed],
    ]),
  ]),
  ...figures('US Navy NAVEDTRA 14345, feeds of drills', 0.0006, [
    ['3 mm, least', () => there(drillFeed(mm(3)), '3').lo, 0.0254],
    ['5 mm, least', () => there(drillFeed(mm(5)), '5').lo, 0.0508],
    ['5 mm, most', () => there(drillFeed(mm(5)), '5').hi, 0.1016],
    ['10 mm, most', () => there(drillFeed(mm(10)), '10').hi, 0.1778],
  ]),
  ...figures('GTZ, Manual reaming, B640_6', 0.0001, [
    ['5 mm, most', () => toMm(there(reamingStock(mm(5)), '5').hi), 0.2],
    ['10 mm, least', () => toMm(there(reamingStock(mm(10)), '10').lo), 0.2],
    ['10 mm, most', () => toMm(there(reamingStock(mm(10)), '10').hi), 0.3],
  ]),
  ...figures('Ingersoll, catalogue 2011, p. 1346', 0.0001, [['blade of 3 goes in', () => toMm(partingDepth(mm(3))), 24]]),
];
