/** Numbers of what is turned, faced, bored, grooved and parted: speed, feed, depth and what binds it, passes, dials. */
import { type Len, len, mm, toMm } from '../../base/units.ts';
import { slideAlong } from '../../handbook/cones.ts';
import type { CuttingData, CuttingOperation } from '../../handbook/cutting.ts';
import { usualShank } from '../../handbook/lathe-usual.ts';
import { leastCut, machining } from '../../handbook/machining.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { practice } from '../../handbook/practice.ts';
import type { Cone } from '../../model/part.ts';
import type { Figures, Reading, Verb } from '../../model/plan.ts';
import { farForEdge } from '../../rules/chatter.ts';
import { show } from '../../rules/context.ts';
import { type Depth, type DepthBound, deepestCut, type Speed } from '../../rules/cutting.ts';
import { alongReadings, crossReadings, crossUnit, outwardBy, radialOf, readAlong, readCross, topSlack } from '../../rules/dials.ts';
import { barGive, finishBound, roughBound, springs, workGive } from '../../rules/give.ts';
import { type PassAsk, splitPasses } from '../../rules/passes.ts';
import { type Asked, bandMade, CALLED, dataOf, isFinal, optional, speedOf } from './asked.ts';
import { fasterSaid, isWorthIt, type Legs, roughLegs } from './legs.ts';
import { plungeFigures } from './plunging.ts';
import { alongBy } from './shoulder.ts';

export const TURNING: readonly Verb[] = [
  'face',
  'face-down',
  'turn',
  'groove',
  'chamfer',
  'cone',
  'form',
  'steps',
  'bore',
  'bore-start',
  'part-off',
  'cut-stub',
];
/** How deep a cone is cut at a time the tables leave to turning. */
const DEPTH_OF: Readonly<Partial<Record<Verb, CuttingOperation>>> = { cone: 'turn-rough' };
/** Fed in by a single plunge. */
const PLUNGED: readonly Verb[] = ['groove', 'part-off', 'cut-stub'];
const BORED: readonly Verb[] = ['bore', 'bore-start'];
const FINISHED: readonly Verb[] = ['face', 'face-down', 'turn', 'cone'];

export function turnFigures(asked: Asked): Partial<Figures> {
  const { verb } = asked.removal.operation;
  if (PLUNGED.includes(verb)) return plungeFigures(asked);
  const data = dataOf(asked, CALLED[verb]);
  const rpm = speedOf(asked, data, []);
  if (verb === 'chamfer') return { ...optional('rpm', rpm), ...optional('feed', data?.feed), ...cornerDial(asked) };
  if (verb === 'form')
    return { ...optional('rpm', rpm), ...optional('feed', data?.feed), ...dialsOf(asked, undefined), ...chatterSaid(asked) };
  const cuts = cutsOf(asked, dataOf(asked, DEPTH_OF[verb] ?? CALLED[verb]), rpm);
  const light = verb === 'turn' && cuts?.passes.length === 1 && isFinal(asked.removal) ? dataOf(asked, 'turn-finish') : undefined;
  return {
    ...optional('rpm', (light && speedOf(asked, light, [])) ?? rpm),
    ...optional('feed', (light ?? data)?.feed),
    ...(cuts ?? {}),
    ...dialsOf(asked, cuts?.passes),
    ...downSaid(asked),
    ...(cuts?.faster ? { says: fasterSaid(cuts.faster) } : {}),
  };
}

/** Cuts inward are stopped by the cross slide: where its nought is. */
function downSaid({ removal: { inward, touch } }: Asked): Pick<Figures, 'says'> {
  return inward === undefined || touch === undefined ? {} : { says: [{ id: 'say.face-down', grounds: { touch: show(touch) } }] };
}

/** The bar is drawn in for a wide edge; other work is steadied or cut slower. */
function chatterSaid({ removal }: Asked): Pick<Figures, 'says'> {
  const far = farForEdge(removal);
  if (!far) return {};
  const grounds = { out: show(len(mm(Math.round(toMm(far.out))))), most: show(len(mm(Math.floor(toMm(far.most))))) };
  return { says: [{ id: removal.setUp.grip.kind === 'bar' ? 'say.form.draw-in' : 'say.form.steady', grounds }] };
}

// ---- how deep, in how many passes ---------------------------------------------------------------------------------------------
type Cuts = Required<Pick<Figures, 'passes' | 'bound'>> & Pick<Figures, 'measure' | 'spring' | 'narrow' | 'faster'>;

/** Passes that add up to the stock, and what binds them; none where there is none to take or no table says how deep. */
function cutsOf(asked: Asked, data: CuttingData | undefined, rpm: Speed | undefined): Cuts | undefined {
  const stock = stockASide(asked);
  const group = findMaterial(asked.material)?.cutting;
  if (!data || !rpm || stock === undefined || group === undefined) return undefined;
  const final = isFinal(asked.removal);
  const finish = finishOf(asked, data);
  const unit = unitOf(asked);
  const deepestAt = (speed: Speed, give: number): Depth | undefined =>
    deepestCut({
      ...{ data, material: asked.material, speed, drive: asked.workshop.lathe, unit },
      gives: [...(final ? roughBound(give, finish.most, finish.why) : []), ...holdBound(asked, data)],
    });
  const deepest = deepestAt(rpm, giveAt(asked, data.feed));
  if (!deepest) return undefined;
  const least = mm(leastCut(group).depth);
  const alike = isClose(asked) ? 2 : 1;
  const split = (left: Len, most: Len) => splitPasses({ stock: left, deepest: most, finish: finish.depth, unit, least, alike });
  const plain = split(stock, deepest.most);
  const narrow = narrowPasses(asked, { deepest: deepest.most, finish: len(0), unit, least, alike: 1 });
  const legs = roughLegs(asked, data, {
    ...{ first: rpm, ends: len(finish.depth * alike) },
    deepestAt: (speed, thin) => deepestAt(speed, giveWhen(asked, thin, data.feed)),
  });
  const last = legs && deepestAt(legs.rpm, giveAt(asked, data.feed));
  const inLegs = legs && last && [...legs.passes, ...split(legs.left, last.most)];
  if (!inLegs || !isWorthIt(legs, inLegs, plain))
    return { ...narrow, passes: plain, bound: bindingOf(plain, deepest, finish), ...checks(asked, plain, finish) };
  return { ...fasterOf(legs), passes: inLegs, bound: legs.bound ?? last.bound, ...checks(asked, inLegs, finish) };
}

const fasterOf = ({ faster }: Legs): Pick<Figures, 'faster'> => (faster.length > 0 ? { faster } : {});

/** In a hold that is short for its diameter cuts are less deep; along a cone on a spigot, which holds by friction, thinner still. */
function holdBound({ removal: { setUp, operation } }: Asked, { ap }: CuttingData): readonly DepthBound[] {
  if (ap === undefined) return [];
  const bound = (share: string, id: string): DepthBound => ({ most: toMm(ap) * practice.value(share), bound: id });
  if (setUp.grip.kind === 'stub-mandrel' && operation.verb === 'cone') return [bound('grip.spigot.cut', 'bound.spigot')];
  return setUp.grip.seated ? [bound('grip.seated.cut', 'bound.hold')] : [];
}

/** What a drill left narrow above a floor is opened first. */
function narrowPasses({ removal: { narrow } }: Asked, how: Omit<PassAsk, 'stock'>): Pick<Figures, 'narrow'> {
  return narrow ? { narrow: { long: narrow.long, passes: splitPasses({ stock: radialOf(narrow.amount), ...how }) } } : {};
}

/** `depth` 0 where a later cut finishes, or the feeling of a boring bar does; `most`: what the last cut would be. */
type Finish = { readonly depth: Len; readonly most: Len; readonly why: string; readonly give: number };

function finishOf(asked: Asked, data: CuttingData): Finish {
  const { verb } = asked.removal.operation;
  const fine = dataOf(asked, 'turn-finish');
  const usual = fine?.ap ?? data.ap ?? len(0);
  const why = BORED.includes(verb) ? 'bound.bar-gives' : 'bound.work-gives';
  const give = giveAt(asked, fine?.feed ?? data.feed);
  if (!isFinal(asked.removal) || !FINISHED.includes(verb)) return { depth: len(0), most: usual, why, give };
  const bounds = finishBound(give, bandMade(asked), why);
  const least = mm(leastCut(findMaterial(asked.material)?.cutting ?? 'brass').depth);
  const borne = bounds[0] === undefined ? usual : mm(bounds[0].most);
  const unit = unitOf(asked);
  const depth = borne >= usual ? usual : len(Math.max(least, Math.floor(borne / unit) * unit));
  return { depth, most: depth, why, give };
}

/** What the work, or the bar in its hole, gives for a cut 1 mm deep. */
function giveAt({ removal, material, workshop }: Asked, feed: number = 0): number {
  const { operation, beam, depth } = removal;
  if (!BORED.includes(operation.verb)) return beam ? workGive(beam, material, feed) : 0;
  const hole = operation.tool.size;
  if (hole === undefined) return 0;
  const bar = workshop.tools.boring.find((one) => one.smallest === hole);
  return barGive(bar?.shank ?? usualShank(hole), depth ?? len(0), material, feed);
}

/** The same of the work while it is that thick where it is turned. */
function giveWhen({ removal, material }: Asked, thin: Len, feed: number = 0): number {
  const beam = removal.beamAt?.(thin);
  return beam ? workGive(beam, material, feed) : 0;
}

/** What bounds the roughing cuts; a single light cut is bound by what there is to take. */
function bindingOf(passes: readonly Len[], deepest: Depth, finish: Finish): string {
  if (passes.length === 1 && (passes[0] ?? 0) < deepest.most) return 'bound.stock';
  const bound = finish.depth === 0 || deepest.most < finish.depth || passes.some((pass) => pass > finish.depth);
  return passes.length === 1 || bound ? deepest.bound : finish.why;
}

/** Measured before the last cut of what is final; taken again where work or bar gives. */
function checks(asked: Asked, passes: readonly Len[], finish: Finish): Pick<Figures, 'measure' | 'spring'> {
  if (!isFinal(asked.removal)) return {};
  const band = bandMade(asked);
  const bored = BORED.includes(asked.removal.operation.verb);
  const springing = bored || (band > 0 && springs(finish.give, passes.at(-1) ?? len(0), band));
  return {
    ...(passes.length > 1 && !fromBarEnd(asked) ? { measure: passes.length - 1 } : {}),
    ...(springing ? { spring: machining.value('spring.passes') } : {}),
  };
}

/** The first face of a raw bar: there is nothing to measure it from. */
const fromBarEnd = ({ chart, removal }: Asked): boolean =>
  chart.working.some((one) => one.op === removal.operation.id && one.from === 'bar end');

function isClose(asked: Asked): boolean {
  const band = bandMade(asked);
  return asked.removal.operation.verb === 'turn' && isFinal(asked.removal) && band > 0 && band <= mm(machining.value('close.band'));
}

function stockASide({ removal: { stock } }: Asked): Len | undefined {
  if (!stock) return undefined;
  return stock.measures === 'length' ? stock.amount : radialOf(stock.amount);
}

/** A side, of one division of the dial that sets the cut. */
function unitOf({ removal, workshop }: Asked): Len {
  const { dials } = workshop.lathe;
  return removal.stock?.measures === 'length' ? dials.top.division : crossUnit(dials);
}

// ---- dials --------------------------------------------------------------------------------------------------------------------
type DialFigures = Pick<Figures, 'dial' | 'zero' | 'readings' | 'outward' | 'slack' | 'along' | 'alongBy' | 'slide'>;

function dialsOf(asked: Asked, passes: readonly Len[] | undefined): DialFigures {
  const { removal, workshop } = asked;
  const { stock, touch } = removal;
  if (!stock) return {};
  const { dials } = workshop.lathe;
  if (stock.measures === 'length') {
    return {
      ...{ dial: readAlong(dials, 'top', stock.amount), zero: { at: 'face' } },
      ...(removal.inward ? { along: readCross(dials, removal.inward) } : {}),
      ...(passes ? { readings: alongReadings(dials, 'top', passes) } : {}),
    };
  }
  return {
    dial: readCross(dials, stock.amount),
    ...(touch === undefined || touch === 0 ? {} : { zero: { at: 'diameter', diameter: touch } }),
    ...(passes ? { readings: crossReadings(dials, passes, stock.amount) } : {}),
    ...(isInside(asked) ? outwardBy(dials) : {}),
    ...optional('along', alongOf(asked)),
    ...alongBy(asked),
    ...optional('slide', slideOf(asked)),
  };
}

/** A chamfer is plunged by the cross slide, from where the edge touches the corner. */
function cornerDial({ removal, workshop }: Asked): DialFigures {
  const { stock } = removal;
  return stock ? { dial: readCross(workshop.lathe.dials, stock.amount), zero: { at: 'corner' } } : {};
}

const surfaceMade = ({ part, removal }: Asked) =>
  part.surfaces.find((one) => one.feature === removal.operation.feature && one.shape !== 'face');

const isInside = (asked: Asked): boolean => surfaceMade(asked)?.side === 'inside';

/** Where the carriage is stopped for a shoulder: by its own dial, or the top slide's. */
function alongOf({ removal, workshop }: Asked): Reading | undefined {
  return removal.along === undefined ? undefined : readAlong(workshop.lathe.dials, 'carriage', removal.along);
}

function slideOf(asked: Asked): Figures['slide'] {
  const { removal, workshop } = asked;
  const cone = surfaceMade(asked);
  if (removal.operation.verb !== 'cone' || cone?.shape !== 'cone' || !removal.stock) return undefined;
  return {
    angle: cone.includedAngle / 2,
    travel: readAlong(workshop.lathe.dials, 'top', slideAlong(changeOf(asked, cone), cone.includedAngle)),
    ...topSlack(workshop.lathe.dials),
  };
}

/** From the cone's mouth to where it runs out. */
function changeOf({ part, removal }: Asked, cone: Cone): Len {
  const into = part.surfaces.find((one) => one.id === cone.until);
  const end = into?.shape === 'cylinder' ? (cone.ends?.size ?? into.size).target : undefined;
  return end === undefined ? (removal.stock?.amount ?? len(0)) : len(Math.abs(cone.mouth.target - end));
}
