/** Balls, cones, flow, spindles, walls: every check value of the relations, and what books print of them. */
import { mm, toMm } from '../../../src/base/units.ts';
import * as flow from '../../../src/handbook/flow.ts';
import { saturated } from '../../../src/handbook/if97-regions.ts';
import { basicThread } from '../../../src/handbook/iso965-metric.ts';
import { highPressureFactor, reliefArea } from '../../../src/handbook/relief-steam.ts';
import * as spindle from '../../../src/handbook/spindle.ts';
import { squareOn } from '../../../src/handbook/squares.ts';
import { basicShear, stressArea } from '../../../src/handbook/thread-strength.ts';
import * as ball from '../../../src/handbook/valve-ball.ts';
import * as cone from '../../../src/handbook/valve-cone.ts';
import { copperStress, lame, outerRadius, pipePressure } from '../../../src/handbook/walls.ts';
import { type Figure, figures, type Given, relative, there } from './figure.ts';

const seat = (d: number, bore: number, printed: readonly number[]): readonly Given[] => {
  const share = (lift: number) => () => ball.curtainArea(d, bore, lift) / ball.boreArea(bore);
  const got: readonly (readonly [string, () => number])[] = [
    ['angle', () => ball.contactAngle(d, bore)],
    ['centre', () => ball.centreAboveEdge(d, bore)],
    ['sink', () => ball.sinkBelowEdge(d, bore)],
    ['bore', () => ball.boreArea(bore)],
    ['full lift', () => ball.liftForFullArea(d, bore)],
    ['curtain at 1 mm', () => ball.curtainArea(d, bore, 1)],
    ['share at D/8', share(d / 8)],
    ['share at D/6', share(d / 6)],
    ['share at D/3', share(d / 3)],
    ['chamber', () => ball.ringChamber(d, bore)],
  ];
  return got.map(([what, value], i): Given => [`${d} on ${bore}, ${what}`, value, printed[i] ?? Number.NaN]);
};
/** A 5 mm ball on 4, lift 1: grams, N under water, Pa, mm of water, m/s2, ms, m/s, degrees at 300 a minute. */
const falling = (density: number, printed: readonly number[]): readonly Given[] => {
  const rate = ball.fallAcceleration(density, 1000);
  const time = ball.fallBackTime(1, density, 1000);
  const crack = ball.crackingPressure(5, 4, density, 1000);
  const got: readonly (readonly [string, number])[] = [
    ['mass', ball.ballMass(5, density)],
    ['weight under water', (ball.ballMass(5, density - 1000) / 1000) * ball.GRAVITY],
    ['cracking', crack],
    ['cracking, mm of water', (crack / ball.GRAVITY / 1000) * 1000],
    ['acceleration', rate],
    ['time, ms', time * 1000],
    ['speed at the seat', rate * time],
    ['crank at 300', ball.crankDegrees(time, 300)],
  ];
  return got.map(([what, value], i): Given => [`${density} kg/m3, ${what}`, () => value, printed[i] ?? Number.NaN]);
};
/** Ball, bore, sink, inches. */
const SINKS: readonly (readonly [d: number, bore: number, sink: number])[] = [
  [0.25, 0.078, 0.006],
  [0.25, 0.125, 0.017],
  [0.25, 0.156, 0.027],
  [0.25, 0.187, 0.042],
  [0.218, 0.125, 0.02],
  [0.218, 0.187, 0.053],
  [0.187, 0.125, 0.024],
  [0.187, 0.156, 0.042],
  [0.187, 0.171, 0.056],
  [0.156, 0.078, 0.01],
  [0.156, 0.109, 0.022],
  [0.156, 0.141, 0.044],
];
/** Ratio D/d; angle; lift for the bore over d and over D; sink over d; share at D/8, D/6, D/4, D/3; chamber over D. */
const CURTAIN: readonly (readonly number[])[] = [
  [1.1, 24.62, 0.4634, 0.4213, 0.3209, 0.2642, 0.3629, 0.568, 0.7778, 1.3515],
  [1.2, 33.557, 0.4167, 0.3472, 0.2683, 0.3514, 0.4732, 0.7175, 0.9599, 1.3017],
  [1.25, 36.87, 0.401, 0.3208, 0.25, 0.3882, 0.5197, 0.7812, 1.0383, 1.2806],
  [1.3, 39.715, 0.3882, 0.2986, 0.2347, 0.4224, 0.5632, 0.8408, 1.1121, 1.2616],
  [1.4, 44.415, 0.3684, 0.2631, 0.2101, 0.4858, 0.6439, 0.9523, 1.2508, 1.2289],
  [1.5, 48.19, 0.3536, 0.2357, 0.191, 0.5449, 0.7192, 1.057, 1.3816, 1.2019],
  [2.0, 60.0, 0.3131, 0.1566, 0.134, 0.8104, 1.0597, 1.5344, 1.9838, 1.118],
];
const curtain = ([
  k = 0,
  angle = 0,
  overBore = 0,
  overBall = 0,
  sink = 0,
  d8 = 0,
  d6 = 0,
  d4 = 0,
  d3 = 0,
  chamber = 0,
]: readonly number[]): readonly Given[] => {
  const share = (lift: number) => () => ball.curtainArea(k, 1, lift * k) / ball.boreArea(1);
  return [
    [`D/d ${k}, full lift / d`, () => ball.liftForFullArea(k, 1), overBore],
    [`D/d ${k}, full lift / D`, () => ball.liftForFullArea(k, 1) / k, overBall],
    [`D/d ${k}, sink / d`, () => ball.sinkBelowEdge(k, 1), sink],
    [`D/d ${k}, share at D/8`, share(1 / 8), d8],
    [`D/d ${k}, share at D/6`, share(1 / 6), d6],
    [`D/d ${k}, share at D/4`, share(1 / 4), d4],
    [`D/d ${k}, share at D/3`, share(1 / 3), d3],
    [`D/d ${k}, chamber / D`, () => ball.ringChamber(k, 1) / k, chamber],
    [`D/d ${k}, angle / 100`, () => ball.contactAngle(k, 1) / 100, angle / 100],
  ];
};
const threadAreas = (d: number, p: number, engaged: number, printed: readonly number[]): readonly Given[] => {
  const areas = basicShear(mm(d), mm(p), mm(engaged));
  const got: readonly (readonly [string, number])[] = [
    ['outside', areas.outside],
    ['inside', areas.inside],
    ['stress area', stressArea(mm(d), mm(p))],
  ];
  return got.map(([what, value], i): Given => [`M${d}x${p}, ${engaged} engaged, ${what}`, () => value, printed[i] ?? Number.NaN]);
};
/** Of a stop valve: seat 6 at 10 bar, stem 4, packing 9 deep at 3 MPa, seat ring 0.25 at 30 MPa, M6x1. */
const force = () => ball.seatForce(6, 10) + spindle.packingFriction(4, 9, 3, 0.1) + spindle.seatLoad(6.25, 0.25, 30);
const M6: spindle.Screw = { mean: 6 - 0.649519, lead: 1, flankAngle: 60, friction: 0.15 };
const SHIGLEY: spindle.Screw = { mean: 30, lead: 8, flankAngle: 0, friction: 0.08, collar: { mean: 40, friction: 0.08 } };
const VICE: spindle.Screw = { mean: 10, lead: 2.5, flankAngle: 0, friction: 0.25, collar: { mean: 18, friction: 0.25 } };
const flux = (bar: number) => flow.chokedFlux(1.135, bar, there(saturated(bar / 10), `${bar} bar`).steam.volume);

export const valveFigures: readonly Figure[] = [
  ...relative('geometry of ball and sharp edge, derived', 1e-9, [
    ...seat(
      5,
      3.5,
      [
        45.5729959991943, 1.7853571071357126, 0.7146428928642874, 9.62112750161874, 1.2730704949118232, 7.639132195221832,
        0.5030709450413899, 0.6658493819543128, 1.2887952031086294, 6.103277807866851,
      ],
    ),
    ...seat(
      4,
      3,
      [
        41.40962210927086, 1.3228756555322954, 0.6771243444677046, 7.0685834705770345, 1.1426874453625233, 6.213239412698352,
        0.4441845567315004, 0.5908496929635609, 1.1594767756824713, 5.0,
      ],
    ),
  ]),
  ...figures('table of the curtain, derived apart', 0.00006, CURTAIN.flatMap(curtain)),
  ...figures(
    'Perry, ball valves, nwmes.org.uk, table of sink',
    0.0008,
    SINKS.map(([d, bore, sink]): Given => [`ball ${d} in ${bore}, in`, () => ball.sinkBelowEdge(d, bore), sink]),
  ),
  ...figures('exact, where Perry prints 0.029', 0.0001, [['ball 0.156 in 0.125, in', () => ball.sinkBelowEdge(0.15625, 0.125), 0.0313]]),
  ...figures('Artisan, Boiler fittings: 35 to 45 degrees is a ratio of 1.25 to 1.40', 0.03, [
    ['45 degrees', () => 1 / Math.cos((45 * Math.PI) / 180), 1.4],
    ['ball to bore at 35 degrees', () => ball.contactAngle(1.25, 1) / 36.87, 1],
  ]),
  ...relative('cone and plug, derived', 1e-9, [
    ['ball 5 on a cone of 90, lift 1', () => cone.ballConeArea(5, 90, 1), 8.964702368514077],
    ['circle of contact', () => cone.coneContact(5, 90), 3.5355339059327378],
    ['plug of 90 on 6, lift 1', () => there(cone.plugArea(6, 90, 1), 'area'), 12.217928079935508],
    ['plug of 90, full lift', () => cone.plugFullLift(1, 90), 0.4588038998538031],
    ['plug of 120 on 6, lift 1', () => there(cone.plugArea(6, 120, 1), 'area'), 15.146097033011786],
    ['plug of 120, full lift', () => cone.plugFullLift(1, 120), 0.3382039574515255],
    ['plug of 60, full lift: sqrt 3 less 1', () => cone.plugFullLift(1, 60), Math.sqrt(3) - 1],
  ]),
  ...figures('plug, rounded', 0.005, [
    ['60 on 6, lift 1', () => there(cone.plugArea(6, 60, 1), 'area'), 8.745],
    ['turns to full bore, 6, 90 degrees, M6', () => cone.turnsToFull(6, 90, 1), 2.75],
    ['turns to full bore, 6, 60 degrees, M6', () => cone.turnsToFull(6, 60, 1), 4.39],
    ['flat disc at a quarter of the bore', () => cone.discArea(1, 1 / 4) / ball.boreArea(1), 1],
  ]),
  ...relative('mechanics of a ball in water, derived', 1e-6, [
    ...falling(
      7900,
      [
        0.5170537909033203, 0.004428721816971912, 352.42648437500003, 35.93750000000001, 8.055462499999999, 15.756862952896595,
        0.12692881863469777, 28.362353315213873,
      ],
    ),
    ...falling(
      8800,
      [
        0.5759586531581288, 0.005006381184403031, 398.39515625, 40.62500000000001, 8.224932258064516, 15.593687727439287,
        0.12825702521160015, 28.068637909390713,
      ],
    ),
  ]),
  ...relative('Joukowsky 1898, Korteweg 1878', 1e-9, [
    ['wave in copper 6 x 0.8', () => ball.waveSpeed(4.4, 0.8, { bulk: 2.2, density: 998.2 }, 117), 1413.2935189546847],
    ['1 m/s stopped', () => ball.hammer(998.2, ball.waveSpeed(4.4, 0.8, { bulk: 2.2, density: 998.2 }, 117), 1), 14.107495906205664],
  ]),
  ...relative('definition of Kv, IEC 60534', 1e-9, [['bore 4, Cd 0.62', () => flow.kvOfArea(0.62, ball.boreArea(4)), 0.3966605887187789]]),
  ...relative('IEC 60534-2-1 example 1, as in fluids', 0.005, [['Kv', () => flow.kvForWater(360, 4.6, 965.4), 164.995]]),
  ...relative('IEC 60534-2-1 example 2, as in fluids', 0.005, [
    ['Kv, choked', () => flow.kvForWater(360, flow.chokedWaterDrop(0.6, 6.8, 0.701, 221.2), 965.4), 238.058],
  ]),
  ...figures('IEC 60534-2-1, FF at 90 °C', 0.00006, [['FF', () => flow.vapourFactor(0.701, 221.2), 0.94424]]),
  ...figures('unit of Cv, IEC 60534-2-1', 0.0005, [['Kv of one Cv', () => flow.flowFacts.value('cv'), 0.865]]),
  ...relative('isentropic, derived', 1e-9, [
    ['critical ratio, 1.3', () => flow.criticalRatio(1.3), 0.545727733814065],
    ['critical ratio, 1.4', () => flow.criticalRatio(1.4), 0.5282817877171742],
  ]),
  ...figures('isentropic, k 1.135', 0.00006, [
    ['critical ratio', () => flow.criticalRatio(1.135), 0.57743],
    ['choked, 7 bar', () => flux(7), 3.6656],
  ]),
  ...relative('Napier, constant of 70', 1e-7, [
    ['8 bar', () => there(flow.napier(8, 1), 'flow'), 4.1954038496085415],
    ['11 bar', () => there(flow.napier(11, 1), 'flow'), 5.768680293211745],
  ]),
  ...relative('homogeneous equilibrium from IF97, derived', 0.015, [
    ['8 bar', () => there(flow.napier(8, 1), 'flow'), 4.182365328778268],
    ['11 bar', () => there(flow.napier(11, 1), 'flow'), 5.7048101650139085],
  ]),
  ...relative('API 520-I, 7th edition, example 4, as in fluids', 0.001, [
    ['area', () => there(reliefArea(69_615, 12_236, 592.5, 0.975), 'area'), 1103.471242369],
  ]),
  ...relative('API 520-I, as in fluids', 1e-8, [['KN at 10 500 kPa', () => highPressureFactor(10_500), 0.9969100255]]),
  ...relative('Mankenberg, worked example', 0.01, [['1100 kg/h, 7 to 4 bar gauge', () => flow.makersSteamKv(1100, 8, 5), 12.9]]),
  ...relative('single-acting pump, derived', 1e-9, [
    ['ml a minute', () => ball.pumpFlow(8, 12, 300, 0.8), 144.76458947741767],
    ['ml swept', () => ball.pumpFlow(8, 12, 1, 1), 0.6031857894892403],
    ['peak', () => ball.pumpPeak(8, 12, 300), 9474.820225045783],
  ]),
  ...relative('Bourne, Catechism of the Steam Engine, Q. 271', 1e-6, [
    ['kg/(m² h)', () => flow.evaporationRate(1, 9, 998.2), 33.805706666666666],
    [
      'cubic inches a minute on 100 square inches',
      () => (flow.evaporationRate(1, 9, 998.2) / 998.2 / 60) * (100 / 0.0254),
      2.2222222222222223,
    ],
  ]),
  ...figures('Shigley, example 8-1 (from memory)', 0.006, [
    ['raising, N m', () => spindle.raisingTorque(6400, SHIGLEY) / 1000, 26.18],
    ['lowering, N m', () => spindle.loweringTorque(6400, SHIGLEY) / 1000, 9.77],
    ['efficiency', () => spindle.screwEfficiency(6400, SHIGLEY), 0.311],
  ]),
  ...relative('vice screw, inputs of alocentral', 1e-9, [['N mm', () => spindle.raisingTorque(900, VICE), 3538.202835860244]]),
  ...figures('M6 spindle, derived', 0.06, [
    ['100 N, N mm', () => spindle.raisingTorque(100, M6), 62.9],
    ['100 N, square thread of mean 5.5', () => spindle.raisingTorque(100, { ...M6, mean: 5.5, flankAngle: 0 }), 57.7],
  ]),
  ...relative('ASME PVS2017-3518, formula', 1e-9, [['N', () => spindle.packingFriction(4, 9, 3, 0.1), 16.964600329384883]]),
  ...relative('stop valve, derived', 1e-6, [
    ['force, N', force, 192.50108984871457],
    ['torque, N mm', () => spindle.raisingTorque(force(), M6) + (spindle.packingFriction(4, 9, 3, 0.1) * 4) / 2, 155.01269469692218],
  ]),
  ...figures('Tribology Handbook, table 25.2', 0.0001, [
    ['shaft 4', () => there(spindle.packingWidth(4, 'any'), 'width'), 3],
    ['shaft 12', () => there(spindle.packingWidth(12, 'any'), 'width'), 3],
    ['shaft 15', () => there(spindle.packingWidth(15, 'any'), 'width'), 5],
    ['shaft 15, expanded graphite', () => there(spindle.packingWidth(15, 'expanded graphite'), 'width'), 3],
    ['shaft 20', () => there(spindle.packingWidth(20, 'any'), 'width'), 6.5],
    ['shaft 50', () => there(spindle.packingWidth(50, 'any'), 'width'), 8],
  ]),
  ...figures('square in torsion, 0.208 s³', 0.05, [['155 N mm on 3, MPa', () => spindle.squareShear(155, 3), 27.6]]),
  ...figures('geometry of a square', 0.00006, [
    ['4 on 5, flat', () => toMm(squareOn(mm(5), mm(4)).width), 3],
    ['4 on 5, depth', () => toMm(squareOn(mm(5), mm(4)).flat), 0.5],
  ]),
  ...relative('Lamé', 1e-12, [
    ['5 in 100 to 150, inside', () => lame(100, 150, 5).inside, 13],
    ['5 in 100 to 150, outside', () => lame(100, 150, 5).outside, 8],
    ['20 and 5, 30 to 50, inside', () => lame(30, 50, 20, 5).inside, 26.875],
    ['20 and 5, 30 to 50, outside', () => lame(30, 50, 20, 5).outside, 11.875],
    ['20 and 5, 30 to 50, along', () => lame(30, 50, 20, 5).axial, 3.4375],
    ['bore 8, outside 12, 1 MPa', () => lame(4, 6, 1).inside, 2.6],
  ]),
  ...figures('expertsmind.com: hoop 45 at the bore, 25 within, 12.4 without', 0.05, [['hoop', () => lame(0.2, 0.25, 25, 12.4).inside, 45]]),
  ...figures('ro = ri sqrt((S + p) / (S − p))', 0.0005, [
    ['1 MPa, 18 MPa, bore 12: wall', () => there(outerRadius(6, 1, 18), 'radius') - 6, 0.343],
  ]),
  ...relative('UK Copper Board, formula', 1e-9, [
    ['12 x 0.6, bar', () => pipePressure(12.04, 0.6, 60), 62.93706293706294],
    ['15 x 0.7, bar', () => pipePressure(15.04, 0.7, 60), 58.57740585774059],
  ]),
  ...figures('Lawton Tubes, EN 1057', 0.7, [
    ['12 x 0.6, bar', () => pipePressure(12.04, 0.6, 60), 63],
    ['15 x 0.7, bar', () => pipePressure(15.04, 0.7, 60), 58],
  ]),
  ...figures("Lloyd's Register SSC part 15 chapter 1, table 1.6.2", 0.001, [
    ...(
      [
        [50, 41.2],
        [75, 41.2],
        [100, 40.2],
        [125, 40.2],
        [150, 34.3],
        [175, 27.5],
        [200, 18.6],
        [162.5, 30.9],
      ] as const
    ).map(([celsius, stress]): Given => [`${celsius} °C`, () => there(copperStress(celsius), 'stress').stress, stress]),
  ]),
  ...figures('ISO 724, to the micrometre', 0.0006, [
    ['M10x1 core', () => toMm(basicThread(10, 1).minor), 8.9175],
    ['M6x1 core', () => toMm(basicThread(6, 1).minor), 4.9175],
    ['M12x1 core', () => toMm(basicThread(12, 1).minor), 10.9175],
  ]),
  ...relative('FED-STD-H28/2B form on basic sizes; ISO 898', 2e-6, [
    ...threadAreas(10, 1, 5, [105.05646894905101, 137.44467380264706, 64.49401318171942]),
    ...threadAreas(6, 1, 6, [69.51908199726003, 98.96016513790589, 20.12337748036676]),
    ...threadAreas(12, 1, 6, [154.3421031096618, 197.92033027581178, 96.10410899316513]),
  ]),
];
