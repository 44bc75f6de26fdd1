/** Numbers of grooves and of parting: one plunge, its speed and feed by what the drive bears over the blade's whole width. */
import { type Len, len, mm, toMm } from '../../base/units.ts';
import type { CuttingData } from '../../handbook/cutting.ts';
import { leastCut, machining } from '../../handbook/machining.ts';
import { findMaterial } from '../../handbook/materials.ts';
import type { Say } from '../../model/part.ts';
import type { Figures } from '../../model/plan.ts';
import { show } from '../../rules/context.ts';
import { cuttingForce, driveBound, type Speed, shortTorque } from '../../rules/cutting.ts';
import { outwardBy, radialOf, readAlong, readCross } from '../../rules/dials.ts';
import { type Asked, CALLED, dataOf, optional, speedOf } from './asked.ts';

export function plungeFigures(asked: Asked): Partial<Figures> {
  const { removal, workshop } = asked;
  const data = dataOf(asked, CALLED[removal.operation.verb]);
  const rpm = speedOf(asked, data, []);
  const fed = data && rpm ? feedOf(asked, data, rpm) : undefined;
  const { stock, touch } = removal;
  const dials = workshop.lathe.dials;
  return {
    ...optional('rpm', rpm),
    ...optional('feed', fed?.feed ?? data?.feed),
    ...optional('bound', fed?.bound),
    ...(stock
      ? { passes: [radialOf(stock.amount)], dial: readCross(dials, stock.amount), readings: [readCross(dials, stock.amount)] }
      : {}),
    ...(touch === undefined || touch === 0 ? {} : { zero: { at: 'diameter' as const, diameter: touch } }),
    ...(isInside(asked) ? outwardBy(dials) : {}),
    ...(removal.along !== undefined && dials.carriage ? { along: readAlong(dials, 'carriage', removal.along) } : {}),
    ...(stock && removal.operation.verb !== 'groove' ? { says: partingSays(stock.amount, fed?.stalls ?? false) } : {}),
  };
}

const isInside = ({ part, removal }: Asked): boolean =>
  part.features.some((one) => one.id === removal.operation.feature && one.kind === 'groove' && one.side === 'inside');

type Fed = { readonly feed: number; readonly bound: string; readonly stalls: boolean };

/** Usual feed, or as much as the torque bears over the blade's width; never under the least of the metal. */
function feedOf({ removal, workshop, material }: Asked, data: CuttingData, rpm: Speed): Fed | undefined {
  const { tool, diameter = len(0) } = { ...removal.operation, diameter: removal.diameter };
  const group = findMaterial(material)?.cutting;
  if (data.feed === undefined || tool.size === undefined || group === undefined) return undefined;
  const least = leastCut(group).feed;
  const torque = shortTorque(workshop.lathe, rpm.value);
  const bears = (feed: number): boolean => torqueFor(material, feed, tool.size ?? len(0), diameter) <= torque;
  const usual = Math.max(data.feed, least);
  if (bears(usual)) return { feed: usual, bound: 'bound.tool', stalls: false };
  const steps = Math.floor((usual - least) / STEP);
  const feed = Array.from({ length: steps + 1 }, (_, i) => Math.round((usual - i * STEP) / STEP) * STEP).find(bears);
  const found = feed === undefined ? undefined : Math.round(feed * 1000) / 1000;
  return {
    feed: found ?? least,
    bound: found === undefined ? 'bound.least-cut' : driveBound(workshop.lathe, rpm.value),
    stalls: found === undefined,
  };
}
const STEP = machining.value('blade.feed.step');

/** N m on the work for a blade so wide. */
function torqueFor(material: string, feed: number, width: Len, diameter: Len): number {
  return ((cuttingForce(material, feed) ?? 0) * feed * toMm(width) * toMm(diameter)) / 2 / 1000;
}

/** How far the blade stands out, and what helps where the drive has too little torque for it. */
function partingSays(stock: Len, stalls: boolean): readonly Say[] {
  const out = len(radialOf(stock) + mm(machining.value('blade.clear')));
  return [
    { id: 'say.blade', grounds: { out: show(len(Math.ceil(out / mm(1 / 2)) * mm(1 / 2))) } },
    ...(stalls ? [{ id: 'say.blade.stalls', grounds: {} }] : []),
  ];
}
