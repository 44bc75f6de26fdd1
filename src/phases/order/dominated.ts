/**
 * Methods that can be left out without making any order dearer: one operation in place of one operation, done from the same ends, bound by
 * the same befores and holds, liked no less, taken up no more slowly, and no worse for tool changes, because whatever shares the worse one's tool has the better
 * one's tool in common too. (A die beside the single point, say.) The search is as exact without them.
 */
import type { Candidates, Method } from '../../model/plan.ts';
import type { Handling } from '../../rules/handling.ts';

export function withoutDominated(c: Candidates, takes: Handling): Candidates {
  const worse = new Set(c.methods.flatMap((f) => f.any.filter((m) => isDominated(c, m, takes))));
  return worse.size === 0 ? c : { ...c, methods: c.methods.map((f) => ({ ...f, any: f.any.filter((m) => !worse.has(m)) })) };
}

function isDominated(c: Candidates, worse: Method, takes: Handling): boolean {
  const key = keyOf(worse);
  if (key === undefined) return false;
  const users = c.methods.filter((f) => f.any.some((m) => m.operations.some((o) => o.tool.key === key)));
  const [first] = users;
  return (first?.any ?? []).some((m) => {
    const better = keyOf(m);
    return (
      better !== undefined &&
      better !== key &&
      changeOf(m, takes) <= changeOf(worse, takes) &&
      users.every((f) => replaces(c, f.any, better, key))
    );
  });
}

const changeOf = (m: Method, takes: Handling): number => m.operations.reduce((sum, o) => sum + takes.change(o.tool), 0);

/** In this feature, can every method with the worse tool give way to one with the better tool? */
function replaces(c: Candidates, any: readonly Method[], better: string, worse: string): boolean {
  const good = any.find((m) => keyOf(m) === better);
  const bad = any.filter((m) => m.operations.some((o) => o.tool.key === worse));
  return good !== undefined && bad.every((m) => keyOf(m) === worse && m.rank > good.rank && alike(c, good, m));
}

const keyOf = (m: Method): string | undefined => (m.operations.length === 1 && !m.covers ? m.operations[0]?.tool.key : undefined);

function alike(c: Candidates, a: Method, b: Method): boolean {
  const [p, q] = [a.operations[0], b.operations[0]];
  if (!p || !q || p.tool.made !== undefined || p.light !== q.light) return false;
  if (Object.keys(p.ways).sort().join() !== Object.keys(q.ways).sort().join()) return false;
  return c.grips.every((g) => g.hides.includes(p.id) === g.hides.includes(q.id)) && boundBy(c, p.id) === boundBy(c, q.id);
}

/** All that binds an operation, its own name left out. */
function boundBy(c: Candidates, op: string): string {
  const name = (id: string | undefined): string => (id === op ? '' : (id ?? '-'));
  const binds = c.befores.filter((b) => b.first === op || b.then === op);
  return binds
    .map((b) => [name(b.first), name(b.then), b.force, name(b.when?.op), b.when?.from ?? '-'].join(' '))
    .sort()
    .join('\n');
}
