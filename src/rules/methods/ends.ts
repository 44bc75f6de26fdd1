/** Faces at the ends of a part, and how the part leaves its bar. */
import { add, type Len, len } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Feature } from '../../model/part.ts';
import type { Method, Operation, Refusal, Sweep, Way } from '../../model/plan.ts';
import { type Context, comesOutAt, type EndFeature, length, operation, scaled } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { stubLength } from '../stub.ts';
import { bench, partingTool, turningTool } from '../tools.ts';

type End_ = { readonly end: EndFeature };
const endFeature = (feature: Feature): End_ | undefined => (feature.kind === 'end' ? { end: feature } : undefined);

function facing(c: Context, end: EndFeature, step: 'face' | 'rough' | 'finish', leaves: Len, rule: string): Operation {
  const way: Way = {
    cuts: [{ makes: end.face, stage: leaves > 0 ? 'rough' : 'final', measures: 'length', leaves }],
    sweeps: [{ take: 'face', face: end.face }],
  };
  return operation({ feature: end.id, step, verb: 'face', tool: turningTool(c.workshop), ways: { [end.end]: way }, light: true }, [
    { rule, grounds: {} },
  ]);
}

export const faceOnce: MethodRule = methodRule({
  id: 'face-once',
  source: CUSTOM,
  when: (_c, f) => (f.kind === 'end' && !f.fitted && !f.skimmed ? endFeature(f) : undefined),
  then: ({ end }, c) => ({
    methods: [
      {
        feature: end.id,
        name: 'once',
        because: { rule: 'face-once', grounds: {} },
        operations: [facing(c, end, 'face', len(0), 'face-once')],
        rank: 0,
      },
    ],
  }),
});

/** Where a drill or a heat comes between: cut once to start from, and once more when the mouth is spoilt. */
export const faceTwice: MethodRule = methodRule({
  id: 'face-twice',
  source: CUSTOM,
  when: (c, f) => {
    if (f.kind !== 'end') return undefined;
    const seat = c.holes.some((h) => h.edge === f.face);
    const heated = c.part.features.some((s) => s.kind === 'side' && s.does === 'branch');
    if (f.fitted || f.skimmed) return { end: f, leaves: length('face.allowance') };
    if (seat) return { end: f, leaves: length('face.after-drill') };
    return heated && f.role === 'sealing' ? { end: f, leaves: length('face.allowance') } : undefined;
  },
  then: ({ end, leaves }, c) => ({
    methods: [
      {
        feature: end.id,
        name: 'twice',
        because: { rule: 'face-twice', grounds: {} },
        rank: 0,
        operations: [
          facing(c, end, 'rough', leaves, 'face-first'),
          facing(c, end, 'finish', len(0), end.fitted ? 'fitted-last' : end.skimmed ? 'skimmed-last' : 'face-twice'),
        ],
      },
    ],
  }),
});

// ---- leaving the bar -----------------------------------------------------------------------------------------------------
const barFeature = (c: Context): string => `${c.part.id}/bar`;

type Leaving = { readonly methods: readonly Method[]; readonly refused: readonly Refusal[]; readonly asked: readonly Refusal[] };

/** Every way to get the part off its bar. A mandrel made in place has none. `asked`: those that would leave less to do than the drawing asks. */
export function leavingBar(c: Context): Leaving {
  if (c.part.staysInChuck || c.part.stock.from !== 'bar') return { methods: [], refused: [], asked: [] };
  const tool = partingTool(c.workshop, c.part.stock.across);
  const heated = c.part.features.some((s) => s.kind === 'side' && s.does === 'branch');
  const methods: Method[] = [];
  const refused: Refusal[] = [];
  for (const end of ['second', 'first'] as const) {
    const feature = c.end(end);
    if (!feature) continue;
    methods.push(...sawing(c, feature, tool === undefined));
    if (!tool) {
      refused.push({
        what: `${barFeature(c)}/part-off-${end}`,
        because: { rule: 'part-off', grounds: {} },
        ...(c.workshop.tools.parting ? { has: c.workshop.tools.parting.deepest } : {}),
        wants: c.part.stock.across,
        lacks: 'parting',
        would: { method: heated ? stub(c, feature, bladeFor(c)) : parting(c, feature, bladeFor(c)) },
      });
      continue;
    }
    methods.push(parting(c, feature, tool));
    if (heated) methods.push(stub(c, feature, tool));
  }
  return { methods, refused, asked: tool ? asParted(c, tool) : [] };
}

/** An end that nothing touches could stay as the blade leaves it: then nothing has to hold the part for facing it. */
function asParted(c: Context, tool: Operation['tool']): readonly Refusal[] {
  const ends = (['second', 'first'] as const).flatMap((end) => c.end(end) ?? []);
  return ends
    .filter((end) => end.role === 'clearance' && !end.fitted && !end.skimmed)
    .map((end) => ({
      what: `${end.id}/as-parted`,
      because: { rule: 'end-is-faced', grounds: {} },
      would: { method: parting(c, { ...end, role: 'free' }, tool) },
    }));
}

/** The blade that is missing: what is refused for want of it can be tried. */
const bladeFor = (c: Context): Operation['tool'] => ({
  kind: 'parting',
  key: 'parting',
  size: c.workshop.tools.parting?.width ?? length('saw.kerf'),
  material: c.workshop.tools.material,
});

function parting(c: Context, end: EndFeature, tool: Operation['tool']): Method {
  const left = end.role === 'free';
  const way = partWay(c, end, tool, left ? len(0) : length('part.allowance'));
  const op = operation(
    { feature: barFeature(c), step: `part-off-${end.end}`, verb: 'part-off', tool, ways: { [other(end.end)]: way } },
    [{ rule: 'part-off', grounds: {} }],
    [{ rule: 'part-off-caution', grounds: {} }, ...(left && cutsThread(c, end) ? [{ rule: 'burr-in-thread', grounds: {} }] : [])],
  );
  return {
    feature: barFeature(c),
    name: `part-off-${end.end}`,
    because: { rule: 'part-off', grounds: {} },
    operations: [op],
    rank: end.end === 'second' ? 0 : 1,
    ...(left ? { covers: [end.id] } : {}),
  };
}

/** The blade turns over the last turn of a thread that it cuts through. */
const cutsThread = (c: Context, end: EndFeature): boolean => c.threads.some((t) => comesOutAt(c, t)?.id === end.id);

function partWay(c: Context, end: EndFeature, tool: Operation['tool'], leaves: Len): Way {
  const sweeps: readonly Sweep[] = [{ take: 'part', face: end.face, kerf: tool.size ?? length('saw.kerf') }];
  return { cuts: [{ makes: end.face, stage: leaves > 0 ? 'rough' : 'final', measures: 'length', leaves }], sweeps, reach: c.part.length };
}

/** A piece of bar is left on the far end to hold by, until heat and heavy work are over. */
function stub(c: Context, end: EndFeature, tool: Operation['tool']): Method {
  const held = stubLength(c.part, tool);
  const out: End = other(end.end);
  const away: Way = {
    cuts: [],
    sweeps: [{ take: 'part', face: end.face, kerf: tool.size ?? length('saw.kerf'), stub: add(held, length('stub.allowance')) }],
    reach: add(c.part.length, held),
  };
  const ops = [
    operation(
      { feature: barFeature(c), step: `part-off-${end.end}-with-stub`, verb: 'part-off', tool, ways: { [out]: away } },
      [{ rule: 'chucking-stub', grounds: {} }],
      [{ rule: 'part-off-caution', grounds: {} }],
    ),
    operation(
      {
        feature: barFeature(c),
        step: `cut-stub-${end.end}`,
        verb: 'cut-stub',
        tool,
        ways: { [out]: partWay(c, end, tool, length('stub.allowance')) },
      },
      [{ rule: 'chucking-stub', grounds: {} }],
      [{ rule: 'part-off-caution', grounds: {} }],
    ),
  ];
  return {
    feature: barFeature(c),
    name: `stub-${end.end}`,
    because: { rule: 'chucking-stub', grounds: {} },
    operations: ops,
    rank: end.end === 'second' ? 0 : 1,
  };
}

/** Sawn, and faced after, where no blade reaches through or where the work is too slender to be parted. */
function sawing(c: Context, end: EndFeature, noBlade: boolean): readonly Method[] {
  const across = c.part.stock.from === 'bar' ? c.part.stock.across : len(0);
  if (!noBlade && c.part.length <= scaled(across, 'grip.stick-out.most')) return [];
  const left = end.role === 'free';
  const way = partWay(c, end, bench('saw'), left ? len(0) : length('saw.allowance'));
  const op = operation(
    {
      feature: barFeature(c),
      step: `saw-off-${end.end}`,
      verb: 'saw-off',
      tool: bench('saw'),
      ways: { [other(end.end)]: way },
      light: true,
    },
    [{ rule: 'saw-off', grounds: {} }],
  );
  const rank = end.end === 'second' ? 0 : 1;
  return [
    {
      feature: barFeature(c),
      name: `saw-off-${end.end}`,
      because: { rule: 'saw-off', grounds: {} },
      operations: [op],
      rank,
      ...(left ? { covers: [end.id] } : {}),
    },
  ];
}
