/** Limits of a size that a person wrote: stated, by its fit, or by the general tolerance. */
import { type Size, statedLimits } from '../../base/size.ts';
import { type Len, len, mm, toMm } from '../../base/units.ts';
import { fitLimits } from '../../handbook/iso286.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { LimitSource, Limits } from '../../model/part.ts';
import { between, general } from '../limits.ts';
import { type Faults, fault, type Path } from './fault.ts';

export type Of = 'shaft' | 'hole' | 'length';

/** Nothing, and a fault, where the size has no limits of this kind. The reader's bounds keep it within the general tolerance's table. */
export function limitsOf(size: Size, of: Of, feature: string, path: Path, faults: Faults): Limits | undefined {
  const about = { feature, size: size.text, of };
  if (size.thread !== undefined) {
    fault(faults, path, 'thread-as-size', about);
    return undefined;
  }
  if (size.fit !== undefined) return asWritten(ofFit(size.nominal, size.fit, of, about, path, faults), size);
  const stated = statedLimits(size);
  if (stated && stated.lo <= 0) {
    fault(faults, path, 'nothing-left', { ...about, lo: stated.lo });
    return undefined;
  }
  if (stated) return band({ ...stated, nominal: size.nominal }, of, size.text, 'stated');
  return general(size.nominal);
}

/** `1/2 in f7` stays what it is beside its limits. */
function asWritten(limits: Limits | undefined, { text, nominal, fit }: Size): Limits | undefined {
  const plain = [`${toMm(nominal)} ${fit}`, `${toMm(nominal)}${fit}`];
  return limits && !plain.includes(text) ? { ...limits, from: { ...limits.from, written: text } } : limits;
}

type About = { readonly feature: string; readonly size: string; readonly of: Of };

function ofFit(nominal: Len, fit: string, of: Of, about: About, path: Path, faults: Faults): Limits | undefined {
  if (of === 'length') {
    fault(faults, path, 'fit-on-length', { ...about, fit });
    return undefined;
  }
  const right = of === 'shaft' ? fit.toLowerCase() : fit.toUpperCase();
  const found = fit === right ? fitLimits(nominal, fit) : undefined;
  if (found) return band({ ...found, nominal }, of, fit, 'fit');
  if (fit !== right) fault(faults, path, 'fit-of-other-side', { ...about, fit, right });
  else fault(faults, path, 'fit-unknown', { ...about, fit, near: nearestFit(nominal, fit) });
  return undefined;
}

/** Same letter with the nearest grade, else the nearest letter with that grade; '' where the table has nothing for this size. */
function nearestFit(nominal: Len, fit: string): string {
  const [, letter = '', grade = ''] = /^([a-z]{1,2})(\d+)$/i.exec(fit) ?? [];
  const grades = GRADES.toSorted((a, b) => Math.abs(a - Number(grade)) - Math.abs(b - Number(grade)) || a - b);
  const place = (l: string): number => Math.abs(l.toLowerCase().charCodeAt(0) - letter.toLowerCase().charCodeAt(0));
  const letters = LETTERS.map((l) => (letter === letter.toLowerCase() ? l : l.toUpperCase())).sort((a, b) => place(a) - place(b));
  const tries = [...grades.map((g) => `${letter}${g}`), ...letters.flatMap((l) => grades.map((g) => `${l}${g}`))];
  return tries.find((one) => fitLimits(nominal, one) !== undefined) ?? '';
}
/** Every grade that a fit may be asked for by; the handbook says which of them it has. */
const GRADES: readonly number[] = [...Array(10 * 2).keys()];
const LETTERS: readonly string[] = ['c', 'd', 'e', 'f', 'g', 'h', 'js', 'k', 'm', 'n', 'p', 'r', 's'];

/** The nominal size where it lies between the limits; else the roundest figure in their middle half, nearest the middle; else the middle. */
function band({ lo, hi, nominal }: Band, of: Of, as: string, kind: LimitSource['kind']): Limits {
  const middle = len(lo + Math.floor((hi - lo) / 2));
  const away = (hi - lo) / numbersTable.value('tidy.inside');
  const round = STEPS[of].map((step) => len(Math.ceil(middle / step - 1 / 2) * step)).find((one) => one >= lo + away && one <= hi - away);
  return between(lo, hi, lo < nominal && nominal < hi ? nominal : (round ?? middle), as, kind);
}
type Band = { readonly lo: Len; readonly hi: Len; readonly nominal: Len };
/** A tenth; of a shaft two hundredths, which is one a side; a hundredth, the lower one of two. */
const STEPS: Readonly<Record<Of, readonly Len[]>> = {
  shaft: [mm(0.1), len(2 * mm(0.01)), mm(0.01)],
  hole: [mm(0.1), mm(0.01)],
  length: [mm(0.1), mm(0.01)],
};
