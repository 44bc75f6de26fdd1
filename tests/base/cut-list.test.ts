/** Pieces into bars: against every way of doing it, and what holds for any list. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutList } from '../../src/base/cut-list.ts';

const lists = (most: number) =>
  fc.tuple(fc.array(fc.integer({ min: 1, max: 120 }), { maxLength: most }), fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 3 }));
const total = (pieces: readonly number[], ids: readonly number[]): number => ids.reduce((sum, id) => sum + (pieces[id] ?? 0), 0);

/** Every piece in every bar or in none: least length short, then fewest bars. */
function plain(pieces: readonly number[], room: readonly number[]): readonly [short: number, bars: number] {
  let best: readonly [number, number] = [Number.POSITIVE_INFINITY, 0];
  for (let code = 0; code < (room.length + 1) ** pieces.length; code += 1) {
    const at = pieces.map((_, i) => Math.floor(code / (room.length + 1) ** i) % (room.length + 1));
    const filled = room.map((_, bar) => pieces.reduce((sum, long, i) => sum + (at[i] === bar ? long : 0), 0));
    if (filled.some((long, bar) => long > (room[bar] ?? 0))) continue;
    const short = pieces.reduce((sum, long, i) => sum + (at[i] === room.length ? long : 0), 0);
    const bars = filled.filter((long) => long > 0).length;
    if (short < best[0] || (short === best[0] && bars < best[1])) best = [short, bars];
  }
  return best;
}

describe('cutList', () => {
  it('is as good as the best of all ways, for few pieces', () => {
    fc.assert(
      fc.property(lists(5), ([pieces, room]) => {
        const { bars, short } = cutList(pieces, room, 10);
        expect([total(pieces, short), bars.filter((ids) => ids.length > 0).length]).toEqual(plain(pieces, room));
      }),
      { numRuns: 150 },
    );
  });

  it.each([10, 0])('overruns no bar and uses every piece once (exact to %d)', (exact) => {
    fc.assert(
      fc.property(lists(exact === 0 ? 60 : 8), ([pieces, room]) => {
        const { bars, short } = cutList(pieces, room, exact);
        bars.forEach((ids, i) => {
          expect(total(pieces, ids)).toBeLessThanOrEqual(room[i] ?? 0);
        });
        expect([...bars.flat(), ...short].sort((a, b) => a - b)).toEqual(pieces.map((_, i) => i));
      }),
    );
  });

  // worked by hand: first fit puts 60+30 and 50+40 into 100 and 90 and leaves nothing; 70, 50, 50, 30 wants the exact search
  it.each([
    [
      [60, 50, 40, 30],
      [100, 90],
      [0, 2],
    ],
    [
      [50, 50, 40, 30, 30],
      [100, 100],
      [0, 2],
    ],
    [
      [44, 24, 24, 22, 21, 17, 8, 8, 6, 6],
      [60, 60, 60],
      [0, 3],
    ],
    [[200], [100], [200, 0]],
  ])('%j from %j', (pieces, room, [short, bars]) => {
    const cuts = cutList(pieces, room, 10);
    expect([total(pieces, cuts.short), cuts.bars.filter((ids) => ids.length > 0).length]).toEqual([short, bars]);
  });
});
