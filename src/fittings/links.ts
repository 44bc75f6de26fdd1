/** Links that chains across parts are made of: drawn lengths and diameters, balls on their seats, joint rings, packing, threads' run-outs. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { abmaGrade } from '../handbook/balls.ts';
import { chainFacts } from '../handbook/chains.ts';
import { spindleFacts } from '../handbook/spindle.ts';
import { centreAboveEdge } from '../handbook/valve-ball.ts';
import type { ChainLink, Limits, LinkKind, Part } from '../model/part.ts';
import { about, half, size, times } from './limits.ts';

type Sign = ChainLink['sign'];

/** Between two faces of a part, by their own names ('A', 'N'); the drawing's length, else the distance of their places. Throws Error on a face that is none. */
export function drawn(part: Part, from: string, to: string, sign: Sign): ChainLink {
  const [a, b] = [`${part.id}/${from}`, `${part.id}/${to}`];
  const length = part.dimensions.find((one) => [a, b].includes(one.a) && [a, b].includes(one.b));
  const nominal = length?.limits.target ?? len(Math.abs(placeOf(part, b) - placeOf(part, a)));
  return { part: part.id, a, b, nominal, sign };
}

function placeOf(part: Part, id: string): Len {
  const face = part.surfaces.find((one) => one.id === id);
  if (face?.shape !== 'face') throw new Error(`'${id}' is no face that a length can be measured from`);
  return face.z;
}

/** A diameter of a part, by its cylinder's own name. */
export function across(part: Part, name: string, sign: Sign): ChainLink {
  const id = `${part.id}/${name}`;
  const surface = part.surfaces.find((one) => one.id === id);
  if (surface?.shape !== 'cylinder') throw new Error(`'${id}' is no cylinder`);
  return { part: part.id, a: id, b: 'axis', nominal: surface.size.target, sign, limits: surface.size };
}

export type StatedAsk = {
  readonly item: string;
  readonly from: string;
  readonly to: string;
  readonly limits: Limits;
  readonly sign: Sign;
  readonly by: LinkKind;
  readonly says?: string;
};

/** What no planned part makes: its limits are what is said of it. */
export function stated({ item, from, to, limits, sign, by, says }: StatedAsk): ChainLink {
  const link = { part: item, a: `${item}/${from}`, b: `${item}/${to}`, nominal: limits.target, sign, by, limits };
  return says === undefined ? link : { ...link, says };
}

/** A copper joint ring, annealed, when its joint has been made. */
export function ringTightened(item: string, sign: Sign, says?: string): ChainLink {
  const limits = about(size('joint.ring.tight'), mm(chainFacts.value('ring.tight.band')), 'ring as tightened');
  return stated({ item, from: 'under', to: 'over', limits, sign, by: 'tightened', ...(says === undefined ? {} : { says }) });
}

/** The same ring as it is bought. */
export function ringBought(item: string, sign: Sign, says?: string): ChainLink {
  const limits = about(size('joint.ring'), mm(chainFacts.value('ring.band')), 'ring as bought');
  return stated({ item, from: 'under', to: 'over', limits, sign, by: 'bought', ...(says === undefined ? {} : { says }) });
}

/** From the sharp edge of its seat to the top of a ball that sits on it: least with the smallest ball on the widest bore. */
export function ballOnSeat(item: string, ball: Len, bore: Limits, sign: Sign, says?: string): ChainLink {
  const grade = abmaGrade(chainFacts.value('ball.grade'));
  if (!grade) throw new Error('that grade of ball is not tabled');
  const top = (diameter: number, edge: Len): Len => mm(centreAboveEdge(diameter, toMm(edge)) + diameter / 2);
  const [over, under] = [grade.plus / MICRON, grade.minus / MICRON];
  const limits: Limits = {
    lo: top(toMm(ball) - under, bore.hi),
    hi: top(toMm(ball) + over, bore.lo),
    target: top(toMm(ball), bore.target),
    from: { kind: 'role', as: 'ball on its seat' },
  };
  return stated({ item, from: 'edge', to: 'top', limits, sign, by: 'bought', ...(says === undefined ? {} : { says }) });
}
/** Of a millimetre. */
const MICRON = 1000;

export type PackingAsk = {
  readonly item: string;
  readonly rings: number;
  readonly width: Len;
  readonly sign: Sign;
  readonly says?: string;
};

/** Rings of packing laid in the box, one on the other: each as high as it is wide. */
export function packingLoose({ item, rings, width, sign, says }: PackingAsk): ChainLink {
  const height = len(rings * width);
  const limits = about(height, times(height, chainFacts.value('packing.band')), 'packing as laid in');
  return stated({ item, from: 'floor', to: 'top', limits, sign, by: 'bought', ...(says === undefined ? {} : { says }) });
}

/** The same when the gland first bears on it: shorter by its first compression. */
export function packingPacked({ item, rings, width, sign, says }: PackingAsk): ChainLink {
  const [least, most] = ['compression.low', 'compression.high'].map((id) => spindleFacts.value(id) / 100) as [number, number];
  const height = len(rings * width);
  const [lo, hi] = [times(height, 1 - most), times(height, 1 - least)];
  const limits: Limits = { lo, hi, target: len(lo + half(len(hi - lo))), from: { kind: 'role', as: 'packing compressed' } };
  return stated({ item, from: 'floor', to: 'top', limits, sign, by: 'packed', ...(says === undefined ? {} : { says }) });
}
