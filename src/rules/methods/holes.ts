/** Round holes on the axis: drilled, bored, or finished by a single-lip tool steered by its own bore. */
import { add, type Len, len, minus } from '../../base/units.ts';
import { held, heldBy } from '../../handbook/capability.ts';
import type { Cut, Method, Refusal, Sweep, Way } from '../../model/plan.ts';
import { asIf, type Context, fact, type Hole, length, operation, scaled, waysBy } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule, type Offer } from '../rule.ts';
import { boringFor, boringTool, drillUnder, drillWithin, type Instead, noBoring } from '../tools.ts';
import { drilling, drillOp, FOR_REAMER, isTrimmed, pilotHole, pointRoom, startOf, TO_SIZE, UNDER } from './drilling.ts';
import { isHole, type Seat, seatGrounds, seatPilot } from './seat.ts';
import { boreWay, coneAt, dBit, dBitFor, reachFor, reamWay, startBore, stone, toolOf } from './single-lip.ts';

const ZERO = 0 as Len;

/** A hole that may be as the drill leaves it. */
export const drilled: MethodRule = methodRule({
  id: 'drill-to-size',
  source: CUSTOM,
  when: (c, f) => {
    const size = isHole(f) ? sizeOfDrill(c, f) : undefined;
    return isHole(f) && size !== undefined ? { f, size } : undefined;
  },
  then: ({ f, size }, c) => {
    const again = isTrimmed(c, f) ? drilledAgain(c, f, size) : undefined;
    if (again) return { methods: [again] };
    const because = { rule: 'drill-to-size', grounds: {} };
    return { methods: [{ feature: f.id, name: 'drill', because, operations: drilling(c, f, size, TO_SIZE), rank: 0 }] };
  },
});

/** Of the drill that may leave a hole as it is to stay. */
export function sizeOfDrill(c: Context, f: Hole): Len | undefined {
  if (f.role === 'seat' || f.role === 'running' || f.floor || f.centre || f.madeTo) return undefined;
  const limits = c.cylinder(f.cylinder).size;
  const size = drillWithin(c.workshop, limits);
  // a drill cuts over its size by what it holds: that must fit too
  return size === undefined || size + held('drill', 'diameter', 'final', size) > limits.hi ? undefined : size;
}

/** Under size first; to size when what was soldered in stands into it and is to be trimmed. A boring tool does that more gently. */
function drilledAgain(c: Context, f: Hole, size: Len): Method | undefined {
  const under = drillUnder(c.workshop, minus(c.cylinder(f.cylinder).size.target, length('drill.for-bore')));
  if (under === undefined) return undefined;
  const because = { rule: 'drill-again', grounds: {} };
  const last = drillOp(c, f, 'drill-again', size, 'final', 'drill-again');
  return { feature: f.id, name: 'drill-again', because, operations: [...drilling(c, f, under, UNDER), last], rank: 2 };
}

/** A single point makes it round and to size, with a flat floor where there is one. */
export const bored: MethodRule = methodRule({
  id: 'bore',
  source: CUSTOM,
  when: (_c, f) => (isHole(f) && f.role !== 'seat' && !f.blind ? { f } : undefined),
  then: boring,
});

function boring({ f }: { readonly f: Hole }, c: Context): Offer {
  const { lo, target } = c.cylinder(f.cylinder).size;
  const size = f.madeTo ? lo : target;
  const pilot = pilotHole(c, f);
  const start = pilot ? startOf(c, pilot) : drillUnder(c.workshop, minus(size, length('drill.for-bore')), ZERO, (d) => fits(c, f, d));
  if (start === undefined) return refusal(f, 'no-drill', { most: size });
  const wider = pilot ? openingDrill(c, f, start) : undefined;
  // it has to enter what the drill before it leaves
  const room = wider ?? start;
  const ways = waysBy((end) => (f.opens.includes(end) ? boreWay(c, f, end, room) : undefined));
  const tool = toolOf(c, f, room);
  if ((!ways.first && !ways.second) || !tool) return boreRefused(c, f, room, (more) => boring({ f }, more));
  const op = operation({ feature: f.id, step: 'bore', verb: 'bore', tool: boringTool(tool, c.workshop), ways }, [
    { rule: 'bore', grounds: {} },
  ]);
  const opened = wider === undefined ? [] : [drillOp(c, f, 'drill', wider, 'rough', 'small-drill-first')];
  const before = pilot ? opened : drilling(c, f, start, UNDER);
  return { methods: [{ feature: f.id, name: 'bore', because: { rule: 'bore', grounds: {} }, operations: [...before, op], rank: 1 }] };
}

/** How deep a drill of that size goes at its full diameter, its point above the floor. */
function drilledDepth(c: Context, f: Hole, drill: Len): number {
  const { from, to } = c.cylinder(f.cylinder);
  return to - from - (f.floor === undefined ? 0 : pointRoom(drill) + length('drill.short'));
}
const fits = (c: Context, f: Hole, drill: Len): boolean => drilledDepth(c, f, drill) > 0;

/**
 * Much is to come out over a smaller hole: a drill takes most of it, if its point leaves it most of the depth. In a shallow recess it would
 * scratch the mouth and no more: there the boring tool does it all, where it goes into the smaller hole.
 */
function openingDrill(c: Context, f: Hole, start: Len): Len | undefined {
  const { size, from, to } = c.cylinder(f.cylinder);
  const opens = (suits: (d: Len) => boolean): Len | undefined =>
    drillUnder(c.workshop, minus(size.target, length('drill.for-bore')), add(start, length('drill.open-from')), suits);
  const deep = opens((d) => 2 * drilledDepth(c, f, d) >= minus(to, from));
  return deep ?? (toolOf(c, f, start) ? undefined : opens((d) => fits(c, f, d)));
}

const FITS: readonly string[] = ['running', 'register'];
/** Nothing runs or stands in these by their role, but their limits may be a fit's all the same. */
const LOOSE: readonly string[] = ['free', 'clearance'];

/** Something fits into it: by its role, or where its limits are closer than a boring tool holds. */
function isFit(c: Context, f: Hole): boolean {
  const { lo, hi } = c.cylinder(f.cylinder).size;
  const bores = heldBy(c.workshop.holds ?? [])('bore', 'diameter', 'final', lo);
  return FITS.includes(f.role) || (LOOSE.includes(f.role) && minus(hi, lo) < bores);
}

/** A reamer follows the drilled hole: for a fit that need not be true to anything else. */
export const reamed: MethodRule = methodRule({
  id: 'ream',
  source: CUSTOM,
  when: (c, f) => {
    if (!isHole(f) || f.floor || f.blind || !isFit(c, f)) return undefined;
    const { size } = c.cylinder(f.cylinder);
    const reamer = c.workshop.tools.reamers.filter((r) => r >= size.lo && r <= size.hi).sort((a, b) => a - b)[0];
    const start = reamer === undefined ? undefined : drillUnder(c.workshop, minus(reamer, length('ream.stock')));
    return reamer === undefined || start === undefined ? undefined : { f, reamer, start };
  },
  then: ({ f, reamer, start }, c) => {
    const tool = { kind: 'reamer', key: `reamer-${reamer}`, size: reamer, material: 'HSS' as const };
    const ways = waysBy((end) => (f.opens.includes(end) ? reamWay(c, f, end, reamer) : undefined));
    const op = operation({ feature: f.id, step: 'ream', verb: 'ream', tool, ways }, [{ rule: 'ream', grounds: {} }]);
    return {
      methods: [
        {
          feature: f.id,
          name: 'ream',
          because: { rule: 'ream', grounds: {} },
          operations: [...drilling(c, f, start, FOR_REAMER), op],
          rank: 0,
        },
      ],
    };
  },
});

/** Pilot and mouth by one tool: the tailstock centre runs in it. */
export const centreHole: MethodRule = methodRule({
  id: 'centre-hole',
  source: CUSTOM,
  when: (_c, f) => (isHole(f) && f.centre ? { f } : undefined),
  then: ({ f }, c) => {
    const cylinder = c.cylinder(f.cylinder);
    const tool = c.workshop.tools.centreDrills.find((d) => d.pilot >= cylinder.size.lo && d.pilot <= cylinder.size.hi);
    const end = f.opens[0] ?? 'first';
    const face = c.end(end)?.face;
    if (!tool || !face) return refusal(f, 'no-centre-drill', { wants: cylinder.size.target });
    const mouth = c.part.surfaces.find((s) => s.shape === 'cone' && s.until === f.cylinder);
    const cuts: readonly Cut[] = [f.cylinder, ...(mouth ? [mouth.id] : [])].map((makes) => ({
      makes,
      stage: 'final',
      measures: 'diameter',
      leaves: ZERO,
    }));
    const bore: Sweep = {
      take: 'bore',
      cylinder: f.cylinder,
      diameter: tool.pilot,
      to: { face, beyond: minus(cylinder.to, cylinder.from) },
      point: fact('drill.point'),
    };
    const way: Way = { cuts, sweeps: [bore, ...(mouth ? [{ take: 'cone' as const, cone: mouth.id }] : [])] };
    const use = { kind: 'centre-drill', key: `centre-${tool.name}`, size: tool.pilot, name: tool.name, material: 'HSS' as const };
    const op = operation({ feature: f.id, step: 'centre', verb: 'centre', tool: use, ways: { [end]: way }, light: true }, [
      { rule: 'centre-hole', grounds: {} },
    ]);
    return { methods: [{ feature: f.id, name: 'centre', because: { rule: 'centre-hole', grounds: {} }, operations: [op], rank: 0 }] };
  },
});

/** The seat of a ball, bored from the side of its edge in one setting with what lies round it. */
export const seatBored: MethodRule = methodRule({ id: 'seat-bored', source: CUSTOM, when: seatGrounds, then: boringSeat });

function boringSeat(g: Seat, c: Context): Offer {
  const start = seatPilot(c, g.f);
  if (start === undefined) return refusal(g.f, 'no-drill', { most: g.size });
  // a cone is steered by the thread round its seat: both are cut from the seat's side, in one setting
  const f: Hole = g.f.takes === 'cone' ? { ...g.f, opens: [g.edge] } : g.f;
  const ways = waysBy((end) => (f.opens.includes(end) ? boreWay(c, f, end, start) : undefined));
  const tool = toolOf(c, f, start);
  if ((!ways.first && !ways.second) || !tool) return boreRefused(c, f, start, (more) => boringSeat(g, more));
  const op = operation({ feature: g.f.id, step: 'bore', verb: 'bore', tool: boringTool(tool, c.workshop), ways }, [
    { rule: 'seat-bored', grounds: {} },
  ]);
  const method: Method = {
    feature: g.f.id,
    name: 'bore',
    because: { rule: 'seat-bored', grounds: {} },
    operations: [...drilling(c, g.f, start, UNDER), op, stone(g.f)],
    rank: 0,
  };
  return { methods: [method] };
}

/** The seat of a ball, finished from the far side: the tool arrives held by the bore that it has cut. */
export const seatByDBit: MethodRule = methodRule({ id: 'seat-from-far-side', source: CUSTOM, when: ballSeat, then: finishFromFarSide });

/** Only a ball asks for nothing but its own round edge. */
function ballSeat(c: Context, f: Parameters<MethodRule['offer']>[1]): Seat | undefined {
  const seat = seatGrounds(c, f);
  return seat?.f.takes === 'cone' ? undefined : seat;
}

function finishFromFarSide(g: Seat, c: Context): Offer {
  const { f, far, size } = g;
  const start = seatPilot(c, f);
  const deep = coneAt(c, f, far);
  const tool = dBitFor(c, g);
  if (start === undefined || !tool) return refusal(f, 'no-silver-steel', { wants: size });
  const [has, wants] = [minus(c.part.length, deep), scaled(size, 'single-lip.bore.least')];
  if (has < wants) return refusal(f, 'bore-too-short-to-guide', { has, wants });
  const enters = boringFor(c.workshop, start, add(deep, scaled(size, 'single-lip.guide.least')));
  if (!enters.tool) return startRefused(g, c, start, add(deep, scaled(size, 'single-lip.guide.start')));
  const begin = add(deep, len(Math.min(scaled(size, 'single-lip.guide.start'), minus(enters.tool.reach, deep))));
  const operations = [...drilling(c, f, start, UNDER), startBore(c, g, enters.tool, begin), dBit(g, tool, minus(begin, deep)), stone(f)];
  return { methods: [{ feature: f.id, name: 'd-bit', because: { rule: 'seat-from-far-side', grounds: {} }, operations, rank: 0 }] };
}

/** A fluted reamer follows the lobes of the drilled hole; it is named only to be refused. */
export const reamerRefused: MethodRule = methodRule({
  id: 'reamer-follows-lobes',
  source: CUSTOM,
  when: (c, f) => {
    const g = seatGrounds(c, f);
    return g && c.workshop.tools.reamers.includes(g.size) ? g : undefined;
  },
  then: ({ f }) => ({ refused: [{ what: `${f.id}/ream`, because: { rule: 'reamer-follows-lobes', grounds: {} } }] }),
});

type Told = Pick<Refusal, 'has' | 'wants' | 'most'>;
function refusal(f: Hole, rule: string, figures: Told): Offer {
  return { refused: [{ what: f.id, because: { rule, grounds: {} }, ...figures }] };
}

/** `again` is the same rule in a shop that has the boring tool: the method that is refused for want of it. */
function boreRefused(c: Context, f: Hole, start: Len, again: (more: Context) => Offer): Offer {
  // a tool that reaches from whichever end asks most of it: with less it might be refused again
  const wants = len(Math.max(...f.opens.map((end) => reachFor(c, f, end))));
  return { refused: [wanting(c, `${f.id}/bore`, start, wants, again, insteadOf(c, f, start))] };
}

/** A fit right through may be reamed; a recess with its floor near lets no larger drill in before the tool. */
function insteadOf(c: Context, f: Hole, start: Len): Instead {
  const larger = drillUnder(c.workshop, minus(c.cylinder(f.cylinder).size.target, length('drill.for-bore')));
  return { open: isFit(c, f) && !f.floor, shallow: f.floor !== undefined && !pilotHole(c, f) && larger !== start };
}

function startRefused(g: Seat, c: Context, start: Len, wants: Len): Offer {
  return { refused: [wanting(c, `${g.f.id}/bore-start`, start, wants, (more) => finishFromFarSide(g, more))] };
}

function wanting(c: Context, what: string, start: Len, wants: Len, again: (more: Context) => Offer, instead?: Instead): Refusal {
  const more = asIf(c, { boring: [...c.workshop.tools.boring, { smallest: start, reach: wants }] });
  const method = again(more).methods?.[0];
  return {
    what,
    ...noBoring(c.workshop, start, wants, instead),
    lacks: 'boring',
    ...(method ? { would: { method } } : {}),
  };
}
