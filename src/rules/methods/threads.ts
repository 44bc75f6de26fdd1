/** Threads: cut with a single point, by die or by tap. */
import { len, mm } from '../../base/units.ts';
import { ppmOf } from '../../handbook/trains.ts';
import type { Feature } from '../../model/part.ts';
import type { Because, Grounds, Method, Operation, Refusal, Way } from '../../model/plan.ts';
import { type Context, depthFrom, farther, operation, runsOutAt, show, type ThreadFeature } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule, type Offer } from '../rule.ts';
import { dieFor, dieOf, insideThreadingTool, runsTrue, tapFor, threadingFor } from '../tools.ts';
import { type NoWheels, wheelsFor } from '../wheels.ts';

const thread =
  (side: ThreadFeature['side']) =>
  (_c: Context, f: Feature): { readonly f: ThreadFeature } | undefined =>
    f.kind === 'thread' && f.side === side ? { f } : undefined;

const way = (f: ThreadFeature, c: Context): Way => ({
  cuts: [],
  sweeps: [{ take: 'thread', feature: f.id }],
  reach: depthFrom(f.start, farther(f.start, f), c.part),
});

function make(f: ThreadFeature, c: Context, step: 'screw-cut' | 'die' | 'tap', tool: Operation['tool'], rank: number): Method {
  const gauge =
    f.side === 'outside' && !c.workshop.tools.gaugeNuts.includes(f.thread.name)
      ? [{ kind: 'gauge-nut' as const, thread: f.thread, length: gaugeLength(f) }]
      : [];
  const op = operation(
    { feature: f.id, step, verb: step, tool, ways: { [f.start]: way(f, c) }, asks: gauge },
    [{ rule: step, grounds: { thread: f.thread.name } }],
    saysOf(c, f, step),
  );
  return { feature: f.id, name: step, because: { rule: step, grounds: { thread: f.thread.name } }, operations: [op], rank };
}

/** Outside threads are gauged before they leave the hold; a tap or die that is backed off may unscrew work from a mandrel. */
function saysOf(c: Context, f: ThreadFeature, step: 'screw-cut' | 'die' | 'tap'): Operation['says'] {
  const grounds = { thread: f.thread.name };
  const over = f.side === 'outside' && runsOutAt(c, f) ? [{ rule: 'thread-over-waste', grounds }] : [];
  const gauge = f.side === 'outside' ? [...over, { rule: 'gauge-before-leaving', grounds }] : [];
  return step === 'screw-cut' ? gauge : [...gauge, { rule: 'tap-backing-off', grounds, held: 'threaded-mandrel' }];
}

/** Whole pitches within the diameter, down to a tenth of a millimetre. */
const gaugeLength = (f: ThreadFeature) => {
  const whole = f.thread.major.target - (f.thread.major.target % f.thread.pitch);
  return len(whole - (whole % mm(1 / 10)));
};
const singlePoint = (c: Context, f: ThreadFeature): Operation['tool'] => ({
  ...{ kind: 'threading-outside', key: 'threading-outside' },
  ...{ material: c.workshop.tools.material, thread: f.thread.name },
});

export const screwCutOutside: MethodRule = methodRule({
  id: 'screw-cut',
  source: CUSTOM,
  when: thread('outside'),
  then: ({ f }, c) => {
    const method = make(f, c, 'screw-cut', singlePoint(c, f), 0);
    if (c.workshop.tools.threadingOutside) return screwCut(f, c, method);
    const because = { rule: 'no-threading-tool', grounds: { thread: f.thread.name } };
    return { refused: [{ what: f.id, because, lacks: 'threading-outside', would: { method } }] };
  },
});

/** Offered where wheels cut its pitch nearly enough; else refused, with the nearest that there is. */
function screwCut(f: ThreadFeature, c: Context, method: Method): Offer {
  const found = wheelsOn(f, c);
  if ('wheels' in found) return { methods: [method] };
  const lacks = found.none.wayRound ? 'leadscrew-reversed' : `wheels-${f.thread.pitch}`;
  return { refused: [{ what: `${f.id}/screw-cut`, because: whyNone(f, found.none), lacks, would: { method } }] };
}

function whyNone(f: ThreadFeature, { nearest, wayRound }: NoWheels): Because {
  if (nearest) return { rule: 'no-train', grounds: nearestSaid(f, nearest) };
  const grounds = { thread: f.thread.name };
  return wayRound ? { rule: 'left-hand-unreversed', grounds } : { rule: 'no-change-wheels', grounds };
}

function nearestSaid(f: ThreadFeature, { scored, lead }: NonNullable<NoWheels['nearest']>): Grounds {
  const { drivers, driven } = scored.train;
  const { lo, hi } = f.thread.pitchDiameter;
  return {
    thread: f.thread.name,
    wheels: drivers.map((driver, i) => `${driver}/${driven[i] ?? 0}`).join(' × '),
    ppm: Math.round(ppmOf(scored)),
    acts: show(lead.acts),
    tolerance: show(len(hi - lo)),
  };
}

export const dieOutside: MethodRule = methodRule({
  id: 'die',
  source: CUSTOM,
  when: thread('outside'),
  then: ({ f }, c) => {
    const tool = dieFor(c.workshop, f.thread);
    const grounds = { thread: f.thread.name };
    const method = make(f, c, 'die', tool ?? dieOf(f.thread), 1);
    if (!tool) {
      const would = runsTrue(c.part, f) ? {} : { would: { method } };
      return { refused: [{ what: `${f.id}/die`, because: { rule: 'no-die', grounds }, ...would }] };
    }
    const rather = runsTrue(c.part, f) && c.workshop.tools.threadingOutside && 'wheels' in wheelsOn(f, c);
    return rather
      ? { refused: [{ what: `${f.id}/die`, because: { rule: 'die-not-true', grounds }, would: { method } }] }
      : { methods: [method] };
  },
});

const wheelsOn = (f: ThreadFeature, c: Context): ReturnType<typeof wheelsFor> =>
  wheelsFor(c.workshop.lathe, { thread: f.thread, length: len(f.to - f.from) });

export const tapInside: MethodRule = methodRule({
  id: 'tap',
  source: CUSTOM,
  when: thread('inside'),
  then: ({ f }, c) => {
    const tool = tapFor(c.workshop, f.thread);
    return tool
      ? { methods: [make(f, c, 'tap', tool, 0)] }
      : {
          refused: [
            {
              what: `${f.id}/tap`,
              because: { rule: 'no-tap', grounds: { thread: f.thread.name } },
              lacks: `tap-${f.thread.name}`,
              would: { method: make(f, c, 'tap', { kind: 'tap', key: `tap-${f.thread.name}`, thread: f.thread.name, material: 'HSS' }, 0) },
            },
          ],
        };
  },
});

export const screwCutInside: MethodRule = methodRule({
  id: 'screw-cut-inside',
  source: CUSTOM,
  when: thread('inside'),
  then: ({ f }, c) => {
    const all = c.workshop.tools.threadingInside;
    const reach = depthFrom(f.start, farther(f.start, f), c.part);
    const what = `${f.id}/screw-cut`;
    const { tool, best } = threadingFor(c.workshop, f.thread.minor.lo, reach);
    const wanted = tool ?? { smallest: f.thread.minor.lo, reach };
    const method = make(f, c, 'screw-cut', insideThreadingTool(c.workshop, wanted, f.thread.name), 1);
    const wanting = { what, lacks: 'threading-inside', would: { method } };
    const grounds = { thread: f.thread.name };
    if (all.length === 0) return { refused: [{ ...wanting, because: { rule: 'no-threading-tool', grounds } }] };
    const refused: Refusal = { ...wanting, because: { rule: 'threading-reach', grounds } };
    if (tool) return screwCut(f, c, method);
    if (best) return { refused: [{ ...refused, has: best.reach, wants: reach }] };
    return { refused: [{ ...refused, has: len(Math.min(...all.map((one) => one.smallest))), most: f.thread.minor.lo }] };
  },
});
