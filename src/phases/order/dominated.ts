/**
 * Methods that can be left out without making any order dearer: one operation gives way to one operation of another method, all others
 * being the same, done from the same ends, bound by the same befores and holds, liked no less, taken up no more slowly, and no worse for tool
 * changes, because whatever shares the worse one's tool has the better one's tool in common too. (A die beside the single point, say, or a
 * drill of its own beside the boring tool.) The search is as exact without them.
 */
import type { Candidates, Method, Operation } from '../../model/plan.ts';
import type { Handling } from '../../rules/handling.ts';

export function withoutDominated(c: Candidates, takes: Handling): Candidates {
  const alike = comparing(c);
  const worse = new Set(c.methods.flatMap((f) => f.any.filter((m) => isDominated(c, m, f.any, takes, alike))));
  return worse.size === 0 ? c : { ...c, methods: c.methods.map((f) => ({ ...f, any: f.any.filter((m) => !worse.has(m)) })) };
}

type Alike = (a: Operation, b: Operation) => boolean;

function isDominated(c: Candidates, worse: Method, any: readonly Method[], takes: Handling, alike: Alike): boolean {
  return any.some((m) => {
    const pair = differing(worse, m);
    if (!pair || takes.change(pair.good.tool) > takes.change(pair.bad.tool)) return false;
    const [bad, good] = [pair.bad.tool.key, pair.good.tool.key];
    return bad !== good && c.methods.every((f) => givesWay(f.any, bad, good, alike));
  });
}

/** In this feature, can every method with the worse tool give way to one with the better tool? */
function givesWay(any: readonly Method[], worse: string, better: string, alike: Alike): boolean {
  const users = any.filter((m) => m.operations.some((o) => o.tool.key === worse));
  return users.every((m) =>
    any.some((other) => {
      const pair = differing(m, other);
      return pair?.bad.tool.key === worse && pair.good.tool.key === better && m.rank > other.rank && alike(pair.bad, pair.good);
    }),
  );
}

/** The one operation in which two methods differ, where they do in one alone and no other has its tool. */
function differing(worse: Method, better: Method): { readonly bad: Operation; readonly good: Operation } | undefined {
  if (worse.covers || better.covers || worse.operations.length !== better.operations.length) return undefined;
  const [bad, ...more] = without(worse, better);
  const [good, ...others] = without(better, worse);
  if (!bad || !good || more.length > 0 || others.length > 0) return undefined;
  return worse.operations.some((o) => o !== bad && o.tool.key === bad.tool.key) ? undefined : { bad, good };
}

const without = (a: Method, b: Method): readonly Operation[] =>
  a.operations.filter(
    (o) => !b.operations.some((other) => other.id === o.id && other.tool.key === o.tool.key && kindOf(other) === kindOf(o)),
  );

/** Whether the search could tell the operations apart but by their tools; tooling to be made for the worse one is no gain of it. */
function comparing(c: Candidates): Alike {
  const known = new Map<string, string>();
  const bound = (op: string): string => {
    const text = known.get(op) ?? boundBy(c, op);
    known.set(op, text);
    return text;
  };
  return (bad, good) => good.tool.made === undefined && kindOf(bad) === kindOf(good) && bound(bad.id) === bound(good.id);
}

const kindOf = ({ verb, ways, light, lies }: Operation): string =>
  [Object.keys(ways).sort(), light, lies ?? false, LEAVING.includes(verb) ? verb : ''].join();
const LEAVING: readonly string[] = ['part-off', 'saw-off', 'cut-stub'];

/** All that binds an operation, its own name left out. */
function boundBy(c: Candidates, op: string): string {
  const name = (id: string | undefined): string => (id === op ? '' : (id ?? '-'));
  const binds = c.befores.filter((b) => b.first === op || b.then === op);
  const holds = c.grips.map((g) => [g.ready, g.gone, g.hides].map((ids) => ids.includes(op)).join());
  return [
    ...binds.map((b) => [name(b.first), name(b.then), b.force, name(b.when?.op), b.when?.from ?? '-'].join(' ')).sort(),
    ...holds,
  ].join('\n');
}
