/** Figures as a turner reads them. One manner for every sheet: millimetres, decimal point, U+2212 for less, U+00D7 in a thread's name. */
import { type Len, len, showMm, toMm, toStep, UNITS_PER_MM } from '../../base/units.ts';
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

/**
 * How far from the size shown, upward and downward: '+0.05 −0.08', '±0.05', '+0 −0.1'. To hundredths, let down toward the size and so
 * never wider than allowed; a deviation under two hundredths keeps its thousandths.
 */
export function limits(asked: Limits, at: Len = asked.target): string {
  const up = deviation(asked.hi - at);
  const down = deviation(at - asked.lo);
  if (up === down) return `±${short(up)}`;
  const places = Math.max(...[up, down].map((length) => (short(length).split('.')[1] ?? '').length));
  const shown = (length: Len): string => (length === 0 ? '0' : toMm(length).toFixed(places));
  return `+${shown(up)} ${MINUS}${shown(down)}`;
}

/** Least and greatest as they are, for a proof: '9.794 – 9.974'. */
export function range(least: Len, greatest: Len): string {
  return `${size(least)} – ${size(greatest)}`;
}

const HUNDREDTH = UNITS_PER_MM / 100;

function deviation(exact: number): Len {
  return len(exact < 2 * HUNDREDTH ? exact : Math.floor(exact / HUNDREDTH) * HUNDREDTH);
}

/** 'sqrt(D^2 + d^2) <= C' as it is printed. */
export function formula(plain: string): string {
  return plain
    .replace(/sqrt/g, '√')
    .replace(/\bpi\b/g, 'π')
    .replace(/\^2/g, '²')
    .replace(/\^3/g, '³')
    .replace(/<=/g, '≤')
    .replace(/>=/g, '≥')
    .replace(/ - /g, ` ${MINUS} `);
}

/** 'M10x1' as it is printed: 'M10\u00d71'. */
export function thread(name: string): string {
  return name.replace(/x/g, '\u00d7');
}

/** To a tenth, rounded to the nearest: how deep a drill or a start goes. */
export function depth(length: Len): string {
  return short(toStep(length, len(UNITS_PER_MM / 10)));
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

/**
 * A derived figure with its unit as it is printed: 'N/mm\u00b2' with its raised figure, degrees close up. Lengths to four places that count, for
 * they are turned; what flows, presses or strains to three, for no rate and no stress is known better.
 */
export function figureWithUnit(value: number, unit: string): string {
  const sign = UNIT_SIGNS[unit] ?? unit;
  return `${String(Number(value.toPrecision(LENGTHS.includes(unit) ? 4 : 3))).replace('-', MINUS)}${sign === '' || sign === '\u00b0' ? '' : ' '}${sign}`;
}
const LENGTHS: readonly string[] = ['mm', 'in'];
const UNIT_SIGNS: Readonly<Record<string, string>> = {
  ...{ mm2: 'mm\u00b2', 'N/mm2': 'N/mm\u00b2', 'm3/h': 'm\u00b3/h' },
  ...{ deg: '\u00b0', degC: '\u00b0C', degF: '\u00b0F' },
};
