/**
 * Work that stands far out beyond its hold: refused with its figures, and offered with a centre in its free end, where that end has a centre
 * hole. It may stand out so many diameters, of the widest that stands beyond: as it is finished, or as bar while all of it still is.
 */
import { type Len, len } from '../../base/units.ts';
import type { Grip, Operation, Refusal, Verb } from '../../model/plan.ts';
import { type Context, depthFrom, diameterOf, type Outside, scaled, show } from '../context.ts';
import type { Work } from '../rule.ts';

/** `front`: where the hold ends, on the side of the free end. */
export function steady(work: Work, grip: Grip, front: Len): readonly (Grip | Refusal)[] {
  const has = depthFrom(grip.out, front, work.c.part);
  const beyond = work.c.outsides.filter((o) => standsBeyond(work, o, grip, front));
  const finished = len(Math.max(grip.diameter, ...beyond.map((o) => diameterOf(work.c, o))));
  const most = scaled(finished, 'grip.stick-out.most');
  if (has <= most) return [grip];
  const refused: Refusal = { what: grip.id, because: { rule: 'stick-out', grounds: freeEnd(work.c, grip) }, has, most, would: { grip } };
  return [refused, ...whileBar(work, grip, beyond, has), ...withCentre(work, grip, has, finished)];
}

/** A hole that opens in the free end leaves no metal for a centre; `mouth`: of a centre drill that the workshop would want for it, or ''. */
export const freeEnd = (c: Context, { out }: Grip): { readonly bored: boolean; readonly mouth: string } => {
  const under = c.end(out)?.centreUnder;
  return { bored: c.holes.some((h) => !h.centre && h.opens.includes(out)), mouth: under === undefined ? '' : show(under) };
};

const standsBeyond = ({ c }: Work, o: Outside, { out }: Grip, front: Len): boolean =>
  out === 'first' ? c.cylinder(o.cylinder).from < front : c.cylinder(o.cylinder).to > front;

/** Thick enough as long as nothing beyond has been turned. */
function whileBar(work: Work, grip: Grip, beyond: readonly Outside[], has: Len): readonly Grip[] {
  const { part } = work.c;
  const across = part.stock.from === 'bar' ? part.stock.across : len(0);
  const turned = beyond
    .filter((o) => !grip.on.includes(o.cylinder))
    .map((o) => work.operations.filter((k) => k.feature === o.id && TURNED.includes(k.verb)));
  if (has > scaled(across, 'grip.stick-out.most') || !turned.every((all) => all.some((k) => k.ways[grip.out]))) return [];
  const gone = turned.flat().map((k) => k.id);
  return [{ ...grip, id: `${grip.id}.as-bar`, gone: [...grip.gone, ...gone] }];
}

const TURNED: readonly Verb[] = ['turn', 'face-down'];

/**
 * With the tailstock's centre in the free end: nothing can be done at that end. Given what would be held without it, how far it stands out,
 * and the diameter that counts.
 */
export function withCentre(work: Work, grip: Grip, has: Len, diameter: Len): readonly (Grip | Refusal)[] {
  const { c } = work;
  const id = `${grip.id}.and-centre`;
  const centre = c.holes.find((h) => h.centre && h.opens.includes(grip.out));
  const end = c.end(grip.out);
  if (!centre || !end) return [{ what: id, because: { rule: 'no-centre-hole', grounds: { mouth: freeEnd(c, grip).mouth } } }];
  const most = scaled(diameter, 'centre.ratio');
  if (has > most) return [{ what: id, because: { rule: 'stick-out', grounds: freeEnd(c, grip) }, has, most }];
  const atEnd = work.operations.filter((o) => o.ways[grip.out] && (o.feature === end.id || isInside(work, o)));
  const ready = work.operations.filter((o) => o.feature === centre.id).map((o) => o.id);
  return [
    {
      ...grip,
      id,
      centre: centre.id,
      ready: [...grip.ready, ...ready],
      hides: [...new Set([...grip.hides, ...atEnd.map((o) => o.id)])],
      because: [...grip.because, { rule: 'and-centre', grounds: {} }],
    },
  ];
}

const isInside = (work: Work, o: Operation): boolean => work.c.part.surfaces.some((s) => s.feature === o.feature && s.side === 'inside');
