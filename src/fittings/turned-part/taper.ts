/**
 * A taper over the whole length of its piece: it runs out at the next face, or meets the taper of the next piece in a ridge. Its large
 * diameter follows from tip, angle and length; it is cut from a blank a little over that, of which nothing is left.
 */
import { add, type Len, len, minus, mm } from '../../base/units.ts';
import { type End, other } from '../../model/ids.ts';
import type { Limits } from '../../model/part.ts';
import { between, ratio, size, TENTH, tidy } from '../limits.ts';
import type { AskedSection, TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import { limitsOf } from './limits.ts';

/** `far`: its large diameter, `mouth` its tip; `angle` included; `blank`: what it is cut from. */
export type Taper = { readonly far: Limits; readonly mouth: Limits; readonly angle: number; readonly blank: Limits };

/** Its cone is as long as itself. */
export const isTaper = (section: AskedSection | undefined): boolean =>
  section?.cone?.length !== undefined &&
  section.cone.at !== 'both' &&
  section.cone.angle === undefined &&
  section.cone.length === section.length.nominal;

/** This piece's taper and the next one's lean against each other: no face between them. */
export function ridgeAfter(asked: TurnedPartAsked, i: number): boolean {
  const [a, b] = [asked.outside[i], asked.outside[i + 1]];
  const same = a?.diameter !== undefined && b?.diameter !== undefined && a.diameter.text === b.diameter.text;
  return same && isTaper(a) && isTaper(b) && a?.cone?.at === 'first' && b?.cone?.at === 'second';
}

type Lean = { readonly mouth: Limits; readonly angle: number; readonly long: Limits };

/** Nothing where a size of it could not be understood. */
export function taperOf(asked: TurnedPartAsked, i: number, faults: Faults): Taper | undefined {
  const ridge = ridgeAfter(asked, i) ? i + 1 : ridgeAfter(asked, i - 1) ? i - 1 : undefined;
  const section = asked.outside[i];
  const own = leanOf(asked, i, faults);
  const mate = ridge === undefined ? undefined : leanOf(asked, ridge, []);
  const drawn = section?.diameter && limitsOf(section.diameter, 'shaft', section.name, ['outside', i, 'diameter'], faults);
  if (!own || !drawn || !section || (ridge !== undefined && !mate)) return undefined;
  const found = mate ? ridgeOf(own, mate, drawn.target) : farOf(own, drawn.target);
  if (drawn.from.kind === 'general') return { ...own, far: found, blank: blankOf(found) };
  const fitted = mate || own.mouth.from.kind !== 'general' ? own.mouth : tipFor(own, drawn);
  const far = mate ? found : farOf({ ...own, mouth: fitted }, drawn.target);
  if (fitted.lo < fitted.hi && far.lo >= drawn.lo && far.hi <= drawn.hi) return { ...own, mouth: fitted, far, blank: blankOf(far) };
  const grounds = { feature: section.name, lo: found.lo, hi: found.hi, asksLo: drawn.lo, asksHi: drawn.hi };
  fault(faults, ['outside', i, 'diameter'], 'taper-limits', grounds);
  return undefined;
}

function leanOf(asked: TurnedPartAsked, i: number, faults: Faults): Lean | undefined {
  const section = asked.outside[i];
  const { cone, diameter, length } = section ?? {};
  if (!section || !cone || !diameter || !length) return undefined;
  const mouth = limitsOf(cone.tip, 'shaft', section.name, ['outside', i, 'cone', 'tip'], faults);
  const long = limitsOf(length, 'length', section.name, ['outside', i, 'length'], []);
  if (!mouth || !long) return undefined;
  return { mouth, long, angle: taperAngle(mouth.target, diameter.nominal, length.nominal) };
}

/** Between two diameters over a length: twice what the top slide is set to, that to a hundredth of a degree; it is proved by trial anyway. */
export function taperAngle(small: Len, large: Len, long: Len): number {
  const half = (Math.atan(minus(large, small) / (2 * long)) * ratio('turn.half')) / Math.PI;
  return 2 * (Math.round(half * 100) / 100);
}

/** Diameter gained a length. */
const slopeOf = (angle: number): number => 2 * Math.tan((angle * Math.PI) / (2 * ratio('turn.half')));

const grown = (from: number, long: number, angle: number): number => from + slopeOf(angle) * long;

function farOf({ mouth, long, angle }: Lean, nominal: Len): Limits {
  return around(grown(mouth.lo, long.lo, angle), grown(mouth.hi, long.hi, angle), nominal);
}

/** Where two lines meet that lean against each other over both lengths together. */
function ridgeOf(a: Lean, b: Lean, nominal: Len): Limits {
  const [s, t] = [slopeOf(a.angle), slopeOf(b.angle)];
  const at = (which: 'lo' | 'hi'): number => (a.mouth[which] / s + b.mouth[which] / t + a.long[which] + b.long[which]) / (1 / s + 1 / t);
  return around(at('lo'), at('hi'), nominal);
}

const around = (lo: number, hi: number, nominal: Len): Limits => {
  const [low, high] = [len(Math.floor(lo)), len(Math.ceil(hi))];
  return between(low, high, len(Math.min(high, Math.max(low, nominal))), 'taper', 'general');
};

/** Limits of the tip that bring the large diameter inside its own. */
function tipFor({ mouth, long, angle }: Lean, drawn: Limits): Limits {
  const [lo, hi] = [Math.ceil(drawn.lo - slopeOf(angle) * long.lo), Math.floor(drawn.hi - slopeOf(angle) * long.hi)];
  return between(len(lo), len(hi), len(Math.min(Math.max(mouth.target, lo), hi)), 'taper', 'general');
}

/** It stands over the large diameter whatever either comes to. */
function blankOf(far: Limits): Limits {
  const half = size('taper.blank.band');
  const aim = tidy(add(far.hi, add(size('taper.blank.over'), half)), TENTH, 'up');
  return between(minus(aim, half), add(aim, half), aim, 'taper blank');
}

/** Is there a step at its large end that can be turned to, and does nothing else ask for a cylinder that is not there? */
export function checkTaper(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, blank: Limits, faults: Faults): void {
  const section = asked.outside[i];
  if (!section?.cone || section.cone.at === 'both') return;
  const path: Path = ['outside', i];
  const large: End = other(section.cone.at);
  const beside = sizes[large === 'first' ? i - 1 : i + 1];
  const name = asked.outside[large === 'first' ? i - 1 : i + 1]?.name ?? '';
  const isRidge = ridgeAfter(asked, i) || ridgeAfter(asked, i - 1);
  if (beside && !isRidge && beside.target > (sizes[i]?.target ?? 0) && beside.lo <= blank.hi)
    fault(faults, [...path, 'diameter'], 'taper-collar', { feature: section.name, other: name, least: add(blank.hi, mm(1 / 10)) });
  const asks = (['chamfer', 'radius', 'full-round', 'fillet'] as const).find((key) => section[key] !== undefined);
  if (asks) fault(faults, [...path, asks], 'taper-bare', { feature: section.name, key: asks });
}
