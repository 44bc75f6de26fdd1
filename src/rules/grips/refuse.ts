/** Why a section may not be held. */
import { len, minus } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import type { Grip, Refusal } from '../../model/plan.ts';
import { diameterOf, type Outside, scaled } from '../context.ts';
import type { Work } from '../rule.ts';

export function protectedSurface(work: Work, o: Outside, grip: Grip): Refusal | undefined {
  const threaded = work.c.threads.some((t) => t.on === o.cylinder);
  if (threaded) return { what: grip.id, because: { rule: 'finished-thread', grounds: {} } };
  if (grip.knurled && !work.c.workshop.holding.softJaws)
    return { what: grip.id, because: { rule: 'knurl-crushed', grounds: {} }, would: { grip } };
  const bare = grip.kind === 'jaws' && !work.c.cylinder(o.cylinder).asStock;
  if (bare) return { what: grip.id, because: { rule: 'bare-jaws', grounds: {} }, would: { grip } };
  return o.role === 'seat' || o.role === 'sealing' ? { what: grip.id, because: { rule: 'kept-surface', grounds: {} } } : undefined;
}

/** Work much wider than what holds it springs and is pulled out, however light the cut. */
export function tooSlight(work: Work, grip: Grip): Refusal | undefined {
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
export function cannotEnter(work: Work, o: Outside, grip: Grip): Refusal | undefined {
  const i = work.c.outsides.indexOf(o);
  const behind = grip.out === 'first' ? work.c.outsides.slice(i + 1) : work.c.outsides.slice(0, i);
  const widest = behind.map((b) => diameterOf(work.c, b)).sort((a, b) => b - a)[0];
  return widest !== undefined && widest > grip.diameter
    ? { what: grip.id, because: { rule: 'cannot-enter', grounds: {} }, has: widest, most: grip.diameter }
    : undefined;
}

/** In three jaws, however gently, it springs to three lobes; thinner still, it gives where it is held all round. */
export function thinWall(work: Work, o: Outside, out: End, held: 'jaws' | 'round'): Refusal | undefined {
  const grip = work.c.cylinder(o.cylinder);
  const across = grip.size.target;
  const inside = work.c.holes
    .map((h) => work.c.cylinder(h.cylinder))
    .filter((h) => h.from < grip.to && grip.from < h.to)
    .map((h) => h.size.target)
    .sort((a, b) => b - a)[0];
  if (inside === undefined) return undefined;
  const walls = minus(diameterOf(work.c, o), inside);
  const wall = scaled(across, held === 'jaws' ? 'grip.wall.ratio' : 'grip.wall.round');
  if (walls >= 2 * wall) return undefined;
  const has = len(Math.floor(walls / 2));
  const what = `${o.id}.${out}`;
  if (held === 'round') return { what, because: { rule: 'thin-wall-round', grounds: {} }, has, wants: wall };
  // what closes all round holds a thinner wall than jaws do, down to where it gives too
  const round = walls >= 2 * scaled(across, 'grip.wall.round');
  return { what, because: { rule: 'thin-wall', grounds: { round } }, has, wants: wall };
}
