/** Limits to work to on a diameter: the drawing's for the last cut; for a cut that leaves metal, wider ones that stay clear of it. */
import { type Len, len, mm } from '../base/units.ts';
import { middleOf } from '../geometry/places.ts';
import { numbersTable } from '../handbook/numbers.ts';
import type { SurfaceId } from '../model/ids.ts';
import type { Limits, Part } from '../model/part.ts';
import type { Route } from '../model/plan.ts';
import { aimAt } from './tidy.ts';
import type { DiameterCut } from './working.ts';

/** Throws Error when the cut makes no diameter. */
export function diameterLimits(part: Part, cut: DiameterCut): Limits {
  const surface = part.surfaces.find((one) => one.id === cut.cut.makes);
  if (!surface || surface.shape === 'face') throw new Error(`'${cut.cut.makes}' is no diameter`);
  const size = surface.shape === 'cylinder' ? surface.size : surface.shape === 'arc' ? surface.across : surface.mouth;
  if (cut.cut.stage === 'final') return cut.operation.verb === 'ream' ? reamedLimits(cut, size) : size;
  if (cut.cut.leaves === 0 && cut.operation.verb === 'bore-start') return startLimits(cut, size);
  const band = Math.max(cut.holds, mm(numbersTable.value('rough.diameter.band')));
  const drilled = drillSize(cut);
  if (drilled !== undefined) return roughLimits(drilled, len(drilled + cut.holds), drilled, size, surface.side);
  const target = surface.side === 'outside' ? len(size.target + cut.cut.leaves) : len(size.target - cut.cut.leaves);
  const lo = len(middleOf(target - band, target));
  return roughLimits(lo, len(lo + band), target, size, surface.side);
}

/** What is held later by a collet or a sleeve is turned to what that closes on. */
export function asHeld(limits: Limits, route: Route, makes: SurfaceId): Limits {
  const holds = route.setUps.flatMap(({ grip }) => (grip.takes && grip.on.includes(makes) ? [grip.takes] : []));
  const lo = len(Math.max(limits.lo, ...holds.map((one) => one.lo)));
  const hi = len(Math.min(limits.hi, ...holds.map((one) => one.hi)));
  if (lo > hi || (lo === limits.lo && hi === limits.hi)) return limits;
  return { lo, hi, target: aimAt(lo, hi), from: { kind: 'chart', as: limits.from.as } };
}

/** A start of exact size is cut again only in length: its tool enters it, so it is that tool's size and no less. */
function startLimits({ way, cut }: DiameterCut, size: Limits): Limits {
  const sweep = way.sweeps.find((one) => one.take === 'bore' && one.cylinder === cut.makes);
  const tool = sweep?.take === 'bore' ? sweep.diameter : size.target;
  return tool < size.lo || tool > size.hi ? size : { ...size, lo: tool, target: tool };
}

/** A reamer cuts its own size and over, whatever else the drawing would allow. */
function reamedLimits({ way, cut, holds }: DiameterCut, size: Limits): Limits {
  const sweep = way.sweeps.find((one) => one.take === 'bore' && one.cylinder === cut.makes);
  const tool = sweep?.take === 'bore' ? sweep.diameter : size.lo;
  if (tool < size.lo || tool > size.hi) return size;
  return { ...size, lo: tool, hi: len(Math.min(size.hi, tool + holds)), target: tool };
}

/** A drill cuts its own size and over; every other tool to either side. */
function drillSize({ operation, way, cut }: DiameterCut): Len | undefined {
  if (operation.verb !== 'drill' && operation.verb !== 'cross-drill') return undefined;
  const sweep = way.sweeps.find((one) => one.take === 'bore' && one.cylinder === cut.makes);
  return sweep?.take === 'bore' ? sweep.diameter : undefined;
}

/** Drawn in where the last cut would find no metal, as long as the target stays inside. */
function roughLimits(lo: Len, hi: Len, target: Len, last: Limits, side: 'outside' | 'inside'): Limits {
  const from = { kind: 'chart', as: last.from.as } as const;
  if (side === 'outside' && target >= last.hi) return { lo: len(Math.max(lo, last.hi)), hi, target, from };
  if (side === 'inside' && target <= last.lo) return { lo, hi: len(Math.min(hi, last.lo)), target, from };
  return { lo, hi, target, from };
}
