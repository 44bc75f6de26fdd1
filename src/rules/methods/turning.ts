/** Turning a section to size, its shoulder with it: from which end, and how far. */
import { add, type Len, len } from '../../base/units.ts';
import { reliefWidth } from '../../handbook/practice.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Cut, Operation, Way } from '../../model/plan.ts';
import { type Context, diameterOf, farther, length, nearer, type Outside, operation, waysBy } from '../context.ts';
import { turningTool } from '../tools.ts';
import { shoulderFillet } from './radii.ts';

const ZERO = 0 as Len;

export function turning(c: Context, f: Outside): Operation {
  const ways = waysBy((end) => turnWay(c, f, end));
  return operation({ feature: f.id, step: 'turn', verb: 'turn', tool: turningTool(c.workshop), ways }, [{ rule: 'turn', grounds: {} }]);
}

/** From an end if nothing between it and the section stands higher. */
function turnWay(c: Context, f: Outside, end: End): Way | undefined {
  const i = c.outsides.indexOf(f);
  const between = end === 'first' ? c.outsides.slice(0, i) : c.outsides.slice(i + 1);
  if (between.some((o) => diameterOf(c, o) > diameterOf(c, f))) return undefined;
  const shoulder = f.shoulder[other(end)];
  const diameter: Cut = { makes: f.cylinder, stage: 'final', measures: 'diameter', leaves: ZERO };
  if (shoulder) {
    const fillet = shoulderFillet(c, f.cylinder, shoulder);
    return {
      cuts: [diameter, { makes: shoulder, stage: 'final', measures: 'length', leaves: ZERO }],
      sweeps: [{ take: 'turn', cylinder: f.cylinder, to: { face: shoulder }, ...(fillet ? { spares: fillet.id } : {}) }],
    };
  }
  const last = faceBeyond(c, f, end);
  if (!last) return undefined;
  return { cuts: [diameter], sweeps: [{ take: 'turn', cylinder: f.cylinder, to: { face: last, beyond: past(c, f, end) } }] };
}

/**
 * A thread that no shoulder ends runs on over what is cut off, or turned away later: the diameter stands as far, and the tool has room to stop
 * in. It keeps as far off what stands higher behind it as a diameter is carried past a part.
 */
function past(c: Context, f: Outside, end: End): Len {
  const least = length('part.past');
  const thread = c.threads.find((t) => t.on === f.cylinder && t.start === end);
  if (!thread) return least;
  const asked = add(length('part.allowance'), reliefWidth(thread.thread.pitch));
  return len(Math.max(least, Math.min(asked, roomBehind(c, f, end) - least)));
}

/** From a section to the next one that is thicker, away from that end. */
function roomBehind(c: Context, f: Outside, end: End): number {
  const i = c.outsides.indexOf(f);
  const behind = end === 'first' ? c.outsides.slice(i + 1) : c.outsides.slice(0, i).reverse();
  const higher = behind.find((o) => diameterOf(c, o) > diameterOf(c, f));
  if (!higher) return Number.POSITIVE_INFINITY;
  return Math.abs(nearer(end, c.cylinder(higher.cylinder)) - farther(end, c.cylinder(f.cylinder)));
}

/** The face at the far side of a section that has no shoulder there. */
function faceBeyond(c: Context, f: Outside, end: End): string | undefined {
  const z = farther(end, c.cylinder(f.cylinder));
  const near = c.part.surfaces.filter((s) => s.shape === 'face' && s.side === 'outside').map((s) => c.face(s.id));
  const there = near.filter((s) => s.z === z)[0] ?? near.sort((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z))[0];
  return there?.id;
}
