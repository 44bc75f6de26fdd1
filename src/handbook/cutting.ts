/**
 * How fast, how far a turn, how deep: cutting data by material, operation and tool. What no table has is made from its turning speed by
 * a published or customary factor and says so; an unknown material or a tool that does not do this work gives nothing.
 */
import { type Len, mm } from '../base/units.ts';
import { RANGES, SPEEDS, type SpeedRow } from './cutting-speeds.ts';
import type { Standing } from './fact.ts';
import { type CuttingGroup, findMaterial } from './materials.ts';
import { cite, type SourceId } from './sources.ts';

export type CuttingOperation =
  | 'turn-rough'
  | 'turn-finish'
  | 'face'
  | 'bore'
  | 'drill'
  | 'centre'
  | 'ream'
  | 'd-bit'
  | 'counterbore'
  | 'screw-cut'
  | 'tap'
  | 'die'
  | 'part-off'
  | 'groove'
  | 'chamfer'
  | 'cone'
  | 'form'
  | 'steps'
  | 'face-down';
export type CuttingTool = 'HSS' | 'carbide' | 'silver steel';
export type CuttingData = {
  /** m/min: from, usual, to */
  readonly vcLo: number;
  readonly vcNom: number;
  readonly vcHi: number;
  /** mm a turn; absent where the diameter or the pitch gives it (drilling.ts, the thread) or where the hand feels it. */
  readonly feed?: number;
  /** Deepest cut, a side. */
  readonly ap?: Len;
  readonly source: string;
  /** What the ranges rest on. */
  readonly ranges: readonly string[];
  readonly standing: Standing;
};

/** `material` by any of its names. A D-bit is of silver steel whatever is asked; drills, reamers, taps and dies are HSS. */
export function cuttingData(material: string, operation: CuttingOperation, tool: CuttingTool): CuttingData | undefined {
  const group = findMaterial(material)?.cutting;
  return group === undefined ? undefined : groupData(group, operation, tool);
}

/** Turns a minute for a speed in m/min at a diameter. */
export function turnsAMinute(vc: number, diameter: Len): number {
  return (vc * 1e7) / (Math.PI * diameter);
}

/** Its inverse. */
export function surfaceSpeed(turns: number, diameter: Len): number {
  return (turns * Math.PI * diameter) / 1e7;
}

/** An operation without rows of its own is like another, its speed by a factor. */
type Like = {
  readonly operation: CuttingOperation;
  readonly factor: number;
  readonly source: SourceId;
  readonly standing: Standing;
  readonly feed?: number;
  /** As deep as that one is cut. */
  readonly deepAs?: CuttingOperation;
};
const LIKE: Readonly<Partial<Record<CuttingOperation, Like>>> = {
  centre: { operation: 'drill', factor: 1, source: 'here', standing: 'derived' },
  'd-bit': { operation: 'ream', factor: 0.5, source: 'custom', standing: 'common practice', feed: 0.05 },
  counterbore: { operation: 'drill', factor: 0.5, source: 'custom', standing: 'common practice', feed: 0.05 },
  die: { operation: 'tap', factor: 1, source: 'custom', standing: 'common practice' },
  groove: { operation: 'part-off', factor: 1, source: 'custom', standing: 'common practice' },
  chamfer: { operation: 'turn-finish', factor: 0.5, source: 'custom', standing: 'common practice' },
  cone: { operation: 'turn-finish', factor: 1, source: 'custom', standing: 'common practice' },
  form: { operation: 'part-off', factor: 0.5, source: 'custom', standing: 'common practice' },
  steps: { operation: 'turn-finish', factor: 1, source: 'custom', standing: 'common practice' },
  'face-down': { operation: 'face', factor: 1, source: 'custom', standing: 'common practice', deepAs: 'turn-rough' },
};
/** Operations whose tool is never tipped here. */
const HSS_ONLY: readonly CuttingOperation[] = ['drill', 'centre', 'counterbore', 'ream', 'tap', 'die'];

function groupData(group: CuttingGroup, operation: CuttingOperation, tool: CuttingTool): CuttingData | undefined {
  if (tool === 'silver steel' && operation !== 'd-bit') return undefined;
  if (tool === 'carbide' && HSS_ONLY.includes(operation)) return undefined;
  const like = LIKE[operation];
  const base = like ? tabled(group, like.operation, operation === 'd-bit' ? 'HSS' : tool) : tabled(group, operation, tool);
  if (!base || !like) return base;
  const { vcLo, vcNom, vcHi } = base;
  const { factor, source, standing, feed = base.feed, deepAs } = like;
  const ap = deepAs ? tabled(group, deepAs, tool)?.ap : base.ap;
  const scaled = { vcLo: vcLo * factor, vcNom: vcNom * factor, vcHi: vcHi * factor };
  const depth = ap === undefined ? {} : { ap };
  return { ...scaled, ...(feed === undefined ? {} : { feed }), ...depth, source: cite(source), ranges: base.ranges, standing };
}

function tabled(group: CuttingGroup, operation: CuttingOperation, tool: CuttingTool): CuttingData | undefined {
  const row = find(group, operation, tool);
  if (row) return toData(group, row, 1, 'bench-set', 'common practice');
  const hss = find(group, operation, 'HSS');
  const [, , , slow] = find(group, 'turn-rough', 'HSS') ?? [];
  const [, , , fast] = find(group, 'turn-rough', 'carbide') ?? [];
  if (!hss || slow === undefined || fast === undefined) return undefined;
  return toData(group, hss, fast / slow, 'here', 'derived');
}

function find(group: CuttingGroup, operation: CuttingOperation, tool: CuttingTool): SpeedRow | undefined {
  return SPEEDS[group].find((row) => row[0] === operation && row[1] === tool);
}

function toData(group: CuttingGroup, row: SpeedRow, factor: number, source: SourceId, standing: Standing): CuttingData {
  const [, , lo, nom, hi, feed, depth] = row;
  return {
    vcLo: lo * factor,
    vcNom: nom * factor,
    vcHi: hi * factor,
    ...(feed > 0 ? { feed } : {}),
    ...(depth > 0 ? { ap: mm(depth) } : {}),
    source: cite(source),
    ranges: RANGES[group].map((id) => cite(id)),
    standing,
  };
}
