/** What a look-up answers: rows of figures under labels that are words' ids, and what they rest on. No sentence stands here. */
import type { Len } from '../../base/units.ts';
import { commonDrills, commonReamers } from '../common-set.ts';
import type { Standing } from '../fact.ts';
import type { BanjoSizes } from '../gear-reach.ts';
import type { DialSizes } from '../half-nuts.ts';

export type Value =
  /** mm to three places */
  | { readonly kind: 'length'; readonly value: Len }
  | { readonly kind: 'limits'; readonly lo: Len; readonly hi: Len }
  | { readonly kind: 'number'; readonly value: number; readonly unit: string; readonly places: number }
  | { readonly kind: 'span'; readonly lo: number; readonly hi: number; readonly unit: string; readonly places: number }
  /** A name: of a class, a drill, a material. */
  | { readonly kind: 'name'; readonly name: string }
  /** Words `look.word.<id>`. */
  | { readonly kind: 'word'; readonly id: string };
/** Words `look.row.<label>`; `about` is shown in them where they ask for it. */
export type Row = { readonly label: string; readonly about?: string; readonly values: readonly Value[] };
/** Words `look.part.<title>`. */
export type Part = { readonly title: string; readonly about?: string; readonly rows: readonly Row[] };
export type Ground = { readonly source: string; readonly standing: Standing };
export type Answer = {
  readonly subject: Subject;
  readonly name: string;
  readonly parts: readonly Part[];
  /** Words `look.note.<id>`. */
  readonly notes: readonly string[];
  readonly sources: readonly Ground[];
};
export type Subject = 'thread' | 'drill' | 'ball' | 'fit' | 'speed' | 'steam' | 'wire' | 'square' | 'material' | 'gears';
export const SUBJECTS: readonly Subject[] = ['thread', 'drill', 'ball', 'fit', 'speed', 'steam', 'wire', 'square', 'material', 'gears'];

/** What a workshop has, as far as look-ups ask; without one the usual set of drills and any speed. */
export type Shop = {
  readonly name?: string;
  readonly drills: readonly Len[];
  readonly reamers: readonly Len[];
  readonly speeds?: { readonly from: number; readonly to: number } | { readonly steps: readonly number[] };
  readonly tool: 'HSS' | 'carbide';
  readonly lathe?: ThreadingLathe;
};
/** What screw-cutting asks of a lathe; `slowest` in turns a minute. */
export type ThreadingLathe = {
  readonly leadscrew: Len;
  readonly leadscrewPerInch?: number;
  readonly gears: readonly number[];
  readonly banjo?: BanjoSizes;
  readonly halfNuts?: boolean;
  readonly threadingDial?: DialSizes;
  readonly slowest?: number;
};
export const COMMON_SHOP: Shop = { drills: commonDrills, reamers: commonReamers, tool: 'HSS' };

/** `words`: what stands behind the subject, as one text. */
export type Ask = { readonly words: string; readonly shop: Shop };
/** A name that is not known comes back with the nearest; a text that is no such thing at all, with nothing near. */
export type Found =
  | { readonly answer: Answer }
  | { readonly unknown: string; readonly near: readonly string[] }
  /** A thread of several starts, which nothing here plans. */
  | { readonly several: string };

export const length = (value: Len): Value => ({ kind: 'length', value });
export const limits = ({ lo, hi }: { readonly lo: Len; readonly hi: Len }): Value => ({ kind: 'limits', lo, hi });
export const figure = (value: number, unit: string, places: number): Value => ({ kind: 'number', value, unit, places });
export const span = (lo: number, hi: number, unit: string, places: number): Value => ({ kind: 'span', lo, hi, unit, places });
export const named = (name: string): Value => ({ kind: 'name', name });
export const word = (id: string): Value => ({ kind: 'word', id });
export const row = (label: string, ...values: readonly Value[]): Row => ({ label, values });
export const rowAbout = (label: string, about: string, ...values: readonly Value[]): Row => ({ label, about, values });

/** Each once, in the order of first use. */
export function grounds(...all: readonly (Ground | undefined)[]): readonly Ground[] {
  const seen = new Map<string, Ground>();
  for (const g of all) if (g && !seen.has(g.source)) seen.set(g.source, { source: g.source, standing: g.standing });
  return [...seen.values()];
}
