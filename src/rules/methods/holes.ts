/** Round holes on the axis: drilled, bored, or finished by a single-lip tool steered by its own bore. */
import { add, type Len, len, minus, mm } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Bound, Cut, Method, Operation, Refusal, Way } from '../../model/plan.ts';
import {
  type Context,
  coneDepth,
  depthFrom,
  ENDS,
  fact,
  farther,
  type Hole,
  length,
  nearer,
  operation,
  scaled,
  waysBy,
} from '../context.ts';
import { CUSTOM, type MethodRule, methodRule, type Offer } from '../rule.ts';
import { type Boring, boringFor, boringTool, centreDrill, drill, drillUnder, drillWithin } from '../tools.ts';

const ZERO = 0 as Len;
const isHole = (f: { readonly kind: string }): f is Hole => f.kind === 'hole';

/** A hole that may be as the drill leaves it. */
export const drilled: MethodRule = methodRule({
  id: 'drill-to-size',
  source: CUSTOM,
  when: (c, f) => {
    if (!isHole(f) || f.role === 'seat' || f.role === 'running' || f.floor) return undefined;
    const size = drillWithin(c.workshop, c.cylinder(f.cylinder).size);
    return size === undefined ? undefined : { f, size };
  },
  then: ({ f, size }, c) => ({
    methods: [
      { feature: f.id, name: 'drill', because: { rule: 'drill-to-size', grounds: {} }, operations: drilling(c, f, size, 'final'), rank: 0 },
    ],
  }),
});

/** A single point makes it round and to size, with a flat floor where there is one. */
export const bored: MethodRule = methodRule({
  id: 'bore',
  source: CUSTOM,
  when: (_c, f) => (isHole(f) && f.role !== 'seat' ? { f } : undefined),
  then: ({ f }, c) => {
    const size = c.cylinder(f.cylinder).size.target;
    const pilot = pilotHole(c, f);
    const start = pilot ? startOf(c, pilot) : drillUnder(c.workshop, minus(size, length('drill.for-bore')));
    if (start === undefined) return refusal(f, 'no-drill', ZERO, size);
    const ways = waysBy((end) => (f.opens.includes(end) ? boreWay(c, f, end, start) : undefined));
    const tool = toolOf(c, f, start);
    if ((!ways.first && !ways.second) || !tool) return boreRefused(c, f, start);
    const op = operation({ feature: f.id, step: 'bore', verb: 'bore', tool: boringTool(tool, c.workshop), ways }, [
      { rule: 'bore', grounds: {} },
    ]);
    const before = pilot ? [] : drilling(c, f, start, 'rough');
    return { methods: [{ feature: f.id, name: 'bore', because: { rule: 'bore', grounds: {} }, operations: [...before, op], rank: 1 }] };
  },
});

/** The seat of a ball, bored from the side of its edge in one setting with what lies round it. */
export const seatBored: MethodRule = methodRule({
  id: 'seat-bored',
  source: CUSTOM,
  when: seatGrounds,
  then: (g, c) => {
    const start = seatPilot(c, g.f);
    if (start === undefined) return refusal(g.f, 'no-drill', ZERO, g.size);
    const ways = waysBy((end) => boreWay(c, g.f, end, start));
    const tool = toolOf(c, g.f, start);
    if ((!ways.first && !ways.second) || !tool) return boreRefused(c, g.f, start);
    const op = operation({ feature: g.f.id, step: 'bore', verb: 'bore', tool: boringTool(tool, c.workshop), ways }, [
      { rule: 'seat-bored', grounds: {} },
    ]);
    const method: Method = {
      feature: g.f.id,
      name: 'bore',
      because: { rule: 'seat-bored', grounds: {} },
      operations: [...drilling(c, g.f, start, 'rough'), op, stone(g.f)],
      rank: 0,
    };
    return { methods: [method] };
  },
});

/** The seat of a ball, finished from the far side: the tool arrives held by the bore that it has cut. */
export const seatByDBit: MethodRule = methodRule({
  id: 'seat-from-far-side',
  source: CUSTOM,
  when: seatGrounds,
  then: (g, c) => {
    const { f, far, size } = g;
    const start = seatPilot(c, f);
    const deep = coneAt(c, f, far);
    const tool = dBitFor(c, f, size);
    if (start === undefined || !tool) return refusal(f, 'no-silver-steel', ZERO, size);
    if (minus(c.part.length, deep) < scaled(size, 'single-lip.bore.least'))
      return refusal(f, 'bore-too-short-to-guide', minus(c.part.length, deep), scaled(size, 'single-lip.bore.least'));
    const enters = boringFor(c.workshop, start, add(deep, scaled(size, 'single-lip.guide.least')));
    if (!enters.tool) return boreRefused(c, f, start);
    const begin = add(deep, len(Math.min(scaled(size, 'single-lip.guide.start'), minus(enters.tool.reach, deep))));
    const operations = [
      ...drilling(c, f, start, 'rough'),
      startBore(c, g, enters.tool, begin),
      dBit(g, tool, minus(begin, deep)),
      stone(f),
    ];
    return { methods: [{ feature: f.id, name: 'd-bit', because: { rule: 'seat-from-far-side', grounds: {} }, operations, rank: 0 }] };
  },
});

/** A fluted reamer follows the lobes of the drilled hole; it is named only to be refused. */
export const reamerRefused: MethodRule = methodRule({
  id: 'reamer-follows-lobes',
  source: CUSTOM,
  when: (c, f) => {
    const g = seatGrounds(c, f);
    return g && c.workshop.tools.reamers.includes(g.size) ? g : undefined;
  },
  then: ({ f, size }) => ({ refused: [{ what: `${f.id}/ream`, because: { rule: 'reamer-follows-lobes', grounds: {} }, wants: size }] }),
});

type Seat = { readonly f: Hole; readonly edge: End; readonly far: End; readonly size: Len };
function seatGrounds(c: Context, f: { readonly kind: string }): Seat | undefined {
  if (!isHole(f) || f.role !== 'seat' || !f.edge) return undefined;
  const edge = c.face(f.edge).air;
  return { f, edge, far: other(edge), size: c.cylinder(f.cylinder).size.target };
}

function seatPilot(c: Context, f: Hole): Len | undefined {
  const { size, from, to } = c.cylinder(f.cylinder);
  const deep = minus(to, from) > scaled(size.target, 'single-lip.deep');
  return drillUnder(c.workshop, minus(size.target, length(deep ? 'single-lip.stock.deep' : 'single-lip.stock.short')));
}

function refusal(f: Hole, rule: string, has: Len, wants: Len): Offer {
  return { refused: [{ what: f.id, because: { rule, grounds: {} }, has, wants }] };
}

function boreRefused(c: Context, f: Hole, start: Len): Offer {
  const end = f.opens[0] ?? 'first';
  const wants = reachFor(c, f, end);
  const { best } = boringFor(c.workshop, start, wants);
  const refused: Refusal = {
    what: `${f.id}/bore`,
    because: { rule: best ? 'boring-reach' : 'no-boring-tool', grounds: {} },
    has: best?.reach ?? ZERO,
    wants,
  };
  return { refused: [refused] };
}

// ---- drilling ------------------------------------------------------------------------------------------------------------
function drilling(c: Context, f: Hole, size: Len, stage: Cut['stage']): readonly Operation[] {
  const solid = pilotHole(c, f) === undefined;
  const centre = solid ? centring(c, f, size) : [];
  const pilot = solid && size > length('drill.pilot-above') ? drillUnder(c.workshop, scaled(size, 'drill.pilot-ratio')) : undefined;
  const first = pilot ? [drillOp(c, f, 'drill-pilot', pilot, 'rough', 'small-drill-first')] : [];
  return [...centre, ...first, drillOp(c, f, 'drill', size, stage, 'drill')];
}

function centring(c: Context, f: Hole, size: Len): readonly Operation[] {
  const tool = centreDrill(c.workshop, size);
  if (!tool) return [];
  const ways = waysBy((end) => {
    const face = f.opens.includes(end) ? c.end(end)?.face : undefined;
    return face === undefined
      ? undefined
      : {
          cuts: [],
          sweeps: [{ take: 'bore', cylinder: f.cylinder, diameter: tool.mouth, to: { face, beyond: ZERO }, point: fact('coupling.cone') }],
        };
  });
  return [operation({ feature: f.id, step: 'centre', verb: 'centre', tool: tool.tool, ways }, [{ rule: 'centre-small', grounds: {} }])];
}

function drillOp(c: Context, f: Hole, step: string, size: Len, stage: Cut['stage'], rule: string): Operation {
  const nominal = c.cylinder(f.cylinder).size.target;
  const ways = waysBy((end): Way | undefined => {
    const to = f.opens.includes(end) ? drillTo(c, f, end, size) : undefined;
    if (!to) return undefined;
    const cut: Cut = { makes: f.cylinder, stage, measures: 'diameter', leaves: stage === 'final' ? ZERO : minus(nominal, size) };
    return { cuts: [cut], sweeps: [{ take: 'bore', cylinder: f.cylinder, diameter: size, to, point: fact('drill.point') }] };
  });
  return operation(
    { feature: f.id, step, verb: 'drill', tool: drill(size), ways },
    [{ rule, grounds: {} }],
    [{ rule: 'drill-break-through', grounds: {} }],
  );
}

/** Right through where everything beyond is open; else until the point reaches the floor. */
function drillTo(c: Context, f: Hole, end: End, size: Len): Bound | undefined {
  const beyond = c.end(other(end));
  const openBeyond = f.opens.includes(other(end)) || f.floor === undefined || smallerBeyond(c, f, end) !== undefined;
  if (openBeyond && beyond) return { face: beyond.face, beyond: length('drill.past') };
  return f.floor ? { face: f.floor, beyond: len(-pointLength(size)) } : undefined;
}

/** Length of the drill's point, up to the next tenth of a millimetre. */
function pointLength(size: Len): Len {
  const exact = size / (2 * Math.tan((fact('drill.point') * Math.PI) / (2 * fact('turn.half'))));
  const tenth = mm(1 / 10);
  return len(Math.ceil(exact / tenth) * tenth);
}

/** The hole that goes on, smaller, from this one's floor or far side. */
function smallerBeyond(c: Context, f: Hole, end: End): Hole | undefined {
  const mine = c.cylinder(f.cylinder);
  return c.holes.find(
    (h) => nearer(end, c.cylinder(h.cylinder)) === farther(end, mine) && c.cylinder(h.cylinder).size.target < mine.size.target,
  );
}

/** A smaller hole through which this one's tool may start: it is drilled first. */
function pilotHole(c: Context, f: Hole): Hole | undefined {
  for (const end of ENDS) {
    const found = f.opens.includes(end) ? smallerBeyond(c, f, end) : undefined;
    if (found) return found;
  }
  return undefined;
}

/** Diameter that the pilot's drill leaves. */
function startOf(c: Context, pilot: Hole): Len | undefined {
  const size = c.cylinder(pilot.cylinder).size;
  if (pilot.role === 'seat') return seatPilot(c, pilot);
  if (pilot.role !== 'running')
    return drillWithin(c.workshop, size) ?? drillUnder(c.workshop, minus(size.target, length('drill.for-bore')));
  return drillUnder(c.workshop, minus(size.target, length('drill.for-bore')));
}

// ---- single point and single lip -----------------------------------------------------------------------------------------
/** To the floor; past a far side that is open; or, where a cone is to come, as far as the cone will not take away. */
function boreTo(c: Context, f: Hole, end: End): Bound | undefined {
  if (f.floor) return { face: f.floor };
  const cone = coneAt(c, f, other(end));
  const last = c.part.surfaces
    .filter((s) => s.shape === 'face')
    .map((s) => c.face(s.id))
    .find((s) => s.z === farther(end, c.cylinder(f.cylinder)));
  return last && { face: last.id, beyond: cone > 0 ? len(length('bore.past') - cone) : length('bore.past') };
}

function reachFor(c: Context, f: Hole, end: End): Len {
  const to = boreTo(c, f, end);
  return add(depthFrom(end, farther(end, c.cylinder(f.cylinder)), c.part), to?.beyond ?? ZERO);
}

function boreWay(c: Context, f: Hole, end: End, start: Len): Way | undefined {
  const to = boreTo(c, f, end);
  const reach = reachFor(c, f, end);
  if (!to || !boringFor(c.workshop, start, reach).tool) return undefined;
  const floor: readonly Cut[] = f.floor ? [{ makes: f.floor, stage: 'final', measures: 'length', leaves: ZERO }] : [];
  return {
    cuts: [{ makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO }, ...floor],
    sweeps: [{ take: 'bore', cylinder: f.cylinder, diameter: c.cylinder(f.cylinder).size.target, to }],
    reach,
  };
}

function toolOf(c: Context, f: Hole, start: Len): Boring | undefined {
  const reaches = f.opens.map((end) => reachFor(c, f, end)).sort((a, b) => a - b);
  for (const reach of [...reaches].reverse()) {
    const { tool } = boringFor(c.workshop, start, reach);
    if (tool) return tool;
  }
  return undefined;
}

/** Depth of a cone that opens this hole at that end; 0 where there is none. */
function coneAt(c: Context, f: Hole, end: End): Len {
  const cone = c.part.features.find(
    (k) => k.kind === 'cone' && k.from === end && c.cone(k.cone).side === 'inside' && c.cone(k.cone).until === f.cylinder,
  );
  return cone?.kind === 'cone' ? coneDepth(c.cone(cone.cone), c.cylinder(f.cylinder)) : ZERO;
}

function startBore(c: Context, g: Seat, tool: Boring, depth: Len): Operation {
  const face = c.end(g.far)?.face;
  if (!face) throw new Error(`${g.f.id}: no far end`);
  const way: Way = {
    cuts: [{ makes: g.f.cylinder, stage: 'rough', measures: 'diameter', leaves: ZERO }],
    sweeps: [{ take: 'bore', cylinder: g.f.cylinder, diameter: g.size, to: { face, beyond: depth } }],
    reach: depth,
  };
  return operation(
    { feature: g.f.id, step: 'bore-start', verb: 'bore-start', tool: boringTool(tool, c.workshop), ways: { [g.far]: way } },
    [{ rule: 'start-bore', grounds: {} }],
  );
}

function dBitFor(c: Context, f: Hole, size: Len): Operation['tool'] | undefined {
  const base = { kind: 'd-bit', key: `d-bit-${size}`, size, material: 'silver steel' as const };
  if (c.workshop.tools.dBits.includes(size)) return base;
  if (!c.workshop.tools.silverSteel.includes(size)) return undefined;
  const { from, to } = c.cylinder(f.cylinder);
  return { ...base, made: { kind: 'd-bit', diameter: size, length: add(minus(to, from), length('d-bit.shank')) } };
}

function dBit(g: Seat, tool: Operation['tool'], guide: Len): Operation {
  const edge = g.f.edge ?? '';
  const way: Way = {
    cuts: [{ makes: g.f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO }],
    sweeps: [{ take: 'bore', cylinder: g.f.cylinder, diameter: g.size, to: { face: edge, beyond: length('bore.past') } }],
    guide: { diameter: g.size, least: len(Math.min(guide, scaled(g.size, 'single-lip.guide.least'))) },
  };
  return operation(
    { feature: g.f.id, step: 'd-bit', verb: 'd-bit', tool, ways: { [g.far]: way } },
    [{ rule: 'seat-from-far-side', grounds: {} }],
    [{ rule: 'd-bit-stop', grounds: {} }],
  );
}

const stone = (f: Hole): Operation =>
  operation(
    {
      feature: f.id,
      step: 'stone',
      verb: 'stone',
      tool: { kind: 'stone', key: 'bench-stone', material: 'none' },
      ways: { bench: { cuts: [], sweeps: [] } },
      light: true,
    },
    [{ rule: 'stone-the-burr', grounds: {} }],
  );
