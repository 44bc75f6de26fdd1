/**
 * After the proof has refused a plan: what its claims name is left out of the candidates, so that another plan can be looked for. Each
 * failing claim names an operation in its hold, the hold itself, or the operations that make what came out wrong.
 */
import type { GripId, OpId } from '../model/ids.ts';
import type { Candidates, Claim, LeftOut, PlannedPart, SetUp } from '../model/plan.ts';
import { isOffLathe } from '../model/work.ts';

export type Again = { readonly candidates: Candidates; readonly left: LeftOut };

/** Ways on, the nearest to what was refused first; none where there is nothing left to leave out. */
export function withoutRefused(c: Candidates, planned: Pick<PlannedPart, 'part' | 'route' | 'proof'>): readonly Again[] {
  const failing = planned.proof.claims.filter((one) => !one.holds);
  const left = failing.flatMap((one) => blamed(c, planned, one));
  const once = new Map(left.map((one) => [JSON.stringify(one), one]));
  return [...once.values()].flatMap((one) => {
    const candidates = without(c, one);
    return candidates ? [{ candidates, left: one }] : [];
  });
}

type Planned = Pick<PlannedPart, 'part' | 'route'>;

function blamed(c: Candidates, planned: Planned, claim: Claim): readonly LeftOut[] {
  const grip = planned.route.setUps.find((one) => one.grip.id === claim.about)?.grip;
  if (grip) return [{ what: 'hold', grip: grip.id }];
  const ops = claim.at === undefined ? makersOf(planned, claim.about) : [claim.at];
  return ops.flatMap((op) => [...inHold(planned, op), ...otherMethod(c, planned, op)]);
}

/** The operations whose last cuts make a surface, or the two between which a dimension is measured; the latest first. */
function makersOf({ part, route }: Planned, about: string): readonly OpId[] {
  const dimension = part.dimensions.find((one) => one.id === about);
  const surfaces = dimension ? [dimension.a, dimension.b] : [about];
  const operations = route.chosen.flatMap((method) => method.operations);
  const makes = (op: OpId): boolean => {
    const ways = operations.find((one) => one.id === op)?.ways ?? {};
    return Object.values(ways).some((way) => way.cuts.some((cut) => cut.stage === 'final' && surfaces.includes(cut.makes)));
  };
  return route.setUps
    .flatMap((setUp) => setUp.operations)
    .filter(makes)
    .reverse();
}

function inHold({ route }: Planned, op: OpId): readonly LeftOut[] {
  const setUp = route.setUps.find((one) => one.operations.includes(op));
  return setUp && !isOffLathe(setUp.grip) && !endsHold(setUp, op) ? [{ what: 'in-hold', grip: setUp.grip.id, op }] : [];
}

/** Parting belongs to its hold. */
const endsHold = ({ grip }: SetUp, op: OpId): boolean => grip.gone.includes(op);

function otherMethod(c: Candidates, { route }: Planned, op: OpId): readonly LeftOut[] {
  const method = route.chosen.find((one) => one.operations.some((each) => each.id === op));
  const any = c.methods.find((one) => one.feature === method?.feature)?.any ?? [];
  return method && any.length > 1 ? [{ what: 'method', feature: method.feature, method: method.name, because: method.because }] : [];
}

function without(c: Candidates, left: LeftOut): Candidates | undefined {
  if (left.what === 'method') {
    const kept = c.methods.map((one) =>
      one.feature === left.feature ? { ...one, any: one.any.filter((method) => method.name !== left.method) } : one,
    );
    return kept.every((one) => one.any.length > 0) ? { ...c, methods: kept } : undefined;
  }
  const isLeft = (id: GripId): boolean => id === left.grip;
  if (left.what === 'hold') return { ...c, grips: c.grips.filter((grip) => !isLeft(grip.id)) };
  return { ...c, grips: c.grips.map((grip) => (isLeft(grip.id) ? { ...grip, hides: [...grip.hides, left.op] } : grip)) };
}
