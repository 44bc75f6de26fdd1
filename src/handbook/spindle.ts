/**
 * What a valve's spindle asks of a hand: screw torque with friction, packing, the load of the seat; and the figures of stuffing boxes. Forces in
 * N, lengths mm, torques N mm, stresses MPa.
 */
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';
import type { Relation } from './valve-ball.ts';

export type Screw = {
  /** Pitch diameter. */
  readonly mean: number;
  /** Pitch times starts. */
  readonly lead: number;
  /** Degrees, included; 0 for a square thread. */
  readonly flankAngle: number;
  readonly friction: number;
  readonly collar?: { readonly mean: number; readonly friction: number };
};

/** Torque that drives the screw against the force. Throws RangeError where friction lets it never turn. */
export function raisingTorque(force: number, screw: Screw): number {
  return screwTorque(force, screw, 1);
}

/** Torque that the screw needs to give way; negative: it runs back by itself. */
export function loweringTorque(force: number, screw: Screw): number {
  return screwTorque(force, screw, -1);
}

/** Work got of work put in, one turn. */
export function screwEfficiency(force: number, screw: Screw): number {
  return (force * screw.lead) / (2 * Math.PI * raisingTorque(force, screw));
}

/** It stays where it is left: friction over the flank's slope exceeds the lead's. */
export function locksItself({ mean, lead, flankAngle, friction }: Screw): boolean {
  return friction * secant(flankAngle) > lead / (Math.PI * mean);
}

/** Drag of packing on a stem: pi d H sigma mu Y; Y about a half. */
export function packingFriction(stem: number, depth: number, stress: number, friction: number, share: number = 0.5): number {
  return Math.PI * stem * depth * stress * friction * share;
}

/** Load that a seat wants on a ring `width` wide at `stress`. */
export function seatLoad(mean: number, width: number, stress: number): number {
  return Math.PI * mean * width * stress;
}

/** Shear of a square spindle end: T / (0.208 s³). */
export function squareShear(torque: number, across: number): number {
  return torque / (0.208 * across ** 3);
}

function screwTorque(force: number, { mean, lead, flankAngle, friction, collar }: Screw, way: 1 | -1): number {
  const drag = friction * secant(flankAngle);
  const under = Math.PI * mean - way * drag * lead;
  if (under <= 0) throw new RangeError('friction locks this screw both ways');
  const thread = ((force * mean) / 2) * ((way * lead + Math.PI * mean * drag) / under);
  return thread + (collar ? (force * collar.friction * collar.mean) / 2 : 0);
}

function secant(flankAngle: number): number {
  return 1 / Math.cos((flankAngle / 2) * (Math.PI / 180));
}

/** Width of packing for a shaft, mm; nothing over 150 (90 for the first row's last). Tribology Handbook, for shafts of industrial size. */
export function packingWidth(shaft: number, kind: 'any' | 'expanded graphite'): number | undefined {
  const rows = kind === 'any' ? WIDTHS : GRAPHITE;
  return shaft > 0 ? rows.find(([to]) => shaft <= to)?.[1] : undefined;
}

/** For spindles under 6 mm, where no standard was found: max(1.2, 0.35 d), 3 at most. */
export function smallPackingWidth(stem: number): number {
  return Math.min(3, Math.max(1.2, 0.35 * stem));
}

/** Box bored for a stem and its packing: stem and two widths. */
export function stuffingBore(stem: number, width: number): number {
  return stem + 2 * width;
}

/** Its inverse. */
export function packingOf(box: number, stem: number): number {
  return (box - stem) / 2;
}

/** mm: shaft up to; width. */
const WIDTHS: readonly (readonly [to: number, width: number])[] = [
  [12, 3],
  [18, 5],
  [25, 6.5],
  [50, 8],
  [90, 10],
  [150, 12.5],
];
const GRAPHITE: readonly (readonly [to: number, width: number])[] = [
  [18, 3],
  [75, 5],
  [150, 7.5],
];

type Row = readonly [id: string, value: number, unit: string, what: string, source: SourceId, standing: Standing];
const ROWS: readonly Row[] = [
  ['compression.low', 25, 'percent', 'first compression of packing, least', 'dracomech', 'common practice'],
  ['compression.high', 35, 'percent', 'first compression of packing, most', 'dracomech', 'common practice'],
  ['finish.stem', 0.8, 'um Ra', 'roughness of a stem in packing', 'dracomech', 'common practice'],
  ['finish.box', 3.2, 'um Ra', 'roughness of a stuffing box', 'dracomech', 'common practice'],
  ['limit.PTFE', 250, 'degC', 'PTFE packing', 'tribology', 'common practice'],
  ['limit.graphite', 550, 'degC', 'graphite packing', 'tribology', 'common practice'],
  ['limit.aramid', 250, 'degC', 'aramid packing', 'tribology', 'common practice'],
  ['limit.ramie', 120, 'degC', 'ramie packing', 'tribology', 'common practice'],
  ['friction.screw', 0.15, 'ratio', 'lubricated steel screw, on the safe side', 'shigley', 'common practice'],
  ['box.depth.low', 3, 'ratio', 'depth of a box in widths of packing, reciprocating, least', 'tribology', 'common practice'],
  ['box.depth.high', 5, 'ratio', 'depth of a box in widths of packing, reciprocating, most', 'tribology', 'common practice'],
];
export const spindleFacts: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source, standing]) => ({ id, value, unit, what, source: cite(source), standing })),
);

export const spindleRelations: readonly Relation[] = [
  {
    id: 'screw',
    formula: 'T = F dm/2 (l + π f dm sec b) / (π dm − f l sec b) + F fc dc/2',
    unit: 'N mm',
    source: cite('shigley'),
    standing: 'common practice',
  },
  { id: 'packing', formula: 'F = π d H σ μ Y', unit: 'N', source: cite('pvs-2017'), standing: 'common practice' },
  { id: 'seat-load', formula: 'F = π dm w q', unit: 'N', source: cite('here'), standing: 'derived' },
];
