/** What cannot be met: which dimension, by how much, through which cuts, and the changes that would meet it, each of them tried. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { len, showMm } from '../../base/units.ts';
import { facesOf, shortName } from '../../geometry/places.ts';
import type { Shortage } from '../../geometry/sharing.ts';
import type { Part, Surface } from '../../model/part.ts';
import type { Verb } from '../../model/plan.ts';
import { diameterLimits } from '../../rules/diameters.ts';
import type { Capability, DiameterCut, Walk } from '../../rules/working.ts';
import { remediesOf, type Trials } from './remedies.ts';

export type { Trials } from './remedies.ts';

/** Before the name of a budget that is stock to be found, not a length of the drawing. */
export const STOCK = 'stock/';

type Short = { readonly walk: Walk; readonly share: { readonly short: readonly Shortage[] } };

/** One a dimension, on its worse side. */
export function shortages(part: Part, { share, walk }: Short, trials: Trials): readonly Diagnostic[] {
  const worst = new Map<string, Shortage>();
  for (const one of share.short) {
    const before = worst.get(one.of);
    if (!before || before.needs - before.allows < one.needs - one.allows) worst.set(one.of, one);
  }
  return [...worst.values()].map((one) => {
    const operations = [...new Set(walk.lengths.filter((cut) => one.dims.includes(cut.dim)).map((cut) => cut.operation.id))];
    const grounds = {
      ...figuresOf(part, one),
      operations: operations.join(', '),
      ...remediesOf(part, one, operations, trials),
    };
    return { code: 'chart.cannot-be-met', severity: 'error', grounds };
  });
}

function figuresOf(part: Part, one: Shortage): Diagnostic['grounds'] {
  const stock = one.of.startsWith(STOCK);
  return {
    ...{ part: part.id, dimension: shortName(part, stock ? one.of.slice(STOCK.length) : one.of), what: stock ? 'stock' : 'dimension' },
    ...{ short: show(one.needs - one.allows), allows: show(Math.max(0, one.allows)), needs: show(one.needs), links: one.dims.length },
    through: one.dims.map((dim) => shortName(part, dim)).join(', '),
    feature: pieceOf(part, one.of),
  };
}

/** The piece of the outside that is as long as that dimension, between the same faces; '' where none is. */
function pieceOf(part: Part, of: string): string {
  const dimension = part.dimensions.find(({ id }) => id === of);
  const at = facesOf(part).flatMap(({ id, z }) => (id === dimension?.a || id === dimension?.b ? [z] : []));
  const isIt = (s: Surface): boolean => s.shape === 'cylinder' && s.side === 'outside' && at.includes(s.from) && at.includes(s.to);
  const piece = part.surfaces.find(isIt);
  return piece ? shortName(part, piece.feature) : '';
}

/** A finished diameter whose limits are closer than its process holds. */
export function tooCoarse(part: Part, cut: DiameterCut, capability: Capability, routeBy: Trials['routeBy']): readonly Diagnostic[] {
  const { lo, hi } = diameterLimits(part, cut);
  if (cut.cut.stage === 'rough' || cut.holds <= hi - lo) return [];
  const figures = { short: show(cut.holds - (hi - lo)), allows: show(hi - lo), needs: show(cut.holds), links: 1 };
  const grounds = {
    part: part.id,
    dimension: shortName(part, cut.dim),
    what: 'diameter',
    through: shortName(part, cut.dim),
    feature: ownName(part, cut),
  };
  const closer = FINER.filter((verb) => verb !== cut.operation.verb && capability(verb, 'diameter', 'final', lo) <= hi - lo);
  const process = closer.find((verb) => routeBy(cut.operation.id, verb) !== undefined) ?? '';
  const none = { datum: '', hold: '', moves: '', to: '', limit: false, wider: '' };
  return [
    { code: 'chart.cannot-be-met', severity: 'error', grounds: { ...grounds, ...figures, ...none, process, operations: cut.operation.id } },
  ];
}

/** What the file calls the piece or hole that it is of: 'D.bore', 'D.head.cone'. */
function ownName(part: Part, { dim }: DiameterCut): string {
  const [, name = ''] = shortName(part, dim).split('.');
  return name;
}

/** Processes that hold a diameter closely. */
const FINER: readonly Verb[] = ['turn', 'bore', 'ream', 'd-bit'];

const show = (units: number): string => showMm(len(units));
