/** A plan of one plug turned in two grips: enough for the commands and the reasons; no figure in it is advice. */
import { len, mm } from '../../src/base/units.ts';
import type { Cylinder, Limits, Part } from '../../src/model/part.ts';
import type { Because, Before, Claim, Grip, Method, Operation, Plan, PlannedPart, Route, Verb } from '../../src/model/plan.ts';
import type { Workshop } from '../../src/model/workshop.ts';

export const because = (rule: string, grounds: Because['grounds'] = {}): Because => ({ rule, grounds });
const limits = (lo: number, hi: number): Limits => ({
  lo: mm(lo),
  hi: mm(hi),
  target: mm((lo + hi) / 2),
  from: { kind: 'stated', as: 'sample' },
});

function operation(feature: string, step: string, verb: Verb, ends: readonly ('first' | 'second')[]): Operation {
  const id = `plug/${feature}/${step}`;
  const ways = Object.fromEntries(ends.map((end) => [end, { cuts: [], sweeps: [] }]));
  return {
    id,
    feature: `plug/${feature}`,
    verb,
    tool: { kind: 'turning', key: 'turning', material: 'HSS' },
    ways,
    light: false,
    because: [because(`${verb}-it`)],
    says: [],
  };
}
function method(name: string, operations: readonly Operation[], rank = 0): Method {
  return { feature: operations[0]?.feature ?? '', name, because: because(`way-${name}`), operations, rank };
}
function grip(id: string, kind: Grip['kind'], out: Grip['out']): Grip {
  const held = { from: mm(2), to: mm(14), diameter: mm(20) };
  return {
    ...held,
    id: `plug/${id}`,
    kind,
    out,
    on: ['plug/D'],
    ready: [],
    gone: [],
    hides: [],
    lightOnly: false,
    runout: mm(0.1),
    because: [because(`held-${kind}`)],
  };
}

const face = operation('second', 'face', 'face', ['first', 'second']);
const bore = operation('hole', 'bore', 'bore', ['second']);
const drill = operation('hole', 'drill', 'drill', ['first', 'second']);
const part: Part = {
  ...{ id: 'plug', kind: 'turned-part', quantity: 1, use: 'fitting', ring: [], features: [], dimensions: [], length: mm(16) },
  stock: { from: 'bar', section: 'round', across: mm(20), material: 'PB102' },
  surfaces: [
    {
      shape: 'cylinder',
      id: 'plug/D',
      feature: 'plug/D',
      role: 'free',
      side: 'outside',
      size: limits(19.9, 20.1),
      from: len(0),
      to: mm(16),
    } satisfies Cylinder,
  ],
};
const drillFirst: Before = { first: drill.id, then: bore.id, force: 'strict', because: because('drill-before-bore') };
const faceFirst: Before = { first: face.id, then: drill.id, force: 'preferred', because: because('face-before-drill') };
/** Binds only when the bore is made from the first end, which it is not. */
const idle: Before = { first: face.id, then: bore.id, force: 'strict', when: { op: bore.id, from: 'first' }, because: because('idle') };
const ways = {
  drillAndBore: method('drill-and-bore', [drill, bore]),
  ream: method('ream', [operation('hole', 'ream', 'ream', ['second'])], 1),
  face: method('face', [face]),
};
const route: Route = {
  ...{ part: 'plug', asGood: '2', proved: 'best', states: 17, befores: [drillFirst, faceFirst, idle], broken: [faceFirst] },
  setUps: [
    { no: 1, grip: grip('bar', 'bar', 'second'), operations: [drill.id, face.id] },
    { no: 2, grip: grip('jaws', 'jaws', 'second'), operations: [bore.id] },
  ],
  chosen: [ways.drillAndBore, ways.face],
  cost: { setUps: 2, tooling: 0, broken: 1, toolChanges: 2, minutes: 80, rank: 0 },
  runnersUp: [{ grips: ['plug/bar', 'plug/collet'], cost: { setUps: 2, tooling: 1, broken: 0, toolChanges: 2, minutes: 80, rank: 0 } }],
  refused: [{ what: 'plug/collet', because: because('grip-too-short', { has: 2, wants: 16 }), has: mm(2), wants: mm(16) }],
};
const claims: readonly Claim[] = [{ kind: 'shape', about: 'plug', holds: true, grounds: {} }];
export const planned: PlannedPart = {
  ...{ part, route, figures: [] },
  candidates: {
    part,
    grips: [],
    befores: route.befores,
    refused: route.refused,
    methods: [
      { feature: 'plug/hole', any: [ways.drillAndBore, ways.ream] },
      { feature: 'plug/second', any: [ways.face] },
    ],
  },
  chart: { part: 'plug', working: [], drawing: [] },
  proof: { part: 'plug', claims, holds: true, replays: 1 },
};
/** Of the workshop the commands look at what it does not say, and there is nothing. */
const workshop = { name: 'Sample', taken: [] as Workshop['taken'] } as Workshop;
export const plan: Plan = {
  ...{
    version: '1',
    workshop,
    parts: [planned],
    mark: '0123abcd',
    sequence: [
      { part: 'plug', setUp: 1 },
      { part: 'plug', setUp: 2 },
    ],
  },
  fitting: {
    kind: 'turned-part',
    title: 'Plug',
    parts: [part],
    bought: [],
    chains: [],
    derivations: [],
    assembly: [],
    tests: [],
    cautions: [],
  },
};
export const failing: Claim = {
  ...{ kind: 'dimension', at: bore.id, about: 'plug/D.hole', holds: false, grounds: {} },
  worst: { lo: mm(4.4), hi: mm(4.6), limits: limits(4.45, 4.55), corner: {} },
};
export const unproved: Plan = { ...plan, parts: [{ ...planned, proof: { ...planned.proof, claims: [...claims, failing], holds: false } }] };
