/**
 * What must come before what in one part, as a graph: in the DOT language (graphviz.org/doc/info/lang.html), and laid out for the SVG
 * writer beside. A before that others imply is left out.
 */
import type { Words } from '../base/words.ts';
import type { WhyMust, WhyOperation, WhyPart } from '../model/why.ts';
import { title } from './why.ts';

export type Graph = { readonly title: string; readonly nodes: readonly GraphNode[]; readonly arcs: readonly GraphArc[] };
/** In the order of work. */
export type GraphNode = { readonly id: string; readonly label: string; readonly bench: 'bench' | 'lathe' };
/** Places among the nodes; `rules`: the titles of all that ask for it. A preferred one that the order breaks points back. */
export type GraphArc = {
  readonly first: number;
  readonly then: number;
  readonly force: WhyMust['force'];
  readonly rules: readonly string[];
};

export function graphOf(part: WhyPart, words: Words): Graph {
  const place = new Map(part.operations.map((o, i) => [o.id, i]));
  const musts = part.operations.flatMap((o) => o.comesAfter.map((m) => ({ m, first: m.op, then: o.id })));
  const arcs = new Map<string, GraphArc>();
  for (const { m, first, then } of musts) {
    const [a, b] = [place.get(first), place.get(then)];
    if (a === undefined || b === undefined) continue;
    const known = arcs.get(`${a} ${b}`);
    const rule = words.say(`rule.${m.because.rule}.title`, m.because.grounds);
    arcs.set(`${a} ${b}`, {
      first: a,
      then: b,
      force: known?.force === 'strict' ? 'strict' : m.force,
      rules: [...new Set([...(known?.rules ?? []), rule])],
    });
  }
  const all = [...arcs.values()].sort((a, b) => a.first - b.first || a.then - b.then);
  return {
    title: words.say('why.graph.title', { part: part.part }),
    nodes: part.operations.map((o) => nodeOf(o, words)),
    arcs: all.filter((arc) => !implied(arc, all)),
  };
}

function nodeOf(o: WhyOperation, words: Words): GraphNode {
  return { id: o.id, label: title(o, words), bench: o.from === 'bench' ? 'bench' : 'lathe' };
}

/** Is there another way from `first` to `then`: for a strict one by strict ones, for a preferred one by any that the order keeps? */
function implied(arc: GraphArc, all: readonly GraphArc[]): boolean {
  if (arc.first > arc.then) return false;
  const others = all.filter((a) => a !== arc && a.first < a.then && (a.force === 'strict' || arc.force === 'preferred'));
  const seen = new Set([arc.first]);
  const queue = [arc.first];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    for (const next of others) {
      if (next.first !== at || seen.has(next.then)) continue;
      if (next.then === arc.then) return true;
      seen.add(next.then);
      queue.push(next.then);
    }
  }
  return false;
}

export function dotOf(graph: Graph): string {
  const nodes = graph.nodes.map((n, i) => `  n${i} [label=${quoted(n.label)}${n.bench === 'bench' ? ', style=rounded' : ''}];`);
  const arcs = graph.arcs.map(
    (a) => `  n${a.first} -> n${a.then} [label=${quoted(a.rules.join('; '))}${a.force === 'preferred' ? ', style=dashed' : ''}];`,
  );
  return [`digraph ${quoted(graph.title)} {`, '  node [shape=box];', ...nodes, ...arcs, '}', ''].join('\n');
}

const quoted = (text: string): string => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
