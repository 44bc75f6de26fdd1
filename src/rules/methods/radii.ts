/** Rounded edges and fillets: by a form tool of the radius, or, where that would chatter, by steps and a file to a gauge. */
import { type Len, len } from '../../base/units.ts';
import { arcPoints } from '../../geometry/section/arc.ts';
import { radiusFigure } from '../../handbook/radii.ts';
import type { Arc, Feature, Part } from '../../model/part.ts';
import type { Method, Operation, ToolUse, Way } from '../../model/plan.ts';
import { type Context, operation } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { radiusTool, turningTool } from '../tools.ts';

type ArcFeature = Extract<Feature, { kind: 'arc' }>;
const arcOf = (c: Context, f: ArcFeature): Arc => {
  const found = c.surface(f.arc);
  if (found.shape !== 'arc') throw new Error(`'${f.arc}' is no arc`);
  return found;
};
export const radiusOf = (arc: Arc): Len => len(arc.across.target / 2);

export const formed: MethodRule = methodRule({
  id: 'form',
  source: CUSTOM,
  when: (c, f) => (f.kind === 'arc' ? { f, arc: arcOf(c, f) } : undefined),
  then: ({ f, arc }, c) => {
    const wants = radiusOf(arc);
    const most = radiusFigure('form.width.most');
    const found = radiusTool(c.workshop, arc);
    const says = found.ready ? [] : [{ rule: 'radius-tool-ground', grounds: {} }];
    const op = operation({ ...askOf(f, found.tool), step: 'form', verb: 'form' }, [because(f)], says);
    const method: Method = { feature: f.id, name: 'form', because: because(f), operations: [op], rank: 0 };
    if (wants <= most) return { methods: [method] };
    return { refused: [{ what: f.id, because: { rule: 'form-wide', grounds: {} }, has: most, wants, would: { method } }] };
  },
});

/** Offered where no form tool bears the cut: turned in steps on co-ordinates, then filed and tried against a gauge of the radius. */
export const stepped: MethodRule = methodRule({
  id: 'steps',
  source: CUSTOM,
  when: (c, f) => {
    if (f.kind !== 'arc') return undefined;
    const arc = arcOf(c, f);
    return radiusOf(arc) > radiusFigure('form.width.most') ? { f, arc } : undefined;
  },
  then: ({ f }, c) => {
    if (!c.workshop.tools.files) return { refused: [{ what: f.id, because: { rule: 'radius-unfiled', grounds: {} } }] };
    const why = { rule: 'steps', grounds: {} };
    const says = [{ rule: 'steps-file', grounds: {} }];
    const op = operation({ ...askOf(f, turningTool(c.workshop)), step: 'steps', verb: 'steps' }, [why, because(f)], says);
    return { methods: [{ feature: f.id, name: 'steps', because: why, operations: [op], rank: 0 }] };
  },
});

const because = (f: ArcFeature) => ({ rule: f.does === 'fillet' ? 'fillet' : 'round-edge', grounds: {} });

function askOf(f: ArcFeature, tool: ToolUse): { readonly feature: string; readonly tool: ToolUse; readonly ways: Operation['ways'] } {
  const way: Way = {
    cuts: [{ makes: f.arc, stage: 'final', measures: 'diameter', leaves: len(0) }],
    sweeps: [{ take: 'arc', arc: f.arc }],
  };
  return { feature: f.id, tool, ways: { [f.from]: way } };
}

export type Stair = { readonly far: Len; readonly diameter: Len };
/** How far from the face, and down to what diameter as far as there: the stairs stay outside the arc. */
export function stairsOf(part: Part, arc: Arc): readonly Stair[] {
  const [face, on] = [arc.at, arc.until].map((id) => part.surfaces.find((s) => s.id === id));
  if (face?.shape !== 'face' || on?.shape !== 'cylinder') throw new Error(`arc '${arc.id}' joins no face to a cylinder`);
  const points = arcPoints(arc, face.z, on.size.target, arc.across.target);
  const [pitch, round] = [radiusFigure('steps.pitch'), radiusFigure('steps.round')];
  const stairs: Stair[] = [];
  for (let far = pitch; far < radiusOf(arc); far = len(far + pitch)) {
    const there = points.filter((p) => Math.abs(p.z - face.z) <= far);
    const next = points[there.length];
    const d = Math.max(there.at(-1)?.d ?? 0, next?.d ?? 0);
    stairs.push({ far, diameter: len(Math.ceil(d / round) * round) });
  }
  return stairs;
}

/** The fillet in the corner of that cylinder and that face, if one is left there. */
export const shoulderFillet = (c: Context, cylinder: string, face: string): Arc | undefined =>
  c.part.surfaces.find((s): s is Arc => s.shape === 'arc' && s.bends === 'fillet' && s.until === cylinder && s.at === face);
