/**
 * Chains of dimensions. Each cut makes a version of a surface, measured from a version of another: an edge of a tree. Any dimension
 * between two versions is the one path between them: a signed sum of working dimensions. Whole units of 0.1 um throughout.
 */
import { type Len, len } from '../base/units.ts';
import type { DimId } from '../model/ids.ts';

/** One state of a surface, e.g. 'seat-piece/A#2'; a root is a version that nothing made (the bar's end). */
export type Version = string;
/** z(to) - z(from) = toward x the working dimension. */
export type Edge = { readonly dim: DimId; readonly from: Version; readonly to: Version; readonly toward: 1 | -1 };
export type Tree = ReadonlyMap<Version, Edge>;
export type Link = { readonly dim: DimId; readonly sign: 1 | -1 };
/** Least and greatest, whole units. */
export type Pair = { readonly lo: Len; readonly hi: Len };

/** The tree of these edges, in the order of cutting. Throws Error when a version is made twice or measured from one that comes later. */
export function growTree(edges: readonly Edge[]): Tree {
  const tree = new Map<Version, Edge>();
  const used = new Set<Version>();
  for (const edge of edges) {
    if (tree.has(edge.to)) throw new Error(`version '${edge.to}' is made twice`);
    if (used.has(edge.to) || edge.to === edge.from) throw new Error(`version '${edge.to}' was measured from before it was made`);
    tree.set(edge.to, edge);
    used.add(edge.from);
  }
  return tree;
}

/** The links whose signed sum is z(b) - z(a), in order from a to b; undefined when no chain joins the two. */
export function findPath(tree: Tree, a: Version, b: Version): readonly Link[] | undefined {
  const up = climb(tree, a);
  const down = climb(tree, b);
  if (up.root !== down.root) return undefined;
  const onWayDown = new Set(down.edges.map((edge) => edge.to));
  const rising = up.edges.filter((edge) => !onWayDown.has(edge.to));
  const onWayUp = new Set(up.edges.map((edge) => edge.to));
  const falling = down.edges.filter((edge) => !onWayUp.has(edge.to)).reverse();
  return [
    ...rising.map((edge): Link => ({ dim: edge.dim, sign: edge.toward === 1 ? -1 : 1 })),
    ...falling.map((edge): Link => ({ dim: edge.dim, sign: edge.toward })),
  ];
}

function climb(tree: Tree, from: Version): { readonly edges: readonly Edge[]; readonly root: Version } {
  const edges: Edge[] = [];
  let at = from;
  for (let edge = tree.get(at); edge; edge = tree.get(at)) {
    edges.push(edge);
    at = edge.from;
  }
  return { edges, root: at };
}

/** The least and greatest of the signed sum. Throws Error when a link has no pair. */
export function sumPath(links: readonly Link[], pairs: ReadonlyMap<DimId, Pair>): Pair {
  let lo = 0;
  let hi = 0;
  for (const link of links) {
    const pair = pairs.get(link.dim);
    if (!pair) throw new Error(`no working dimension '${link.dim}'`);
    lo += link.sign === 1 ? pair.lo : -pair.hi;
    hi += link.sign === 1 ? pair.hi : -pair.lo;
  }
  return { lo: len(lo), hi: len(hi) };
}

/**
 * The statistical figure of the same sum: bands added by the root of their squares about the middle of the worst case, rounded outward to
 * whole units. It supposes links that are independent and centred; the worst case governs. Throws Error when a link has no pair.
 */
export function likelyPath(links: readonly Link[], pairs: ReadonlyMap<DimId, Pair>): Pair {
  const worst = sumPath(links, pairs);
  const squares = links.reduce((sum, { dim }) => {
    const pair = pairs.get(dim);
    return pair ? sum + (pair.hi - pair.lo) ** 2 : sum;
  }, 0);
  const band = Math.min(worst.hi - worst.lo, Math.ceil(Math.sqrt(squares)));
  const both = worst.lo + worst.hi;
  return { lo: len(Math.floor((both - band) / 2)), hi: len(Math.ceil((both + band) / 2)) };
}
