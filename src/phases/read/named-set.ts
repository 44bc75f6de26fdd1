/** Sets of drills and other tools as they are sold: `number 1-60`, `letter A-Z`, `fraction 1/16-1/2`, `1.0-10.0 by 0.1`. */
import { type Problem, readQuantity } from '../../base/quantity.ts';
import { type Len, len, roundHalfEven } from '../../base/units.ts';
import { shown } from '../../base/written.ts';
import { type Drill, fractionDrills, letterDrills, numberDrills } from '../../handbook/drills.ts';
import { usual } from '../../handbook/reading.ts';

/** By rising size. Nothing for a text that names no set. */
export function namedSet(word: string): readonly Len[] | Problem | undefined {
  const text = word.trim().replace(/[–−]/g, '-').replace(/\s+/g, ' ');
  const series = /^(number|letter|fraction)s?(?: #?([\w/]+) ?(?:in|")? ?(?:-|to) ?#?([\w/]+)(?: ?(?:in|"))?)?$/i.exec(text);
  if (series) return seriesSet(series, word);
  const span = /^(.+?) ?(?:-|\bto\b) ?(.+?) by (.+)$/i.exec(text);
  return span ? spanSet(span) : undefined;
}

const SERIES: Readonly<Record<string, readonly Drill[]>> = { number: numberDrills, letter: letterDrills, fraction: fractionDrills };

function seriesSet([, kind = '', from, to]: RegExpExecArray, word: string): readonly Len[] | Problem {
  const all = SERIES[kind.toLowerCase()] ?? [];
  const place = (name: string | undefined, otherwise: number): number =>
    name === undefined ? otherwise : all.findIndex((d) => d.name.replace(/^#| in$/g, '') === name.toUpperCase());
  const [a, b] = [place(from, 0), place(to, all.length - 1)];
  if (a < 0 || b < 0) return { problem: 'read.not-a-set', grounds: { word: shown(word) } };
  return all
    .slice(Math.min(a, b), Math.max(a, b) + 1)
    .map((d) => d.diameter)
    .sort((one, other) => one - other);
}

/** What has no unit of its own has that of the set's end, or of its step. */
function spanSet([, from = '', to = '', by = '']: RegExpExecArray): readonly Len[] | Problem {
  const unit = [to, by].flatMap((part) => /[a-z"]+$/i.exec(part.trim())?.[0] ?? [])[0] ?? '';
  const read = [from, to, by].map((part) => readQuantity(/[a-z"]$/i.test(part.trim()) ? part : `${part} ${unit}`, 'length'));
  const wrong = read.find((one) => typeof one === 'object');
  if (wrong) return wrong as Problem;
  const [first, last, step] = read as readonly number[];
  return spanned(first ?? 0, last ?? 0, step ?? 0);
}

/** Units of 0.1 um. A step that goes evenly into the span is not rounded by itself: sixty-fourths come out as sixty-fourths. */
export function spanned(from: number, to: number, by: number): readonly Len[] | Problem {
  const most = usual('set.most');
  if (to < from) return { problem: 'read.range-backwards', grounds: { most } };
  const even = by > 0 ? Math.round((to - from) / by) : most;
  const fits = Math.abs(even * by - (to - from)) <= even;
  const steps = fits || by <= 0 ? even : Math.floor((to - from) / by);
  if (steps >= most) return { problem: 'read.range-too-fine', grounds: { most } };
  const step = fits && even > 0 ? (to - from) / even : by;
  return Array.from({ length: steps + 1 }, (_, n) => len(roundHalfEven(from + n * step)));
}
