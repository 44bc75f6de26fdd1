/** Outside sections, reliefs, cones and chamfers. */
import { type Len, len } from '../../base/units.ts';
import type { SurfaceId } from '../../model/ids.ts';
import type { Feature } from '../../model/part.ts';
import type { Because, Cut, Way } from '../../model/plan.ts';
import { type ConeFeature, type Context, operation } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { boringTool, chamferTool, groovingTool, insideChamferTool, turningTool } from '../tools.ts';
import { downFrom } from './face-down.ts';
import { turning } from './turning.ts';

export const turnSection: MethodRule = methodRule({
  id: 'turn',
  source: CUSTOM,
  when: (c, f) => (f.kind === 'outside' && !c.cylinder(f.cylinder).asStock ? { f } : undefined),
  then: ({ f }, c) => {
    const rank = downFrom(c, f).length > 0 ? 1 : 0;
    return { methods: [{ feature: f.id, name: 'turn', because: { rule: 'turn', grounds: {} }, operations: [turning(c, f)], rank }] };
  },
});

/** Nothing is cut where the bar's own surface is the part's. */
export const leftAsBar: MethodRule = methodRule({
  id: 'left-as-bar',
  source: CUSTOM,
  when: (c, f) => (f.kind === 'outside' && c.cylinder(f.cylinder).asStock ? { f } : undefined),
  then: ({ f }) => ({
    methods: [{ feature: f.id, name: 'as-bar', because: { rule: 'left-as-bar', grounds: {} }, operations: [], rank: 0 }],
  }),
});

const ZERO = 0 as Len;

export const groove: MethodRule = methodRule({
  id: 'relief',
  source: CUSTOM,
  when: (_c, f) => (f.kind === 'groove' && f.side === 'outside' ? { f } : undefined),
  then: ({ f }, c) => {
    const tool = groovingTool(c.workshop);
    if (!tool) return { refused: [{ what: f.id, because: { rule: 'no-grooving-tool', grounds: {} } }] };
    const width = len(c.face(f.second).z - c.face(f.first).z);
    const cutter = tool.size ?? ZERO;
    if (width < cutter) return { refused: [{ what: f.id, because: { rule: 'groove-narrow', grounds: {} }, has: width, wants: cutter }] };
    const way: Way = {
      cuts: [
        { makes: f.floor, stage: 'final', measures: 'diameter', leaves: ZERO },
        ...wallsOf(c, f).map((wall): Cut => ({ makes: wall, stage: 'final', measures: 'length', leaves: ZERO })),
      ],
      sweeps: [{ take: 'groove', side: f.side, floor: f.floor, first: f.first, second: f.second }],
    };
    const op = operation({ feature: f.id, step: 'groove', verb: 'groove', tool, ways: { first: way, second: way } }, [
      { rule: 'relief', grounds: {} },
    ]);
    return { methods: [{ feature: f.id, name: 'plunge', because: { rule: 'relief', grounds: {} }, operations: [op], rank: 0 }] };
  },
});

/** A relief stands at a shoulder that is there; any other groove makes both its walls. */
function wallsOf(c: Context, f: Groove): readonly SurfaceId[] {
  if (!f.serves) return [f.first, f.second];
  return [c.face(f.first).letter === undefined ? f.first : f.second];
}
type Groove = Extract<Feature, { kind: 'groove' }>;

/** Chamfers by a 45 degree tool; cones by the top slide at half the angle. From their own end only. */
export const cones: MethodRule = methodRule({
  id: 'cone',
  source: CUSTOM,
  when: (_c, f) => (f.kind === 'cone' ? { f } : undefined),
  then: ({ f }, c) => {
    const op = operation(
      {
        feature: f.id,
        step: f.does,
        verb: f.does,
        tool: coneTool(c, f),
        ways: atGroove(c, f) ? { first: coneWay(f), second: coneWay(f) } : { [f.from]: coneWay(f) },
        ...(f.does === 'chamfer' ? { light: true as const } : {}),
      },
      [coneBecause(c, f)],
    );
    return { methods: [{ feature: f.id, name: f.does, because: coneBecause(c, f), operations: [op], rank: 0 }] };
  },
});

/** What it is for decides the words: a thread's start, the corners of a hexagon, an edge that would cut, a cone. */
function coneBecause(c: Context, f: ConeFeature): Because {
  if (f.does === 'cone') return { rule: 'cone', grounds: {} };
  if (f.serves) return { rule: 'thread-start', grounds: {} };
  const { until } = c.cone(f.cone);
  const on = c.threads.find((t) => t.on === until);
  if (on) return { rule: on.side === 'outside' ? 'thread-end' : 'far-mouth', grounds: {} };
  const hexagon = c.outsides.some((o) => o.cylinder === until && o.section === 'hexagon');
  return hexagon ? { rule: 'hexagon-chamfer', grounds: {} } : { rule: 'edge-chamfer', grounds: {} };
}

const coneWay = (f: ConeFeature): Way => ({
  cuts: [{ makes: f.cone, stage: 'final', measures: 'diameter', leaves: ZERO }],
  sweeps: [{ take: 'cone', cone: f.cone }],
});

/** Plunged into a groove beside its wall: from whichever end the work is met. */
const atGroove = (c: Context, f: ConeFeature): boolean =>
  f.does === 'chamfer' &&
  c.part.features.some((g) => g.kind === 'groove' && g.side === 'outside' && !g.serves && [g.first, g.second].includes(c.cone(f.cone).at));

function coneTool(c: Context, f: ConeFeature) {
  const inside = c.cone(f.cone).side === 'inside';
  if (f.does === 'chamfer') return inside ? insideChamferTool(c.workshop) : chamferTool(c.workshop);
  const small = [...c.workshop.tools.boring].sort((a, b) => a.smallest - b.smallest)[0];
  if (inside && small) return boringTool(small, c.workshop);
  return turningTool(c.workshop);
}
