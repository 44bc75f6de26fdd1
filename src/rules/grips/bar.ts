/** Held in the bar that the part is cut from, or on the stub of it that is left on. */
import { add, type Len, len } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import type { Grip, Operation, Refusal } from '../../model/plan.ts';
import { depthFrom, ENDS, farther, length, nearer, scaled } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { stubLength } from '../stub.ts';
import { freeEnd, steady, withCentre } from './overhang.ts';
import { outsideStretch, sorted } from './stretch.ts';

export const onBar: GripRule = {
  id: 'on-bar',
  source: CUSTOM,
  offer: (work) => {
    const c = work.c;
    if (c.part.stock.from !== 'bar') return { grips: [], refused: [] };
    const leaving = work.operations.filter((o) => o.verb === 'part-off' || o.verb === 'saw-off');
    const candidates = c.part.staysInChuck
      ? [barGrip(work, 'first', undefined)]
      : leaving.flatMap((o) => ENDS.filter((e) => o.ways[e]).map((e) => barGrip(work, e, o)));
    return sorted(candidates.flatMap((grip) => (tooFarOut(work, grip) ? slenderGrips(work, grip) : [grip])));
  },
};

function barGrip(work: Work, out: End, leaves: Operation | undefined): Grip {
  const deepest = stickOut(work, out, leaves);
  return gripAt(work, out, leaves, deepest);
}

function gripAt(work: Work, out: End, leaves: Operation | undefined, deepest: Len): Grip {
  const part = work.c.part;
  const across = part.stock.from === 'bar' ? part.stock.across : len(0);
  const held = add(deepest, scaled(across, 'grip.bar.ratio'));
  return {
    id: `${part.id}/${leaves ? leaves.id.slice(leaves.id.lastIndexOf('/') + 1) : 'bar'}.${out}`,
    kind: 'bar',
    out,
    on: [],
    from: out === 'first' ? deepest : len(part.length - held),
    to: out === 'first' ? held : len(part.length - deepest),
    diameter: across,
    ready: [],
    gone: leaves ? [leaves.id] : [],
    hides: [],
    lightOnly: false,
    runout: len(0),
    because: [{ rule: 'on-bar', grounds: {} }],
  };
}

/** From the out end to the jaws: the work, the blade's kerf, a stub if one is left, and room. */
function stickOut(work: Work, out: End, leaves: Operation | undefined): Len {
  return len(Math.max(leftOut(work, out, leaves), add(turnedTo(work, out), length('jaw.clearance'))));
}

/** How far from the out end a diameter is carried over what is cut off. */
function turnedTo({ c, operations }: Work, out: End): Len {
  const ends = operations
    .flatMap((o) => o.ways[out]?.sweeps ?? [])
    .flatMap((s) => (s.take === 'turn' && s.to.beyond ? [add(depthFrom(out, c.face(s.to.face).z, c.part), s.to.beyond)] : []));
  return len(Math.max(0, ...ends));
}

function leftOut(work: Work, out: End, leaves: Operation | undefined): Len {
  const part = work.c.part;
  if (!leaves) return add(part.length, length('grip.stick-out.room'));
  if (leaves.verb === 'saw-off') return add(deepestCut(work, out), add(length('grip.stick-out.room'), length('face.allowance')));
  const reach = leaves.ways[out]?.reach ?? part.length;
  return add(reach, add(leaves.tool.size ?? len(0), add(length('part.allowance'), length('grip.stick-out.room'))));
}

/** How far from the out end the outside is cut from there; a sawn part is drawn out to be sawn, with the lathe stopped. */
function deepestCut(work: Work, out: End): Len {
  const depths = work.operations
    .filter((o) => o.ways[out])
    .flatMap((o) => {
      const s = outsideStretch(work, o);
      return s ? [depthFrom(out, farther(out, s), work.c.part)] : [];
    });
  return len(Math.max(0, ...depths));
}

/** Long and thin: refused as it stands; drawn out a little for its end, or with a centre in that end. */
function slenderGrips(work: Work, grip: Grip): readonly (Grip | Refusal)[] {
  const refused = tooFarOut(work, grip);
  const leaves = work.operations.find((o) => grip.gone.includes(o.id));
  const near = scaled(grip.diameter, 'grip.stick-out.free');
  const short = {
    ...gripAt(work, grip.out, leaves, near),
    id: `${grip.id}.drawn-out-little`,
    because: [{ rule: 'drawn-out-little', grounds: {} }],
  };
  // a blank is drawn through to be sawn, with the lathe stopped
  const hides = [
    ...work.operations.filter((o) => outsideStretch(work, o) !== undefined).map((o) => o.id),
    ...(leaves?.verb === 'saw-off' ? [] : grip.gone),
  ];
  return [...(refused ? [refused] : []), { ...short, hides }, ...centreGrip(work, grip, leaves)];
}

/** Chuck and tailstock centre: no blade may close on itself there. */
function centreGrip(work: Work, grip: Grip, leaves: Operation | undefined): readonly (Grip | Refusal)[] {
  const out = depthFrom(grip.out, nearer(grip.out, grip), work.c.part);
  const parted = leaves?.verb === 'part-off' ? grip.gone : [];
  return withCentre(work, grip, out, grip.diameter).map((one) =>
    'kind' in one
      ? { ...one, kind: 'bar-and-centre', hides: [...one.hides, ...parted], because: [{ rule: 'bar-and-centre', grounds: {} }] }
      : one,
  );
}

function tooFarOut(work: Work, grip: Grip): Refusal | undefined {
  const out = depthFrom(grip.out, nearer(grip.out, grip), work.c.part);
  const most = scaled(grip.diameter, 'grip.stick-out.most');
  return out > most
    ? { what: grip.id, because: { rule: 'stick-out', grounds: freeEnd(work.c, grip) }, has: out, most, would: { grip } }
    : undefined;
}

export const onStub: GripRule = {
  id: 'on-stub',
  source: CUSTOM,
  offer: (work) =>
    sorted(
      work.operations
        .filter((o) => o.verb === 'cut-stub')
        .flatMap((cut) => ENDS.filter((e) => cut.ways[e]).map((out) => stubGrip(work, cut, out)))
        .flatMap((grip) => steady(work, grip, nearer(grip.out, grip))),
    ),
};

function stubGrip(work: Work, cut: Operation, out: End): Grip {
  const part = work.c.part;
  const across = part.stock.from === 'bar' ? part.stock.across : len(0);
  const end = add(stubLength(part, cut.tool), length('stub.allowance'));
  const clear = add(add(cut.tool.size ?? len(0), length('stub.allowance')), length('jaw.clearance'));
  const part1 = work.operations.find(
    (o) => o.verb === 'part-off' && work.methods.some((m) => m.operations.includes(o) && m.operations.includes(cut)),
  );
  return {
    id: `${part.id}/stub.${out}`,
    kind: 'stub',
    out,
    on: [],
    from: out === 'first' ? add(part.length, clear) : len(-end),
    to: out === 'first' ? add(part.length, end) : len(-clear),
    diameter: across,
    ready: part1 ? [part1.id] : [],
    gone: [cut.id],
    hides: [],
    lightOnly: false,
    runout: length('runout.three-jaw'),
    because: [{ rule: 'chucking-stub', grounds: {} }],
  };
}
