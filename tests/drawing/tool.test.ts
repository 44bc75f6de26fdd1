/**
 * The tool in the picture of an operation: it stands where it has just cut, and not in the metal. Asked of the picture itself, in every
 * operation of every spec: what is filled with the tool's tone is turned back into work and held against the half-section.
 */
import { describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import type { XY } from '../../src/drawing/display.ts';
import type { Paper } from '../../src/drawing/paper.ts';
import { envelope, metalAt, placed, type Sketch, sketchOf, type UR } from '../../src/drawing/sketch.ts';
import { drawStage, type ToolShown } from '../../src/drawing/stage.ts';
import { drawTool } from '../../src/drawing/tool.ts';
import { windowOf, withRemainder } from '../../src/drawing/window.ts';
import type { Picture } from '../../src/model/display.ts';
import type { PlannedPart } from '../../src/model/plan.ts';
import { deskOf } from '../../src/phases/sheet/lookup.ts';
import { holdOf } from '../../src/phases/sheet/picture.ts';
import { wordsIn } from '../../src/phases/sheet/said.ts';
import { stepsOf } from '../../src/phases/sheet/steps.ts';
import { toolOf } from '../../src/phases/sheet/tool-shown.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords } from '../render/assets.ts';
import { len, SECOND_GRIP } from './stages.ts';

/** As a small picture has it: the coarser the scale, the more of the tool is paper's, not work's. */
const PAPER: Paper = { scale: 2, u0: 0, left: 0, axis: 0 };
const means = { words: wordsIn(allWords(), 'mm'), advances: ADVANCES, made: () => undefined };
/** mm of work: half a line's width, and what a chord leaves of an arc. */
const LET = 0.12;

type Seen = { readonly name: string; readonly tool: ToolShown; readonly sketch: Sketch; readonly rings: readonly (readonly UR[])[] };

function seenIn(spec: string, planned: PlannedPart): readonly Seen[] {
  const desk = deskOf(planned);
  const steps = stepsOf(desk);
  return Array.from({ length: steps.count }, (_, step) => step).flatMap((step): readonly Seen[] => {
    const [op, setUp, stage] = [steps.op(step), steps.setUp(step), steps.over(step, step)];
    const tool = toolOf(desk, setUp, op);
    if (!tool) return [];
    const hold = holdOf(desk, setUp, stage, means);
    const sketch = withRemainder(sketchOf(stage), hold);
    const { items } = drawTool(tool, sketch, windowOf(sketch, hold), PAPER, ADVANCES);
    const rings = items.flatMap((item) => (item.kind === 'path' && item.fill ? [pointsOf(item.segments).map(work)] : []));
    return [{ name: `${spec}: ${op}`, tool, sketch, rings }];
  });
}

function pointsOf(segments: readonly { readonly to: string }[]): readonly XY[] {
  return segments.flatMap((s) => ('x' in s && 'y' in s ? [{ x: Number(s.x), y: Number(s.y) }] : []));
}

/** Below the axis r is negative. */
const work = ({ x, y }: XY): UR => ({ u: x / PAPER.scale, r: -y / PAPER.scale });

const seen = everyPlan.flatMap(({ spec, plan }) => plan.parts.flatMap((planned) => seenIn(spec, planned)));
const forms = [...new Set(seen.map(({ tool }) => `${tool.form} ${tool.side}`))].sort();

describe('the tool of an operation', () => {
  it('is shown in all forms but a die, which no spec uses', () => {
    expect(forms).toEqual([
      ...['bevel inside', 'bevel outside', 'blade outside', 'centre inside', 'drill inside', 'facing outside', 'file outside'],
      ...['knife inside', 'knife outside', 'saw outside', 'tap inside', 'vee inside', 'vee outside', 'wheel outside'],
    ]);
  });
  it.each(forms)('%s: is there whenever it is asked for', (form) => {
    const lacking = seen.filter(({ tool, rings }) => `${tool.form} ${tool.side}` === form && rings.length === 0);
    expect(lacking.map(({ name }) => name)).toEqual([]);
  });
  // a file lies over the flat that it has made, a saw in the slit: they are asked below
  it.each(forms.filter((form) => form !== 'file outside'))('%s: does not stand in the metal', (form) => {
    const inMetal = seen.filter(
      ({ tool, sketch, rings }) => `${tool.form} ${tool.side}` === form && !isOnSide(tool) && rings.some((ring) => isIn(ring, sketch)),
    );
    expect(inMetal.map(({ name }) => name)).toEqual([]);
  });
  // what works on the side makes no edge: it is asked below
  it.each(forms.filter((form) => !['wheel outside', 'file outside'].includes(form)))('%s: reaches what it has made', (form) => {
    const away = seen.filter(
      ({ tool, sketch, rings }) => `${tool.form} ${tool.side}` === form && !isOnSide(tool) && !reaches(rings, sketch),
    );
    expect(away.map(({ name }) => name)).toEqual([]);
  });
});

describe('a file', () => {
  const files = seen.filter(({ tool }) => tool.form === 'file');
  it('lies on its flat, within its ends, over the edge that is nearer to the turner, and leaves most of it to be seen', () => {
    expect(files.length).toBeGreaterThan(0);
    for (const { name, tool, sketch, rings } of files) {
      const [left, right, low] = placeOf(tool, sketch);
      const on = rings.flat().filter((p) => -p.r < low);
      expect(on.length, name).toBe(2);
      for (const p of on) expect(p.u > left && p.u < right && p.r < 0, name).toBe(true);
      const [us, rs] = [rings.flat().map((p) => p.u), rings.flat().map((p) => -p.r)];
      expect(Math.max(...us) - Math.min(...us), name).toBeLessThan((right - left) / 2);
      expect(Math.max(...rs), name).toBeGreaterThan(low);
    }
  });
});

describe('a saw', () => {
  const saws = seen.filter(({ tool }) => tool.form === 'saw');
  it('that cuts off stands in its kerf and is no thicker', () => {
    const across = saws.filter(({ tool }) => !isOnSide(tool));
    expect(across.length).toBeGreaterThan(0);
    for (const { name, tool, rings } of across) {
      const us = rings.at(-1)?.map((p) => p.u) ?? [];
      expect(Math.max(...us) - Math.min(...us), name).toBeLessThanOrEqual(placed({ z: tool.wide ?? 0, d: 0 }, 'second').u + LET);
    }
  });
  it('in a slit or a slot lies within its width, its handle past the end of the work', () => {
    const along = saws.filter(({ tool }) => isOnSide(tool));
    expect(along.length).toBeGreaterThan(0);
    for (const { name, tool, sketch, rings } of along) {
      const [left, right, low] = placeOf(tool, sketch);
      const handle = rings.filter((ring) => Math.max(...ring.map((p) => Math.abs(p.r))) > low);
      expect(handle.length, name).toBe(2);
      for (const p of handle.flat()) expect(p.u > right || p.u < left, name).toBe(true);
    }
  });
});

describe('a die', () => {
  const sketch = sketchOf(SECOND_GRIP);
  const hold = { kind: 'jaws', from: len(3), to: len(10), diameter: len(16) } as const;
  const { items } = drawTool({ form: 'die', side: 'outside' }, sketch, windowOf(sketch, hold), PAPER, ADVANCES);
  const rings = items.flatMap((item) => (item.kind === 'path' && item.fill ? [pointsOf(item.segments).map(work)] : []));
  it('stands over its thread on either side of the axis, and not in the metal', () => {
    expect(rings.map((ring) => Math.sign(ring[0]?.r ?? 0))).toEqual([1, -1]);
    expect(rings.some((ring) => isIn(ring, sketch))).toBe(false);
    expect(reaches(rings, sketch)).toBe(true);
  });
});

describe('a knurling wheel', () => {
  const wheels = seen.filter(({ tool }) => tool.form === 'wheel');
  it('lies against what it rolls, within it, and is knurled', () => {
    expect(wheels.length).toBeGreaterThan(0);
    for (const { tool, sketch, rings } of wheels) {
      const { from, to, diameter } = tool.rolls ?? { from: len(0), to: len(0), diameter: len(0) };
      const ends = [from, to].map((z) => placed({ z, d: diameter }, sketch.out));
      const [left, right] = [Math.min(...ends.map((p) => p.u)), Math.max(...ends.map((p) => p.u))];
      const touching = rings.flat().filter((p) => Math.abs(-p.r - (ends[0]?.r ?? 0)) < LET);
      expect(touching.length).toBeGreaterThan(1);
      expect(touching.every((p) => p.u > left - LET && p.u < right + LET)).toBe(true);
    }
  });
  it('is not there where nothing is said of what it rolls', () => {
    const sketch = sketchOf(SECOND_GRIP);
    const hold = { kind: 'jaws', from: len(3), to: len(10), diameter: len(16) } as const;
    expect(drawTool({ form: 'wheel', side: 'outside' }, sketch, windowOf(sketch, hold), PAPER, ADVANCES).items).toEqual([]);
  });
});

describe('a tool for which a place is looked for', () => {
  const tool = { form: 'vee', side: 'outside', number: '170' } as const;
  const view = {
    ...{ stage: SECOND_GRIP, lengths: [], diameters: [], balloons: [], advances: ADVANCES },
    hold: { kind: 'jaws', from: len(3), to: len(10), diameter: len(16) },
    words: { alt: 'a grip', tool: 'The tool of 170.', headstock: '' },
  } as const;
  const marks = (picture: Picture): readonly string[] => picture.boxes.map(({ what }) => what).filter((what) => what.endsWith(' tool'));
  it('stands there with its number where there is one, and is told of', () => {
    const picture = drawStage({ ...view, toolIfFree: tool, frame: { width: 160, height: 90 } });
    expect(marks(picture)).toEqual(['work tool', 'text tool']);
    expect(picture.alt).toBe('a grip The tool of 170.');
    expect(collisions(picture)).toEqual([]);
  });
  it.each([46, 60, 90])('makes no picture another one: %i mm high', (height) => {
    const frame = { width: 160, height };
    const [bare, full] = [drawStage({ ...view, frame }), drawStage({ ...view, toolIfFree: tool, frame })];
    expect([full.scale, full.rung]).toEqual([bare.scale, bare.rung]);
    expect(full.boxes.filter(({ what }) => !what.endsWith(' tool'))).toEqual(bare.boxes);
    expect(bare.alt).toBe('a grip');
  });
  it('is under what is written: lines drawn after it stay whole', () => {
    const frame = { width: 160, height: 90 };
    const [bare, full] = [drawStage({ ...view, frame }), drawStage({ ...view, toolIfFree: tool, frame })];
    const added = full.items.findIndex((item, i) => JSON.stringify(item) !== JSON.stringify(bare.items[i]));
    expect(added).toBeGreaterThan(0);
    expect(full.items.slice(full.items.length - (bare.items.length - added))).toEqual(bare.items.slice(added));
  });
});

const isOnSide = ({ rolls }: ToolShown): boolean => rolls !== undefined;

/** Of what works on the side: its left end, its right end, how far it reaches from the axis. */
function placeOf({ rolls }: ToolShown, sketch: Sketch): readonly [number, number, number] {
  const { from, to, diameter } = rolls ?? { from: len(0), to: len(0), diameter: len(0) };
  const ends = [from, to].map((z) => placed({ z, d: diameter }, sketch.out));
  return [Math.min(...ends.map((p) => p.u)), Math.max(...ends.map((p) => p.u)), ends[0]?.r ?? 0];
}

/** Places all over the ring, none nearer to its edge than the let. */
function isIn(ring: readonly UR[], sketch: Sketch): boolean {
  const [us, rs] = [ring.map((p) => p.u), ring.map((p) => p.r)];
  const spread = (values: readonly number[]): readonly number[] => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return Array.from({ length: 25 }, (_, i) => low + ((high - low) * (i + 0.5)) / 25);
  };
  const stands = (u: number, r: number): boolean =>
    [
      [0, 0],
      [LET, 0],
      [-LET, 0],
      [0, LET],
      [0, -LET],
    ].every(([du = 0, dr = 0]) => inside(ring, { u: u + du, r: r + dr }) && isWork(sketch, u + du, r + dr));
  return spread(us).some((u) => spread(rs).some((r) => stands(u, r)));
}

/** Above the axis the work is cut; below it is seen from outside, and is all that lies within its outline. */
function isWork(sketch: Sketch, u: number, r: number): boolean {
  if (r >= 0) return metalAt(sketch.loops, { u, r });
  const piece = envelope(sketch.loops.flat(), 'outer').find((p) => p.a.u < u && u < p.b.u);
  return piece !== undefined && -r < piece.a.r + ((piece.b.r - piece.a.r) * (u - piece.a.u)) / (piece.b.u - piece.a.u);
}

function inside(ring: readonly UR[], { u, r }: UR): boolean {
  const crossed = ring.filter((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    return a.u < u !== b.u < u && a.r + ((b.r - a.r) * (u - a.u)) / (b.u - a.u) > r;
  });
  return crossed.length % 2 === 1;
}

/** Somewhere its outline lies as near to what is new as paper allows: half a millimetre there. */
function reaches(rings: readonly (readonly UR[])[], sketch: Sketch): boolean {
  const most = 0.5 / PAPER.scale + LET;
  const threads = sketch.bands.filter((b) => b.made).map((b) => b.polygon);
  const edges = sketch.loops.flat().filter((e) => e.made);
  const places = [...edges.flatMap(({ a, b }) => [a, { u: (a.u + b.u) / 2, r: (a.r + b.r) / 2 }, b]), ...threads.flat()];
  const outlines = rings.map((ring) => ring.map((p) => ({ u: p.u, r: Math.abs(p.r) })));
  return places.some((p) => outlines.some((ring) => ring.some((a, i) => distance(p, a, ring[(i + 1) % ring.length] ?? a) < most)));
}

function distance(p: UR, a: UR, b: UR): number {
  const [du, dr] = [b.u - a.u, b.r - a.r];
  const long = du * du + dr * dr;
  const t = long === 0 ? 0 : Math.max(0, Math.min(1, ((p.u - a.u) * du + (p.r - a.r) * dr) / long));
  return Math.hypot(p.u - a.u - t * du, p.r - a.r - t * dr);
}
