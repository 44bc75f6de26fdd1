/** Numbers of what the tailstock carries: centre drills, drills, reamers, D-bits. Depth by its wheel, from a nought that is said. */
import { type Len, len, mm, toMm } from '../../base/units.ts';
import { centreDrills, coneDepth } from '../../handbook/centre-drills.ts';
import type { CuttingData } from '../../handbook/cutting.ts';
import { drillLoad } from '../../handbook/cutting-force.ts';
import { deepHole, drillFeed, drilling, pecks, REAM_FEED } from '../../handbook/drilling.ts';
import { jobberLength, pointLength } from '../../handbook/drills.ts';
import { machining } from '../../handbook/machining.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { Say } from '../../model/part.ts';
import type { Figures, Verb } from '../../model/plan.ts';
import { show } from '../../rules/context.ts';
import { driveBound, type Speed, shortTorque } from '../../rules/cutting.ts';
import { readAlong } from '../../rules/dials.ts';
import type { Removal } from '../../rules/removal.ts';
import { type Asked, CALLED, dataOf, optional, speedOf } from './asked.ts';

export const HOLES: readonly Verb[] = ['centre', 'drill', 'ream', 'd-bit', 'counterbore'];

export function holeFigures(asked: Asked): Partial<Figures> {
  const { removal, workshop } = asked;
  const { verb } = removal.operation;
  const { diameter = len(0), depth = len(0) } = removal;
  const cuts = cutsFrom(removal);
  const deep = verb === 'drill' ? deepHole(cuts, diameter) : { speed: 1, feed: 1 };
  const data = dataOf(asked, CALLED[verb]);
  const rpm = speedOf(asked, data && { ...data, vcNom: data.vcNom * deep.speed }, []);
  const fed = fedBy(asked, data, rpm, deep.feed);
  const whole = onDial(asked, verb === 'centre' ? centreDepth(asked) : holeDepth(removal));
  const steps = verb === 'drill' && depth > 0 ? pecks(cuts, diameter) : [];
  return {
    ...optional('rpm', rpm),
    ...optional('feed', fed?.feed),
    ...optional('bound', fed?.bound),
    ...(whole > 0 ? { depth: whole, dial: readAlong(workshop.lathe.dials, 'tailstock', whole), zero: zeroOf(removal) } : {}),
    ...(steps.length > 0 ? { pecks: steps } : {}),
    ...(removal.comesOut ? { comesOut: true } : {}),
    ...saysOf(asked, steps, fed),
  };
}

// ---- depth --------------------------------------------------------------------------------------------------------------------
/**
 * A whole division of the tailstock's dial, where no length is held by it: on where the tool goes right through or only makes a mouth, less
 * where it stops short of a floor.
 */
function onDial({ removal, workshop, chart }: Asked, depth: Len): Len {
  const { operation, through } = removal;
  const { division } = workshop.lathe.dials.tailstock;
  if (chart.working.some((one) => one.op === operation.id && one.measures === 'length')) return depth;
  if (through || operation.verb === 'centre') return len(Math.ceil(depth / division) * division);
  return operation.verb === 'drill' && depth > division ? len(Math.floor(depth / division) * division) : depth;
}

/** How far a drill cuts: from the face, or from where a wider hole before it ends. */
const cutsFrom = ({ depth = len(0), open = len(0) }: Removal): Len => len(depth - open);

/** From the face, at full diameter; with its point, up to the next tenth, where it comes out on the far side. */
function holeDepth({ depth = len(0), diameter = len(0), through, way }: Removal): Len {
  const [sweep] = way.sweeps;
  if (!through || sweep?.take !== 'bore' || sweep.point === undefined) return depth;
  return upToTenth(depth + pointLength(diameter, sweep.point));
}

/** Pilot and cone, to the mouth that is wanted. An odd pilot is as long as those of the standard are to their diameter. */
function centreDepth({ removal, chart }: Asked): Len {
  const { operation } = removal;
  const pilot = operation.tool.size;
  const mouths = chart.working.flatMap((one) => (one.op === operation.id && one.measures === 'diameter' ? [one.limits.target] : []));
  const diameter = len(Math.max(removal.diameter ?? 0, ...mouths));
  if (pilot === undefined || diameter <= pilot) return len(0);
  const known = centreDrills.find((one) => one.pilot === pilot);
  return upToTenth((known?.pilotLength ?? pilot * machining.value('centre.pilot')) + coneDepth(pilot, diameter));
}

function upToTenth(length: number): Len {
  const step = mm(numbersTable.value('tidy.coarse'));
  return len(Math.ceil(length / step) * step);
}

/**
 * A drill that goes through, and a centre drill, count from the point; in a wider hole that touches nothing at the face, and is only set level with
 * it. One that stops counts from where its lips cut full width; a reamer likewise.
 */
function zeroOf({ operation, through, way, open = len(0) }: Removal): NonNullable<Figures['zero']> {
  const [sweep] = way.sweeps;
  if (operation.verb === 'centre') return { at: 'point' };
  if (operation.verb === 'ream') return { at: 'lead' };
  if (sweep?.take !== 'bore' || sweep.point === undefined) return { at: 'face' };
  if (!through) return { at: 'lips' };
  return { at: open > 0 ? 'level' : 'point' };
}

// ---- feed ---------------------------------------------------------------------------------------------------------------------
type Fed = {
  readonly feed: number;
  readonly bound: string /** A drill to use before it, that drive and hand bear. */;
  readonly step?: Len;
};

/** mm a turn, by the tailstock's wheel: what is usual, or what drive and hand bear. */
function fedBy(asked: Asked, data: CuttingData | undefined, rpm: Speed | undefined, factor: number): Fed | undefined {
  const { operation, diameter = len(0) } = asked.removal;
  const usual = drillFeed(diameter)?.hand;
  if (operation.verb === 'ream') return usual === undefined ? undefined : { feed: toThousandth(usual * REAM_FEED.lo), bound: 'bound.tool' };
  if (operation.verb !== 'drill') return data?.feed === undefined ? undefined : { feed: data.feed, bound: 'bound.tool' };
  return usual === undefined || !rpm ? undefined : bornBy(asked, rpm, toThousandth(usual * factor));
}

/** Down by thousandths until torque and thrust are borne; no less than a drill needs to cut at all. */
function bornBy({ removal, material, workshop }: Asked, rpm: Speed, usual: number): Fed {
  const { diameter = len(0), touch = len(0) } = removal;
  const [torque, thrust] = [shortTorque(workshop.lathe, rpm.value), machining.value('drill.thrust.hand')];
  const least = Math.min(usual, machining.value('drill.least.feed'));
  let bound = 'bound.tool';
  for (let feed = usual; feed > least; feed = toThousandth(feed - 1 / 1000)) {
    const load = loadOf(material, diameter, touch, feed);
    if (!load || (load.torque <= torque && load.thrust <= thrust)) return { feed, bound };
    bound = load.torque > torque ? driveBound(workshop.lathe, rpm.value) : 'bound.hand';
  }
  if (bound === 'bound.tool') return { feed: least, bound };
  const bears = (drill: Len, hole: Len): boolean => {
    const load = loadOf(material, drill, hole, Math.min(least, machining.value('drill.least.feed')));
    return load === undefined || (load.torque <= torque && load.thrust <= thrust);
  };
  const step = drillBetween(workshop.tools.drills, touch, diameter, bears);
  return { feed: least, bound: 'bound.least-cut', ...(step === undefined ? {} : { step }) };
}

/** The smallest drill of the rack that both it and the one after it can be driven with; none where no single step does. */
export function drillBetween(rack: readonly Len[], hole: Len, last: Len, bears: (drill: Len, hole: Len) => boolean): Len | undefined {
  return [...rack].sort((a, b) => a - b).find((drill) => drill > hole && drill < last && bears(drill, hole) && bears(last, drill));
}

/** A hole that is there already takes its share of torque and thrust away. */
function loadOf(
  material: string,
  diameter: Len,
  hole: Len,
  feed: number,
): { readonly torque: number; readonly thrust: number } | undefined {
  const group = findMaterial(material)?.cutting;
  const load = group && drillLoad(group, toMm(diameter), feed);
  const share = hole < diameter ? hole / diameter : 0;
  return load && { torque: load.torque * (1 - share ** 2), thrust: load.thrust * (1 - share) };
}

const toThousandth = (feed: number): number => Math.round(feed * 1000) / 1000;

// ---- said ---------------------------------------------------------------------------------------------------------------------
/** Its chips have nowhere to go where the hole is deeper than the flutes. */
function longSaid(removal: Removal): readonly Say[] {
  const { operation, diameter = len(0) } = removal;
  const flute = operation.verb === 'drill' ? jobberLength(diameter)?.flute : undefined;
  return flute !== undefined && cutsFrom(removal) > flute ? [{ id: 'say.drill.long', grounds: { flute: show(flute) } }] : [];
}

function saysOf({ removal }: Asked, steps: readonly Len[], fed: Fed | undefined): Pick<Figures, 'says'> {
  const says: readonly Say[] = [
    ...(steps.length > 1 ? [pecksSaid(steps, removal)] : []),
    ...longSaid(removal),
    ...(fed?.bound === 'bound.least-cut'
      ? [{ id: 'say.drill.between', grounds: { step: fed.step === undefined ? '' : show(fed.step) } }]
      : []),
  ];
  return says.length > 0 ? { says } : {};
}

/** The first goes in at once; then every so much, or once where little is left; halved where the hole is deep. */
function pecksSaid(steps: readonly Len[], { diameter = len(0), open }: Removal): Say {
  const deep = len(drilling.value('peck.deep') * diameter);
  const [first = len(0), next = len(0)] = steps;
  const whole = steps.reduce((sum, step) => sum + step, 0);
  const half = len(Math.ceil(diameter * drilling.value('peck.last')));
  const halved = whole > deep && next > half;
  return {
    id: 'say.pecks',
    grounds: {
      from: open === undefined ? '' : tidy(open),
      first: tidy(first),
      next: steps.length > 1 + 1 ? tidy(next) : '',
      ...(halved ? { deep: tidy(deep), last: tidy(half) } : { deep: '', last: '' }),
    },
  };
}

/** Down to half a millimetre, where that leaves anything. */
function tidy(length: Len): string {
  const half = mm(1 / 2);
  return show(length < half ? length : len(Math.floor(length / half) * half));
}
