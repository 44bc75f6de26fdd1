/** What is in the drawer for a job, or the reason why nothing is. */
import { type Len, len, mm } from '../base/units.ts';
import { centreDrills, coneDepth } from '../handbook/centre-drills.ts';
import { machining } from '../handbook/machining.ts';
import { thread as threadCalled } from '../handbook/threads.ts';
import type { SurfaceId } from '../model/ids.ts';
import type { Arc, Part, ThreadSize } from '../model/part.ts';
import type { Refusal, ToolUse } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { length, scaled, show } from './context.ts';

export const turningTool = (w: Workshop): ToolUse => ({ kind: 'turning', key: 'turning', material: w.tools.material });
export const chamferTool = (w: Workshop): ToolUse => ({ kind: 'chamfer', key: 'chamfer', material: w.tools.material });
export const insideChamferTool = (w: Workshop): ToolUse => ({ kind: 'chamfer-inside', key: 'chamfer-inside', material: w.tools.material });
export const groovingTool = (w: Workshop): ToolUse | undefined =>
  w.tools.grooving && { kind: 'grooving', key: 'grooving', size: w.tools.grooving.width, material: w.tools.material };
export const partingTool = (w: Workshop, across: Len): ToolUse | undefined =>
  w.tools.parting && w.tools.parting.deepest >= across
    ? { kind: 'parting', key: 'parting', size: w.tools.parting.width, material: w.tools.material }
    : undefined;
export const bench = (kind: string): ToolUse => ({ kind, key: `bench-${kind}`, material: 'none' });

export const drill = (size: Len): ToolUse => ({ kind: 'drill', key: `drill-${show(size)}`, size, material: 'HSS' });

/** Largest drill of the rack not over `most` (and not under `least`, if given). */
export function drillUnder(w: Workshop, most: Len, least: Len = len(0), suits: (d: Len) => boolean = () => true): Len | undefined {
  return w.tools.drills.filter((d) => d <= most && d >= least && suits(d)).sort((a, b) => b - a)[0];
}

/** The drill of the rack inside the limits and nearest to the size aimed at. */
export function drillWithin(w: Workshop, limits: { readonly lo: Len; readonly hi: Len; readonly target: Len }): Len | undefined {
  return w.tools.drills
    .filter((d) => d >= limits.lo && d <= limits.hi)
    .sort((a, b) => Math.abs(a - limits.target) - Math.abs(b - limits.target) || a - b)[0];
}

/** The largest centre drill whose mouth the drill takes away, and which is no longer than there is room for; else the smallest. */
export function centreDrill(w: Workshop, pilot: Len, room?: Len): Centring | undefined {
  const sorted = [...w.tools.centreDrills].sort((a, b) => b.mouth - a.mouth);
  const found = sorted.find((c) => c.mouth <= pilot && (room === undefined || centreLength(c) <= room)) ?? sorted.at(-1);
  return (
    found && {
      tool: { kind: 'centre-drill', key: `centre-${found.name}`, size: found.pilot, name: found.name, material: 'HSS' },
      ...{ mouth: found.mouth, long: len(Math.ceil(centreLength(found))) },
    }
  );
}
/** `long`: from its tip to its mouth. */
type Centring = { readonly tool: ToolUse; readonly mouth: Len; readonly long: Len };

/** Pilot and cone. An odd pilot is as long as those of the standard are to their diameter. */
function centreLength({ pilot, mouth }: Workshop['tools']['centreDrills'][number]): number {
  const known = centreDrills.find((one) => one.pilot === pilot);
  return (known?.pilotLength ?? pilot * machining.value('centre.pilot')) + coneDepth(pilot, mouth);
}

export type Boring = Workshop['tools']['boring'][number];
export const boringTool = (b: Boring, w: Workshop): ToolUse => ({
  kind: 'boring',
  key: `boring-${show(b.smallest)}`,
  size: b.smallest,
  material: w.tools.material,
});

/** Thickest boring tool that enters a hole of `start` and reaches `depth`; `best` is the one that comes nearest when none does. */
export function boringFor(w: Workshop, start: Len, depth: Len): { readonly tool?: Boring; readonly best?: Boring } {
  const enters = w.tools.boring.filter((b) => b.smallest <= start);
  const tool = enters.filter((b) => b.reach >= depth).sort((a, b) => b.smallest - a.smallest)[0];
  const best = [...enters].sort((a, b) => b.reach - a.reach)[0];
  return { ...(tool ? { tool } : {}), ...(best ? { best } : {}) };
}

export type Threading = Workshop['tools']['threadingInside'][number];
/** Told by the hole that it enters where there is more than one. */
export const insideThreadingTool = (w: Workshop, { smallest }: Threading, thread: string): ToolUse => ({
  ...{ kind: 'threading-inside', key: 'threading-inside', enters: smallest, material: w.tools.material, thread },
  ...(w.tools.threadingInside.length > 1 ? { key: `threading-inside-${show(smallest)}`, size: smallest } : {}),
});

/** Thickest inside threading tool that enters a hole of `bore` and reaches `depth`; `best` is the one that comes nearest when none does. */
export function threadingFor(w: Workshop, bore: Len, depth: Len): { readonly tool?: Threading; readonly best?: Threading } {
  const enters = w.tools.threadingInside.filter((one) => one.smallest <= bore);
  const tool = enters.filter((one) => one.reach >= depth).sort((a, b) => b.smallest - a.smallest)[0];
  const best = [...enters].sort((a, b) => b.reach - a.reach)[0];
  return { ...(tool ? { tool } : {}), ...(best ? { best } : {}) };
}

/** What would do in place of a boring tool: a reamer, for a hole that is open; a deeper hole, where a drill's point had no room above the floor. */
export type Instead = { readonly open: boolean; readonly shallow: boolean };

/** Why no boring tool goes into a hole and so far: the one that goes in falls short, or the thinnest does not go in. */
export function noBoring({ tools }: Workshop, start: Len, wants: Len, instead?: Instead): Omit<Refusal, 'what'> {
  const grounds = instead ?? { open: false, shallow: false };
  const enters = tools.boring.filter((b) => b.smallest <= start).map((b) => b.reach);
  if (enters.length > 0) return { because: { rule: 'boring-reach', grounds }, has: len(Math.max(...enters)), wants };
  const [thinnest] = tools.boring.map((b) => b.smallest).sort((a, b) => a - b);
  return {
    because: { rule: 'no-boring-tool', grounds: { ...grounds, reach: show(upToTenth(wants)) } },
    ...(thinnest === undefined ? {} : { has: thinnest }),
    most: start,
  };
}

const upToTenth = (l: Len): Len => len(Math.ceil(l / mm(1 / 10)) * mm(1 / 10));

/** Drill left under a finishing single-lip tool: more where the hole is deep. */
export function underSize(diameter: Len, depth: Len): Len {
  return len(diameter - (depth > scaled(diameter, 'single-lip.deep') ? length('single-lip.stock.deep') : length('single-lip.stock.short')));
}

/** A thread that something else is to run true to: a seat of the same part, or whatever is screwed on a mandrel. A die follows the bar. */
export const runsTrue = (part: Part, { on }: { readonly on: SurfaceId }): boolean =>
  part.staysInChuck === true || (part.truths ?? []).some(({ a, b }) => a === on || b === on);

export const dieFor = (w: Workshop, t: ThreadSize): ToolUse | undefined => (w.tools.dies.includes(t.name) ? dieOf(t) : undefined);
export const dieOf = ({ name }: ThreadSize): ToolUse => ({ kind: 'die', key: `die-${name}`, thread: name, material: 'HSS' });
export const tapFor = (w: Workshop, t: ThreadSize): ToolUse | undefined =>
  w.tools.taps.includes(t.name) ? { kind: 'tap', key: `tap-${t.name}`, thread: t.name, material: 'HSS' } : undefined;

/** Least bore of a nut in the usual class of the thread's family: what goes through one. */
export function nutMinor({ name, root }: ThreadSize): Len {
  const found = threadCalled(name)?.thread;
  return found?.limits('inside', found.inside[0] ?? '')?.minor.lo ?? root;
}

/** The tool of the drawer whose radius is within the arc's limits and nearest to its aim; else one of just that radius, to be ground. */
export function radiusTool(w: Workshop, arc: Arc): { readonly tool: ToolUse; readonly ready: boolean } {
  const kind = arc.bends === 'round' ? 'radius' : 'round-nosed';
  const drawer = (arc.bends === 'round' ? w.tools.radiusTools : w.tools.roundNosed) ?? [];
  const off = (r: Len): number => Math.abs(2 * r - arc.across.target);
  const found = drawer.filter((r) => 2 * r >= arc.across.lo && 2 * r <= arc.across.hi).sort((a, b) => off(a) - off(b) || a - b)[0];
  const size = found ?? len(arc.across.target / 2);
  const named = found === undefined ? `${kind}-to-grind` : kind;
  return { tool: { kind: named, key: `${kind}-${show(size)}`, size, material: 'HSS' }, ready: found !== undefined };
}
