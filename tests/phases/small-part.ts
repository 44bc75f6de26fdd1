/** Parts of a few faces and routes of a few grips, for the chart: only what a chart looks at is filled in. */
import { type Len, len, mm } from '../../src/base/units.ts';
import type { End } from '../../src/model/ids.ts';
import type { Face, Limits, Part } from '../../src/model/part.ts';
import type { Cut, Grip, GripKind, Operation, Route, SetUp, Verb } from '../../src/model/plan.ts';

export const PART = 'plug';
export const id = (name: string): string => `${PART}/${name}`;
export const limits = (lo: number, hi: number): Limits => ({
  lo: mm(lo),
  hi: mm(hi),
  target: mm((lo + hi) / 2),
  from: { kind: 'stated', as: 'test' },
});

export type FaceAsk = readonly [name: string, z: number, air: End];
export type LengthAsk = readonly [a: string, b: string, lo: number, hi: number];

export function smallPart(faces: readonly FaceAsk[], lengths: readonly LengthAsk[]): Part {
  const surfaces = faces.map(
    ([name, z, air]): Face => ({ shape: 'face', id: id(name), feature: id(name), role: 'free', side: 'outside', air, z: mm(z) }),
  );
  const [first, last] = [surfaces[0], surfaces.at(-1)];
  const end = (face: Face | undefined, at: End) =>
    face ? [{ kind: 'end', id: face.feature, role: 'free', end: at, face: face.id } as const] : [];
  return {
    id: PART,
    kind: 'plug',
    quantity: 1,
    use: 'fitting',
    stock: { from: 'bar', section: 'round', across: mm(20), material: 'PB102' },
    ring: surfaces.map((face) => face.id),
    surfaces,
    features: [...end(first, 'first'), ...end(last, 'second')],
    dimensions: lengths.map(([a, b, lo, hi]) => ({ id: id(`${a}-${b}`), a: id(a), b: id(b), limits: limits(lo, hi) })),
    length: len(mm(faces.at(-1)?.[1] ?? 0) - mm(faces[0]?.[1] ?? 0)),
  };
}

/** 'A' is cut to size; 'A+0.3' leaves 0.3. */
export type CutAsk = string;
export type SetUpAsk = {
  readonly grip: GripKind;
  readonly out: End;
  readonly datum?: string;
  readonly cuts: readonly CutAsk[];
  readonly verb?: Verb;
};

export function smallRoute(asks: readonly SetUpAsk[]): Route {
  const operations: Operation[] = [];
  const setUps = asks.map((ask, i): SetUp => {
    const made = ask.cuts.map((cut, k) => operation(`${i + 1}.${k + 1}`, ask, cut));
    operations.push(...made);
    return { no: i + 1, grip: gripOf(ask, i), operations: made.map((one) => one.id) };
  });
  const chosen = [{ feature: id('all'), name: 'test', because: { rule: 'test', grounds: {} }, operations, rank: 0 }];
  return {
    ...{ part: PART, setUps, chosen, cost: { setUps: asks.length, tooling: 0, broken: 0, toolChanges: 0, minutes: 0, rank: 0 } },
    ...{ asGood: '1', proved: 'best', states: 0, runnersUp: [], refused: [], befores: [], broken: [] },
  };
}

function operation(step: string, ask: SetUpAsk, text: CutAsk): Operation {
  const [name = '', leaves = '0'] = text.split('+');
  const cut: Cut = { makes: id(name), stage: text.includes('+') ? 'rough' : 'final', measures: 'length', leaves: mm(Number(leaves)) };
  const way = { cuts: [cut], sweeps: [] };
  return {
    ...{ id: id(`${name}/${step}`), feature: id(name), verb: ask.verb ?? 'face', light: true, because: [], says: [] },
    tool: { kind: 'turning', key: 'turning', material: 'HSS' },
    ways: ask.grip === 'bench' ? { bench: way } : ask.out === 'first' ? { first: way } : { second: way },
  };
}

function gripOf(ask: SetUpAsk, i: number): Grip {
  const zero: Len = len(0);
  return {
    ...{
      id: id(`grip.${i + 1}`),
      kind: ask.grip,
      out: ask.out,
      on: [],
      from: zero,
      to: zero,
      diameter: zero,
      ready: [],
      gone: [],
      hides: [],
    },
    ...{ lightOnly: false, runout: zero, because: [], ...(ask.datum ? { datum: id(ask.datum) } : {}) },
  };
}
