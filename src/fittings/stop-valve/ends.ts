/** The branches of a stop valve by how they meet their pipes: one part where both are alike, else one each; flanges and unions that go with them. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { type Len, minus } from '../../base/units.ts';
import type { BoughtItem, Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type BranchAsk, branchPart } from '../branch.ts';
import { boltsFor, type EndForm, flangeFor, flangePart } from '../ends.ts';
import { half } from '../limits.ts';
import { nipple, unionNut } from '../union.ts';
import type { StopValveAsked } from './asked.ts';
import { layOutBody } from './layout.ts';
import type { StopValveSizes } from './shared.ts';

type Which = 'inlet' | 'outlet';
type Shape = Pick<StopValveAsked, 'pattern'>;

/** In angle pattern the inlet is the body's own coupling. */
const branchesOf = ({ pattern }: Shape): readonly Which[] => (pattern === 'straight' ? ['inlet', 'outlet'] : ['outlet']);

/** What the part of that branch is called. */
export function branchId({ ends }: StopValveSizes, which: Which): string {
  return which === 'inlet' && ends.inlet !== ends.outlet ? 'inlet-branch' : 'branch';
}

/** What a body is told of a branch. */
export function branchAsk(sizes: StopValveSizes, which: Which): Pick<BranchAsk, 'id' | 'coupling' | 'hole' | 'wall' | 'end' | 'outlet'> {
  const at = layOutBody(sizes);
  const end = { form: sizes.ends[which], pipe: sizes.ends.pipe };
  return { id: branchId(sizes, which), coupling: sizes.coupling, hole: at.hole, wall: at.overlap, outlet: sizes.outlet, end };
}

/** What must be finished before it is soldered to the body; `feature`: of the body, by its own name. */
export function joined(sizes: StopValveSizes, which: Which, feature: string): NonNullable<WaitsFor> {
  const flange = sizes.ends[which] === 'flanged' ? [{ feature: `${feature}-flange`, part: 'pipe-flange', why: 'joined' as const }] : [];
  return [{ feature, part: branchId(sizes, which), why: 'joined' }, ...flange];
}
type WaitsFor = readonly { readonly feature: string; readonly part: string; readonly why: 'joined' }[];

export function branchParts(
  asked: Shape,
  sizes: StopValveSizes,
  material: string,
  workshop: Workshop,
  found: Diagnostic[],
): readonly Part[] {
  const at = layOutBody(sizes);
  const wall: Len = half(minus(at.barrel, sizes.chamber));
  const which = branchesOf(asked);
  const ids = [...new Set(which.map((one) => branchId(sizes, one)))];
  return ids.map((id) => {
    const same = which.filter((one) => branchId(sizes, one) === id);
    const [first = 'outlet'] = same;
    const into = { part: 'body', holes: same };
    return branchPart({ ...branchAsk(sizes, first), spigot: at.spigot, wall, quantity: same.length, material, into }, workshop, found);
  });
}

const count = (asked: Shape, sizes: StopValveSizes, form: EndForm): number => {
  const forms = [...branchesOf(asked).map((which) => sizes.ends[which]), ...(asked.pattern === 'angle' ? (['union'] as const) : [])];
  return forms.filter((one) => one === form).length;
};

/** Flanges, union nuts and nipples, as many as there are such ends. */
export function endParts(asked: Shape, sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): readonly Part[] {
  const [unions, flanges] = [count(asked, sizes, 'union'), count(asked, sizes, 'flanged')];
  const union = { thread: sizes.coupling, pipe: sizes.ends.pipe, quantity: unions, material };
  return [
    ...(flanges > 0 ? [flangePart(flangeFor(sizes.outlet), { quantity: flanges, material }, workshop, found)] : []),
    ...(unions > 0 ? [unionNut(union, workshop, found), nipple(union, workshop, found)] : []),
  ];
}

export function endsBought(asked: Shape, sizes: StopValveSizes): readonly BoughtItem[] {
  const flanges = count(asked, sizes, 'flanged');
  return flanges > 0 ? boltsFor(flangeFor(sizes.outlet), flanges) : [];
}

type EndsSaid = Readonly<Record<'inlet' | 'outlet', EndForm>> & Readonly<Record<'unions' | 'plain' | 'flanged', boolean>>;
/** What the words of assembly and test ask about the ends. */
export function endsSaid(asked: Shape, sizes: StopValveSizes): EndsSaid {
  const inlet = asked.pattern === 'angle' ? 'union' : sizes.ends.inlet;
  const has = (form: EndForm): boolean => count(asked, sizes, form) > 0;
  return { inlet, outlet: sizes.ends.outlet, unions: has('union'), plain: has('plain'), flanged: has('flanged') };
}
