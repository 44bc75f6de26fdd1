/** Quantities with their unit, as a person writes them: `6 mm`, `1 1/2 in`, `1/4"`, `100 psi`, `240 /min`, `45 deg`. */

import { nearest } from './nearest.ts';
import { inch, len, mm, roundHalfEven, UNITS_PER_MM } from './units.ts';
import { shown } from './written.ts';

export type QuantityKind =
  | 'length'
  | 'pressure'
  | 'speed'
  | 'angle'
  | 'power'
  | 'temperature'
  | 'time'
  | 'flow'
  | 'steaming'
  | 'area'
  | 'count';
/** What cannot be: a code for its words, and the grounds they are fed. */
/** `alone`: it stands whatever else in the file cannot be read. */
export type Problem = {
  readonly problem: string;
  readonly grounds: Readonly<Record<string, string | number | boolean>>;
  readonly alone?: true;
};

/** One unit: how it may be written (first as it is printed), and how many of the kind's own unit it is. */
type Unit = { readonly kind: QuantityKind; readonly names: readonly string[]; readonly size: number };

// inch: 25.4 mm exactly. lbf/in2: 0.45359237 kg x 9.80665 m/s2 / (0.0254 m)2. hp: 550 ft lbf/s. Exact by definition.
const PSI_IN_BAR = (0.45359237 * 9.80665) / (0.0254 * 0.0254) / 1e5;
const CUBIC_INCH = 2.54 * 2.54 * 2.54;
const HP_IN_WATTS = 550 * 0.3048 * 0.45359237 * 9.80665;

const UNITS: readonly Unit[] = [
  { kind: 'length', names: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], size: UNITS_PER_MM },
  { kind: 'length', names: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], size: UNITS_PER_MM * 10 },
  { kind: 'length', names: ['in', '"', 'inch', 'inches'], size: inch(1) },
  { kind: 'length', names: ['thou'], size: inch(1) / 1000 },
  { kind: 'pressure', names: ['bar'], size: 1 },
  { kind: 'pressure', names: ['psi', 'lbf/in2', 'lb/in2'], size: PSI_IN_BAR },
  { kind: 'pressure', names: ['kPa'], size: 0.01 },
  { kind: 'pressure', names: ['MPa'], size: 10 },
  { kind: 'speed', names: ['/min', 'rpm', 'rev/min', 'r/min', '1/min', 'min-1', 'per minute'], size: 1 },
  { kind: 'angle', names: ['deg', '°', 'degree', 'degrees'], size: 1 },
  { kind: 'power', names: ['W', 'watt', 'watts'], size: 1 },
  { kind: 'power', names: ['kW'], size: 1000 },
  { kind: 'power', names: ['hp'], size: HP_IN_WATTS },
  { kind: 'temperature', names: ['°C', 'deg C', 'degC'], size: 1 },
  { kind: 'time', names: ['min', 'minute', 'minutes'], size: 1 },
  { kind: 'time', names: ['s', 'sec', 'second', 'seconds'], size: 1 / 60 },
  { kind: 'time', names: ['h', 'hour', 'hours'], size: 60 },
  { kind: 'flow', names: ['ml/min', 'cc/min', 'cm3/min'], size: 1 },
  { kind: 'flow', names: ['l/min'], size: 1000 },
  { kind: 'flow', names: ['l/h'], size: 1000 / 60 },
  { kind: 'flow', names: ['in3/min', 'cu in/min'], size: CUBIC_INCH },
  { kind: 'steaming', names: ['kg/h'], size: 1 },
  { kind: 'steaming', names: ['g/min'], size: 0.06 },
  { kind: 'steaming', names: ['lb/h'], size: 0.45359237 },
  { kind: 'area', names: ['cm2', 'sq cm'], size: 1 },
  { kind: 'area', names: ['m2', 'sq m'], size: 10_000 },
  { kind: 'area', names: ['in2', 'sq in'], size: 2.54 * 2.54 },
  { kind: 'area', names: ['ft2', 'sq ft'], size: 30.48 * 30.48 },
];

/** Longer than any number with its unit. */
const LONGEST = 40;
const LARGEST = 1e9;

/**
 * A length comes in whole units of 0.1 um (rounded once, half to even); a pressure in bar; a speed in turns a minute; an angle in
 * degrees; a power in watts; a temperature in °C; a time in minutes; a flow in ml/min; steam raised in kg/h; an area in cm2; a count as itself. A bare number is a count, or millimetres where a length is asked;
 * anything else needs its unit. Upper and lower case of units count for nothing. Never throws.
 */
export function readQuantity(written: string | number, kind: QuantityKind): number | Problem {
  const word = shown(String(written));
  const about = { word, asked: kind, units: unitsOf(kind) };
  if (typeof written === 'number') return bare(written, kind, about);
  if (written.length > LONGEST) return { problem: 'read.not-a-quantity', grounds: about };
  const parts = split(tidied(written));
  if (!parts) return /^[-+]?\d+,\d/.test(written.trim()) ? commaProblem(word) : { problem: 'read.not-a-quantity', grounds: about };
  if (!Number.isFinite(parts.over / parts.under) || Math.abs(parts.over / parts.under) > LARGEST)
    return { problem: 'read.huge-number', grounds: { word } };
  if (parts.unit === '')
    return parts.under === 1 ? bare(parts.over, kind, about) : { problem: 'read.fraction-without-unit', grounds: about };
  if (parts.unit.startsWith(',')) return commaProblem(word);
  const unit = UNITS.find((u) => u.names.some((n) => n.toLowerCase() === parts.unit.toLowerCase()));
  if (!unit && hasLimits(parts.unit, kind)) return { problem: 'read.limits-unasked', grounds: about };
  if (!unit) return { problem: 'read.unknown-unit', grounds: { ...about, unit: shown(parts.unit), near: nearestUnit(parts.unit, kind) } };
  if (unit.kind !== kind)
    return { problem: kind === 'count' ? 'read.count-with-unit' : 'read.wrong-unit', grounds: { ...about, given: unit.kind } };
  const value = (parts.over * unit.size) / parts.under;
  return kind === 'length' ? len(roundHalfEven(value)) : value;
}

/** '±0.1', '-0.1 -0.3'; behind a length a fit as well: 'H8'. */
const hasLimits = (rest: string, kind: QuantityKind): boolean =>
  /^(\S+ +)?(±|\+\/-|[-+] *\d)/.test(rest) || (kind === 'length' && /^(\S+ +)?[a-z]{1,2}\d{1,2}$/i.test(rest));

/** The units of a kind as a list to read: 'mm, cm, in, thou'. Empty for a count. */
export function unitsOf(kind: QuantityKind): string {
  return UNITS.filter((u) => u.kind === kind)
    .map((u) => u.names[0])
    .join(', ');
}

function bare(value: number, kind: QuantityKind, about: Problem['grounds']): number | Problem {
  if (!Number.isFinite(value) || Math.abs(value) > LARGEST) return { problem: 'read.huge-number', grounds: { word: about.word ?? '' } };
  if (kind === 'length') return mm(value);
  if (kind !== 'count')
    return { problem: 'read.unit-missing', grounds: { ...about, first: UNITS.find((u) => u.kind === kind)?.names[0] ?? '' } };
  return Number.isInteger(value) ? value : { problem: 'read.not-whole', grounds: about };
}

function commaProblem(word: string): Problem {
  return { problem: 'read.decimal-comma', grounds: { word, better: word.replace(',', '.') } };
}

function nearestUnit(unit: string, kind: QuantityKind): string {
  return (
    nearest(
      unit,
      UNITS.filter((u) => u.kind === kind).flatMap((u) => u.names),
    ) ?? ''
  );
}

/** Value as a fraction, so that a part of an inch is divided once only. */
type Parts = { readonly over: number; readonly under: number; readonly unit: string };

const MIXED = /^([-+]?)(?:(\d+)[ -])?(\d+)\/(\d+)(?: ?([^\d].*))?$/;
const PLAIN = /^([-+]?)(\d+(?:\.\d*)?|\.\d+)(?: ?(.*))?$/;

function split(text: string): Parts | undefined {
  const mixed = MIXED.exec(text);
  if (mixed) {
    const under = Number(mixed[4]);
    const over = Number(mixed[2] ?? 0) * under + Number(mixed[3]);
    return under === 0 ? undefined : { over: mixed[1] === '-' ? -over : over, under, unit: (mixed[5] ?? '').trim() };
  }
  const plain = PLAIN.exec(text);
  if (!plain) return undefined;
  const size = Number(plain[2]);
  return { over: plain[1] === '-' ? -size : size, under: 1, unit: (plain[3] ?? '').trim() };
}

const FRACTIONS: Readonly<Record<string, string>> = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

/** Look-alikes made one: minus signs, double primes, narrow and hard spaces, ready-made fractions. */
function tidied(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (c) => ` ${FRACTIONS[c] ?? c}`)
    .replace(/[−–]/g, '-')
    .replace(/[″”“]|''/g, '"')
    .replace(/℃/g, '°C')
    .replace(/\s+/g, ' ')
    .trim();
}
