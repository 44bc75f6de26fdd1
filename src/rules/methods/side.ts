/** Work that is not of revolution: flats, cross holes, soldered branches, the half flat and the heat of a D-bit. */
import { type Len, len } from '../../base/units.ts';
import type { SideFeature } from '../../model/part.ts';
import type { Operation, Refusal, Verb } from '../../model/plan.ts';
import { type Context, length, operation } from '../context.ts';
import { guideFor } from '../filing-guide.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { bench } from '../tools.ts';
import { crossHoleOf } from './cross-hole.ts';
import { isTrimmed } from './drilling.ts';
import { sizeOfDrill } from './holes.ts';

const BENCH: Readonly<
  Partial<Record<SideFeature['does'], { readonly verb: Verb; readonly tool: string; readonly with?: string; readonly says?: string }>>
> = {
  flats: { verb: 'file-flats', tool: 'file' },
  'cross-hole': { verb: 'cross-drill', tool: 'drill-press' },
  branch: { verb: 'solder', tool: 'torch', says: 'solder-caution' },
  flange: { verb: 'solder', tool: 'torch', says: 'solder-caution' },
  'bolt-holes': { verb: 'drill-bolt-holes', tool: 'drill-press' },
  'half-flat': { verb: 'file-half', tool: 'file' },
  square: { verb: 'file-square', tool: 'file' },
  'square-hole': { verb: 'file-square-hole', tool: 'file' },
  hexagon: { verb: 'file-hexagon', tool: 'file' },
  slit: { verb: 'slit', tool: 'saw' },
  slot: { verb: 'saw-slot', tool: 'saw' },
  harden: { verb: 'harden', tool: 'torch', with: 'torch-and-bath', says: 'harden-caution' },
};

export const atTheBench: MethodRule = methodRule({
  id: 'at-the-bench',
  source: CUSTOM,
  when: (_c, f) => {
    const how = f.kind === 'side' ? BENCH[f.does] : undefined;
    return f.kind === 'side' && how ? { f, how } : undefined;
  },
  then: ({ f, how }, c) => {
    const lacks = { file: !c.workshop.tools.files, 'drill-press': !c.workshop.tools.drillPress, torch: !c.workshop.tools.torch }[how.tool];
    const lies = f.does === 'cross-hole' && isRound(c);
    const guide = guideFor(c, f, how.verb);
    const across = crossHoleOf(c, f);
    const made = operation(
      {
        feature: f.id,
        step: how.verb,
        verb: how.verb,
        tool: { ...toolFor(f, how.with ?? how.tool, across?.drill), ...guide.tool },
        ...(guide.asks ? { asks: guide.asks } : {}),
        ways: { bench: { cuts: [], sweeps: [{ take: 'side', feature: f.id }] } },
      },
      [{ rule: how.verb, grounds: {} }],
      [...slotSaid(c, f), ...(how.says ? [{ rule: how.says, grounds: {} }] : []), ...guide.says],
    );
    const op: Operation = lies ? { ...made, lies } : made;
    const burred = f.does === 'cross-hole' && ['running', 'register', 'sealing'].includes(c.surface(f.on).role);
    const after = [...reamed(f, across?.ream, lies), ...(burred ? [deburr(f)] : []), ...burrsInside(c, f)];
    const method = { feature: f.id, name: how.verb, because: { rule: how.verb, grounds: {} }, operations: [op, ...after], rank: 0 };
    const narrow = tooNarrow(f);
    if (narrow) return { refused: [{ ...narrow, would: { method } }] };
    if (lacks) return { refused: [{ what: f.id, because: { rule: `no-${how.tool}`, grounds: {} }, lacks: how.tool, would: { method } }] };
    return across?.refused ? { refused: [{ ...across.refused, would: { method } }] } : { methods: [method] };
  },
});

/** Its burrs, in a thread too where it is sawn through one; and how it comes to a width over the blade's. */
function slotSaid(c: Context, f: SideFeature): Operation['says'] {
  if (f.does !== 'slot' || !f.size) return [];
  const thread = c.threads.find((t) => t.on === f.on);
  return [
    ...(f.size.target > length('saw.kerf') ? [{ rule: 'slot-opened', grounds: {} }] : []),
    thread ? { rule: 'slot-through-thread', grounds: { thread: thread.thread.name } } : { rule: 'slot-burrs', grounds: {} },
  ];
}

/** A saw cuts no slot that is narrower than its kerf. */
function tooNarrow(f: SideFeature): Refusal | undefined {
  const wants = length('slot.blade');
  if (f.does !== 'slot' || !f.size || f.size.hi >= wants) return undefined;
  return { what: f.id, because: { rule: 'slot-narrow', grounds: {} }, has: f.size.hi, wants };
}

/** Steered by the drilled hole, in the same hold. */
function reamed(f: SideFeature, size: Len | undefined, lies: boolean): readonly Operation[] {
  if (size === undefined) return [];
  const ways = { bench: { cuts: [], sweeps: [] } };
  const op = operation({ feature: f.id, step: 'cross-ream', verb: 'cross-ream', tool: { ...bench('hand-reamer'), size }, ways }, [
    { rule: 'cross-ream', grounds: {} },
  ]);
  return [lies ? { ...op, lies } : op];
}

/** Round work rolls in a vice; a hexagon is held by its flats. */
const isRound = (c: Context): boolean => !c.outsides.some((o) => o.section === 'hexagon');

/** The edge of a cross hole in a fit stands proud until it is eased. */
const deburr = (f: SideFeature): Operation =>
  operation(
    { feature: f.id, step: 'deburr', verb: 'deburr', tool: bench('file'), ways: { bench: { cuts: [], sweeps: [] } }, light: true },
    [{ rule: 'deburr', grounds: {} }],
  );

/** It throws a burr into a hole that a drill has left as it is to stay, where no file gets: that drill takes it along, turned by hand. */
function burrsInside(c: Context, f: SideFeature): readonly Operation[] {
  if (f.does !== 'cross-hole') return [];
  return c.holes.flatMap((hole) => {
    const { from, to } = c.cylinder(hole.cylinder);
    const drill = isTrimmed(c, hole) ? undefined : sizeOfDrill(c, hole);
    if (drill === undefined || f.at <= from || f.at >= to) return [];
    const tool = { ...bench('hand-drill'), size: drill };
    const ways = { bench: { cuts: [], sweeps: [] } };
    return [
      operation({ feature: f.id, step: 'clear-bore', verb: 'deburr', tool, ways, light: true }, [{ rule: 'burr-in-bore', grounds: {} }]),
    ];
  });
}

const toolFor = (f: SideFeature, kind: string, drill?: Len): Operation['tool'] => {
  const size: Len = drill ?? f.size?.target ?? len(0);
  return f.does === 'cross-hole' || f.does === 'bolt-holes' ? { ...bench(kind), size } : bench(kind);
};

/** Rolled in the lathe, after turning and before a fit beside it is finished. */
export const knurl: MethodRule = methodRule({
  id: 'knurl',
  source: CUSTOM,
  when: (_c, f) => (f.kind === 'side' && f.does === 'knurl' ? { f } : undefined),
  then: ({ f }, c) => {
    const way = { cuts: [], sweeps: [{ take: 'side' as const, feature: f.id }] };
    const tool = { kind: 'knurling', key: 'knurling', material: 'HSS' as const };
    const op = operation({ feature: f.id, step: 'knurl', verb: 'knurl', tool, ways: { first: way, second: way } }, [
      { rule: 'knurl', grounds: {} },
    ]);
    const method = { feature: f.id, name: 'knurl', because: { rule: 'knurl', grounds: {} }, operations: [op], rank: 0 };
    if (c.workshop.tools.knurling) return { methods: [method] };
    return { refused: [{ what: f.id, because: { rule: 'no-knurling-tool', grounds: {} }, lacks: 'knurling', would: { method } }] };
  },
});
