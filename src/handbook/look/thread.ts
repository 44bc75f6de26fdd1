/** `look thread`: limits, depth, run-out and relief, tapping drills, over wires, strength. */
import { type Len, len, mm, roundHalfEven } from '../../base/units.ts';
import { reliefWidth, runOut, undercut } from '../din76-runout.ts';
import type { ThreadLimits } from '../iso965-metric.ts';
import { engagement, tappingDrills } from '../metric-tapping.ts';
import { practice } from '../practice.ts';
import { cite } from '../sources.ts';
import type { ThreadRecord } from '../thread-form.ts';
import { insideShear, outsideShear, stressAreaOf } from '../thread-strength.ts';
import { hasClass, nearestThreads, sideOf, thread } from '../threads.ts';
import {
  type Answer,
  type Ask,
  type Found,
  figure,
  type Ground,
  grounds,
  length,
  limits,
  type Part,
  type Row,
  row,
  rowAbout,
  word,
} from './answer.ts';
import { wirePart } from './wire.ts';

export function lookThread({ words, shop }: Ask): Found {
  const found = thread(words);
  if (!found) return { unknown: words, near: nearestThreads(words) };
  const { thread: t, cls, left } = found;
  if (cls !== undefined && !hasClass(t, cls)) return { unknown: words, near: [...t.outside, ...t.inside].map((c) => `${t.name} ${c}`) };
  const [outside, inside] = sidesOf(t, cls);
  return { answer: answer(t, outside, inside, left, shop.drills) };
}

/** The usual class of each side; of a class that one side alone has, that side alone. */
export function sidesOf(t: ThreadRecord, cls: string | undefined): readonly [ThreadLimits | undefined, ThreadLimits | undefined] {
  const only = cls === undefined ? undefined : sideOf(t, cls);
  const on = (side: ThreadLimits['side']) => {
    const usual = (side === 'outside' ? t.outside : t.inside)[0] ?? '';
    return only !== undefined && only !== side ? undefined : t.limits(side, cls ?? usual);
  };
  return [on('outside'), on('inside')];
}

function answer(
  t: ThreadRecord,
  outside: ThreadLimits | undefined,
  inside: ThreadLimits | undefined,
  left: boolean,
  rack: readonly Len[],
): Answer {
  const parts = [
    formPart(t),
    ...[outside, inside].flatMap((side) => (side ? [limitsPart(side)] : [])),
    makingPart(t, outside, inside),
    ...(inside ? [tappingPart(t, inside, rack)] : []),
    ...(outside ? [wirePart(outside, [])] : []),
    strengthPart(t),
  ];
  const offBasis = [outside, inside].some((s) => s?.standing === 'derived');
  return {
    subject: 'thread',
    name: left ? `${t.name} LH` : t.name,
    parts: parts.map((p) => p.part),
    notes: [...(offBasis ? ['by-formula'] : []), ...(left ? ['left-hand'] : [])],
    sources: grounds(...parts.flatMap((p) => p.grounds)),
  };
}

type Told = { readonly part: Part; readonly grounds: readonly Ground[] };

function formPart(t: ThreadRecord): Told {
  const { depth, rootRadius, flankAngle } = t.form;
  const at = (pitches: number): Len => len(roundHalfEven(pitches * t.pitch));
  const perInch: readonly Row[] = t.perInch === undefined ? [] : [row('per-inch', figure(t.perInch, '', 0))];
  const rows = [
    row('family', word(`family.${t.family}`)),
    row('nominal', length(t.nominal)),
    row('pitch', length(t.pitch)),
    ...perInch,
    row('flank-angle', figure(flankAngle, '°', flankAngle === Math.round(flankAngle) ? 0 : 1)),
    row('depth-outside', length(at(depth.outside))),
    row('depth-inside', length(at(depth.inside))),
    row('root-radius', length(at(rootRadius))),
  ];
  return { part: { title: 'form', rows }, grounds: [t] };
}

function limitsPart(side: ThreadLimits): Told {
  const rows = [
    row('major', ...(side.majorOpen ? [word('at-least'), length(side.major.lo)] : [limits(side.major)])),
    row('pitch-diameter', limits(side.pitchDiameter)),
    row('minor', limits(side.minor)),
  ];
  return { part: { title: side.side, about: side.cls, rows }, grounds: [side] };
}

/** Relief: under the least root (over the greatest), as wide as two pitches and half the tool. */
function makingPart(t: ThreadRecord, outside: ThreadLimits | undefined, inside: ThreadLimits | undefined): Told {
  const clear = mm(practice.value('relief.under-root'));
  const chamfer = mm(practice.value('thread.chamfer.clear'));
  const width = reliefWidth(t.pitch, len(2 * mm(practice.value('relief.tool-half'))));
  const [ends, groove] = [runOut(t.pitch, 'normal'), undercut(t.pitch, 'normal')];
  const rows: readonly Row[] = [
    row('relief-width', length(width)),
    ...(outside
      ? [row('relief-outside', length(len(outside.root - clear))), row('chamfer-outside', length(len(outside.root - chamfer)))]
      : []),
    ...(inside ? [row('relief-inside', length(len(inside.root + clear))), row('chamfer-inside', length(len(inside.root + chamfer)))] : []),
    row('run-out', length(ends?.thread ?? len(2 * t.pitch))),
    ...(ends ? [row('shoulder', length(ends.shoulder))] : []),
    ...(groove ? [row('undercut', length(len(t.nominal - groove.offset)), length(groove.least), length(groove.most))] : []),
  ];
  const custom: Ground = { source: cite('custom', 'reliefs, chamfers'), standing: 'common practice' };
  const printed: Ground = ends
    ? { source: cite('din-76'), standing: 'from memory' }
    : { source: cite('fed-h28-21b', 'run-out of two pitches'), standing: 'standard' };
  return { part: { title: 'making', rows }, grounds: [custom, printed] };
}

function tappingPart(t: ThreadRecord, inside: ThreadLimits, rack: readonly Len[]): Told {
  const share = (drill: Len) => t.form.bases.flatMap((basis) => [figure(engagement(inside, drill, basis), '%', 0), word(`basis.${basis}`)]);
  const fromRack = tappingDrills(inside, rack).map((d) => rowAbout('drill', size(d.drill), ...share(d.drill), word(`place.${d.place}`)));
  const usual = t.usual.map((u) => rowAbout('usual-drill', size(u.drill), ...share(u.drill)));
  return { part: { title: 'tapping', rows: [...fromRack, ...usual] }, grounds: t.usual };
}

function strengthPart(t: ThreadRecord): Told {
  const [outside, inside] = [t.limits('outside', t.outside[0] ?? ''), t.limits('inside', t.inside[0] ?? '')];
  const shear =
    outside && inside
      ? [
          row('strip-outside', figure(outsideShear(outside, inside, t.nominal), 'mm²', 1)),
          row('strip-inside', figure(insideShear(outside, inside, t.nominal), 'mm²', 1)),
        ]
      : [];
  const rows = [row('stress-area', figure(stressAreaOf(t), 'mm²', 2)), ...shear];
  const area: Ground =
    t.family === 'metric'
      ? { source: cite('iso-898'), standing: 'from memory' }
      : t.form.name === 'ISO'
        ? { source: cite('fed-h28-2b', 'stress area'), standing: 'standard' }
        : { source: cite('here', 'stress area from effective and minor diameter'), standing: 'derived' };
  const form: Ground = { source: cite('fed-h28-2b', 'form of the stripping areas'), standing: 'standard' };
  const about = [outside?.cls, inside?.cls].filter((c) => c !== undefined).join('/');
  return { part: { title: 'strength', about, rows }, grounds: [area, form] };
}

function size(drill: Len): string {
  return (drill / 10_000).toFixed(drill % 1000 === 0 ? 1 : drill % 100 === 0 ? 2 : 3);
}
