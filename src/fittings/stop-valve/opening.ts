/** How far a stop valve is open at each turn of its wheel: the way round the cone, until the bore, the branches or the ring round the plug pass less. */
import { toMm } from '../../base/units.ts';
import { flowFacts, napier } from '../../handbook/flow.ts';
import { STANDARD_ATMOSPHERE } from '../../handbook/if97-saturation.ts';
import { boreArea } from '../../handbook/valve-ball.ts';
import { plugArea, plugFullLift, plugLift } from '../../handbook/valve-cone.ts';
import type { Curve, Say } from '../../model/part.ts';
import { DERIVED } from '../book.ts';
import type { StopValveAsked } from './asked.ts';
import type { StopValveSizes } from './shared.ts';

/** What of the sizes decides it. */
export type Opening = Pick<StopValveSizes, 'bore' | 'cone' | 'plug' | 'chamber' | 'outlet' | 'travel'>;

/** mm2: the ways through that a turn of the wheel does not change. */
const fixedWays = ({ bore, plug, chamber, outlet }: Opening): readonly { readonly of: string; readonly area: number }[] => [
  { of: 'seat', area: boreArea(toMm(bore)) },
  { of: 'branches', area: boreArea(toMm(outlet)) },
  { of: 'ring', area: boreArea(toMm(chamber)) - boreArea(toMm(plug)) },
];

/** The narrowest of them. */
function governing(sizes: Opening): { readonly of: string; readonly area: number } {
  const [first, ...more] = fixedWays(sizes);
  if (!first) throw new Error('a valve without a way through');
  return more.reduce((least, way) => (way.area < least.area ? way : least), first);
}

/** mm2 round the cone, lifted so many mm; what the seat passes from where it has left the seat. */
function coneWay({ bore, cone }: Opening, lift: number): number {
  const d = toMm(bore);
  return lift >= plugFullLift(d, cone) ? boreArea(d) : (plugArea(d, cone, lift) ?? boreArea(d));
}

/** mm2: the narrowest way through, lifted so many mm. */
export const wayThrough = (sizes: Opening, lift: number): number => Math.min(coneWay(sizes, lift), governing(sizes).area);

/** mm: lift from which another way is narrower than the one round the cone. */
export function enoughLift(sizes: Opening): number {
  const d = toMm(sizes.bore);
  const { area } = governing(sizes);
  return area >= boreArea(d) ? plugFullLift(d, sizes.cone) : (plugLift(d, sizes.cone, area) ?? plugFullLift(d, sizes.cone));
}

/** kg/h let out to the air through so many mm2; nothing where it is water that is stopped. */
export function steamThrough(asked: Pick<StopValveAsked, 'duty'>, area: number): number | undefined {
  if (asked.duty.serves === 'feed') return undefined;
  const steam = napier(asked.duty.pressure + STANDARD_ATMOSPHERE, area, STANDARD_ATMOSPHERE);
  return steam === undefined ? undefined : flowFacts.value('cd.sharp') * steam;
}

/** Turns of the wheel along, per cent of the seat's bore up. */
export function openingCurve(asked: StopValveAsked, sizes: StopValveSizes): Curve {
  const pitch = toMm(sizes.spindle.outside.pitch);
  const stop = toMm(sizes.travel) / pitch;
  const whole = boreArea(toMm(sizes.bore));
  const share = (area: number): number => (100 * area) / whole;
  const at = (turns: number) => ({ x: turns, y: share(wayThrough(sizes, turns * pitch)) });
  const [governs, enough] = [governing(sizes), enoughLift(sizes) / pitch];
  const full = plugFullLift(toMm(sizes.bore), sizes.cone) / pitch;
  const steps = (to: number): readonly number[] => [...Array.from({ length: Math.ceil(to * 10) }, (_, i) => i / 10), to];
  return {
    of: 'opening',
    grounds: { cone: sizes.cone, governs: governs.of, share: share(governs.area), enough, stop, steam: asked.duty.serves !== 'feed' },
    curve: [...steps(Math.min(enough, stop)), stop].map(at),
    bare: steps(Math.min(full, stop)).map((turns) => ({ x: turns, y: share(coneWay(sizes, turns * pitch)) })),
    levels: fixedWays(sizes)
      .filter(({ of, area }) => of === 'seat' || area < whole)
      .map(({ of, area }) => ({ of, at: share(area) })),
    stop,
    marks: marksOf({ asked, sizes, pitch, enough, stop, at, of: governs.of }),
    source: DERIVED,
  };
}

type Marking = {
  readonly asked: StopValveAsked;
  readonly sizes: StopValveSizes;
  readonly pitch: number;
  readonly enough: number;
  readonly stop: number;
  readonly at: (turns: number) => { readonly x: number; readonly y: number };
  readonly of: string;
};

/** Half a turn, every whole turn that still opens, where it stops to, and the back stop. */
function marksOf({ asked, sizes, pitch, enough, stop, at, of }: Marking): Curve['marks'] {
  const opens = Math.min(enough, stop);
  const turns = [1 / 2, ...Array.from({ length: Math.ceil(opens) }, (_, i) => i + 1)].filter((n) => n < opens);
  const grounds = (n: number): Say['grounds'] => {
    const steam = steamThrough(asked, wayThrough(sizes, n * pitch));
    return { turns: n, lift: n * pitch, share: at(n).y, steam: steam ?? '' };
  };
  const mark = (id: string, n: number, more: Say['grounds'] = {}) => ({
    at: at(n),
    say: { id: `curve.opening.mark.${id}`, grounds: { ...grounds(n), ...more } },
  });
  const governed = enough < stop ? [mark('governs', enough, { of })] : [];
  return [...turns.map((n) => mark('turn', n)), ...governed, mark('stop', stop)];
}
