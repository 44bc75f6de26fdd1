/** How far a threading tool, a tap or a die can go on past the end of its thread, on the work as it stands. */
import { type Len, len } from '../base/units.ts';
import { insideOver, outsideOver, type Profile, type Span, stretchesOver } from '../geometry/profile.ts';
import type { Feature, Part } from '../model/part.ts';

type Thread = Extract<Feature, { kind: 'thread' }>;

/** From the end of a thread on to where the bore grows narrower, or the outside wider; nothing where there is no such place. */
export function roomPast({ features }: Part, profile: Profile, id: string): { readonly room?: Len } {
  const thread = features.find((one) => one.id === id);
  if (thread?.kind !== 'thread') return {};
  const [end, on] = thread.start === 'first' ? [thread.to, 1] : [thread.from, -1];
  const past = { from: on > 0 ? end : Number.NEGATIVE_INFINITY, to: on > 0 ? Number.POSITIVE_INFINITY : end };
  const last = on > 0 ? { from: end - 1, to: end } : { from: end, to: end + 1 };
  const next = on > 0 ? { from: end, to: end + 1 } : { from: end - 1, to: end };
  const walls = stretchesOver(profile, past).filter(metalIn(thread, profile, { last, next }));
  const wall = on > 0 ? walls[0]?.from : walls.at(-1)?.to;
  return wall === undefined ? {} : { room: len(Math.abs(wall - end)) };
}

/** What stands in its way: in a bore all that is narrower than what follows the thread, outside what is thicker than the thread. */
function metalIn({ side }: Thread, profile: Profile, { last, next }: { readonly last: Span; readonly next: Span }) {
  const bore = insideOver(profile, next) ?? len(0);
  const crest = outsideOver(profile, last);
  return (one: { readonly outside: Len; readonly inside: Len }): boolean => (side === 'inside' ? one.inside < bore : one.outside > crest);
}
