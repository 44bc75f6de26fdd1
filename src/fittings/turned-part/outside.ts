/** Sections along the outside, from the first end to the second: their sizes, threads, reliefs, cones, and the faces between them. */

import { add, type Len, len, minus, mm, toMm } from '../../base/units.ts';
import { nearestThreads, thread as threadCalled } from '../../handbook/threads.ts';
import type { End } from '../../model/ids.ts';
import type { Limits } from '../../model/part.ts';
import { ratio, size, stock, TENTH, tidy } from '../limits.ts';
import type { Section, ThreadAsk } from '../outline.ts';
import { outsideThread, threadOf } from '../threads.ts';
import { alikeOf, threadSpan } from './alike.ts';
import { type AskedSection, conedAt, isConed, type TurnedPartAsked } from './asked.ts';
import { chamfersOf } from './chamfer.ts';
import { type Faults, fault, type Path } from './fault.ts';
import type { Letters } from './letters.ts';
import { limitsOf } from './limits.ts';
import { arcsOf } from './radius.ts';
import { checkTaper, isTaper, ridgeAfter, type Taper, taperAngle, taperOf } from './taper.ts';

/** Nothing where a section could not be understood; its faults are told. */
export function sectionsOf(asked: TurnedPartAsked, letters: Letters, faults: Faults): readonly Section[] | undefined {
  const tapers = asked.outside.map((section, i) => (isTaper(section) ? taperOf(asked, i, faults) : undefined));
  const sizes = asked.outside.map((section, i) => (isTaper(section) ? tapers[i]?.far : sizeOf(asked, section, ['outside', i], faults)));
  if (asked.outside.length === 0) fault(faults, ['outside'], 'no-section', {});
  const known = sizes.flatMap((s) => s ?? []);
  if (known.length < sizes.length || known.length === 0) return undefined;
  const before = faults.length;
  for (let i = 1; i < known.length; i += 1) if (!ridgeAfter(asked, i - 1)) checkStep(asked, known, i, faults);
  const alike = alikeOf(asked, known, faults);
  if (faults.length > before) return undefined;
  const sections = asked.outside.map((_, i) => ({
    ...sectionOf(asked, known, i, letters, faults),
    ...alike[i],
    ...taperIn(asked, known, i, tapers[i], faults),
  }));
  return faults.length > before ? undefined : sections;
}

/** Two that meet in a ridge are cut from one blank. */
function taperIn(
  asked: TurnedPartAsked,
  sizes: readonly Limits[],
  i: number,
  taper: Taper | undefined,
  faults: Faults,
): Pick<Section, 'blank' | 'oneWith' | 'cone'> {
  const cone = asked.outside[i]?.cone;
  if (!taper || !cone || cone.at === 'both') return {};
  checkTaper(asked, sizes, i, taper.blank, faults);
  const before = ridgeAfter(asked, i - 1) ? asked.outside[i - 1]?.name : undefined;
  const { angle, mouth, blank } = taper;
  const role = cone.role ?? asked.outside[i]?.role ?? 'free';
  return { blank, cone: { at: cone.at, angle, mouth, role, whole: true }, ...(before === undefined ? {} : { oneWith: before }) };
}

function sizeOf(asked: TurnedPartAsked, section: AskedSection, path: Path, faults: Faults): Limits | undefined {
  const { name, diameter, thread } = section;
  const asBar = section['as-bar'] === true;
  const said = [diameter !== undefined, thread !== undefined, asBar].filter((is) => is).length;
  if (said !== 1) {
    fault(faults, path, 'one-size', { feature: name, none: said === 0 });
    return undefined;
  }
  if (diameter) return limitsOf(diameter, 'shaft', name, [...path, 'diameter'], faults);
  if (thread) return threadAsked(section, path, faults)?.major;
  if (!asked.bar) fault(faults, [...path, 'as-bar'], 'as-bar-without-bar', { feature: name });
  return asked.bar && stock(asked.bar.across);
}

function threadAsked({ name, thread }: AskedSection, path: Path, faults: Faults) {
  if (!thread) return undefined;
  const found = thread.thread === undefined ? undefined : threadOf(thread.thread, 'outside', thread.fit);
  if (!found) fault(faults, [...path, 'thread'], 'thread-unknown', unknownThread(name, thread.thread ?? thread.text, thread.fit ?? ''));
  return found;
}

/** Grounds of a thread that the handbook lacks: the names that it has for that diameter, or the nearest name. */
export function unknownThread(feature: string, name: string, cls: string) {
  const known = threadCalled(name) !== undefined;
  return { feature, thread: name, cls: known ? cls : '', near: nearestThreads(name).join(', ') };
}

/** The step between a section and the one before it has to be there at every limit. */
function checkStep(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): void {
  const [a, b] = [sizes[i - 1], sizes[i]];
  const [one, two] = [asked.outside[i - 1], asked.outside[i]];
  if (!a || !b || !one || !two) return;
  const [small, large] = a.target < b.target ? [a, b] : [b, a];
  if (small.hi < large.lo) return;
  const grounds = {
    feature: two.name,
    before: one.name,
    least: minus(large.lo, small.hi),
    same: a.target === b.target,
    cones: isConed(one, 'first') && isConed(two, 'second'),
    thread: one.thread !== undefined || two.thread !== undefined,
  };
  fault(faults, ['outside', i], 'no-step', grounds);
}

function sectionOf(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, letters: Letters, faults: Faults): Section {
  const section = asked.outside[i] as AskedSection;
  const limits = sizes[i] as Limits;
  const last = i === asked.outside.length - 1;
  const path: Path = ['outside', i];
  const ridge = ridgeAfter(asked, i);
  if (ridge && section.shoulder) fault(faults, [...path, 'shoulder'], 'ridge-shoulder', { feature: section.name });
  if (last && section.shoulder) fault(faults, [...path, 'shoulder'], 'shoulder-at-end', { feature: section.name });
  const shoulder = last || ridge ? undefined : { letter: letters.take(section.shoulder?.letter), role: section.shoulder?.role ?? 'free' };
  const thread = section.thread ? outsideThreadOf(asked, sizes, i, faults) : undefined;
  const cone = section.cone ? coneOf(asked, sizes, i, faults) : undefined;
  const bare = isTaper(section);
  const chamfers = bare ? [] : chamfersOf(asked, sizes, i, faults);
  const arcs = bare ? [] : arcsOf(asked, sizes, i, faults);
  checkKind(asked, sizes, i, faults);
  return {
    name: section.name,
    role: section.thread ? 'thread' : (section.role ?? 'free'),
    size: limits,
    length: section.length.nominal,
    ...(section['as-bar'] ? { asStock: true as const } : {}),
    ...(section['as-bar'] && asked.bar?.section === 'hexagon' ? { section: 'hexagon' as const } : {}),
    ...(section.groove ? { groove: true as const } : {}),
    ...(section.knurl ? { knurl: true as const } : {}),
    ...(shoulder ? { shoulder } : {}),
    ...(thread ? { thread } : {}),
    ...(cone ? { cone } : {}),
    ...(chamfers.length > 0 ? { chamfers } : {}),
    ...(arcs.length > 0 ? { arcs } : {}),
  };
}

/** What a section cannot be at once, and a groove that is none. */
function checkKind(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): void {
  const section = asked.outside[i] as AskedSection;
  const path: Path = ['outside', i];
  const kinds = [
    ...(section.thread ? ['thread'] : []),
    ...(section['as-bar'] ? ['as-bar'] : []),
    ...(section.groove ? ['groove'] : []),
    ...(section.knurl ? ['knurl'] : []),
    ...(section.cone ? ['cone'] : []),
  ];
  if (kinds.length > 1) fault(faults, path, 'two-kinds', { feature: section.name, one: kinds[0] ?? '', two: kinds[1] ?? '' });
  const narrow = section.thread ? 'thread' : section.groove ? 'groove' : undefined;
  if (section.chamfer && narrow) fault(faults, path, 'two-kinds', { feature: section.name, one: narrow, two: 'chamfer' });
  const arc = ARCS.find((key) => section[key] !== undefined);
  const stiff = narrow ?? (section['as-bar'] && asked.bar?.section === 'hexagon' ? 'as-bar' : undefined);
  if (arc && stiff) fault(faults, path, 'two-kinds', { feature: section.name, one: stiff, two: arc });
  if (kinds.length === 0 || section.knurl || section.cone) checkWaist(asked, sizes, i, faults);
  if (!section.groove) return;
  const me = sizes[i]?.target ?? len(0);
  const walls = [sizes[i - 1], sizes[i + 1]];
  if (walls.some((w) => w === undefined || w.target < me)) fault(faults, path, 'groove-without-walls', { feature: section.name });
}

/** No tool comes along to it from an end: it is cut as a groove is, or not at all. */
function checkWaist(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): void {
  const section = asked.outside[i] as AskedSection;
  const me = sizes[i]?.target ?? len(0);
  const higher = (k: number): boolean => (sizes[k]?.target ?? 0) > me;
  const [before, after] = [sizes.findLastIndex((_, k) => k < i && higher(k)), sizes.findIndex((_, k) => k > i && higher(k))];
  if (before < 0 || after < 0) return;
  const plain = !section.knurl && !section.cone && before === i - 1 && after === i + 1;
  const names = { before: asked.outside[before]?.name ?? '', after: asked.outside[after]?.name ?? '' };
  fault(faults, ['outside', i], 'waist', { feature: section.name, ...names, plain });
}

const ARCS = ['radius', 'full-round', 'fillet'] as const;

const neighbour = (i: number, side: End): number => (side === 'first' ? i - 1 : i + 1);

function outsideThreadOf(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): ThreadAsk | undefined {
  const section = asked.outside[i] as AskedSection;
  const found = threadAsked(section, ['outside', i], []);
  if (!found) return undefined;
  const path: Path = ['outside', i];
  const { first, last } = threadSpan(asked, i);
  const besideOf = (side: End): number => (side === 'first' ? first - 1 : last + 1);
  const rises = (side: End): boolean => (sizes[besideOf(side)]?.target ?? 0) > found.major.target;
  const stated = asked.outside.slice(first, last + 1).find((one) => one.thread && one.starts)?.starts;
  const start: End = stated ?? (rises('first') ? 'second' : 'first');
  const far: End = start === 'first' ? 'second' : 'first';
  const other = asked.outside[besideOf(start)]?.name ?? '';
  if (rises(start)) {
    const grounds = { feature: section.name, other, start, closed: rises(far) };
    fault(faults, [...path, ...(section.starts ? ['starts'] : [])], 'thread-start', grounds);
    return undefined;
  }
  const nose = sizes[besideOf(start)];
  const full = outsideThread(found, start, nose?.hi);
  const nut = threadOf(found.name, 'inside')?.minor.lo ?? found.root;
  if (nose && nose.hi >= nut) fault(faults, path, 'nose-wide', { feature: section.name, other, thread: found.name, most: nut });
  if (i === first) checkDivided(asked, sizes, { first, last }, found.root, faults);
  const ends = asked.outside[far === 'first' ? first : last] as AskedSection;
  const out = besideOf(far) < 0 || besideOf(far) >= asked.outside.length;
  const opened = out && asked[far].role !== 'free' ? { ...full, farChamfer: full.chamfer } : full;
  return withRelief(section, opened, { shouldered: rises(far), has: ends.length.nominal }, path, faults);
}

/** A groove that divides a thread goes below its root, or the tool would cut into its floor. */
function checkDivided(
  asked: TurnedPartAsked,
  sizes: readonly Limits[],
  { first, last }: ReturnType<typeof threadSpan>,
  root: Len,
  faults: Faults,
): void {
  for (let k = first + 1; k < last; k += 2) {
    const [groove, size] = [asked.outside[k], sizes[k]];
    if (groove && size && size.hi > root)
      fault(faults, ['outside', k, 'diameter'], 'groove-in-thread', {
        feature: groove.name,
        thread: asked.outside[first]?.name ?? '',
        most: root,
      });
  }
}

/** `has`: length of the piece in which it ends. */
type Far = { readonly shouldered: boolean; readonly has: Len };
function withRelief(section: AskedSection, full: ThreadAsk, { shouldered, has }: Far, path: Path, faults: Faults): ThreadAsk {
  const { relief, ...plain } = full;
  if (!shouldered) {
    if (section.relief) fault(faults, [...path, 'relief'], 'relief-nowhere', { feature: section.name });
    return plain;
  }
  if (section.relief === false) fault(faults, [...path, 'relief'], 'relief-needed', { feature: section.name });
  const wants = add(relief?.width.hi ?? len(0), full.size.pitch);
  if (has < wants)
    fault(faults, [...path, 'length'], 'relief-wide', {
      feature: section.name,
      has,
      wants,
      width: relief?.width.target ?? 0,
    });
  return full;
}

/** Along the axis, from a small diameter to a large one at an included angle. */
export function coneLength(small: Len, large: Len, angle: number): Len {
  return mm(toMm(minus(large, small)) / (2 * Math.tan((angle * Math.PI) / (2 * ratio('turn.half')))));
}

/** As long as its limits let it come out, and as it is drawn: where only the limits are in the way, that is said. */
type ConeLengths = { readonly long: Len; readonly drawn: Len };
function checkLength(section: AskedSection, { long, drawn }: ConeLengths, path: Path, faults: Faults): void {
  const room = minus(section.length.nominal, size('length.least-surface'));
  if (long <= room) return;
  fault(faults, path, 'cone-long', {
    ...{ feature: section.name, has: section.length.nominal, wants: tidy(long, TENTH, 'up') },
    outside: section.cone?.at !== 'both',
    limits: drawn <= room,
  });
}

function coneOf(asked: TurnedPartAsked, sizes: readonly Limits[], i: number, faults: Faults): Section['cone'] {
  const section = asked.outside[i] as AskedSection;
  const cone = section.cone;
  const limits = sizes[i];
  if (!cone || !limits) return undefined;
  const path: Path = ['outside', i, 'cone'];
  const mouth = limitsOf(cone.tip, 'shaft', section.name, [...path, 'tip'], faults);
  if (!mouth) return undefined;
  const ends = conedAt(section);
  for (const end of ends) checkMouth(asked, sizes, i, { end, mouth }, faults);
  if (mouth.hi >= limits.lo) fault(faults, [...path, 'tip'], 'cone-tip', { feature: section.name, most: limits.lo });
  if ((cone.angle === undefined) === (cone.length === undefined))
    fault(faults, path, 'cone-one-of', { feature: section.name, none: cone.angle === undefined });
  const angle = cone.angle ?? taperAngle(mouth.target, limits.target, cone.length ?? section.length.nominal);
  const times = (long: Len): Len => len(long * ends.length);
  if (!isTaper(section) && mouth.hi < limits.lo)
    checkLength(
      section,
      { long: times(coneLength(mouth.lo, limits.hi, angle)), drawn: times(coneLength(mouth.target, limits.target, angle)) },
      path,
      faults,
    );
  const role = cone.role ?? section.role ?? 'free';
  return cone.at === 'both' ? { at: 'first', twin: true, angle, mouth, role } : { at: cone.at, angle, mouth, role };
}

/** What stands beside the small end of a cone is smaller than it. */
function checkMouth(
  asked: TurnedPartAsked,
  sizes: readonly Limits[],
  i: number,
  { end, mouth }: { readonly end: End; readonly mouth: Limits },
  faults: Faults,
): void {
  const [beside, other] = [sizes[neighbour(i, end)], asked.outside[neighbour(i, end)]?.name ?? ''];
  const path: Path = ['outside', i, 'cone'];
  const feature = asked.outside[i]?.name ?? '';
  if (beside && beside.target > (sizes[i]?.target ?? 0)) fault(faults, [...path, 'at'], 'cone-in-corner', { feature, other });
  else if (beside && beside.hi >= mouth.lo) fault(faults, [...path, 'tip'], 'cone-under-neighbour', { feature, other, least: beside.hi });
}
