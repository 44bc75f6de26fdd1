/** Claims about the way: at each step what it needs is there, held, within reach, and its cut finds metal. */

import { type Step, tookOf } from '../../geometry/replay.ts';
import { faceStands, throughs } from '../../geometry/section/ask.ts';
import { at, TOUCH } from '../../geometry/section/lines.ts';
import { piecesOf } from '../../geometry/section/pieces.ts';
import type { Slab } from '../../geometry/section.ts';
import type { Claim, Figures } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { type Case, claim, figure, short, show } from './claims.ts';
import { gripClaim, sideUnder, thinnest } from './grip.ts';
import { heldClaims } from './held.ts';
import { keptClaims } from './touch.ts';
import { veeClaims } from './vee.ts';

export function wayClaims(asked: Case, steps: readonly Step[]): readonly Claim[] {
  const opening = steps.filter((step, i) => !isSameHold(step, steps[i - 1]) && step.setUp.grip.kind !== 'bench');
  return [
    ...orderClaims(asked, steps),
    ...leftOut(asked, steps),
    ...opening.flatMap((step) => setUpClaims(asked, steps, step)),
    ...steps.flatMap((step) => stepClaims(asked, step)),
    ...keptClaims(asked, steps),
    wallClaim(asked, steps),
    ...(asked.figures ?? []).flatMap((figures) => speedClaims(asked, figures)),
  ];
}

function stepClaims(asked: Case, step: Step): readonly Claim[] {
  return [
    ...thereClaims(asked, step),
    ...heldClaims(asked, step),
    ...veeClaims(asked, step),
    ...airClaims(asked, step),
    ...guideClaims(asked, step),
    ...reachClaims(asked, step),
  ];
}

// ---- order --------------------------------------------------------------------------------------------------------------------
function orderClaims(asked: Case, steps: readonly Step[]): readonly Claim[] {
  const { part, route } = asked;
  const places = new Map(steps.map((step, i) => [step.operation.id, { step, i }]));
  return route.befores.flatMap((before) => {
    const [first, then] = [places.get(before.first), places.get(before.then)];
    if (before.force !== 'strict' || !first || !then) return [];
    const when = before.when && places.get(before.when.op)?.step;
    if (before.when && (!when || isOffLathe(when.setUp.grip) || when.out !== before.when.from)) return [];
    const grounds = { first: short(part.id, before.first), then: short(part.id, before.then), rule: before.because.rule };
    return [claim('order', before.because.rule, first.i < then.i, grounds, before.then)];
  });
}

/** Every operation of the methods that were chosen stands in the route. */
function leftOut(asked: Case, steps: readonly Step[]): readonly Claim[] {
  const done = new Set(steps.map((step) => step.operation.id));
  const missing = asked.route.chosen.flatMap((method) => method.operations).filter((operation) => !done.has(operation.id));
  return missing.map(({ id }) => claim('order', id, false, { first: '', then: short(asked.part.id, id), rule: '' }, id));
}

// ---- set-ups --------------------------------------------------------------------------------------------------------------------
function setUpClaims(asked: Case, steps: readonly Step[], step: Step): readonly Claim[] {
  const { grip } = step.setUp;
  const held = holdClaim(asked, steps, step);
  if (grip.datum === undefined) return [held];
  const place = step.placesBefore.faces.get(grip.datum);
  const there = place !== undefined && faceStands(step.before, place.z, grip.datum);
  return [held, thereClaim(asked, grip.id, there ? '' : grip.datum, 'datum')];
}

/** Work off the lathe has no number of its own. */
const isSameHold = ({ setUp }: Step, other: Step | undefined): boolean =>
  setUp.no === other?.setUp.no && setUp.grip.id === other.setUp.grip.id;

/** `step`: the first of its set-up. */
export function holdClaim(asked: Case, steps: readonly Step[], step: Step): Claim {
  const operations = steps.filter((one) => isSameHold(one, step)).map((one) => one.operation);
  const done = new Set(steps.slice(0, steps.indexOf(step)).map((one) => one.operation.feature));
  const { grip } = step.setUp;
  return gripClaim(asked, step.before, piecesOf(step.before), grip, operations, sideUnder(asked, grip, done));
}

// ---- what is measured from, what is cut up to -----------------------------------------------------------------------------------
function thereClaims(asked: Case, step: Step): readonly Claim[] {
  const measures = step.way.cuts.some((cut) => cut.measures === 'length');
  const [lack] = step.lacks;
  if (!lack && !measures) return [];
  return [thereClaim(asked, step.operation.id, lack?.surface ?? '', lack?.what ?? 'from', step)];
}

function thereClaim(asked: Case, about: string, missing: string, what: string, step?: Step): Claim {
  const id = short(asked.part.id, about);
  return claim(
    'datum there',
    about,
    missing === '',
    { operation: id, surface: short(asked.part.id, missing), what, corner: '' },
    step?.operation.id,
  );
}

// ---- air ------------------------------------------------------------------------------------------------------------------------
function airClaims(asked: Case, step: Step): readonly Claim[] {
  const took = tookOf(step);
  return step.way.sweeps.flatMap((sweep, i): readonly Claim[] => {
    if (sweep.take === 'side' || NO_CHIPS.includes(step.operation.verb)) return [];
    const id = step.operation.id;
    return [
      claim('no air', id, (took[i] ?? 0) > 1, { operation: short(asked.part.id, id), sweep: sweep.take, at: 'targets', corner: '' }, id),
    ];
  });
}
export const NO_CHIPS: readonly string[] = ['stone', 'deburr', 'gauge', 'harden', 'solder'];

// ---- guide and reach --------------------------------------------------------------------------------------------------------------
/** From the end at which the tool comes in: the first stretch that is not wider than the tool steers it, if it is of its own size. */
export function guideClaims(asked: Case, step: Step): readonly Claim[] {
  const { guide } = step.way;
  if (!guide) return [];
  const has = guideOf(step);
  const id = step.operation.id;
  const grounds = { operation: short(asked.part.id, id), diameter: show(guide.diameter), has: show(has), least: show(guide.least) };
  return [claim('guide', id, has >= guide.least - TOUCH, { ...grounds, corner: '' }, id)];
}

/** How much bore of its own size stands before a steered tool when it arrives; 0 for one that is not steered. */
export function guideOf(step: Step): number {
  const { guide } = step.way;
  if (!guide) return 0;
  const slack = guide.slack ?? figure('proof.guide.slack');
  const all = throughs(step.before).map(({ slab, inner }) => ({ slab, width: inner ? at(inner.line, (slab.from + slab.to) / 2) : 0 }));
  const ordered = step.out === 'first' ? all : [...all].reverse();
  const start = ordered.findIndex((one) => one.width <= guide.diameter + slack);
  let has = 0;
  for (const { slab, width } of start < 0 ? [] : ordered.slice(start)) {
    if (Math.abs(width - guide.diameter) > slack) break;
    has += lengthOf(slab);
  }
  return has;
}
const lengthOf = (slab: Slab): number => slab.to - slab.from;

/** How far in the tool has to go against how far it can. Tools without a stated reach are not judged. */
export function reachClaims(asked: Case, step: Step): readonly Claim[] {
  const has = toolReach(asked, step);
  const wants = step.operation.tool.kind === 'parting' ? widestAt(step) : step.way.reach;
  if (has === undefined || wants === undefined) return [];
  const id = step.operation.id;
  return [claim('reach', id, has >= wants, { operation: short(asked.part.id, id), has: show(has), wants: show(wants), corner: '' }, id)];
}

function toolReach({ workshop }: Case, { operation: { tool } }: Step): number | undefined {
  if (tool.kind === 'boring-nosed') return workshop.tools.boring.find((one) => one.smallest === tool.enters)?.reach;
  if (tool.kind === 'boring') return workshop.tools.boring.find((one) => one.smallest === tool.size)?.reach;
  if (tool.kind === 'grooving-inside') return workshop.tools.groovingInside?.reach;
  if (tool.kind === 'threading-inside') return workshop.tools.threadingInside.find((one) => one.smallest === tool.enters)?.reach;
  return tool.kind === 'parting' ? workshop.tools.parting?.deepest : undefined;
}

/** Greatest diameter that this step takes metal from. */
export function widestAt(step: Step): number {
  const own = (paint: Slab['paints'][number]): boolean => 'by' in paint && paint.state === 'taken' && paint.by === step.operation.id;
  return Math.max(0, ...throughs(step.after, own).map(({ slab, outer }) => Math.max(at(outer.line, slab.from), at(outer.line, slab.to))));
}

// ---- wall and speed -----------------------------------------------------------------------------------------------------------------
export function wallClaim(asked: Case, steps: readonly Step[]): Claim {
  const least = figure('proof.wall.least');
  const thin = steps.flatMap((step) => {
    const found = thinnest(step.after);
    return found ? [{ ...found, step }] : [];
  });
  const worst = thin.reduce<(typeof thin)[number] | undefined>((one, next) => (one && one.wall <= next.wall ? one : next), undefined);
  const grounds = {
    wall: show(worst?.wall ?? 0),
    least: show(least),
    z: show(worst?.z ?? 0),
    operation: short(asked.part.id, worst?.step.operation.id ?? ''),
    corner: '',
  };
  return claim('wall', asked.part.id, worst !== undefined && worst.wall >= least, grounds, worst?.step.operation.id);
}

function speedClaims(asked: Case, { op, rpm, faster = [] }: Figures): readonly Claim[] {
  if (!rpm) return [];
  const { speeds } = asked.workshop.lathe;
  const exists = (value: number): boolean =>
    'steps' in speeds ? speeds.steps.includes(value) : value >= speeds.from && value <= speeds.to;
  const missing = [rpm.value, ...faster.map((one) => one.rpm)].find((value) => !exists(value));
  return [claim('speed exists', op, missing === undefined, { operation: short(asked.part.id, op), rpm: missing ?? rpm.value }, op)];
}
