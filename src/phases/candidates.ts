/** From a part and a workshop to everything that may be done: methods, holds, befores, and what is refused. */
import type { Part } from '../model/part.ts';
import type { Candidates } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { beforesFor } from '../rules/befores/index.ts';
import { contextOf } from '../rules/context.ts';
import { GRIP_RULES } from '../rules/grips/index.ts';
import { trueEnough } from '../rules/grips/truth.ts';
import { leavingBar, methodsFor } from '../rules/methods/index.ts';
import type { Work } from '../rules/rule.ts';

export function candidates(part: Part, workshop: Workshop): Candidates {
  const c = contextOf(part, workshop);
  const offered = part.features.map((feature) => methodsFor(c, feature));
  const leaving = leavingBar(c);
  const methods = [
    ...offered.map(({ feature, any }) => ({ feature, any })),
    ...(leaving.methods.length > 0 ? [{ feature: `${part.id}/bar`, any: leaving.methods }] : []),
  ];
  // what is refused for want of a tool has its befores too, so that it can be tried
  const wanted = [...offered.flatMap((o) => o.refused), ...leaving.refused, ...leaving.asked].flatMap((r) =>
    r.would && 'method' in r.would ? [r.would.method] : [],
  );
  const all = [...methods.flatMap((m) => m.any), ...wanted];
  const work: Work = { c, methods: all, operations: once(all.flatMap((m) => m.operations)) };
  const grips = GRIP_RULES.map((rule) => rule.offer(work));
  const held = trueEnough(
    work,
    grips.flatMap((g) => g.grips),
  );
  return {
    part,
    methods,
    grips: held.grips,
    befores: beforesFor(work),
    refused: [...offered.flatMap((o) => o.refused), ...leaving.refused, ...grips.flatMap((g) => g.refused), ...held.refused],
    ...(leaving.asked.length > 0 ? { asked: leaving.asked } : {}),
  };
}

/** Methods of one feature share operations (the same drill before a bore or a D-bit): each once. */
function once<T extends { readonly id: string }>(things: readonly T[]): readonly T[] {
  return [...new Map(things.map((t) => [t.id, t])).values()];
}
