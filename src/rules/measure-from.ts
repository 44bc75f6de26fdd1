/**
 * What a length is measured from. The face is one that stands in this grip (its datum, or cut since): first one with which the drawing
 * gives the length directly, so that two lengths which must agree are cut from one face in one grip (else their limits add); then the
 * one with the fewest links to what the drawing asks; then the datum. Common practice, no source.
 */
import { findPath, type Tree, type Version } from '../geometry/chain.ts';
import type { Drawn } from '../geometry/places.ts';
import type { SurfaceId } from '../model/ids.ts';
import type { Stage } from '../model/plan.ts';

/** A surface as it is now. */
export type Standing = { readonly surface: SurfaceId; readonly version: Version; readonly stage: Stage };
export type MeasureAsk = {
  readonly makes: SurfaceId;
  readonly stage: Stage;
  /** Faces that may be measured from, the datum first, then in the order of cutting. */
  readonly candidates: readonly Standing[];
  /** Every surface cut so far. */
  readonly now: ReadonlyMap<SurfaceId, Standing>;
  readonly drawn: readonly Drawn[];
  readonly tree: Tree;
};

/** The candidates, best first; ties keep their order. */
export function rankDatums(ask: MeasureAsk): readonly Standing[] {
  const scored = ask.candidates.map((candidate, place) => ({ candidate, score: [...scoreOf(ask, candidate), place] }));
  scored.sort((p, q) => compareFields(p.score, q.score));
  return scored.map((one) => one.candidate);
}

/** Compared field by field, least first: is it the drawing's own length (the narrowest first); links to what is asked; the nearest face. */
function scoreOf(ask: MeasureAsk, candidate: Standing): readonly number[] {
  const asked = ask.drawn.filter(({ dimension }) => dimension.a === ask.makes || dimension.b === ask.makes);
  const stated = asked.filter(({ dimension }) => dimension.limits.from.kind !== 'general');
  const usable = candidate.stage === 'final' || ask.stage === 'rough';
  const direct = asked.find(({ dimension }) => usable && joins(dimension, ask.makes, candidate.surface));
  if (direct && stated.includes(direct)) return [0, direct.dimension.limits.hi - direct.dimension.limits.lo];
  return [1, linksFrom(ask, candidate, stated), stated.length > 0 || direct ? 0 : 1];
}

/** How many links the drawing's dimensions of this surface to finished faces would have, in all. */
function linksFrom(ask: MeasureAsk, candidate: Standing, stated: readonly Drawn[]): number {
  let links = 0;
  for (const { dimension } of stated) {
    const far = ask.now.get(dimension.a === ask.makes ? dimension.b : dimension.a);
    if (far?.stage !== 'final') continue;
    links += 1 + (findPath(ask.tree, candidate.version, far.version)?.length ?? ask.tree.size);
  }
  return links;
}

const joins = (dimension: { readonly a: SurfaceId; readonly b: SurfaceId }, p: SurfaceId, q: SurfaceId): boolean =>
  (dimension.a === p && dimension.b === q) || (dimension.a === q && dimension.b === p);

function compareFields(p: readonly number[], q: readonly number[]): number {
  for (const [i, value] of p.entries()) {
    const difference = value - (q[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
