/** Lengths between faces: stated ones, those of reliefs and floors, and the general tolerance for every face that is left. */
import { type Len, len, minus } from '../../base/units.ts';
import { lookUpGeneral } from '../../handbook/iso2768.ts';
import type { Limits } from '../../model/part.ts';
import { general } from '../limits.ts';
import type { OutlineAsk, Section } from '../outline.ts';
import type { TurnedPartAsked } from './asked.ts';
import { type Faults, fault } from './fault.ts';
import type { Laid } from './inside.ts';
import type { Letters } from './letters.ts';
import { limitsOf } from './limits.ts';
import type { LaidRecess } from './recess.ts';
import { isTaper, ridgeAfter } from './taper.ts';

type Face = { readonly letter: string; readonly z: Len };
export type LengthAsk = OutlineAsk['lengths'][number];

export function lengthsOf(
  asked: TurnedPartAsked,
  parts: {
    readonly ends: readonly [string, string];
    readonly sections: readonly Section[];
    readonly holes: readonly Laid[];
    readonly recesses: readonly LaidRecess[];
  },
  letters: Letters,
  faults: Faults,
): readonly LengthAsk[] {
  const faces = facesOf(parts);
  const stated = asked.lengths.flatMap((_, i) => statedLength(asked, i, faces, faults) ?? []);
  const sections = asked.outside.flatMap((_, i) => sectionLength(asked, parts, i, faults) ?? []);
  const depths = parts.holes.flatMap(({ depth }) =>
    depth ? [{ from: depth.end === 'first' ? parts.ends[0] : parts.ends[1], to: depth.letter, limits: depth.limits }] : [],
  );
  const grooves = parts.recesses.flatMap((one) => one.lengths);
  const known = [...stated, ...sections, ...depths, ...grooves];
  const named = faces.filter((f) => letters.isNamed(f.letter) || parts.ends.includes(f.letter));
  return [...known, ...theRest(faces, named, known, faults), ...reliefs(parts)];
}

/** Ends first, then shoulders along the outside, then floors. */
function facesOf({ ends, sections, holes, recesses }: Parameters<typeof lengthsOf>[1]): readonly Face[] {
  let z = len(0);
  const shoulders = sections.map((s) => {
    z = len(z + s.length);
    return { letter: s.shoulder?.letter ?? '', z };
  });
  const floors = holes.flatMap(({ hole }) =>
    hole.floor ? [{ letter: hole.floor.letter, z: hole.opens[0] === 'second' ? hole.from : hole.to }] : [],
  );
  const walls = recesses.flatMap(({ recess }) => [
    { letter: recess.first.letter, z: recess.from },
    { letter: recess.second.letter, z: recess.to },
  ]);
  return [{ letter: ends[0], z: len(0) }, { letter: ends[1], z }, ...shoulders.filter((f) => f.letter !== ''), ...floors, ...walls];
}

function statedLength(asked: TurnedPartAsked, i: number, faces: readonly Face[], faults: Faults): LengthAsk | undefined {
  const one = asked.lengths[i];
  if (!one) return undefined;
  const there = faces.map((f) => f.letter).join(', ');
  const find = (end: 'from' | 'to'): Face | undefined => {
    const face = faces.find((f) => f.letter === one[end]);
    if (!face) fault(faults, ['lengths', i, end], 'no-such-face', { letter: one[end], letters: there });
    return face;
  };
  const [from, to] = [find('from'), find('to')];
  if (!from || !to) return undefined;
  const drawn = len(Math.abs(to.z - from.z));
  const grounds = { from: one.from, to: one.to, drawn, stated: one.size.nominal };
  if (from === to) fault(faults, ['lengths', i, 'to'], 'length-to-itself', grounds);
  else if (drawn !== one.size.nominal) fault(faults, ['lengths', i, 'size'], 'length-disagrees', grounds);
  const limits = limitsOf(one.size, 'length', `${one.from}-${one.to}`, ['lengths', i, 'size'], faults);
  return limits && { from: one.from, to: one.to, limits };
}

/** A section whose length has limits of its own, and the width of a groove, lie between the section's two faces. */
function sectionLength(
  asked: TurnedPartAsked,
  { ends, sections }: Parameters<typeof lengthsOf>[1],
  i: number,
  faults: Faults,
): LengthAsk | undefined {
  const section = asked.outside[i];
  if (!section) return undefined;
  const limits = limitsOf(section.length, 'length', section.name, ['outside', i, 'length'], faults);
  if (!limits || ridgeAfter(asked, i - 1)) return undefined;
  const from = i === 0 ? ends[0] : sections[i - 1]?.shoulder?.letter;
  if (ridgeAfter(asked, i)) return pairLength(asked, { ends, sections }, i, { from, limits }, faults);
  if (limits.from.kind === 'general' && !section.groove && !isTaper(section)) return undefined;
  const to = sections[i]?.shoulder?.letter ?? ends[1];
  return from === undefined ? undefined : { from, to, limits };
}

/** Two tapers that meet in a ridge are as long together as each of them: from the one's tip to the other's. */
function pairLength(
  asked: TurnedPartAsked,
  { ends, sections }: Pick<Parameters<typeof lengthsOf>[1], 'ends' | 'sections'>,
  i: number,
  one: { readonly from: string | undefined; readonly limits: Limits },
  faults: Faults,
): LengthAsk | undefined {
  const [mate, to] = [asked.outside[i + 1], sections[i + 1]?.shoulder?.letter ?? ends[1]];
  const more = mate && limitsOf(mate.length, 'length', mate.name, ['outside', i + 1, 'length'], faults);
  if (!more || one.from === undefined) return undefined;
  const sum = (which: 'lo' | 'hi' | 'target'): Len => len(one.limits[which] + more[which]);
  return { from: one.from, to, limits: { lo: sum('lo'), hi: sum('hi'), target: sum('target'), from: one.limits.from } };
}

function reliefs({ sections, holes }: Parameters<typeof lengthsOf>[1]): readonly LengthAsk[] {
  const inside = holes.flatMap(({ hole }) =>
    hole.relief && hole.floor ? [{ from: `${hole.name}.wall`, to: hole.floor.letter, limits: hole.relief.width }] : [],
  );
  const outside = sections.flatMap((section): readonly LengthAsk[] => {
    const { thread, name } = section;
    if (!thread?.relief || section.oneWith !== undefined) return [];
    // where grooves divide it, the relief stands at the last piece
    const own = sections.flatMap((one, i) => (one.name === name || one.oneWith === name ? [i] : []));
    const ends = thread.start === 'first' ? own.at(-1) : (own[0] ?? 0) - 1;
    const shoulder = sections[ends ?? 0]?.shoulder?.letter;
    return shoulder === undefined ? [] : [{ from: `${name}.wall`, to: shoulder, limits: thread.relief.width }];
  });
  return [...outside, ...inside];
}

/** Each face that hangs on nothing yet: from the nearest face that a person named, or from an end. */
function theRest(faces: readonly Face[], named: readonly Face[], known: readonly LengthAsk[], faults: Faults): readonly LengthAsk[] {
  const out: LengthAsk[] = [];
  const joined = new Set([faces[0]?.letter ?? '']);
  const links = [...known];
  const grow = (): void => {
    for (let more = true; more; ) {
      const next = links.find((l) => joined.has(l.from) !== joined.has(l.to));
      if (next) for (const letter of [next.from, next.to]) joined.add(letter);
      more = next !== undefined;
    }
  };
  grow();
  for (const face of faces) {
    if (joined.has(face.letter)) continue;
    const there = named.filter((f) => joined.has(f.letter)).sort((a, b) => apart(a, face) - apart(b, face));
    const near = there.find((f) => lookUpGeneral(apart(f, face), 'm') !== undefined);
    if (!near) {
      const [a = face] = there;
      fault(faults, ['outside'], 'no-general-length', { from: a.letter, to: face.letter, apart: apart(a, face) });
      return out;
    }
    const link = { from: near.letter, to: face.letter, limits: general(apart(near, face)) };
    out.push(link);
    links.push(link);
    grow();
  }
  return out;
}

const apart = (a: Face, b: Face): Len => len(Math.abs(minus(a.z, b.z)));
