/**
 * How deep a screw-cutting tool goes, by the radius of its nose, and how far the top slide moves where it feeds along a flank. The flanks
 * end where they should whatever the nose: a sharper tool only goes deeper. H = P / (2 tan a), a half the flank angle.
 */
import { type Len, len, toMm } from '../base/units.ts';
import { type FactTable, factTable } from './fact.ts';
import { cite } from './sources.ts';

export type ToolAsk = {
  readonly pitch: Len;
  /** degrees, included */
  readonly flankAngle: number;
  readonly side: 'outside' | 'inside';
};

/** A side, from the crest of the basic form to the root that a nose of this radius leaves; 0 for a sharp point. */
export function toolDepth({ pitch, flankAngle, side }: ToolAsk, nose: Len): Len {
  const half = radians(flankAngle / 2);
  const sharp = pitch / (2 * Math.tan(half));
  const short = sharp * toolTable.value(`crest.${flankAngle}.${side}`);
  return len(Math.round(sharp - short - nose * (1 / Math.sin(half) - 1)));
}

/** Degrees that the top slide is set over from square to the axis: half a degree less than half the flank angle. */
export function setOver(flankAngle: number): number {
  return flankAngle / 2 - toolTable.value('set-over.less');
}

/** Along the set-over top slide, for a depth square to the axis. */
export function slideTravel(depth: Len, angle: number): Len {
  return len(Math.round(depth / Math.cos(radians(angle))));
}

/** Fed straight in up to here, along the flank from here on. */
export function infeedOf(pitch: Len): 'straight' | 'flank' {
  return toMm(pitch) >= toolTable.value('flank.from') ? 'flank' : 'straight';
}

/** The carriage's travel in the time that it takes to stop. */
export function runOn(pitch: Len, rpm: number, seconds: number): Len {
  return len(Math.ceil((pitch * rpm * seconds) / SECONDS));
}
const SECONDS = 60;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** How much of the sharp triangle's height is cut off at the crest that the tool starts from. */
const CREST: readonly (readonly [flankAngle: number, side: ToolAsk['side'], share: number, what: string, source: string])[] = [
  [60, 'outside', 1 / 8, 'ISO crest of an outside thread: H/8', cite('iso-68-1')],
  [60, 'inside', 1 / 4, 'ISO crest of an inside thread: H/4', cite('iso-68-1')],
  [55, 'outside', 1 / 6, 'Whitworth crest: H/6', cite('bs-84')],
  [55, 'inside', 1 / 6, 'Whitworth crest: H/6', cite('bs-84')],
  [47.5, 'outside', 0.236, 'BA crest: (H - 0.6 P) / 2, of H', cite('bs-93')],
  [47.5, 'inside', 0.236, 'BA crest: (H - 0.6 P) / 2, of H', cite('bs-93')],
];

export const toolTable: FactTable = factTable([
  ...CREST.map(([angle, side, value, what, source]) => ({
    id: `crest.${angle}.${side}`,
    value,
    unit: 'ratio',
    what,
    source,
    standing: 'standard' as const,
  })),
  {
    id: 'set-over.less',
    value: 0.5,
    unit: 'deg',
    what: 'less than half the flank angle, so that the trailing flank is shaved as well',
    source: cite('navedtra', 'fig. 6-91: 29.5 for 60 degrees'),
    standing: 'common practice',
  },
  {
    id: 'flank.from',
    value: 1.25,
    unit: 'mm',
    what: 'pitch from which a light lathe feeds along the flank',
    source: cite('zcc', 'straight in below a pitch of 2; less here for a light lathe'),
    standing: 'derived',
  },
  {
    id: 'stop.closed',
    value: 1,
    unit: 's',
    what: 'from switching off to the spindle at rest, half-nuts closed',
    source: cite('custom'),
    standing: 'common practice',
  },
  {
    id: 'inside.first',
    value: 0.75,
    unit: 'ratio',
    what: "first pass inside, of the outside's: the bar is springy",
    source: cite('mitsubishi', 'pitch 1.0: 0.15 inside, 0.20 outside'),
    standing: 'derived',
  },
]);
