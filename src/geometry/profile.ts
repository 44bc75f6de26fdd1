/** A plain profile of the work while it is turned: outside and inside diameter by stretches along the axis, at the drawing's places. */
import { type Len, len } from '../base/units.ts';

/** From `from` up to the next stretch. */
export type Stretch = { readonly from: number; readonly outside: Len; readonly inside: Len };
/** Ascending; the first one begins at minus infinity. */
export type Profile = readonly Stretch[];
export type Span = { readonly from: number; readonly to: number };

export function barProfile(diameter: Len): Profile {
  return [{ from: Number.NEGATIVE_INFINITY, outside: diameter, inside: len(0) }];
}

/** Metal outside `diameter` taken away over the span. */
export function turnProfile(profile: Profile, span: Span, diameter: Len): Profile {
  return change(profile, span, (one) => ({ ...one, outside: len(Math.min(one.outside, diameter)) }));
}

/** Metal inside `diameter` taken away over the span. */
export function boreProfile(profile: Profile, span: Span, diameter: Len): Profile {
  return change(profile, span, (one) => ({ ...one, inside: len(Math.max(one.inside, diameter)) }));
}

/** All metal taken away over the span. */
export function removeProfile(profile: Profile, span: Span): Profile {
  return change(profile, span, (one) => ({ ...one, outside: len(0), inside: len(0) }));
}

/** The greatest outside diameter over the span; 0 where there is no metal. */
export function outsideOver(profile: Profile, span: Span): Len {
  return len(Math.max(0, ...within(profile, span).map((one) => one.outside)));
}

/** The least inside diameter over the span where there is metal; undefined where there is none. */
export function insideOver(profile: Profile, span: Span): Len | undefined {
  const metal = within(profile, span).filter((one) => one.outside > one.inside);
  return metal.length === 0 ? undefined : len(Math.min(...metal.map((one) => one.inside)));
}

/** The widest of what is narrower than `diameter` over the span: what a tool of that size meets for most of its way. */
export function widestUnder(profile: Profile, span: Span, diameter: Len): Len | undefined {
  const narrower = within(profile, span).filter((one) => one.outside > one.inside && one.inside < diameter);
  return narrower.length === 0 ? undefined : len(Math.max(...narrower.map((one) => one.inside)));
}

/** Where there is metal outside `diameter` over the span, from its first place to its last; undefined where there is none. */
export function widerOver(profile: Profile, span: Span, diameter: Len): Span | undefined {
  const wider = profile
    .map((one, i) => ({ ...one, to: profile[i + 1]?.from ?? Number.POSITIVE_INFINITY }))
    .filter((one) => one.from < span.to && one.to > span.from && one.outside > diameter);
  const [first, last] = [wider[0], wider.at(-1)];
  return first && last && { from: Math.max(first.from, span.from), to: Math.min(last.to, span.to) };
}

/** Metal over the span, cut to it, ascending. */
export function stretchesOver(profile: Profile, span: Span): readonly (Stretch & { readonly to: number })[] {
  return profile
    .map((one, i) => ({
      ...one,
      from: Math.max(one.from, span.from),
      to: Math.min(profile[i + 1]?.from ?? Number.POSITIVE_INFINITY, span.to),
    }))
    .filter((one) => one.from < one.to && one.outside > one.inside);
}

function within(profile: Profile, span: Span): Profile {
  if (span.from >= span.to) return [];
  return profile.filter((one, i) => one.from < span.to && (profile[i + 1]?.from ?? Number.POSITIVE_INFINITY) > span.from);
}

function change(profile: Profile, span: Span, by: (one: Stretch) => Stretch): Profile {
  if (span.from >= span.to) return profile;
  const cut = split(split(profile, span.from), span.to);
  return cut.map((one) => (one.from >= span.from && one.from < span.to ? by(one) : one));
}

function split(profile: Profile, at: number): Profile {
  return profile.flatMap((one, i) => {
    const next = profile[i + 1]?.from ?? Number.POSITIVE_INFINITY;
    return one.from < at && at < next ? [one, { ...one, from: at }] : [one];
  });
}
