/** The numbers of each operation: speed, feed, passes, dial, wheels, depth, lubricant. Each is bound by this lathe, and says by what. */

import { len, toMm } from '../base/units.ts';
import { lubricantFor } from '../handbook/lubricants.ts';
import { findMaterial } from '../handbook/materials.ts';
import { numbersTable } from '../handbook/numbers.ts';
import type { Part } from '../model/part.ts';
import type { Chart, Figures, Route, Verb } from '../model/plan.ts';
import { isOffLathe } from '../model/work.ts';
import type { Workshop } from '../model/workshop.ts';
import { readCross } from '../rules/dials.ts';
import { walkRemoval } from '../rules/removal.ts';
import { roomToStop, screwCutting, stopBound, threadDepth, threadPasses, threadStep } from '../rules/screw-cutting.ts';
import { wheelsFor } from '../rules/wheels.ts';
import { type Asked, CALLED, dataOf, optional, speedOf } from './numbers/asked.ts';
import { handFigures } from './numbers/by-hand.ts';
import { HOLES, holeFigures } from './numbers/holes.ts';
import { withMetal } from './numbers/metal.ts';
import { pressFigures } from './numbers/press.ts';
import { TURNING, turnFigures } from './numbers/turning.ts';

/** One record an operation, in the order of work; a figure that the tables do not give, or that the operation has not, is absent. */
export function numbers(part: Part, route: Route, chart: Chart, workshop: Workshop): readonly Figures[] {
  const material = part.stock.material ?? '';
  return walkRemoval(part, route, chart).map((removal) => figuresOf({ part, workshop, material, removal, chart }));
}

function figuresOf(asked: Asked): Figures {
  const { operation, setUp } = asked.removal;
  const lubricant = lubricantOf(asked);
  const { stands } = asked.removal;
  const always = { op: operation.id, ...(lubricant === undefined ? {} : { lubricant }), ...(stands === undefined ? {} : { stands }) };
  if (isOffLathe(setUp.grip)) return { ...always, ...pressFigures(asked) };
  if (operation.verb === 'screw-cut') return { ...always, ...screwCut(asked) };
  if (HOLES.includes(operation.verb)) return { ...always, ...withMetal(asked, holeFigures(asked)) };
  if (TURNING.includes(operation.verb)) return { ...always, ...withMetal(asked, turnFigures(asked)) };
  if (BY_HAND.includes(operation.verb)) return { ...always, ...handFigures(asked) };
  if (operation.verb === 'knurl') return { ...always, ...knurlFigures(asked) };
  return always;
}
/** Spindle off. */
const BY_HAND: readonly Verb[] = ['tap', 'die'];

// ---- screw-cutting ------------------------------------------------------------------------------------------------------------
function screwCut(asked: Asked): Partial<Figures> {
  const { part, workshop, material, removal } = asked;
  const feature = part.features.find((one) => one.id === removal.operation.feature);
  if (feature?.kind !== 'thread') throw new Error(`'${removal.operation.id}' cuts no thread`);
  const { thread } = feature;
  const found = wheelsFor(workshop.lathe, { thread, length: len(feature.to - feature.from) });
  const wheels = 'wheels' in found ? found.wheels : undefined;
  const group = findMaterial(material)?.cutting;
  const cut = { tip: workshop.tools.threadingTip, step: threadStep(workshop.lathe.dials) };
  const passes = group && threadPasses(feature, group, cut);
  const room = roomToStop(part, feature, removal.room, wheels);
  const rpm = speedOf(asked, dataOf(asked, 'screw-cut'), stopBound(room, thread.pitch, wheels));
  return {
    ...optional('rpm', rpm),
    feed: toMm(thread.pitch),
    ...optional('passes', passes),
    dial: readCross(workshop.lathe.dials, len(2 * threadDepth(feature, cut))),
    ...optional('wheels', wheels),
    screw: screwCutting({ part, feature, setUp: removal.setUp, lathe: workshop.lathe, wheels, passes, rpm: rpm?.value, room, cut, group }),
  };
}

// ---- knurling -----------------------------------------------------------------------------------------------------------------
/** Slower than that diameter is turned. */
function knurlFigures(asked: Asked): Partial<Figures> {
  const { part, removal } = asked;
  const feature = part.features.find((one) => one.id === removal.operation.feature);
  const on = feature?.kind === 'side' ? part.surfaces.find((one) => one.id === feature.on) : undefined;
  const data = dataOf(asked, 'turn-rough');
  if (on?.shape !== 'cylinder' || !data) return {};
  const slow = { ...data, vcNom: data.vcNom * numbersTable.value('knurl.share') };
  return optional('rpm', speedOf({ ...asked, removal: { ...removal, diameter: on.size.target } }, slow, []));
}

// ---- the rest -----------------------------------------------------------------------------------------------------------------
function lubricantOf({ material, removal }: Asked): string | undefined {
  const operation = CALLED[removal.operation.verb];
  return operation ? lubricantFor(material, operation)?.id : undefined;
}
