/** What is said of screw-cutting: wheels, half-nuts, slide, stop, wires. */
import type { Figures } from '../../model/plan.ts';
import type { SheetWords } from './said.ts';

/** Key of the page that shows the trains. */
export const WHEELS = 'wheels';

type Wheels = NonNullable<Figures['wheels']>;
type Screw = NonNullable<Figures['screw']>;

/** 'wheels 40 drives 80 by idler 45'. */
export function wheelsOf(wheels: Wheels, words: SheetWords): string {
  const pairs = wheels.drivers.map((driver, i) => words.say('wheels.pair', { driver, driven: wheels.driven[i] ?? 0 }));
  return words.say('wheels', { pairs: pairs.join(' · '), idler: wheels.idler ?? '', sheet: `{sheet:${WHEELS}}` });
}

/** How the half-nuts are used, and how the tool comes back; '' without wheels. */
export function nutsOf(figures: Figures | undefined, words: SheetWords): string {
  const { wheels, screw } = figures ?? {};
  if (!wheels) return '';
  return words.say(`half-nuts.${wheels.halfNuts}`, {
    back: screw?.back ?? 'power',
    wheel: wheels.dial?.wheel ?? 0,
    every: wheels.dial?.every ?? 0,
    lines: wheels.dial?.lines ?? 0,
  });
}

/** Lines beneath the row: the many passes do not fit a column. */
export function threadSaid(figures: Figures | undefined, words: SheetWords): readonly string[] {
  const { screw, wheels, passes: cuts = [] } = figures ?? {};
  if (!screw) return [];
  const slide = screw.topSlide;
  const list = slide ? slide.passes : cuts;
  return [
    ...(slide ? [words.say('screw.flank', { angle: slide.angle })] : []),
    ...(list.length > 1 ? [words.say('cuts.list', { passes: words.passes(list) })] : []),
    words.say('screw.spring', { spring: screw.spring, tip: screw.tip, other: words.short(screw.other) }),
    ...(screw.toward === 'tailstock' ? [words.say('screw.left', { by: leftBy(wheels), entry: screw.entry ?? 'groove' })] : []),
    ...stopSaid(screw, words),
    ...(screw.wires
      ? [
          words.say('screw.wires', {
            wire: words.named(screw.wires.wire),
            lo: words.atLeast(screw.wires.lo),
            hi: words.atMost(screw.wires.hi),
          }),
        ]
      : []),
  ];
}

const leftBy = (wheels: Wheels | undefined): string | number => wheels?.leftBy ?? 'none';

/** Only where the lathe's slowest leaves too little room to stop in. */
function stopSaid({ stop }: Screw, words: SheetWords): readonly string[] {
  if (!stop || stop.runsOn <= stop.room) return [];
  return [words.say('screw.by-hand', { runsOn: words.short(stop.runsOn), room: stop.room > 0 ? words.short(stop.room) : '' })];
}

export function errorFacts({ error, over }: Wheels, words: SheetWords): Readonly<Record<string, string | number>> {
  return {
    ppm: Math.round(Math.abs(error) * 1_000_000),
    way: error > 0 ? 'long' : 'short',
    engaged: over ? words.short(over.engaged) : '',
    acts: over ? words.short(over.acts) : '',
    tolerance: over ? words.short(over.tolerance) : '',
  };
}
