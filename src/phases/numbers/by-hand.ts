/** Taps and dies, turned by hand and steered by the tailstock: what the hole leaves of the thread, how deep the tap goes, how hard it turns. */
import { type Len, len, toMm } from '../../base/units.ts';
import { metricThread } from '../../handbook/iso965-metric.ts';
import { machining } from '../../handbook/machining.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { engagement, usualBasis } from '../../handbook/metric-tapping.ts';
import { practice } from '../../handbook/practice.ts';
import { cuttingTapTorque, tapFigures, tapping } from '../../handbook/tapping-torque.ts';
import type { Cylinder, Feature, Say } from '../../model/part.ts';
import type { Figures } from '../../model/plan.ts';
import { show } from '../../rules/context.ts';
import { runsTrue } from '../../rules/tools.ts';
import type { Asked } from './asked.ts';

type Thread = Extract<Feature, { kind: 'thread' }>;

export function handFigures(asked: Asked): Partial<Figures> {
  const thread = asked.part.features.find((one): one is Thread => one.kind === 'thread' && one.id === asked.removal.operation.feature);
  const on = asked.part.surfaces.find((one): one is Cylinder => one.shape === 'cylinder' && one.id === thread?.on);
  if (!thread || !on) return {};
  if (asked.removal.operation.verb === 'die') return { says: diesSaid(asked, thread) };
  return { says: [holeSaid(asked, thread, holeOf(asked, on)), leadSaid(asked, thread)] };
}

/** As the chart aims at it, else the drawing. */
function holeOf({ chart }: Asked, on: Cylinder): Len {
  return chart.working.findLast((one) => one.makes === on.id)?.limits.target ?? on.size.target;
}

function holeSaid({ material }: Asked, { thread }: Thread, hole: Len): Say {
  const nominal = thread.major.lo;
  const share = Math.round(engagement({ nominal, pitch: thread.pitch }, hole, usualBasis(thread.flankAngle)));
  const group = findMaterial(material)?.cutting;
  const torque =
    group === undefined
      ? 0
      : cuttingTapTorque({
          ...{ diameter: toMm(nominal), hole: toMm(hole), angle: thread.flankAngle },
          ...tapFigures(group, isFine(thread.name) ? 'fine' : 'coarse'),
        });
  const hard = share > machining.value('tap.share.most') ? 'yes' : '';
  return { id: 'say.tap.hole', grounds: { hole: show(hole), share, hard, torque: Math.max(1, Math.round(torque)) } };
}

/** A fine pitch carries its pitch in its name. */
const isFine = (name: string): boolean => metricThread(name) !== undefined && name.includes('x');

/**
 * Which tap reaches the last full turn before its end stands against what is there now: a floor, a narrower bore past the relief, or the end
 * of the drill in a bar that is not parted yet; and how deep its end is then, from the face as it stands.
 */
function leadSaid({ part, removal: { room, stands = len(0) } }: Asked, f: Thread): Say {
  if (room === undefined) return { id: 'say.tap.through', grounds: {} };
  const clear = machining.value('tap.clear') * f.thread.pitch;
  const tap = LEADS.find((kind) => tapping.value(`tap.lead.${kind}`) * f.thread.pitch + clear <= room) ?? 'bottom';
  const full = Math.abs(f.start === 'first' ? f.to : part.length - f.from);
  return { id: 'say.tap.blind', grounds: { tap, deep: show(len(full + room + stands)), turns: Math.round(full / f.thread.pitch) } };
}
const LEADS = ['taper', 'second', 'bottom'] as const;

/** A die follows the bar, not the lathe: where the thread has to run true, and cannot be screw-cut here, it is started with more care and tried. */
function diesSaid({ part }: Asked, f: Thread): readonly Say[] {
  const said: Say = { id: 'say.die', grounds: { pitches: practice.value('thread.dead') } };
  return [said, ...(runsTrue(part, f) ? [{ id: 'say.die.true', grounds: {} }] : [])];
}
