/** Held on an outside section: collet, sleeve, jaws, or on a hexagon. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { type Context, diameterOf, ENDS, farther, length, nearer, type Outside, scaled } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { cannotEnter, protectedSurface, thinWall, tooSlight } from './refuse.ts';
import { hiddenBehind, makes, sorted } from './stretch.ts';

export const onSection: GripRule = {
  id: 'on-section',
  source: CUSTOM,
  offer: (work) =>
    sorted(work.c.part.staysInChuck ? [] : work.c.outsides.flatMap((o) => ENDS.flatMap((out) => sectionGrips(work, o, out)))),
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
