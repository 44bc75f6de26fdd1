/**
 * Any thread by its name, as people write it: `M10x1`, `M10×1`, `M10`, `1/4-40 ME`, `ME 1/4 x 40`, `3/8 BSP`, `G3/8`, `2BA`, `1/4 UNF`, `#4-40`.
 * A name that fits two families gives the first of: Model Engineer, brass, BSW, BSF, UNC, UNF, UNEF.
 */
import { nearestFew } from '../base/nearest.ts';
import { mm, toMm } from '../base/units.ts';
import { baThreads } from './ba-threads.ts';
import { pipeThreads } from './iso228-threads.ts';
import { basicThread, metricName, metricNames, metricThread, type ThreadLimits } from './iso965-metric.ts';
import { usualTappingDrill } from './metric-tapping.ts';
import { cite } from './sources.ts';
import { type Family, ISO_FORM, type ThreadRecord } from './thread-form.ts';
import { unifiedThreads } from './unified-threads.ts';
import { whitworthThreads } from './whitworth-threads.ts';

export type NamedThread = { readonly thread: ThreadRecord; readonly left: boolean; readonly cls?: string };

/** Every thread of a list; metric ones are found by `thread`, also outside their list. */
export const inchThreads: readonly ThreadRecord[] = [...whitworthThreads, ...baThreads, ...pipeThreads, ...unifiedThreads];
export const threadNames: readonly string[] = [...metricNames, ...inchThreads.map((t) => t.name)];

/** With ' LH' for left hand and perhaps a class behind it: 'M10x1-6H', 'G3/8 B', '1/4-20 UNC-2A', '1/4 BSW close'. */
export function thread(name: string): NamedThread | undefined {
  const { text, left, cls } = parted(name);
  const found = metric(text) ?? inchThread(text);
  return found && { thread: found, left, ...(cls === undefined ? {} : { cls }) };
}

/** The few names that are nearest to one that is not known. */
export function nearestThreads(name: string): readonly string[] {
  const tidy = parted(name).text;
  const [size = ''] = /^M?[\d./#]+/.exec(tidy) ?? [];
  const alike = threadNames.filter((n) => size !== '' && (n === size || n.startsWith(`${size}x`) || n.startsWith(`${size}-`)));
  return alike.length > 0 ? alike.slice(0, MOST) : nearestFew(tidy, threadNames, MOST);
}
const MOST = 5;

/** The side that a class belongs to by its own name; nothing where both sides have it. */
export function sideOf(found: ThreadRecord, cls: string): ThreadLimits['side'] | undefined {
  if (found.family === 'metric') return /[GH]/.test(cls) ? 'inside' : 'outside';
  const [out, within] = [found.outside.includes(cls), found.inside.includes(cls)];
  if (out === within) return undefined;
  return out ? 'outside' : 'inside';
}

/** Is there such a class of it at all? */
export function hasClass(found: ThreadRecord, cls: string): boolean {
  return [found.limits('outside', cls), found.limits('inside', cls)].some((l) => l !== undefined);
}

function parted(name: string): { readonly text: string; readonly left: boolean; readonly cls?: string } {
  let text = tidied(name);
  const left = /(?:^|[ -])LH(?=$|[ -])/.test(text);
  text = text.replace(/(?:^|[ -])LH(?=$|[ -])/, '').trim();
  const cls = CLASS.exec(text)?.[1];
  if (cls === undefined) return { text, left };
  return { text: text.slice(0, text.length - cls.length).replace(/[ -]+$/, ''), left, cls: readClass(cls) };
}
const CLASS = /[ -]((?:[3-9][A-H]){1,2}|2A|2B|A|B|CLOSE|MEDIUM|FREE|NORMAL|NUT)$/i;

/** A metric class keeps its case, which tells outside from inside; the others have one way to be written. */
function readClass(cls: string): string {
  if (/^(?:2[ab]|[ab])$/i.test(cls)) return cls.toUpperCase();
  return /^\d/.test(cls) ? cls : cls.toLowerCase();
}

/** Case is kept for the class's sake: everything else is compared without it. */
function tidied(name: string): string {
  return name
    .replace(/[×*]/g, 'x')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (c) => FRACTIONS[c] ?? c)
    .replace(/["″”]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/\blh\b/gi, 'LH');
}
const FRACTIONS: Readonly<Record<string, string>> = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

function inchThread(written: string): ThreadRecord | undefined {
  const text = written.toUpperCase();
  const ba = /^(?:NO\.? ?)?(\d{1,2}) ?BA$|^BA ?(\d{1,2})$/.exec(text);
  if (ba) return baThreads.find((t) => t.name === `${Number(ba[1] ?? ba[2])}BA`);
  const pipe = /^(?:G|BSPP?) ?([\d/]+)$|^([\d/]+)(?: IN)? ?(?:BSPP?|G)$/.exec(text);
  if (pipe) return pipeThreads.find((t) => t.name === `G${pipe[1] ?? pipe[2]}`);
  const read = INCH.exec(text);
  if (!read) return undefined;
  const [, before, size = '', dashed, spaced, after] = read;
  const pitch = dashed ?? spaced;
  const families = SERIES[before ?? after ?? ''];
  const sizes = [size.replace(/^NO\.? ?/, '#'), ...(/^\d+$/.test(size) ? [`#${size}`] : [])];
  return inchThreads.find(
    (t) =>
      sizes.some((s) => t.name.startsWith(`${s}-`)) &&
      (pitch === undefined || t.perInch === Number(pitch)) &&
      (families === undefined ? pitch !== undefined : families.includes(t.family)),
  );
}
const INCH =
  /^(?:(ME|MODEL ENGINEER|BRASS|BSB|BSW|W|BSF|UNC|UNF|UNEF|UN) ?)?((?:#|NO\.? ?)?\d+(?:\/\d+)?)(?: ?IN)?(?: ?[-X] ?(\d{2})(?: ?TPI)?| (\d{2}) ?TPI)?(?: ?(ME|MODEL ENGINEER|BRASS|BSB|BSW|W|BSF|UNC|UNF|UNEF|UN))?$/;
const SERIES: Readonly<Record<string, readonly Family[]>> = {
  ME: ['ME'],
  'MODEL ENGINEER': ['ME'],
  BRASS: ['brass'],
  BSB: ['brass'],
  BSW: ['BSW'],
  W: ['BSW'],
  BSF: ['BSF'],
  UNC: ['UNC'],
  UNF: ['UNF'],
  UNEF: ['UNEF'],
  UN: ['UNC', 'UNF', 'UNEF'],
};

const OUTSIDE = ['6g', '6h', '6e', '6f', '4h', '5g6g', '7g6g', '8g'];
const INSIDE = ['6H', '5H', '4H', '7H', '6G', '7G'];

function metric(text: string): ThreadRecord | undefined {
  const name = metricName(text);
  if (name === undefined) return undefined;
  const limits = (side: ThreadLimits['side'], cls: string): ThreadLimits | undefined => {
    const found = metricThread(name, cls);
    return found?.side === side ? found : undefined;
  };
  const some = metricThread(name, '6g') ?? metricThread(name, '5H') ?? metricThread(name, '4h');
  if (!some) return undefined;
  const drill = usualTappingDrill(name);
  return {
    name,
    family: 'metric',
    form: ISO_FORM,
    nominal: some.nominal,
    pitch: some.pitch,
    basic: basicThread(toMm(some.nominal), toMm(some.pitch)),
    outside: OUTSIDE.filter((cls) => limits('outside', cls) !== undefined),
    inside: INSIDE.filter((cls) => limits('inside', cls) !== undefined),
    usual: drill === undefined ? [] : [{ drill: mm(toMm(drill)), source: cite('iso-2306'), standing: 'from memory' }],
    source: some.source,
    standing: some.standing,
    limits,
  };
}
