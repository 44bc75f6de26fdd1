/** Work that is not of revolution: flats, cross holes, soldered branches, the half flat and the heat of a D-bit. */
import { type Len, len } from '../../base/units.ts';
import type { SideFeature } from '../../model/part.ts';
import type { Operation, Verb } from '../../model/plan.ts';
import { operation } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { bench } from '../tools.ts';

const BENCH: Readonly<Partial<Record<SideFeature['does'], { readonly verb: Verb; readonly tool: string; readonly says?: string }>>> = {
  flats: { verb: 'file-flats', tool: 'file' },
  'cross-hole': { verb: 'cross-drill', tool: 'drill-press' },
  branch: { verb: 'solder', tool: 'torch', says: 'solder-caution' },
  'half-flat': { verb: 'file-half', tool: 'file' },
  harden: { verb: 'harden', tool: 'torch', says: 'harden-caution' },
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
    if (lacks) return { refused: [{ what: f.id, because: { rule: `no-${how.tool}`, grounds: {} } }] };
    const op: Operation = operation(
      {
        feature: f.id,
        step: how.verb,
        verb: how.verb,
        tool: toolFor(f, how.tool),
        ways: { bench: { cuts: [], sweeps: [{ take: 'side', feature: f.id }] } },
      },
      [{ rule: how.verb, grounds: {} }],
      how.says ? [{ rule: how.says, grounds: {} }] : [],
    );
    return { methods: [{ feature: f.id, name: how.verb, because: { rule: how.verb, grounds: {} }, operations: [op], rank: 0 }] };
  },
});

const toolFor = (f: SideFeature, kind: string): Operation['tool'] => {
  const size: Len = f.size?.target ?? len(0);
  return f.does === 'cross-hole' ? { ...bench(kind), size } : bench(kind);
};
