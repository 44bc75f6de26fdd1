/** How the work stands out of its grip, as a beam: from the jaws to its free end, in the diameters that it has there. */
import { UNITS_PER_MM } from '../base/units.ts';
import { type Profile, type Span, stretchesOver } from '../geometry/profile.ts';
import type { Grip } from '../model/plan.ts';
import type { Beam } from './give.ts';

/** `pushed`: where the tool cuts; it pushes at the place that is farthest out. `end`: the free end. Nothing where that is in the jaws. */
export function standOut(profile: Profile, grip: Grip, pushed: Span, end: number): Beam | undefined {
  if (grip.kind === 'between-centres') return onCentres(profile, grip, pushed, end);
  const jaws = grip.out === 'first' ? grip.from : grip.to;
  const place = grip.out === 'first' ? Math.max(pushed.from, end) : Math.min(pushed.to, end);
  const out = (z: number): number => (grip.out === 'first' ? jaws - z : z - jaws) / UNITS_PER_MM;
  if (!(out(place) > 0) || !Number.isFinite(place)) return undefined;
  const metal = stretchesOver(profile, { from: Math.min(jaws, end), to: Math.max(jaws, end) });
  const lengths = metal.map((one) => ({
    long: (one.to - one.from) / UNITS_PER_MM,
    outside: one.outside / UNITS_PER_MM,
    inside: one.inside / UNITS_PER_MM,
  }));
  return {
    lengths: grip.out === 'first' ? lengths.reverse() : lengths,
    at: out(place),
    ...(grip.centre !== undefined ? { centre: out(end) } : {}),
  };
}

/** From the driven end to the tailstock's, pushed where the cut comes nearest to the middle. */
function onCentres(profile: Profile, grip: Grip, pushed: Span, end: number): Beam | undefined {
  const driven = grip.out === 'first' ? grip.to : grip.from;
  const metal = stretchesOver(profile, { from: Math.min(driven, end), to: Math.max(driven, end) });
  if (!Number.isFinite(end) || metal.length === 0) return undefined;
  const lengths = metal.map((one) => ({
    long: (one.to - one.from) / UNITS_PER_MM,
    outside: one.outside / UNITS_PER_MM,
    inside: one.inside / UNITS_PER_MM,
  }));
  const middle = (driven + end) / 2;
  const place = Math.min(Math.max(middle, pushed.from), pushed.to);
  const between = Math.abs(end - driven) / UNITS_PER_MM;
  return { lengths: grip.out === 'first' ? lengths.reverse() : lengths, at: Math.abs(place - driven) / UNITS_PER_MM, between };
}
