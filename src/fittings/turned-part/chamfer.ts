/** The broken corners of a plain section: 45 degrees, or 30 degrees to the face where the corners of a hexagon are taken down. */
import { statedLimits } from '../../base/size.ts';
import { type Len, len, minus, showMm } from '../../base/units.ts';
import { lookUpChamfer } from '../../handbook/iso2768.ts';
import type { End } from '../../model/ids.ts';
import type { Limits } from '../../model/part.ts';
import { about, between, ratio, size } from '../limits.ts';
import type { Chamfer } from '../outline.ts';
import { type AskedSection, isConed, type TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';

const ENDS: readonly End[] = ['first', 'second'];
const neighbour = (i: number, side: End): number => (side === 'first' ? i - 1 : i + 1);

/** At the corner that was asked for, or at every corner that stands free. */
export function chamfersOf(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): readonly Chamfer[] {
  const section = asked.outside[i] as AskedSection;
  const limits = sizes[i] as Limits;
  const path: Path = ['outside', i];
  if (!section.chamfer) {
    if (section['chamfer-at']) fault(faults, [...path, 'chamfer-at'], 'chamfer-at-nothing', { feature: section.name });
    return [];
  }
  const free = ENDS.filter((end) => standsFree(asked, sizes, i, end));
  const asks = section['chamfer-at'];
  // nobody breaks the edges of a groove without being asked
  const open = free.filter((end) => !asked.outside[neighbour(i, end)]?.groove);
  const wanted = asks === 'both' ? ENDS : asks ? [asks] : open;
  if (wanted.length === 0 || wanted.some((end) => !free.includes(end))) {
    const grounds = { feature: section.name, free: asks && free[0] ? free[0] : '' };
    fault(faults, [...path, section['chamfer-at'] ? 'chamfer-at' : 'chamfer'], 'chamfer-in-corner', grounds);
    return [];
  }
  const high = heightOf(section, limits, path, faults);
  const hexagon = section['as-bar'] === true && asked.bar?.section === 'hexagon';
  return wanted.flatMap((at) => (high ? chamferAt(asked, sizes, i, { at, high, hexagon }, faults) : []));
}

/** A corner to a lower neighbour, a groove among them, or to the air. */
function standsFree(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, end: End): boolean {
  const [section, beside] = [asked.outside[i], asked.outside[neighbour(i, end)]];
  if (section && isConed(section, end)) return false;
  return beside === undefined || (sizes[neighbour(i, end)]?.target ?? 0) < (sizes[i]?.target ?? 0);
}

/** On the radius: stated, or by table 2 of ISO 2768-1; under half a millimetre that table is silent. */
function heightOf(section: AskedSection, limits: Limits, path: Path, faults: Faults): Limits | undefined {
  const { chamfer } = section;
  if (!chamfer) return undefined;
  const at = [...path, 'chamfer'];
  if (chamfer.thread !== undefined || chamfer.fit !== undefined) {
    fault(faults, at, 'chamfer-as-size', { feature: section.name, size: chamfer.text });
    return undefined;
  }
  const stated = statedLimits(chamfer);
  const found = lookUpChamfer(chamfer.nominal, 'm');
  const usual = about(chamfer.nominal, len(size('band.chamfer') / 2), 'chamfer');
  const general = found ? about(chamfer.nominal, found.half, found.as, 'general') : usual;
  const high = stated ? between(stated.lo, stated.hi, chamfer.nominal, chamfer.text, 'stated') : general;
  const most = len(Math.floor(limits.lo / (2 * 2)));
  if (high.lo > 0 && high.hi < most) return high;
  fault(faults, at, high.lo > 0 ? 'chamfer-deep' : 'chamfer-none', { feature: section.name, most: showMm(most), hi: high.hi });
  return undefined;
}

/** A point of 90 degrees goes into a groove beside its wall: it wants twice the chamfer, and a little. */
function checkRoom(asked: TurnedPartAsked, i: number, at: End, high: Limits, faults: Faults): void {
  const groove = asked.outside[neighbour(i, at)];
  if (!groove?.groove) return;
  const wants = len(2 * high.hi + size('chamfer.groove.room'));
  const has = groove.length.nominal;
  const grounds = { feature: asked.outside[i]?.name ?? '', other: groove.name, has, wants };
  if (has < wants) fault(faults, ['outside', i, 'chamfer'], 'chamfer-in-groove', grounds);
}

type Corner = { readonly at: End; readonly high: Limits; readonly hexagon: boolean };

function chamferAt(
  asked: TurnedPartAsked,
  sizes: readonly Limits[],
  i: number,
  { at, high, hexagon }: Corner,
  faults: Faults,
): readonly Chamfer[] {
  const section = asked.outside[i] as AskedSection;
  const limits = sizes[i] as Limits;
  const twice = (l: Len): Len => len(l * 2);
  const { target } = limits;
  const mouth: Limits = {
    ...{ lo: minus(target, twice(high.hi)), hi: minus(target, twice(high.lo)), target: minus(target, twice(high.target)) },
    from: high.from,
  };
  const beside = sizes[neighbour(i, at)];
  const path: Path = ['outside', i, 'chamfer'];
  const name = asked.outside[neighbour(i, at)]?.name ?? '';
  checkRoom(asked, i, at, high, faults);
  if (beside && beside.hi > mouth.lo) fault(faults, path, 'chamfer-past-step', { feature: section.name, other: name, least: beside.hi });
  if (section.length.nominal < twice(twice(high.hi)))
    fault(faults, path, 'chamfer-long', { feature: section.name, wants: twice(twice(high.hi)) });
  return [{ at, angle: ratio(hexagon ? 'hexagon.chamfer' : 'edge.chamfer'), mouth }];
}
