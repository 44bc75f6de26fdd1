/**
 * Habits of the workshop: which end comes first, what is not liked, dies or the single point. Each leaves candidates out; where nothing
 * finishes without them, the habit gives way. A habit never lets in what a rule refuses.
 */
import type { Candidates, Method } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';

export type Habit = { readonly name: 'first-end' | 'avoid' | 'die-below'; apply(c: Candidates): Candidates };

/** The habits that are stated and that touch this part, in the order in which they give way. */
export function habitsFor(c: Candidates, { habits }: Workshop): readonly Habit[] {
  const stated: readonly Habit[] = [
    { name: 'first-end', apply: (k) => firstEnd(k, habits.firstEnd[k.part.id]) },
    { name: 'avoid', apply: (k) => avoid(k, habits.avoid) },
    { name: 'die-below', apply: (k) => dieBelow(k, habits.dieBelow) },
  ];
  return stated.filter((habit) => differs(habit.apply(c), c));
}

const differs = (a: Candidates, b: Candidates): boolean =>
  a.grips.length !== b.grips.length || a.methods.some((m, i) => m.any.length !== b.methods[i]?.any.length);

const keep = (c: Candidates, liked: (m: Method) => boolean): Candidates => ({
  ...c,
  methods: c.methods.map((f) => ({ ...f, any: f.any.filter(liked) })),
});

/** Leaves out the other ways off the bar. */
function firstEnd(c: Candidates, end: Workshop['habits']['firstEnd'][string] | undefined): Candidates {
  if (!end) return c;
  return keep(c, (m) => m.operations.every((o) => (o.verb !== 'part-off' && o.verb !== 'saw-off') || o.ways[end] !== undefined));
}

/** By the kind of tool ('d-bit', 'die', 'reamer' ...) or of hold ('threaded-mandrel', 'sleeve' ...). */
function avoid(c: Candidates, kinds: readonly string[]): Candidates {
  const liked = keep(c, (m) => !m.operations.some((o) => kinds.includes(o.tool.kind)));
  return { ...liked, grips: c.grips.filter((g) => !kinds.includes(g.kind) && !(g.plug && kinds.includes(g.plug.tooling.kind))) };
}

/** Smaller threads by die, larger ones by the single point. */
function dieBelow(c: Candidates, size: Workshop['habits']['dieBelow']): Candidates {
  if (size === undefined) return c;
  const limit = size;
  const threads = new Map(
    c.part.features.flatMap((f) => (f.kind === 'thread' && f.side === 'outside' ? [[f.id, f.thread.major.target] as const] : [])),
  );
  return keep(c, (m) => {
    const major = threads.get(m.feature);
    if (major === undefined || !both(c, m.feature)) return true;
    return m.name === (major < limit ? 'die' : 'screw-cut');
  });
}

/** Is there a choice at all? */
function both(c: Candidates, feature: string): boolean {
  const names = c.methods.find((m) => m.feature === feature)?.any.map((m) => m.name) ?? [];
  return names.includes('die') && names.includes('screw-cut');
}
