/** Holds: where work can be gripped, how far to trust it, and why not. */
import { add, type Len, len, minus } from '../base/units.ts';
import type { End, SurfaceId } from '../model/ids.ts';
import { other } from '../model/ids.ts';
import type { Grip, Operation, Refusal } from '../model/plan.ts';
import { type Context, depthFrom, diameterOf, farther, length, nearer, type Outside, scaled, type ThreadFeature } from './context.ts';
import { CUSTOM, type GripRule, type Work } from './rule.ts';

type Offered = ReturnType<GripRule['offer']>;
const ENDS: readonly End[] = ['first', 'second'];

// ---- in the bar ------------------------------------------------------------------------------------------------------------
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
    return sort(candidates.map((grip) => tooFarOut(work, grip) ?? grip));
  },
};

function barGrip(work: Work, out: End, leaves: Operation | undefined): Grip {
  const part = work.c.part;
  const across = part.stock.from === 'bar' ? part.stock.across : len(0);
  const deepest = stickOut(work, out, leaves);
  const held = add(deepest, scaled(across, 'grip.stick-out.most'));
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
  const part = work.c.part;
  if (!leaves) return add(part.length, length('grip.stick-out.room'));
  if (leaves.verb === 'saw-off') return add(length('grip.stick-out.room'), length('face.allowance'));
  const reach = leaves.ways[out]?.reach ?? part.length;
  return add(reach, add(leaves.tool.size ?? len(0), add(length('part.allowance'), length('grip.stick-out.room'))));
}

function tooFarOut(work: Work, grip: Grip): Refusal | undefined {
  const out = depthFrom(grip.out, nearer(grip.out, grip), work.c.part);
  const most = scaled(grip.diameter, 'grip.stick-out.most');
  return out > most ? { what: grip.id, because: { rule: 'stick-out', grounds: {} }, has: out, wants: most, would: { grip } } : undefined;
}

// ---- on the chucking stub ----------------------------------------------------------------------------------------------------
export const onStub: GripRule = {
  id: 'on-stub',
  source: CUSTOM,
  offer: (work) => ({
    refused: [],
    grips: work.operations
      .filter((o) => o.verb === 'cut-stub')
      .flatMap((cut) => ENDS.filter((e) => cut.ways[e]).map((out) => stubGrip(work, cut, out))),
  }),
};

function stubGrip(work: Work, cut: Operation, out: End): Grip {
  const part = work.c.part;
  const across = part.stock.from === 'bar' ? part.stock.across : len(0);
  const stub = scaled(across, 'grip.stub.ratio');
  const clear = add(cut.tool.size ?? len(0), length('part.allowance'));
  const part1 = work.operations.find(
    (o) => o.verb === 'part-off' && work.methods.some((m) => m.operations.includes(o) && m.operations.includes(cut)),
  );
  return {
    id: `${part.id}/stub.${out}`,
    kind: 'stub',
    out,
    on: [],
    from: out === 'first' ? add(part.length, clear) : len(-stub),
    to: out === 'first' ? add(part.length, stub) : len(-clear),
    diameter: across,
    ready: part1 ? [part1.id] : [],
    gone: [cut.id],
    hides: [],
    lightOnly: false,
    runout: length('runout.three-jaw'),
    because: [{ rule: 'chucking-stub', grounds: {} }],
  };
}

// ---- on an outside section -----------------------------------------------------------------------------------------------------
export const onSection: GripRule = {
  id: 'on-section',
  source: CUSTOM,
  offer: (work) => sort(work.c.part.staysInChuck ? [] : work.c.outsides.flatMap((o) => ENDS.flatMap((out) => sectionGrips(work, o, out)))),
};

function sectionGrips(work: Work, o: Outside, out: End): readonly (Grip | Refusal)[] {
  const grip = sectionGrip(work, o, out);
  if (!grip) return [];
  const refused = protectedSurface(work, o, grip) ?? tooSlight(work, grip) ?? cannotEnter(work, o, grip) ?? thinWall(work, o, grip);
  if (refused) return [refused];
  const has = minus(grip.to, grip.from);
  const heavy = atLeast(scaled(grip.diameter, 'grip.heavy.ratio'));
  const light = atLeast(scaled(grip.diameter, 'grip.light.ratio'));
  if (has >= heavy) return [grip];
  const short: Refusal = { what: grip.id, because: { rule: 'grip-short', grounds: {} }, has, wants: heavy, would: { grip } };
  if (has < light) return [{ ...short, wants: light }];
  return [short, { ...grip, id: `${grip.id}.light`, lightOnly: true, because: [...grip.because, { rule: 'light-grip', grounds: {} }] }];
}

const atLeast = (l: Len): Len => len(Math.max(l, length('grip.least')));

/** The whole section but for room at the side where tools work. */
function sectionGrip(work: Work, o: Outside, out: End): Grip | undefined {
  const c = work.c;
  const cyl = c.cylinder(o.cylinder);
  const room = length('jaw.clearance');
  const stretch = clearOfSides(
    work,
    out === 'first' ? { from: add(cyl.from, room), to: cyl.to } : { from: cyl.from, to: minus(cyl.to, room) },
    o,
    out,
  );
  if (stretch.to <= stretch.from) return undefined;
  const kind = holdKind(c, o);
  const datum = datumBehind(c, o, out);
  return {
    id: `${o.id}.${kind}.${out}`,
    kind,
    out,
    on: [o.cylinder],
    from: stretch.from,
    to: stretch.to,
    diameter: cyl.size.target,
    ...(datum ? { datum } : {}),
    ready: work.operations.filter((k) => k.feature === o.id || (datum !== undefined && makes(k, datum))).map((k) => k.id),
    gone: [],
    hides: hiddenBehind(work, out, nearer(out, stretch)),
    lightOnly: false,
    runout: length(RUNOUT[kind]),
    because: [{ rule: `in-${kind}`, grounds: {} }],
  };
}
const RUNOUT = { collet: 'runout.collet', sleeve: 'runout.sleeve', jaws: 'runout.three-jaw', hexagon: 'runout.three-jaw' } as const;

/** Jaws keep off flats, cross holes and branches: the stretch ends before them, on the side toward the out end. */
function clearOfSides(
  work: Work,
  s: { readonly from: Len; readonly to: Len },
  o: Outside,
  out: End,
): { readonly from: Len; readonly to: Len } {
  const sides = work.c.part.features.flatMap((f) =>
    f.kind === 'side' && f.on === o.cylinder && f.does !== 'flats' && f.does !== 'harden' ? [f] : [],
  );
  return sides.reduce((left, f) => {
    const from = minus(minus(f.at, f.half), length('jaw.clearance'));
    const to = add(add(f.at, f.half), length('jaw.clearance'));
    if (to <= left.from || from >= left.to) return left;
    return out === 'second' ? { from: left.from, to: from } : { from: to, to: left.to };
  }, s);
}

function holdKind(c: Context, o: Outside): 'collet' | 'sleeve' | 'jaws' | 'hexagon' {
  if (o.section === 'hexagon') return 'hexagon';
  const d = diameterOf(c, o);
  if (c.workshop.holding.collets.some((size) => size >= d && minus(size, d) <= length('collet.slack'))) return 'collet';
  if (c.cylinder(o.cylinder).asStock) return 'jaws';
  return c.workshop.holding.sleeves ? 'sleeve' : 'jaws';
}

/** The face at the inner end of the hold, or the part's far end: pushed against jaws or stop, lengths are read from it. */
function datumBehind(c: Context, o: Outside, out: End): SurfaceId | undefined {
  const z = farther(out, c.cylinder(o.cylinder));
  const face = c.part.surfaces.find((s) => s.shape === 'face' && s.side === 'outside' && s.z === z && s.air === other(out));
  return face?.id ?? c.end(other(out))?.face;
}

const makes = (k: Operation, face: SurfaceId): boolean =>
  k.verb !== 'part-off' &&
  k.verb !== 'saw-off' &&
  Object.values(k.ways).some((w) => w.cuts.some((cut) => cut.makes === face && cut.stage === 'final'));

/** What lies under the jaws or behind them cannot be cut. Holes are reached from the out end and do not count. */
function hiddenBehind(work: Work, out: End, front: Len): readonly string[] {
  return work.operations
    .filter((k) => {
      const s = outsideStretch(work, k);
      if (!s) return false;
      return out === 'first' ? s.to > front : s.from < front;
    })
    .map((k) => k.id);
}

function outsideStretch(work: Work, k: Operation): { readonly from: Len; readonly to: Len } | undefined {
  const f = work.c.part.features.find((p) => p.id === k.feature);
  if (!f) return undefined;
  if (f.kind === 'outside') return work.c.cylinder(f.cylinder);
  if (f.kind === 'groove') return work.c.cylinder(f.floor);
  if (f.kind === 'thread' && f.side === 'outside') return f;
  if (f.kind === 'cone' && work.c.cone(f.cone).side === 'outside') {
    const at = work.c.face(work.c.cone(f.cone).at).z;
    return { from: at, to: at };
  }
  return undefined;
}

// ---- why not ---------------------------------------------------------------------------------------------------------------------
function protectedSurface(work: Work, o: Outside, grip: Grip): Refusal | undefined {
  const threaded = work.c.threads.some((t) => t.on === o.cylinder);
  if (threaded) return { what: grip.id, because: { rule: 'finished-thread', grounds: {} } };
  const bare = grip.kind === 'jaws' && !work.c.cylinder(o.cylinder).asStock;
  if (bare) return { what: grip.id, because: { rule: 'bare-jaws', grounds: {} }, would: { grip } };
  return o.role === 'seat' || o.role === 'sealing' ? { what: grip.id, because: { rule: 'kept-surface', grounds: {} } } : undefined;
}

/** Work much wider than what holds it springs and is pulled out, however light the cut. */
function tooSlight(work: Work, grip: Grip): Refusal | undefined {
  const beyond = work.c.outsides.filter((b) =>
    grip.out === 'first' ? work.c.cylinder(b.cylinder).from < grip.from : work.c.cylinder(b.cylinder).to > grip.to,
  );
  const widest = beyond.map((b) => diameterOf(work.c, b)).sort((a, b) => b - a)[0] ?? len(0);
  const least = scaled(widest, 'grip.share');
  return grip.diameter < least
    ? { what: grip.id, because: { rule: 'grip-slight', grounds: {} }, has: grip.diameter, wants: least }
    : undefined;
}

/** A larger section behind the hold cannot go into the jaws. */
function cannotEnter(work: Work, o: Outside, grip: Grip): Refusal | undefined {
  const i = work.c.outsides.indexOf(o);
  const behind = grip.out === 'first' ? work.c.outsides.slice(i + 1) : work.c.outsides.slice(0, i);
  const widest = behind.map((b) => diameterOf(work.c, b)).sort((a, b) => b - a)[0];
  return widest !== undefined && widest > grip.diameter
    ? { what: grip.id, because: { rule: 'cannot-enter', grounds: {} }, has: widest, wants: grip.diameter }
    : undefined;
}

function thinWall(work: Work, o: Outside, grip: Grip): Refusal | undefined {
  const inside = work.c.holes
    .map((h) => work.c.cylinder(h.cylinder))
    .filter((h) => h.from < grip.to && grip.from < h.to)
    .map((h) => h.size.target)
    .sort((a, b) => b - a)[0];
  if (inside === undefined || grip.kind === 'collet') return undefined;
  const walls = minus(diameterOf(work.c, o), inside);
  const least = add(scaled(grip.diameter, 'grip.wall.ratio'), scaled(grip.diameter, 'grip.wall.ratio'));
  return walls < least
    ? { what: grip.id, because: { rule: 'thin-wall', grounds: {} }, has: walls, wants: least, would: { grip } }
    : undefined;
}

// ---- on a thread -------------------------------------------------------------------------------------------------------------------
export const onMandrel: GripRule = {
  id: 'on-threaded-mandrel',
  source: CUSTOM,
  offer: (work) => sort(work.c.part.staysInChuck || work.c.part.use !== 'fitting' ? [] : work.c.threads.map((t) => mandrelGrip(work, t))),
};

function mandrelGrip(work: Work, t: ThreadFeature): Grip | Refusal {
  const c = work.c;
  const out = other(t.start);
  const datum = t.side === 'outside' ? shoulderOf(c, t) : c.end(t.start)?.face;
  if (!datum) return { what: `${t.id}.mandrel`, because: { rule: 'mandrel-needs-a-shoulder', grounds: {} } };
  const turnedBy = c.part.features.filter((f) => f.kind === 'side' && (f.does === 'flats' || f.does === 'branch'));
  const front = c.face(datum).z;
  const start = nearer(t.start, t);
  const grip: Grip = {
    id: `${t.id}.mandrel.${out}`,
    kind: 'threaded-mandrel',
    out,
    on: [t.on],
    datum,
    from: len(Math.min(start, farther(t.start, t))),
    to: len(Math.max(start, farther(t.start, t))),
    diameter: t.thread.major.target,
    tooling: {
      kind: 'threaded-mandrel',
      side: t.side === 'outside' ? 'inside' : 'outside',
      thread: t.thread,
      depth: depthOn(c, t, front),
      rim: rimAt(c, front),
      clears: c.part.length,
      serves: c.part.id,
    },
    ready: readyFor(
      work,
      t,
      datum,
      turnedBy.map((f) => f.id),
    ),
    gone: [],
    hides: t.side === 'outside' ? hiddenBehind(work, out, front) : [],
    lightOnly: false,
    runout: length('runout.mandrel'),
    because: [{ rule: 'threaded-mandrel', grounds: { thread: t.thread.name } }],
  };
  const hexagon = c.outsides.some((o) => o.section === 'hexagon');
  if (turnedBy.length === 0 && !hexagon)
    return { what: grip.id, because: { rule: 'mandrel-needs-a-spanner', grounds: {} }, would: { grip } };
  if (!c.workshop.holding.mandrels)
    return { what: grip.id, because: { rule: 'no-mandrels', grounds: { thread: t.thread.name } }, would: { grip } };
  return grip;
}

const shoulderOf = (c: Context, t: ThreadFeature): SurfaceId | undefined =>
  c.outsides.find((o) => o.cylinder === t.on)?.shoulder[other(t.start)];

/** How far the work goes into (or over) the mandrel: from the datum to the work's end, or to the end of the thread. */
function depthOn(c: Context, t: ThreadFeature, front: Len): Len {
  if (t.side === 'outside') return depthFrom(t.start, front, c.part);
  return depthFrom(t.start, farther(t.start, t), c.part);
}

function rimAt(c: Context, front: Len): Len {
  return (
    c.outsides
      .map((o) => c.cylinder(o.cylinder))
      .filter((k) => k.from <= front && front <= k.to)
      .map((k) => k.size.target)
      .sort((a, b) => b - a)[0] ?? len(0)
  );
}

/** Thread, its shoulder or face, and something for a spanner. */
function readyFor(work: Work, t: ThreadFeature, datum: SurfaceId, spanner: readonly string[]): readonly string[] {
  return work.operations.filter((k) => k.feature === t.id || spanner.includes(k.feature) || makes(k, datum)).map((k) => k.id);
}

function sort(candidates: readonly (Grip | Refusal)[]): Offered {
  const isGrip = (x: Grip | Refusal): x is Grip => 'kind' in x;
  return { grips: candidates.filter(isGrip), refused: candidates.filter((x): x is Refusal => !isGrip(x)) };
}

export const GRIP_RULES: readonly GripRule[] = [onBar, onStub, onSection, onMandrel];
