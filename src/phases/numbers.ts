/** The numbers of each operation: speed, feed, passes, dial, wheels, depth, lubricant. Each is bound by this lathe, and says by what. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { type CuttingData, type CuttingOperation, type CuttingTool, cuttingData } from '../handbook/cutting.ts';
import { deepHole, drillFeed, pecks, REAM_FEED } from '../handbook/drilling.ts';
import { pointLength } from '../handbook/drills.ts';
import { lubricantFor } from '../handbook/lubricants.ts';
import { findMaterial } from '../handbook/materials.ts';
import { numbersTable } from '../handbook/numbers.ts';
import type { Part } from '../model/part.ts';
import type { Chart, Figures, Operation, Route, Verb } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { chooseSpeed, deepestCut, type Speed, type SpeedBound } from '../rules/cutting.ts';
import { type DialRead, radialOf, readAlong, readCross } from '../rules/dials.ts';
import { splitPasses } from '../rules/passes.ts';
import { type Removal, walkRemoval } from '../rules/removal.ts';
import { screwCutting, stopBound, threadDepth, threadPasses } from '../rules/screw-cutting.ts';
import { wheelsFor } from '../rules/wheels.ts';

type Asked = { readonly part: Part; readonly workshop: Workshop; readonly material: string; readonly removal: Removal };

/** One record an operation, in the order of work; a figure that the tables do not give, or that the operation has not, is absent. */
export function numbers(part: Part, route: Route, chart: Chart, workshop: Workshop): readonly Figures[] {
  const material = part.stock.material ?? '';
  return walkRemoval(part, route, chart).map((removal) => figuresOf({ part, workshop, material, removal }));
}

function figuresOf(asked: Asked): Figures {
  const { operation, setUp } = asked.removal;
  const lubricant = lubricantOf(asked);
  const always = { op: operation.id, ...(lubricant === undefined ? {} : { lubricant }) };
  if (setUp.grip.kind === 'bench') return always;
  if (operation.verb === 'screw-cut') return { ...always, ...screwCut(asked) };
  if (HOLES.includes(operation.verb)) return { ...always, ...holeFigures(asked) };
  if (TURNING.includes(operation.verb)) return { ...always, ...turnFigures(asked) };
  return always;
}

/** What the cutting tables call it. Taps and dies are turned by hand: they have no speed here. */
const CALLED: Readonly<Partial<Record<Verb, CuttingOperation>>> = {
  ...{ face: 'face', turn: 'turn-rough', groove: 'groove', chamfer: 'chamfer', cone: 'cone', 'screw-cut': 'screw-cut' },
  ...{ centre: 'centre', drill: 'drill', 'cross-drill': 'drill', bore: 'bore', 'bore-start': 'bore', ream: 'ream', 'd-bit': 'd-bit' },
  ...{ 'part-off': 'part-off', 'cut-stub': 'part-off', die: 'die', tap: 'tap' },
};
const HOLES: readonly Verb[] = ['centre', 'drill', 'ream', 'd-bit'];
const TURNING: readonly Verb[] = ['face', 'turn', 'groove', 'chamfer', 'cone', 'bore', 'bore-start', 'part-off', 'cut-stub'];
/** How deep a cone is cut at a time the tables leave to turning. */
const DEPTH_OF: Readonly<Partial<Record<Verb, CuttingOperation>>> = { cone: 'turn-rough' };
/** Fed in by a single plunge. */
const PLUNGED: readonly Verb[] = ['groove', 'part-off', 'cut-stub'];

function dataOf({ material, removal }: Asked, operation: CuttingOperation | undefined): CuttingData | undefined {
  const tool = toolOf(removal.operation);
  return operation && tool ? (cuttingData(material, operation, tool) ?? cuttingData(material, operation, 'HSS')) : undefined;
}

const toolOf = ({ tool }: Operation): CuttingTool | undefined => (tool.material === 'none' ? undefined : tool.material);

// ---- turning ------------------------------------------------------------------------------------------------------------------
function turnFigures(asked: Asked): Partial<Figures> {
  const { removal, workshop, material } = asked;
  const { verb } = removal.operation;
  const data = dataOf(asked, CALLED[verb]);
  const rpm = speedOf(asked, data, []);
  const deep = dataOf(asked, DEPTH_OF[verb] ?? CALLED[verb]);
  const deepest = deep && rpm ? deepestCut({ data: deep, material, vc: rpm.vc, motor: workshop.lathe.motor }) : undefined;
  const passes = passesOf(asked, deepest);
  const light = verb === 'turn' && passes?.length === 1 && isFinal(removal) ? dataOf(asked, 'turn-finish') : undefined;
  const lightRpm = light && speedOf(asked, light, []);
  const feed = (light ?? data)?.feed;
  const dial = dialOf(asked);
  return {
    ...narrowPasses(removal, deepest),
    ...optional('rpm', lightRpm ?? rpm),
    ...optional('feed', feed),
    ...optional('passes', passes),
    ...optional('dial', dial),
  };
}

/** They add up to the stock; none where there is none to take or no table says how deep. */
function passesOf(asked: Asked, deepest: Len | undefined): readonly Len[] | undefined {
  const { removal } = asked;
  const stock = stockASide(removal);
  if (stock === undefined) return undefined;
  if (PLUNGED.includes(removal.operation.verb)) return [stock];
  if (deepest === undefined) return undefined;
  const finish = TURNED_OUTSIDE.includes(removal.operation.verb) && isFinal(removal) ? dataOf(asked, 'turn-finish')?.ap : undefined;
  return splitPasses({ stock, deepest, finish: finish ?? len(0) });
}

function narrowPasses({ narrow }: Removal, deepest: Len | undefined): Pick<Figures, 'narrow'> {
  if (!narrow || deepest === undefined) return {};
  return { narrow: { long: narrow.long, passes: splitPasses({ stock: radialOf(narrow.amount), deepest, finish: len(0) }) } };
}
const TURNED_OUTSIDE: readonly Verb[] = ['face', 'turn', 'cone'];

const isFinal = ({ way }: Removal): boolean => way.cuts.every((cut) => cut.stage === 'final');

function stockASide({ stock }: Removal): Len | undefined {
  if (!stock) return undefined;
  return stock.measures === 'length' ? stock.amount : radialOf(stock.amount);
}

function dialOf({ removal, workshop }: Asked): DialRead | undefined {
  const { stock } = removal;
  if (!stock) return undefined;
  const { dials } = workshop.lathe;
  return stock.measures === 'diameter' ? readCross(dials, stock.amount) : readAlong(dials, 'top', stock.amount);
}

// ---- speed --------------------------------------------------------------------------------------------------------------------
function speedOf({ removal, workshop }: Asked, data: CuttingData | undefined, further: readonly SpeedBound[]): Speed | undefined {
  const { diameter } = removal;
  if (!data || diameter === undefined || diameter <= 0) return undefined;
  const slow = numbersTable.value('rpm.thread-held');
  const bounds: SpeedBound[] = [...further];
  if (removal.setUp.grip.kind === 'threaded-mandrel') bounds.push({ most: slow, bound: 'bound.thread-held' });
  if (removal.branched) bounds.push({ most: slow, bound: 'bound.branch' });
  return chooseSpeed({ vc: data.vcNom, diameter, speeds: workshop.lathe.speeds, bounds });
}

// ---- holes --------------------------------------------------------------------------------------------------------------------
function holeFigures(asked: Asked): Partial<Figures> {
  const { removal, workshop } = asked;
  const { verb } = removal.operation;
  const { diameter = len(0), depth = len(0) } = removal;
  const deep = verb === 'drill' ? deepHole(depth, diameter) : { speed: 1, feed: 1 };
  const data = dataOf(asked, CALLED[verb]);
  const slowed = data && { ...data, vcNom: data.vcNom * deep.speed };
  const whole = holeDepth(removal);
  const dial = whole > 0 ? readAlong(workshop.lathe.dials, 'tailstock', whole) : undefined;
  return {
    ...optional('rpm', speedOf(asked, slowed, [])),
    ...optional('feed', feedOfHole(verb, data, diameter, deep.feed)),
    ...(whole > 0 ? { depth: whole } : {}),
    ...optional('dial', dial),
    ...(verb === 'drill' && depth > 0 ? { pecks: pecks(depth, diameter) } : {}),
  };
}

/** From the face, at full diameter; with its point, up to the next tenth, where it comes out on the far side. */
function holeDepth({ depth = len(0), diameter = len(0), through, way }: Removal): Len {
  const [sweep] = way.sweeps;
  if (!through || sweep?.take !== 'bore' || sweep.point === undefined) return depth;
  const whole = depth + pointLength(diameter, sweep.point);
  const step = mm(numbersTable.value('tidy.coarse'));
  return len(Math.ceil(whole / step) * step);
}

/** mm a turn, by the tailstock's wheel. */
function feedOfHole(verb: Verb, data: CuttingData | undefined, diameter: Len, factor: number): number | undefined {
  const drill = drillFeed(diameter)?.hand;
  if (verb === 'drill') return drill === undefined ? undefined : toThousandth(drill * factor);
  if (verb === 'ream') return drill === undefined ? undefined : toThousandth(drill * REAM_FEED.lo);
  return data?.feed;
}

const toThousandth = (feed: number): number => Math.round(feed * 1000) / 1000;

// ---- screw-cutting ------------------------------------------------------------------------------------------------------------
function screwCut(asked: Asked): Partial<Figures> {
  const { part, workshop, material, removal } = asked;
  const feature = part.features.find((one) => one.id === removal.operation.feature);
  if (feature?.kind !== 'thread') throw new Error(`'${removal.operation.id}' cuts no thread`);
  const { thread } = feature;
  const found = wheelsFor(workshop.lathe, { thread, length: len(feature.to - feature.from) });
  const wheels = 'wheels' in found ? found.wheels : undefined;
  const group = findMaterial(material)?.cutting;
  const passes = group && threadPasses(feature, group);
  const rpm = speedOf(asked, dataOf(asked, 'screw-cut'), stopBound(part, feature, wheels));
  return {
    ...optional('rpm', rpm),
    feed: toMm(thread.pitch),
    ...optional('passes', passes),
    dial: readCross(workshop.lathe.dials, len(2 * threadDepth(feature))),
    ...optional('wheels', wheels),
    screw: screwCutting({ part, feature, setUp: removal.setUp, lathe: workshop.lathe, wheels, passes, rpm: rpm?.value }),
  };
}

// ---- the rest -----------------------------------------------------------------------------------------------------------------
function lubricantOf({ material, removal }: Asked): string | undefined {
  const operation = CALLED[removal.operation.verb];
  return operation ? lubricantFor(material, operation)?.id : undefined;
}

function optional<K extends keyof Figures>(key: K, value: Figures[K] | undefined): Partial<Figures> {
  return value === undefined ? {} : { [key]: value };
}
