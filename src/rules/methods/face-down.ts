/**
 * A section that is short and stands much lower than what is behind its shoulder is faced down: cuts inward, each a depth along the axis, where
 * turning along would take many more. They finish the shoulder, at the speed of its outside; what they leave of the diameter is turned at its own.
 */
import { type Len, len, minus } from '../../base/units.ts';
import { type CuttingOperation, cuttingData } from '../../handbook/cutting.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Cut, Operation, Way } from '../../model/plan.ts';
import { type Context, depthFrom, diameterOf, fact, length, type Outside, operation, waysBy } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { turningTool } from '../tools.ts';
import { shoulderFillet } from './radii.ts';
import { turning } from './turning.ts';

export const faceDown: MethodRule = methodRule({
  id: 'face-down',
  source: CUSTOM,
  when: (c, f) => (f.kind === 'outside' && !c.cylinder(f.cylinder).asStock ? offeredFor(c, f) : undefined),
  then: ({ f, cuts, ways }, c) => {
    const because = { rule: 'face-down', grounds: { faced: cuts.faced, turned: cuts.turned } };
    const down = operation({ feature: f.id, step: 'face-down', verb: 'face-down', tool: turningTool(c.workshop), ways }, [because]);
    return { methods: [{ feature: f.id, name: 'face-down', because, operations: [down, turnedLast(c, f, ways)], rank: 0 }] };
  },
});

type Cuts = { readonly faced: number; readonly turned: number };
type Offered = { readonly f: Outside; readonly cuts: Cuts; readonly ways: ReturnType<typeof waysBy> };

function offeredFor(c: Context, f: Outside): Offered | undefined {
  const pays = downFrom(c, f);
  const [first] = pays;
  return first && { f, cuts: first.cuts, ways: waysBy((end) => pays.find((one) => one.end === end)?.way) };
}

/** The ends from which it saves cuts enough, with what it does there. */
export function downFrom(c: Context, f: Outside): readonly { readonly end: End; readonly cuts: Cuts; readonly way: Way }[] {
  const ways = turning(c, f).ways;
  return (['first', 'second'] as const).flatMap((end) => {
    const shoulder = f.shoulder[other(end)];
    const cuts = shoulder === undefined || !ways[end] ? undefined : cutsFor(c, f, end, shoulder);
    if (!cuts || !shoulder || cuts.turned - cuts.faced < fact('face-down.saves')) return [];
    return shoulderFillet(c, f.cylinder, shoulder) ? [] : [{ end, cuts, way: downTo(f, shoulder) }];
  });
}

/** How many cuts of the usual depth either way takes; nothing for a metal that no table knows. */
function cutsFor(c: Context, f: Outside, end: End, shoulder: string): Cuts | undefined {
  const depth = (operation: CuttingOperation): Len | undefined =>
    cuttingData(c.part.stock.material ?? '', operation, c.workshop.tools.material)?.ap;
  const [along, inward] = [depth('turn-rough'), depth('face-down')];
  const i = c.outsides.indexOf(f);
  const behind = c.outsides[end === 'first' ? i + 1 : i - 1];
  if (along === undefined || inward === undefined || !behind) return undefined;
  const aside = minus(diameterOf(c, behind), diameterOf(c, f)) / 2;
  const long = depthFrom(end, c.face(shoulder).z, c.part);
  return { turned: Math.ceil(aside / along), faced: Math.ceil(long / inward) };
}

/** Up to the shoulder that stands. */
function turnedLast(c: Context, f: Outside, down: Offered['ways']): Operation {
  const ways = waysBy((end) => {
    const way = down[end];
    return way && { cuts: [{ makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: NONE }], sweeps: way.sweeps };
  });
  return operation({ feature: f.id, step: 'turn-to-size', verb: 'turn', tool: turningTool(c.workshop), ways }, [
    { rule: 'turn-to-shoulder', grounds: {} },
  ]);
}

const NONE = len(0);

function downTo(f: Outside, shoulder: string): Way {
  const cuts: readonly Cut[] = [
    { makes: f.cylinder, stage: 'rough', measures: 'diameter', leaves: length('face-down.leaves.across') },
    { makes: shoulder, stage: 'final', measures: 'length', leaves: NONE },
  ];
  return { cuts, sweeps: [{ take: 'turn', cylinder: f.cylinder, to: { face: shoulder } }] };
}
