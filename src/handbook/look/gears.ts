/** `look gears`: the trains that cut a pitch or a thread, what their errors come to, half-nuts, and the passes with the single point. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len, mm, showMm, toMm } from '../../base/units.ts';
import { reachOf, USUAL_REACH } from '../gear-reach.ts';
import { type HalfNuts, halfNutsFor } from '../half-nuts.ts';
import { leadError, leadTable, longestEngagement } from '../lead-error.ts';
import type { CuttingGroup } from '../materials.ts';
import { numbersTable } from '../numbers.ts';
import { cite } from '../sources.ts';
import type { ThreadRecord } from '../thread-form.ts';
import { passesFor, threading } from '../thread-passes.ts';
import { infeedOf, runOn, setOver, slideTravel, toolDepth, toolTable } from '../thread-tool.ts';
import { nearestThreads, thread } from '../threads.ts';
import { bestTrains, type Lead, leadOf, perInch, ppmOf, roundLead, type Scored } from '../trains.ts';
import {
  type Ask,
  type Found,
  figure,
  type Ground,
  grounds,
  length,
  named,
  type Part,
  type Row,
  row,
  rowAbout,
  type ThreadingLathe,
  word,
} from './answer.ts';
import { wirePart } from './wire.ts';

/** '1.0 mm', '40 tpi', 'M10x1', '1/4-40 ME', 'M10x1 LH'. */
export function lookGears({ words, shop }: Ask): Found {
  if (STARTS.test(words)) return { several: words };
  const asked = readAsked(words);
  if (!asked) return { unknown: words, near: ['1.0 mm', '40 tpi', ...nearestThreads(words).slice(0, 1)] };
  const lathe = shop.lathe ?? USUAL_LATHE;
  const leadscrew = lathe.leadscrewPerInch === undefined ? leadOf(lathe.leadscrew) : perInch(lathe.leadscrewPerInch);
  const reach = lathe.banjo ? reachOf(lathe.banjo) : USUAL_REACH;
  const trains = bestTrains({ gears: lathe.gears, reach, leadscrew, pitch: asked.pitch }, MOST);
  const [best] = trains;
  const nuts = best && nutsOf(best, asked, leadscrew, lathe);
  const parts = [
    { title: 'pitch', rows: [row('pitch', length(roundLead(asked.pitch))), row('leadscrew', length(lathe.leadscrew))] },
    ...trains.map((one) => trainPart(one, asked, leadscrew)),
    ...(nuts ? [nutsPart(nuts, asked)] : []),
    ...(asked.thread ? passParts(asked.thread, { slowest: lathe.slowest, nuts: nuts?.by ?? 'closed' }) : []),
  ];
  return {
    answer: { subject: 'gears', name: asked.name, parts, notes: notesOf(asked, best, shop.lathe === undefined), sources: groundsOf(asked) },
  };
}
const MOST = 3;
/** 'M10x2 2 start', 'Ph2P1'. */
const STARTS = /\bstarts?\b|\bph ?\d/i;

/** Where no workshop is named. */
const USUAL_LATHE: ThreadingLathe = { leadscrew: mm(2), gears: [20, 25, 30, 35, 40, 40, 45, 50, 55, 60, 65, 80], slowest: 100 };

type Asked = { readonly name: string; readonly pitch: Lead; readonly thread?: ThreadRecord; readonly left: boolean };

function readAsked(words: string): Asked | undefined {
  const text = words.trim();
  const inch = /^(\d+(?:\.5)?) ?(?:tpi|threads an inch|\/ ?in)$/i.exec(text);
  if (inch && Number(inch[1]) > 0) return { name: `${inch[1]} tpi`, pitch: { units: INCH * 2, per: Number(inch[1]) * 2 }, left: false };
  const read = readQuantity(text, 'length');
  if (typeof read === 'number' && read > 0) return { name: `${showMm(len(read))} mm`, pitch: leadOf(len(read)), left: false };
  const found = thread(text);
  if (!found) return undefined;
  const { thread: t, left } = found;
  const pitch = t.perInch === undefined ? leadOf(t.pitch) : perInch(t.perInch);
  return { name: left ? `${t.name} LH` : t.name, pitch, thread: t, left };
}
const INCH = 254_000;

// ---- trains ------------------------------------------------------------------------------------------------------------
function trainPart(one: Scored, asked: Asked, leadscrew: Lead): Part {
  const { drivers, driven, idler } = one.train;
  const [a = 0, c] = drivers;
  const [b = 0, d] = driven;
  const wheels =
    c === undefined
      ? [row('first-driver', named(String(a))), row('idler', named(String(idler ?? 0))), row('on-leadscrew', named(String(b)))]
      : [
          row('first-driver', named(String(a))),
          row('stud-driven', named(String(b))),
          row('stud-driver', named(String(c))),
          row('on-leadscrew', named(String(d ?? 0))),
        ];
  const cuts = (leadscrew.units / leadscrew.per / 10_000) * ((a * (c ?? 1)) / (b * (d ?? 1)));
  const about = drivers.map((driver, i) => `${driver}/${driven[i] ?? 0}`).join(' × ');
  return {
    title: 'train',
    about,
    rows: [...wheels, row('cuts', figure(cuts, 'mm', 5)), row('error', figure(ppmOf(one), 'ppm', 0)), ...errorRows(one, asked)],
  };
}

/** Over the longest normal engagement of the thread, against its usual class; of a bare pitch, over an inch or so. */
function errorRows(one: Scored, { thread: t }: Asked): readonly Row[] {
  if (one.off === 0) return [];
  const error = one.off / one.by;
  const limits = t?.limits('outside', t.outside[0] ?? '');
  if (!t || !limits) return [rowAbout('lead-off', String(LONG), length(len(Math.round(Math.abs(error) * mm(LONG)))))];
  const engaged = longestEngagement(t.nominal, t.pitch);
  const tolerance = len(limits.pitchDiameter.hi - limits.pitchDiameter.lo);
  const lead = leadError({ error, engaged, flankAngle: t.form.flankAngle, tolerance });
  return [
    rowAbout('lead-off', showMm(engaged, 1), length(lead.off)),
    row('acts', length(lead.acts)),
    rowAbout('tolerance-share', limits.cls, figure(lead.share * 100, '%', 0), word(lead.bearable ? 'bears' : 'does-not-bear')),
  ];
}

/** mm of thread by which an error is shown: about an inch. */
const LONG = 25;

function nutsOf(best: Scored, { pitch }: Asked, leadscrew: Lead, { threadingDial, halfNuts }: ThreadingLathe): HalfNuts {
  return halfNutsFor({
    leadscrew,
    pitch,
    exact: best.off === 0,
    ...(threadingDial ? { dial: threadingDial } : {}),
    ...(halfNuts === undefined ? {} : { halfNuts }),
  });
}

function nutsPart(nuts: HalfNuts, { left }: Asked): Part {
  const dial =
    nuts.by === 'dial'
      ? [row('dial-wheel', named(String(nuts.wheel))), row('dial-marks', figure(nuts.lines, '', 0), figure(nuts.every, '', 0))]
      : [];
  return { title: 'coming-back', rows: [row('half-nuts', word(`nuts.${nuts.by}`)), ...dial, ...(left ? [row('hand', word('left'))] : [])] };
}

// ---- passes ------------------------------------------------------------------------------------------------------------
const GROUPS: readonly CuttingGroup[] = ['brass', 'bronze', '303'];

type Stop = { readonly slowest: number | undefined; readonly nuts: HalfNuts['by'] };

function passParts(t: ThreadRecord, stop: Stop): readonly Part[] {
  const outside = t.limits('outside', t.outside[0] ?? '');
  return [passPart(t, 'outside', stop), passPart(t, 'inside', stop), ...(outside ? [wirePart(outside, []).part] : [])];
}

function passPart(t: ThreadRecord, side: 'outside' | 'inside', { slowest, nuts }: Stop): Part {
  const { flankAngle } = t.form;
  const fine = mm(numbersTable.value('tidy.fine'));
  const depth = tenths(len(Math.round(t.form.depth[side] * t.pitch)), fine);
  const angle = setOver(flankAngle);
  const seconds = nuts === 'closed' ? toolTable.value('stop.closed') : numbersTable.value('thread.stop');
  const passes = (group: CuttingGroup): readonly Len[] => passesFor(group, side, depth, fine);
  return {
    title: `passes-${side}`,
    rows: [
      row('depth-rounded', length(depth)),
      row('depth-sharp', length(tenths(toolDepth({ pitch: t.pitch, flankAngle, side }, len(0)), fine))),
      ...GROUPS.map((group) => rowAbout(`passes-${group}`, String(passes(group).length), named(passes(group).map(shown).join(' ')))),
      ...(infeedOf(t.pitch) === 'flank'
        ? [row('set-over', figure(angle, '°', 2)), row('slide-travel', length(tenths(slideTravel(depth, angle), fine)))]
        : []),
      ...(slowest === undefined
        ? []
        : [rowAbout(nuts === 'closed' ? 'runs-on-closed' : 'runs-on', String(slowest), length(runOn(t.pitch, slowest, seconds)))]),
    ],
  };
}

const tenths = (value: Len, step: Len): Len => len(Math.round(value / step) * step);
const shown = (pass: Len): string => String(toMm(pass));

function notesOf({ thread: t, left }: Asked, best: Scored | undefined, usual: boolean): readonly string[] {
  return [
    ...(usual ? ['gears-usual'] : []),
    ...(best && best.off !== 0 ? ['gears-short'] : []),
    ...(best ? ['gears-idler'] : ['gears-none']),
    ...(t ? ['gears-gauge'] : ['gears-name']),
    ...(left ? ['gears-left'] : []),
  ];
}

function groundsOf({ thread: t }: Asked): readonly Ground[] {
  return grounds(
    numbersTable.row('wheels.clear'),
    leadTable.row('flank'),
    ...(t
      ? [leadTable.row('share.most'), leadTable.row('engaged.factor'), toolTable.row('set-over.less'), threading.row('first.steel')]
      : []),
    { source: t ? cite('sandvik') : cite('here'), standing: t ? 'common practice' : 'derived' },
  );
}
