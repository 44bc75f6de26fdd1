/**
 * Rounded edges and fillets: by a form tool of the radius, or, where that would chatter, by steps and a file to a gauge; in a bore by a
 * hollow form tool at its mouth, by a boring tool with that nose at its floor.
 */
import { type Len, len } from '../../base/units.ts';
import { arcPoints } from '../../geometry/section/arc.ts';
import { radiusFigure } from '../../handbook/radii.ts';
import type { Arc, Feature, Part } from '../../model/part.ts';
import type { Method, Operation, ToolUse, Way } from '../../model/plan.ts';
import { type Context, depthFrom, operation, show } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule, type Offer } from '../rule.ts';
import { boringFor, noBoring, radiusTool, turningTool } from '../tools.ts';

type ArcFeature = Extract<Feature, { kind: 'arc' }>;
const arcOf = (c: Context, f: ArcFeature): Arc => {
  const found = c.surface(f.arc);
  if (found.shape !== 'arc') throw new Error(`'${f.arc}' is no arc`);
  return found;
};
type Found = { readonly f: ArcFeature; readonly arc: Arc };
const outsideArc = (c: Context, f: Feature): Found | undefined => onSide(c, f, 'outside');
function onSide(c: Context, f: Feature, side: Arc['side']): Found | undefined {
  const arc = f.kind === 'arc' ? arcOf(c, f) : undefined;
  return f.kind === 'arc' && arc?.side === side ? { f, arc } : undefined;
}
export const radiusOf = (arc: Arc): Len => len(arc.across.target / 2);

export const formed: MethodRule = methodRule({
  id: 'form',
  source: CUSTOM,
  when: (c, f) => outsideArc(c, f),
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
    const found = outsideArc(c, f);
    return found && radiusOf(found.arc) > radiusFigure('form.width.most') ? found : undefined;
  },
  then: ({ f }, c) => {
    if (!c.workshop.tools.files) return { refused: [{ what: f.id, because: { rule: 'radius-unfiled', grounds: {} } }] };
    const why = { rule: 'steps', grounds: {} };
    const says = [{ rule: 'steps-file', grounds: {} }];
    const op = operation({ ...askOf(f, turningTool(c.workshop)), step: 'steps', verb: 'steps' }, [why, because(f)], says);
    return { methods: [{ feature: f.id, name: 'steps', because: why, operations: [op], rank: 0 }] };
  },
});

/** In a bore nothing is filed to a gauge: the edge that carries the curve is all there is, and it has to get in. */
export const formedInside: MethodRule = methodRule({
  id: 'form-inside',
  source: CUSTOM,
  when: (c, f) => onSide(c, f, 'inside'),
  then: ({ f, arc }, c) => {
    const [wants, most] = [radiusOf(arc), radiusFigure('form.width.most')];
    const method = (tool: ToolUse, ground: boolean, reach?: Len): Method => {
      const why = { rule: f.does === 'fillet' ? 'bore-fillet' : 'round-mouth', grounds: {} };
      const says = ground ? [{ rule: 'radius-tool-ground', grounds: {} }] : [];
      const op = operation({ ...askOf(f, tool, reach), step: 'form', verb: 'form' }, [why], says);
      return { feature: f.id, name: 'form', because: why, operations: [op], rank: 0 };
    };
    if (wants > most) return { refused: [{ what: f.id, because: { rule: 'form-wide-inside', grounds: {} }, has: most, wants }] };
    return f.does === 'fillet' ? cornerIn(c, { f, arc }, method) : mouthIn(c, { f, arc }, method);
  },
});

type Formed = (tool: ToolUse, ground: boolean, reach?: Len) => Method;

function mouthIn(c: Context, { f, arc }: Found, method: Formed): Offer {
  const [bore, least] = [c.cylinder(arc.until).size.lo, radiusFigure('mouth.least')];
  const found = radiusTool(c.workshop, arc);
  if (bore >= least) return { methods: [method(found.tool, !found.ready)] };
  return {
    refused: [
      { what: f.id, because: { rule: 'mouth-small', grounds: {} }, has: bore, wants: least, would: { method: method(found.tool, true) } },
    ],
  };
}

/** The thickest boring tool that goes into the finished bore and reaches its floor, with its nose ground to the radius. */
function cornerIn(c: Context, { f, arc }: Found, method: Formed): Offer {
  const bore = c.cylinder(arc.until);
  const reach = depthFrom(f.from, c.face(arc.at).z, c.part);
  const { tool, best } = boringFor(c.workshop, bore.size.lo, reach);
  const nosed = (smallest: Len): ToolUse => ({
    ...{ kind: 'boring-nosed', key: `boring-${show(smallest)}-nosed-${show(radiusOf(arc))}`, size: radiusOf(arc) },
    ...{ enters: smallest, material: 'HSS' },
  });
  if (tool) return { methods: [method(nosed(tool.smallest), true, reach)] };
  const would = { method: method(nosed(best?.smallest ?? bore.size.lo), true, reach) };
  return { refused: [{ what: f.id, ...noBoring(c.workshop, bore.size.lo, reach), lacks: 'boring', would }] };
}

const because = (f: ArcFeature) => ({ rule: f.does === 'fillet' ? 'fillet' : 'round-edge', grounds: {} });

function askOf(
  f: ArcFeature,
  tool: ToolUse,
  reach?: Len,
): { readonly feature: string; readonly tool: ToolUse; readonly ways: Operation['ways'] } {
  const way: Way = {
    cuts: [{ makes: f.arc, stage: 'final', measures: 'diameter', leaves: len(0) }],
    sweeps: [{ take: 'arc', arc: f.arc }],
    ...(reach === undefined ? {} : { reach }),
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
