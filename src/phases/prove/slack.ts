/**
 * How far limits can move anything at all: a bound, not a measure. What holds by more than this needs no replay at a corner. It is coarse
 * on purpose: every length at its whole band at once, the widest diameters against each other.
 */
import { isMetal, throughs } from '../../geometry/section/ask.ts';
import { steepness } from '../../geometry/section/lines.ts';
import type { Section } from '../../geometry/section.ts';
import type { Part } from '../../model/part.ts';
import type { Chart, Working } from '../../model/plan.ts';

/** `along`: what two places on the axis can come nearer to each other; `across`: what the difference of two diameters can lose. In units. */
export type Slack = { readonly along: number; readonly across: number };

export function slackOf(part: Part, chart: Chart): Slack {
  const bands = (measures: Working['measures']): readonly number[] =>
    chart.working.filter((one) => one.measures === measures).map(({ limits }) => limits.hi - limits.lo);
  const widest = Math.max(0, ...bands('diameter'));
  // where a cone or an arc runs out moves along the axis with diameters
  const cones = part.surfaces.reduce((sum, one) => sum + (one.shape === 'cone' ? (2 * widest) / steepness(one.includedAngle) : 0), 0);
  const arcs = part.surfaces.reduce((sum, one) => sum + (one.shape === 'arc' ? one.across.hi - one.across.lo : 0), 0);
  return { along: bands('length').reduce((sum, band) => sum + band, 0) + cones + arcs, across: 2 * widest };
}

/**
 * The least difference of outside and inside diameter that any limits can leave between two cylinders of this section: of any two that
 * stand one over the other or can come to do so.
 */
export function leastWall(section: Section, { along, across }: Slack): number {
  const all = throughs(section, isMetal).map(({ slab, inner, outer }) => ({ slab, inner: inner?.line, outer: outer.line }));
  let least = Number.MAX_VALUE;
  for (const over of all) {
    if (over.outer.slope !== 0) continue;
    for (const under of all) {
      const apart = Math.max(over.slab.from - under.slab.to, under.slab.from - over.slab.to);
      if (apart <= along && (under.inner?.slope ?? 0) === 0) least = Math.min(least, over.outer.d - (under.inner?.d ?? 0) - across);
    }
  }
  return least;
}
