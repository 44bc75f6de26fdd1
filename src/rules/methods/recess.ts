/** Grooves inside a bore: the tool passes the mouth, reaches the far wall, and its blade is long enough for the groove's depth. */
import { type Len, len, minus } from '../../base/units.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import type { Feature } from '../../model/part.ts';
import type { Because, Cut, Operation, Refusal, Way } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { asIf, type Context, depthFrom, farther, type Hole, operation, stretchesOf, waysBy } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule, type Offer } from '../rule.ts';
import { bench } from '../tools.ts';

const ZERO = 0 as Len;
type Groove = Extract<Feature, { kind: 'groove' }>;
type Tool = NonNullable<Workshop['tools']['groovingInside']>;
type Recess = { readonly f: Groove; readonly hole: Hole };

export const recess: MethodRule = methodRule({
  id: 'recess',
  source: CUSTOM,
  when: (c, f): Recess | undefined => {
    if (f.kind !== 'groove' || f.side !== 'inside') return undefined;
    const hole = holeOf(c, f);
    return hole && { f, hole };
  },
  then: recessed,
});

/** The bore that it is cut in: the one that stands on either side of it, or before it. */
export function holeOf(c: Context, f: Groove): Hole | undefined {
  const { from, to } = c.cylinder(f.floor);
  return c.holes.find(
    (h) => stretchesOf(c.cylinder(h.cylinder)).some((one) => one.to === from || one.from === to) && around(c, h, from, to),
  );
}
const around = (c: Context, h: Hole, from: Len, to: Len): boolean => {
  const whole = c.cylinder(h.cylinder);
  return whole.from <= from && whole.to >= to;
};

function recessed({ f, hole }: Recess, c: Context): Offer {
  const wants = wantsOf(c, f, hole);
  const tool = c.workshop.tools.groovingInside;
  const because = { rule: f.serves ? 'inside-relief' : 'recess', grounds: {} };
  if (!tool) return refused(c, { f, hole }, { rule: 'no-inside-grooving-tool', grounds: {} }, undefined, wants.reach, toolFor(c, wants));
  if (wants.width < tool.width)
    return refused(c, { f, hole }, { rule: 'recess-narrow', grounds: {} }, tool.width, wants.width, { ...tool, width: wants.width });
  if (wants.mouth < tool.smallest)
    return refused(c, { f, hole }, { rule: 'recess-mouth', grounds: {} }, tool.smallest, wants.mouth, { ...tool, smallest: wants.mouth });
  if (wants.deep > tool.deep)
    return refused(c, { f, hole }, { rule: 'recess-deep', grounds: {} }, tool.deep, wants.deep, { ...tool, deep: wants.deep });
  const ways = waysBy((end) => (hole.opens.includes(end) ? grooveWay(c, f, end, tool.reach) : undefined));
  if (!ways.first && !ways.second)
    return refused(c, { f, hole }, { rule: 'recess-reach', grounds: {} }, tool.reach, wants.reach, { ...tool, reach: wants.reach });
  const use: Operation['tool'] = { kind: 'grooving-inside', key: 'grooving-inside', size: tool.width, material: c.workshop.tools.material };
  const op = operation({ feature: f.id, step: 'groove', verb: 'groove', tool: use, ways }, [because]);
  const after = BURRED.includes(hole.role) ? [deburr(f)] : [];
  return { methods: [{ feature: f.id, name: 'recess', because, operations: [op, ...after], rank: 0 }] };
}

/** What is to slide past it, or seal on it, would catch on the burr. */
const BURRED: readonly string[] = ['running', 'register', 'sealing'];
const deburr = (f: Groove): Operation =>
  operation(
    { feature: f.id, step: 'deburr', verb: 'deburr', tool: bench('scraper'), ways: { bench: { cuts: [], sweeps: [] } }, light: true },
    [{ rule: 'deburr', grounds: {} }],
  );

type Wants = { readonly width: Len; readonly mouth: Len; readonly deep: Len; readonly reach: Len };
function wantsOf(c: Context, f: Groove, hole: Hole): Wants {
  const floor = c.cylinder(f.floor);
  const reaches = hole.opens.map((end) => depthFrom(end, farther(end, floor), c.part));
  // the bore itself is the narrowest that it passes: whatever stands before it is larger, or it would not open there
  const { lo } = c.cylinder(hole.cylinder).size;
  return {
    ...{ width: minus(floor.to, floor.from), mouth: lo, deep: len(Math.ceil((floor.size.hi - lo) / 2)) },
    reach: len(Math.min(...reaches)),
  };
}

const toolFor = (c: Context, { width, mouth, deep, reach }: Wants): Tool => ({
  ...{ width: len(Math.min(width, c.workshop.tools.grooving?.width ?? width)), smallest: mouth, deep, reach },
});

function grooveWay(c: Context, f: Groove, end: End, reach: Len): Way | undefined {
  const far = depthFrom(end, farther(end, c.cylinder(f.floor)), c.part);
  if (far > reach) return undefined;
  const walls = wallsMade(c, f).map((wall): Cut => ({ makes: wall, stage: 'final', measures: 'length', leaves: ZERO }));
  return {
    cuts: [{ makes: f.floor, stage: 'final', measures: 'diameter', leaves: ZERO }, ...walls],
    sweeps: [{ take: 'groove', side: 'inside', floor: f.floor, first: f.first, second: f.second }],
    reach: far,
  };
}

/** A relief stands at a floor that is there; any other makes both its walls. */
function wallsMade(c: Context, f: Groove): readonly SurfaceId[] {
  if (!f.serves) return [f.first, f.second];
  return [c.face(f.first).letter === undefined ? f.first : f.second];
}

function refused(c: Context, g: Recess, because: Because, has: Len | undefined, wants: Len, tool: Tool): Offer {
  const method = recessed(g, asIf(c, { groovingInside: tool })).methods?.[0];
  const refusal: Refusal = {
    what: g.f.id,
    because,
    ...(has === undefined ? {} : { has }),
    wants,
    ...(method ? { would: { method } } : {}),
  };
  return { refused: [refusal] };
}
