/** Rounded edges, full-round ends and fillets of a section: at which corners, how large, and whether there is room for them. */
import { type Size, statedLimits } from '../../base/size.ts';
import { len, minus } from '../../base/units.ts';
import { lookUpChamfer } from '../../handbook/iso2768.ts';
import { radiusFigure } from '../../handbook/radii.ts';
import { type End, other } from '../../model/ids.ts';
import type { Limits } from '../../model/part.ts';
import { about, between } from '../limits.ts';
import type { ArcAsk } from '../outline.ts';
import { type AskedSection, isConed, type TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';

const ENDS: readonly End[] = ['first', 'second'];
type Corner = 'free' | 'shoulder' | 'none';
type Where = { readonly asked: TurnedPartAsked; readonly sizes: readonly Limits[]; readonly i: number; readonly faults: Faults };

/** The arcs of section `i`, each at its corner; faults where a corner or the room is missing. */
export function arcsOf(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): readonly ArcAsk[] {
  const where: Where = { asked, sizes, i, faults };
  return [...fullRound(where), ...rounds(where), ...fillets(where)];
}

const pieceOf = ({ asked, i }: Where): AskedSection => asked.outside[i] as AskedSection;
const besideOf = (i: number, side: End): number => (side === 'first' ? i - 1 : i + 1);
const pathOf = ({ i }: Where, key: string): Path => ['outside', i, key];

/** To the air or a lower neighbour; under a higher one; or neither, beside a groove and at the piece's own cone. */
function cornerAt({ asked, sizes, i }: Where, end: End): Corner {
  const [own, beside] = [asked.outside[i], asked.outside[besideOf(i, end)]];
  if ((own && isConed(own, end)) || beside?.groove) return 'none';
  return beside === undefined || (sizes[besideOf(i, end)]?.target ?? 0) < (sizes[i]?.target ?? 0) ? 'free' : 'shoulder';
}

function rounds(where: Where): readonly ArcAsk[] {
  const { radius, name, 'radius-at': at, 'full-round': full } = pieceOf(where);
  if (!radius) {
    if (at) fault(where.faults, pathOf(where, 'radius-at'), 'radius-at-nothing', { feature: name });
    return [];
  }
  const free = ENDS.filter((end) => cornerAt(where, end) === 'free');
  const wanted = at ? [at] : free.filter((end) => end !== full);
  if (wanted.length === 0 || wanted.some((end) => !free.includes(end))) {
    fault(where.faults, pathOf(where, at ? 'radius-at' : 'radius'), 'radius-in-corner', {
      feature: name,
      free: at && free[0] ? free[0] : '',
      rounded: !at && full !== undefined && free.includes(full),
    });
    return [];
  }
  const across = acrossOf(where, 'radius', radius);
  return across ? wanted.map((end) => ({ at: end, bends: 'round', across })) : [];
}

function fillets(where: Where): readonly ArcAsk[] {
  const { fillet, name } = pieceOf(where);
  if (!fillet) return [];
  const wanted = ENDS.filter((end) => cornerAt(where, end) === 'shoulder');
  if (wanted.length === 0) fault(where.faults, pathOf(where, 'fillet'), 'fillet-nowhere', { feature: name });
  const across = acrossOf(where, 'fillet', fillet);
  return across ? wanted.map((end) => ({ at: end, bends: 'fillet', across })) : [];
}

/** The largest quarter of a circle that leaves a small flat in the middle of the end, whatever the diameter comes to. */
function fullRound(where: Where): readonly ArcAsk[] {
  const { name, 'full-round': at } = pieceOf(where);
  const limits = where.sizes[where.i];
  if (!at || !limits) return [];
  if (where.asked.outside[besideOf(where.i, at)] !== undefined) {
    const free = where.asked.outside[besideOf(where.i, other(at))] === undefined ? other(at) : '';
    fault(where.faults, pathOf(where, 'full-round'), 'full-round-within', { feature: name, free });
    return [];
  }
  const [step, band] = [radiusFigure('full-round.step'), radiusFigure('band.full-round')];
  const most = minus(limits.lo, radiusFigure('full-round.flat')) / 2 - band;
  const radius = about(len(Math.floor(most / step) * step), band, 'full round');
  return [{ at, bends: 'round', across: twice(radius) }];
}

/** Twice the radius: stated, or by table 2 of ISO 2768-1; under half a millimetre that table is silent. */
function acrossOf(where: Where, key: 'radius' | 'fillet', asked: Size): Limits | undefined {
  return acrossAsked(pieceOf(where).name, key, asked, pathOf(where, key), where.faults);
}

export function acrossAsked(name: string, key: 'radius' | 'fillet', asked: Size, path: Path, faults: Faults): Limits | undefined {
  if (asked.thread !== undefined || asked.fit !== undefined) {
    fault(faults, path, 'radius-as-size', { feature: name, size: asked.text, key });
    return undefined;
  }
  const stated = statedLimits(asked);
  const found = lookUpChamfer(asked.nominal, 'm');
  const usual = about(asked.nominal, radiusFigure('band.small'), 'radius');
  const general = found ? about(asked.nominal, found.half, found.as, 'general') : usual;
  const radius = stated ? between(stated.lo, stated.hi, asked.nominal, asked.text, 'stated') : general;
  if (radius.lo > 0) return twice(radius);
  fault(faults, path, 'radius-none', { feature: name, key });
  return undefined;
}

const twice = ({ lo, hi, target, from }: Limits): Limits => ({ lo: len(2 * lo), hi: len(2 * hi), target: len(2 * target), from });
