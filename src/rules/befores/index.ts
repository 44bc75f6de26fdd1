/** Every before, and the pairs that they give for one part. Pairs of one method's own steps come first. */
import type { OpId } from '../../model/ids.ts';
import type { Before, Method } from '../../model/plan.ts';
import type { BeforeRule, Work } from '../rule.ts';
import {
  branchBeforeFlange,
  crossHoleBeforeBore,
  crossHoleBeforeSolder,
  filedBeforeHard,
  heavyDrillingFirst,
  knurlBeforeFit,
  openedBeforeCrossHole,
  pilotBeforeCrossHole,
  slitLast,
  slotLast,
  solderBeforeFinish,
  squareLast,
  stubUntilHeatIsOver,
  turnBeforeSideWork,
} from './bench.ts';
import {
  everythingBeforeParting,
  faceBeforeChamfer,
  faceBeforeThread,
  faceFirst,
  fittedLast,
  lengthsFromFinishedFace,
  offTheBarFirst,
  seatFaceAfterDrill,
  skimmedLast,
} from './facing.ts';
import {
  boreBeforeRecess,
  dBitBeforeInlet,
  drillBeforeCone,
  holeBeforeChamfer,
  holeBeforeThread,
  largeBeforeDeep,
  seatFaceBeforeSeat,
  seatLastInBore,
  seatLastOfAll,
  smallBeforeLarge,
  stoneAfterFinish,
} from './holes.ts';
import {
  grooveBeforeThread,
  noseBeforeThread,
  reliefBeforeThread,
  shoulderBeforeChamfer,
  startBeforeThread,
  turnBeforeChamfer,
  turnBeforeRelief,
  turnBeforeThread,
} from './outside.ts';
import { faceBeforeRadius, turnBeforeRadius } from './radii.ts';

export const BEFORE_RULES: readonly BeforeRule[] = [
  faceFirst,
  lengthsFromFinishedFace,
  seatFaceAfterDrill,
  faceBeforeChamfer,
  faceBeforeThread,
  fittedLast,
  skimmedLast,
  offTheBarFirst,
  everythingBeforeParting,
  turnBeforeRelief,
  turnBeforeChamfer,
  shoulderBeforeChamfer,
  turnBeforeRadius,
  faceBeforeRadius,
  turnBeforeThread,
  reliefBeforeThread,
  grooveBeforeThread,
  startBeforeThread,
  noseBeforeThread,
  smallBeforeLarge,
  largeBeforeDeep,
  holeBeforeThread,
  holeBeforeChamfer,
  boreBeforeRecess,
  drillBeforeCone,
  seatLastInBore,
  dBitBeforeInlet,
  seatLastOfAll,
  seatFaceBeforeSeat,
  stoneAfterFinish,
  turnBeforeSideWork,
  pilotBeforeCrossHole,
  openedBeforeCrossHole,
  crossHoleBeforeBore,
  crossHoleBeforeSolder,
  branchBeforeFlange,
  solderBeforeFinish,
  stubUntilHeatIsOver,
  filedBeforeHard,
  squareLast,
  slitLast,
  slotLast,
  knurlBeforeFit,
  heavyDrillingFirst,
];

export function beforesFor(work: Work, rules: readonly BeforeRule[] = BEFORE_RULES): readonly Before[] {
  const ruled = rules.flatMap((rule) =>
    rule.pairs(work).map(
      (p): Before => ({
        first: p.first,
        then: p.then,
        force: rule.force,
        ...(p.when ? { when: p.when } : {}),
        because: { rule: rule.id, grounds: p.grounds ?? {} },
      }),
    ),
  );
  const befores = [...work.methods.flatMap(steps), ...ruled];
  const after = strictlyAfter(befores);
  return befores.filter((b) => b.force === 'strict' || !after(b.then).has(b.first));
}

/** What strict befores put after an operation anyway: a preference for the other way round would ask the impossible. */
function strictlyAfter(befores: readonly Before[]): (op: OpId) => ReadonlySet<OpId> {
  const next = new Map<OpId, OpId[]>();
  for (const b of befores) if (b.force === 'strict' && !b.when) next.set(b.first, [...(next.get(b.first) ?? []), b.then]);
  const known = new Map<OpId, ReadonlySet<OpId>>();
  return (op) => {
    const found = known.get(op) ?? reach(next, op);
    known.set(op, found);
    return found;
  };
}

function reach(next: ReadonlyMap<OpId, readonly OpId[]>, from: OpId): ReadonlySet<OpId> {
  const seen = new Set<OpId>();
  const queue = [from];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    for (const then of next.get(at) ?? []) {
      if (seen.has(then)) continue;
      seen.add(then);
      queue.push(then);
    }
  }
  return seen;
}

/** A method's own order, named after what stands in it. */
function steps(method: Method): readonly Before[] {
  return method.operations.slice(1).map((then, i) => {
    const first = method.operations[i];
    if (!first) throw new Error(`${method.feature}: a step without a first`);
    return {
      first: first.id,
      then: then.id,
      force: 'strict',
      because: { rule: STEP_RULES[`${first.verb}>${then.verb}`] ?? 'method-order', grounds: {} },
    };
  });
}
const STEP_RULES: Readonly<Record<string, string>> = {
  'centre>drill': 'centre-before-drill',
  'drill>drill': 'small-hole-first',
  'drill>bore': 'drill-before-bore',
  'groove>deburr': 'deburr',
  'cross-drill>deburr': 'deburr',
  'drill>d-bit': 'drill-before-flat-d-bit',
  'drill>bore-start': 'drill-before-bore',
  'bore-start>d-bit': 'start-bore-before-d-bit',
  'd-bit>stone': 'stone-after-finish',
  'bore>stone': 'stone-after-finish',
  'face>face': 'rough-before-finish',
  'face-down>turn': 'turn-to-shoulder',
  'part-off>cut-stub': 'stub-until-heat-is-over',
};
