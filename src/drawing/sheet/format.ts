/** Figures as a turner reads them. One manner for every sheet: millimetres, decimal point, U+2212 for less, U+00D7 in a thread's name. */
import { type Len, len, showMm, toMm } from '../../base/units.ts';
import type { Limits } from '../../model/part.ts';

const MINUS = '\u2212';
const DECIMALS = 2;

/** '9.90'; more places only when they are needed. */
export function size(length: Len): string {
  return showMm(length, DECIMALS).replace('-', MINUS);
}

/** '\u00d8 9.90' */
export function diameter(length: Len): string {
  return `\u00d8 ${size(length)}`;
}

/** As short as it is exact to 0.001: '4.5', '12', '0.05'. For drills, cuts and allowances. */
export function short(length: Len): string {
  return String(Number(toMm(length).toFixed(DECIMALS + 1))).replace('-', MINUS);
}

/** How far from the size shown, upward and downward: '+0.05 \u22120.08', '\u00b10.05', '+0 \u22120.1'. */
export function limits(asked: Limits): string {
  const up = len(asked.hi - asked.target);
  const down = len(asked.target - asked.lo);
  if (up === down) return `\u00b1${short(up)}`;
  return `+${short(up)} ${MINUS}${short(down)}`;
}

/** 'M10x1' as it is printed: 'M10\u00d71'. */
export function thread(name: string): string {
  return name.replace(/x/g, '\u00d7');
}

/** A derived figure to four places that count at most: '1.625', '0.76', '4.5'. */
export function figure(value: number): string {
  return String(Number(value.toPrecision(2 * DECIMALS))).replace('-', MINUS);
}

/** Passes as they are read: equal neighbours counted together, '0.5 \u00d77, 0.4, 0.15'. */
export function passes(cuts: readonly Len[]): string {
  const runs: { readonly cut: Len; readonly times: number }[] = [];
  for (const cut of cuts) {
    const last = runs.at(-1);
    if (last?.cut === cut) runs[runs.length - 1] = { cut, times: last.times + 1 };
    else runs.push({ cut, times: 1 });
  }
  return runs.map((run) => (run.times === 1 ? short(run.cut) : `${short(run.cut)} \u00d7${run.times}`)).join(', ');
}
