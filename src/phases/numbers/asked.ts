/** What every figure of an operation is reckoned from: part, workshop, metal, what is taken away; its cutting data and its speed. */
import { type Len, len } from '../../base/units.ts';
import { type CuttingData, type CuttingOperation, type CuttingTool, cuttingData } from '../../handbook/cutting.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { Part } from '../../model/part.ts';
import type { Chart, Figures, Operation, Verb, Working } from '../../model/plan.ts';
import { isByThread } from '../../model/work.ts';
import type { Workshop } from '../../model/workshop.ts';
import { chooseSpeed, type Speed, type SpeedBound } from '../../rules/cutting.ts';
import type { Removal } from '../../rules/removal.ts';

export type Asked = {
  readonly part: Part;
  readonly workshop: Workshop;
  readonly material: string;
  readonly removal: Removal;
  readonly chart: Chart;
};

/** What the cutting tables call it. Taps and dies are turned by hand: they have no speed here. */
export const CALLED: Readonly<Partial<Record<Verb, CuttingOperation>>> = {
  ...{ face: 'face', turn: 'turn-rough', groove: 'groove', chamfer: 'chamfer', cone: 'cone', 'screw-cut': 'screw-cut' },
  ...{ form: 'form', steps: 'steps', 'face-down': 'face-down' },
  ...{
    centre: 'centre',
    drill: 'drill',
    'cross-drill': 'drill',
    'drill-bolt-holes': 'drill',
    bore: 'bore',
    'bore-start': 'bore',
    ream: 'ream',
    'd-bit': 'd-bit',
    counterbore: 'counterbore',
  },
  ...{ 'part-off': 'part-off', 'cut-stub': 'part-off', die: 'die', tap: 'tap' },
};

export function dataOf({ material, removal }: Asked, operation: CuttingOperation | undefined): CuttingData | undefined {
  const tool = toolOf(removal.operation);
  return operation && tool ? (cuttingData(material, operation, tool) ?? cuttingData(material, operation, 'HSS')) : undefined;
}

const toolOf = ({ tool }: Operation): CuttingTool | undefined => (tool.material === 'none' ? undefined : tool.material);

/** `further`: what else allows no more. */
export function speedOf({ removal, workshop }: Asked, data: CuttingData | undefined, further: readonly SpeedBound[]): Speed | undefined {
  const { diameter } = removal;
  if (!data || diameter === undefined || diameter <= 0) return undefined;
  const slow = numbersTable.value('rpm.thread-held');
  const bounds: SpeedBound[] = [...further];
  if (isByThread(removal.setUp.grip)) bounds.push({ most: slow, bound: 'bound.thread-held' });
  if (removal.branched) bounds.push({ most: slow, bound: 'bound.branch' });
  return chooseSpeed({ vc: data.vcNom, diameter, speeds: workshop.lathe.speeds, bounds });
}

/** Nothing so measured is left for a later cut. */
export const isFinal = ({ way, stock }: Removal): boolean =>
  way.cuts.every((cut) => cut.stage === 'final' || (stock !== undefined && cut.measures !== stock.measures));

/** The working dimension that this operation makes, of a diameter. */
export function diameterMade({ removal, chart }: Asked): Working | undefined {
  return chart.working.find((one) => one.op === removal.operation.id && one.measures === 'diameter');
}

/** The whole band of the diameter that is made; of what is made to its mate, what the fit leaves it. 0 where it makes none. */
export function bandMade(asked: Asked): Len {
  const feature = asked.part.features.find((one) => one.id === asked.removal.operation.feature);
  const clear = feature?.kind === 'outside' || feature?.kind === 'hole' ? feature.madeTo?.clear : undefined;
  return clear ? len(clear.hi - clear.lo) : bandOf(diameterMade(asked));
}

/** Its whole band; 0 where it makes none. */
export function bandOf(working: Working | undefined): ReturnType<typeof len> {
  return working ? len(working.limits.hi - working.limits.lo) : len(0);
}

export function optional<K extends keyof Figures>(key: K, value: Figures[K] | undefined): Partial<Figures> {
  return value === undefined ? {} : { [key]: value };
}
