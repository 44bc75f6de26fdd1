/** `look drill`: its sizes, its neighbours, its point, its lengths, its feed, what it taps; is it on the rack. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len, mm, showMm, toMm } from '../../base/units.ts';
import { drillFeed, probableOversize } from '../drilling.ts';
import { type Drill, drills, drillsNear, findDrill, jobberLength, pointLength } from '../drills.ts';
import { metricNames } from '../iso965-metric.ts';
import { usualTappingDrill } from '../metric-tapping.ts';
import { cite } from '../sources.ts';
import { inchThreads } from '../threads.ts';
import {
  type Ask,
  type Found,
  figure,
  type Ground,
  grounds,
  length,
  named,
  type Part,
  row,
  rowAbout,
  type Shop,
  span,
  word,
} from './answer.ts';

export function lookDrill({ words, shop }: Ask): Found {
  const drill = findDrill(words);
  const size = drill?.diameter ?? sizeOf(words);
  if (size === undefined) return { unknown: words, near: ['3.8', '#29', 'F', '7/64'] };
  const near = drillsNear(size, REACH).filter((d) => d !== drill);
  if (!drill && !shop.drills.includes(size)) return { unknown: words, near: near.slice(0, MOST).map((d) => d.name) };
  const parts = [sizePart(size), nearPart(near.slice(0, MOST)), usePart(size), ...(shop.name === undefined ? [] : [rackPart(size, shop)])];
  return {
    answer: {
      subject: 'drill',
      name: drill?.name ?? showMm(size),
      parts,
      notes: [],
      sources: grounds(drill, ...groundsOf(size)),
    },
  };
}
const REACH = mm(0.3);
const MOST = 4;

function sizeOf(words: string): Len | undefined {
  const size = readQuantity(words, 'length');
  return typeof size === 'number' && size > 0 && size <= (drills.at(-1)?.diameter ?? 0) ? len(size) : undefined;
}

function sizePart(size: Len): Part {
  const jobber = jobberLength(size);
  return {
    title: 'size',
    rows: [
      row('diameter', length(size)),
      row('inches', figure(toMm(size) / 25.4, 'in', 4)),
      row('point-118', length(pointLength(size))),
      row('point-135', length(pointLength(size, 135))),
      ...(jobber ? [row('flute', length(jobber.flute)), row('whole', length(jobber.whole))] : []),
    ],
  };
}

function nearPart(near: readonly Drill[]): Part {
  return { title: 'near', rows: near.map((d) => rowAbout('near-drill', d.name, length(d.diameter))) };
}

function usePart(size: Len): Part {
  const feed = drillFeed(size);
  const over = probableOversize(size);
  const taps = tapped(size);
  return {
    title: 'use',
    rows: [
      ...(feed ? [row('feed', span(feed.lo, feed.hi, 'mm', 3)), row('feed-hand', figure(feed.hand, 'mm', 3))] : []),
      ...(over === undefined ? [] : [row('oversize', length(over))]),
      ...(taps.length > 0 ? [row('taps', ...taps.map((t) => named(t.name)))] : []),
    ],
  };
}

type Tapped = { readonly name: string } & Ground;
/** Threads that this drill is printed for. */
function tapped(size: Len): readonly Tapped[] {
  const metric = metricNames.filter((name) => usualTappingDrill(name) === size);
  const recalled: Ground = { source: cite('iso-2306'), standing: 'from memory' };
  const inch = inchThreads.flatMap((t) => t.usual.filter((u) => u.drill === size).map((u) => ({ ...u, name: t.name })));
  return [...metric.map((name) => ({ name, ...recalled })), ...inch];
}

function rackPart(size: Len, shop: Shop): Part {
  const has = shop.drills.includes(size);
  const [under, over] = [
    shop.drills.filter((d) => d < size).sort((a, b) => b - a)[0],
    shop.drills.filter((d) => d > size).sort((a, b) => a - b)[0],
  ];
  return {
    title: 'rack',
    about: shop.name ?? '',
    rows: [
      row('have', word(has ? 'yes' : 'no')),
      ...(under === undefined ? [] : [row('rack-under', length(under))]),
      ...(over === undefined ? [] : [row('rack-over', length(over))]),
    ],
  };
}

function groundsOf(size: Len): readonly (Ground | undefined)[] {
  return [
    jobberLength(size),
    drillFeed(size),
    probableOversize(size) === undefined ? undefined : { source: cite('fed-h28-2b', 'oversize'), standing: 'standard' },
    ...tapped(size),
  ];
}
