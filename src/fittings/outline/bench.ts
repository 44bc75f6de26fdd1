/** What the builders of an outline share: the ask, the surfaces and features made so far, and where sections begin. */
import { add, type Len, len } from '../../base/units.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import type { Feature, Surface } from '../../model/part.ts';
import type { EndAsk, OutlineAsk } from './ask.ts';

export type Bench = {
  readonly ask: OutlineAsk;
  readonly surfaces: Map<SurfaceId, Surface>;
  readonly features: Feature[];
  readonly starts: readonly Len[];
  readonly length: Len;
};

export function newBench(ask: OutlineAsk): Bench {
  const starts: Len[] = [len(0)];
  for (const section of ask.sections) starts.push(add(starts.at(-1) ?? len(0), section.length));
  return { ask, surfaces: new Map(), features: [], starts, length: starts.at(-1) ?? len(0) };
}

export function put(made: Bench, surface: Surface): SurfaceId {
  if (made.surfaces.has(surface.id)) throw new Error(`surface '${surface.id}' stands twice`);
  made.surfaces.set(surface.id, surface);
  return surface.id;
}

export const named = (made: Bench, name: string): string => `${made.ask.id}/${name}`;

/** The surface of a section: its own, or that of the section with which it is one cut. */
export const surfaceOf = (made: Bench, section: { readonly name: string; readonly oneWith?: string }): SurfaceId =>
  named(made, section.oneWith ?? section.name);

/** The sections that are one cut with the one of that name, itself among them, from the first end. */
export const piecesOf = (made: Bench, name: string): readonly { readonly from: Len; readonly to: Len; readonly i: number }[] =>
  made.ask.sections.flatMap((section, i) =>
    section.name === name || section.oneWith === name ? [{ from: made.starts[i] ?? len(0), to: made.starts[i + 1] ?? made.length, i }] : [],
  );

export function addEnds(made: Bench): void {
  addEnd(made, made.ask.first, 'first', len(0));
  if (made.ask.second) addEnd(made, made.ask.second, 'second', made.length);
}

export function addEnd(made: Bench, end: EndAsk, which: End, z: Len): void {
  const id = named(made, end.letter);
  put(made, { shape: 'face', id, feature: id, role: end.role, side: 'outside', air: which, z, letter: end.letter });
  made.features.push({
    kind: 'end',
    id,
    role: end.role,
    end: which,
    face: id,
    ...(end.fitted ? { fitted: true as const } : {}),
    ...(end.skimmed ? { skimmed: true as const } : {}),
    ...(end.centreUnder === undefined ? {} : { centreUnder: end.centreUnder }),
  });
}

/** The face at the boundary after section `i`, or the end face. */
export function boundary(made: Bench, i: number): SurfaceId | undefined {
  if (i < 0) return named(made, made.ask.first.letter);
  const section = made.ask.sections[i];
  if (i === made.ask.sections.length - 1) return made.ask.second && named(made, made.ask.second.letter);
  return section?.shoulder && named(made, section.shoulder.letter);
}
