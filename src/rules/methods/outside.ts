/** Outside sections, reliefs, cones and chamfers. */
import { add, type Len, len } from '../../base/units.ts';
import { reliefWidth } from '../../handbook/practice.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Feature } from '../../model/part.ts';
import type { Because, Cut, Way } from '../../model/plan.ts';
import { type ConeFeature, type Context, diameterOf, farther, length, nearer, type Outside, operation, waysBy } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { boringTool, chamferTool, groovingTool, insideChamferTool, turningTool } from '../tools.ts';
import { shoulderFillet } from './radii.ts';

export const turnSection: MethodRule = methodRule({
  id: 'turn',
  source: CUSTOM,
  when: (c, f) => (f.kind === 'outside' && !c.cylinder(f.cylinder).asStock ? { f } : undefined),
  then: ({ f }, c) => {
    const ways = waysBy((end) => turnWay(c, f, end));
    const op = operation({ feature: f.id, step: 'turn', verb: 'turn', tool: turningTool(c.workshop), ways }, [
      { rule: 'turn', grounds: {} },
    ]);
    return { methods: [{ feature: f.id, name: 'turn', because: { rule: 'turn', grounds: {} }, operations: [op], rank: 0 }] };
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

/** From an end if nothing between it and the section stands higher. */
function turnWay(c: Context, f: Outside, end: End): Way | undefined {
  const i = c.outsides.indexOf(f);
  const between = end === 'first' ? c.outsides.slice(0, i) : c.outsides.slice(i + 1);
  if (between.some((o) => diameterOf(c, o) > diameterOf(c, f))) return undefined;
  const shoulder = f.shoulder[other(end)];
  const diameter: Cut = { makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO };
  if (shoulder) {
    const fillet = shoulderFillet(c, f.cylinder, shoulder);
    return {
      cuts: [diameter, { makes: shoulder, stage: 'final', measures: 'length', leaves: ZERO }],
      sweeps: [{ take: 'turn', cylinder: f.cylinder, to: { face: shoulder }, ...(fillet ? { spares: fillet.id } : {}) }],
    };
  }
  const last = faceBeyond(c, f, end);
  if (!last) return undefined;
  return { cuts: [diameter], sweeps: [{ take: 'turn', cylinder: f.cylinder, to: { face: last, beyond: past(c, f, end) } }] };
}

/**
 * A thread that no shoulder ends runs on over what is cut off, or turned away later: the diameter stands as far, and the tool has room to stop
 * in. It keeps as far off what stands higher behind it as a diameter is carried past a part.
 */
function past(c: Context, f: Outside, end: End): Len {
  const least = length('part.past');
  const thread = c.threads.find((t) => t.on === f.cylinder && t.start === end);
  if (!thread) return least;
  const asked = add(length('part.allowance'), reliefWidth(thread.thread.pitch));
  return len(Math.max(least, Math.min(asked, roomBehind(c, f, end) - least)));
}

/** From a section to the next one that is thicker, away from that end. */
function roomBehind(c: Context, f: Outside, end: End): number {
  const i = c.outsides.indexOf(f);
  const behind = end === 'first' ? c.outsides.slice(i + 1) : c.outsides.slice(0, i).reverse();
  const higher = behind.find((o) => diameterOf(c, o) > diameterOf(c, f));
  if (!higher) return Number.POSITIVE_INFINITY;
  return Math.abs(nearer(end, c.cylinder(higher.cylinder)) - farther(end, c.cylinder(f.cylinder)));
}

const ZERO = 0 as Len;

/** The face at the far side of a section that has no shoulder there. */
function faceBeyond(c: Context, f: Outside, end: End): string | undefined {
  const z = farther(end, c.cylinder(f.cylinder));
  const near = c.part.surfaces.filter((s) => s.shape === 'face' && s.side === 'outside').map((s) => c.face(s.id));
  const there = near.filter((s) => s.z === z)[0] ?? near.sort((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z))[0];
  return there?.id;
}

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
