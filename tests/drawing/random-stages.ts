/** Stepped work of any kind in any hold, with sizes and balloons for all that was cut: for properties of pictures. */
import fc from 'fast-check';
import type { StageView, ToolShown } from '../../src/drawing/stage.ts';
import type { Stage } from '../../src/model/stage.ts';
import { ADVANCES, type Corner, len, outline, rectangle } from './stages.ts';

export type Plan = {
  /** From the free end: length and diameter of each step, mm. */
  readonly steps: readonly (readonly [number, number])[];
  readonly bore: number;
  readonly boreDepth: number;
  readonly held: number;
  readonly beyond: number;
  readonly kind: 'bar' | 'jaws' | 'collet' | 'sleeve' | 'threaded-mandrel';
  readonly out: 'first' | 'second';
  readonly thread: boolean;
  readonly diameters: number;
  readonly frame: readonly [number, number];
  readonly tool: ToolShown | undefined;
};

const TOOLS: readonly (ToolShown | undefined)[] = [
  undefined,
  ...(['knife', 'facing', 'blade', 'vee', 'die'] as const).map((form) => ({ form, side: 'outside' }) as const),
  { form: 'knife', side: 'inside' },
  ...[len(2), len(3), len(3.5)].map((diameter) => ({ form: 'drill', side: 'inside', diameter, point: 118 }) as const),
];

const tenths = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);

export const anyPlan: fc.Arbitrary<Plan> = fc.record({
  steps: fc.array(fc.tuple(tenths(1, 12), tenths(4, 20)), { minLength: 1, maxLength: 6 }),
  bore: fc.constantFrom(0, 2, 3, 3.5),
  boreDepth: tenths(3, 60),
  held: tenths(4, 30),
  beyond: fc.constantFrom(0, 2, 60),
  kind: fc.constantFrom('bar', 'jaws', 'collet', 'sleeve', 'threaded-mandrel'),
  out: fc.constantFrom('first', 'second'),
  thread: fc.boolean(),
  diameters: fc.integer({ min: 0, max: 3 }),
  frame: fc.constantFrom([161, 85] as const, [161, 100] as const, [180, 75] as const),
  tool: fc.constantFrom(...TOOLS),
});

/** Places along the work count from the free end into the headstock; z is turned round for an out end 'second'. */
export function viewOf(plan: Plan): StageView {
  const sign = plan.out === 'first' ? 1 : -1;
  const stock = 22;
  const cut = plan.steps.reduce((sum, [length]) => sum + length, 0);
  const end = cut + plan.held + plan.beyond;
  const bore = plan.bore > 0 && plan.boreDepth < end ? plan.bore : 0;
  return {
    stage: stageOf(plan, sign, cut, end, bore, stock),
    hold: {
      kind: plan.kind,
      from: len(Math.min(sign * cut, sign * (cut + plan.held))),
      to: len(Math.max(sign * cut, sign * (cut + plan.held))),
      diameter: len(stock),
      datum: { z: len(0), letter: 'S' },
    },
    lengths: stationsOf(plan)
      .slice(1)
      .map((z, i) => ({ id: `L${i}`, from: len(0), to: len(sign * z), text: [z.toFixed(2), '±0.05'] })),
    diameters: plan.steps.slice(0, plan.diameters).map(([length, d], i) => ({
      id: `D${i}`,
      z: len(sign * ((stationsOf(plan)[i] ?? 0) + length / 2)),
      d: len(d),
      side: 'outside',
      text: [`Ø ${d.toFixed(2)}`, '+0', '−0.05'],
    })),
    balloons: [
      ...plan.steps.flatMap((_, i) => [
        { text: String(20 * i + 10), surface: `face${i}` },
        { text: String(20 * i + 20), surface: `step${i}` },
      ]),
      ...(bore > 0
        ? [
            { text: '300', surface: 'bore' },
            { text: '310', surface: 'bore' },
          ]
        : []),
    ],
    ...(plan.tool ? (plan.diameters % 2 === 0 ? { tool: plan.tool } : { toolIfFree: plan.tool }) : {}),
    frame: { width: plan.frame[0], height: plan.frame[1] },
    words: { alt: 'a grip', headstock: 'headstock', legend: { made: 'new surface', taken: 'removed in this grip' } },
    advances: ADVANCES,
  };
}

function stationsOf(plan: Plan): readonly number[] {
  const places = [0];
  for (const [length] of plan.steps) places.push(Math.round(((places.at(-1) ?? 0) + length) * 10) / 10);
  return places;
}

function stageOf(plan: Plan, sign: number, cut: number, end: number, bore: number, stock: number): Stage {
  const places = stationsOf(plan);
  const outside = plan.steps.flatMap(([, d], i): readonly Corner[] => [
    [sign * (places[i] ?? 0), d, `step${i}`, `turn${i}`],
    [sign * (places[i + 1] ?? 0), d, `face${i + 1}`, `face${i + 1}`],
  ]);
  const depth = Math.min(plan.boreDepth, end);
  const corners: readonly Corner[] = [
    [0, bore, 'face0', 'face0'],
    ...outside,
    [sign * cut, stock, 'bar', ''],
    [sign * end, stock, 'sawn', ''],
    [sign * end, 0, '', ''],
    ...(bore > 0
      ? ([
          [sign * depth, 0, 'floor', 'bore'],
          [sign * depth, bore, 'bore', 'bore'],
          [0, bore],
        ] as const)
      : ([[0, 0]] as const)),
  ];
  const first = plan.steps[0] ?? [1, 4];
  const root = first[1] - 1;
  return {
    out: plan.out,
    outlines: [outline(corners)],
    threads:
      plan.thread && root > 3.6 ? [{ polygon: rectangle(0, sign * first[0], root, first[1]), side: 'outside', surface: 'step0' }] : [],
    taken: plan.steps.map(([, d], i) => ({
      polygon: rectangle(sign * (places[i] ?? 0), sign * (places[i + 1] ?? 0), d, stock),
      by: `turn${i}`,
    })),
    before: [
      outline([
        [-sign * 0.5, 0, 'sawn', ''],
        [-sign * 0.5, stock, 'bar', ''],
        [sign * end, stock, 'sawn', ''],
        [sign * end, 0],
      ]),
    ],
  };
}
