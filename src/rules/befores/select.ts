/** Ways to pick operations out of a part's work, so that a before reads like the sentence it stands for. */
import type { End, FeatureId } from '../../model/ids.ts';
import type { Feature } from '../../model/part.ts';
import type { Operation, Verb } from '../../model/plan.ts';
import { ENDS, type EndFeature, type Hole } from '../context.ts';
import type { Pair, Work } from '../rule.ts';

export const of = (work: Work, feature: FeatureId, ...verbs: readonly Verb[]): readonly Operation[] =>
  work.operations.filter((o) => o.feature === feature && (verbs.length === 0 || verbs.includes(o.verb)));

export const withVerb = (work: Work, ...verbs: readonly Verb[]): readonly Operation[] =>
  work.operations.filter((o) => verbs.includes(o.verb));

export const featureOf = (work: Work, o: Operation): Feature | undefined => work.c.part.features.find((f) => f.id === o.feature);

/** Every one of `first` before every one of `then`. */
export function all(
  first: readonly Operation[],
  then: readonly Operation[],
  when?: (a: Operation, b: Operation) => Pair['when'],
): readonly Pair[] {
  return first.flatMap((a) =>
    then
      .filter((b) => a.id !== b.id)
      .map((b) => {
        const only = when?.(a, b);
        return { first: a.id, then: b.id, ...(only ? { when: only } : {}) };
      }),
  );
}

/** What opens a hole; not the drill that goes through once more at the end. */
export const isDrilling = (o: Operation): boolean =>
  (o.verb === 'drill' || o.verb === 'centre') && !o.because.some((one) => one.rule === 'drill-again');
export const isLeaving = (o: Operation): boolean => o.verb === 'part-off' || o.verb === 'saw-off' || o.verb === 'cut-stub';
export const isBench = (o: Operation): boolean => o.ways.bench !== undefined;

/** The last facing of an end: the one that leaves nothing. */
export const lastFacing = (work: Work, end: EndFeature): readonly Operation[] =>
  of(work, end.id, 'face').filter((o) => (o.ways[end.end]?.cuts[0]?.leaves ?? 0) === 0);
/** The facing that opens a method; of a face cut twice, the rough one. */
export const firstFacings = (work: Work, end: EndFeature): readonly Operation[] =>
  work.methods.filter((m) => m.feature === end.id).flatMap((m) => m.operations.slice(0, 1));

export const ends = (work: Work): readonly EndFeature[] => ENDS.flatMap((e) => work.c.end(e) ?? []);

export const fromEnd = (work: Work, end: End): readonly Operation[] => work.operations.filter((o) => o.ways[end] !== undefined);

/** The operation that leaves a hole's wall for good. */
export const finishOf = (work: Work, hole: Hole): readonly Operation[] =>
  of(work, hole.id, 'drill', 'bore', 'ream', 'd-bit', 'counterbore').filter((o) =>
    Object.values(o.ways).some((w) => w.cuts.some((k) => k.makes === hole.cylinder && k.stage === 'final')),
  );
