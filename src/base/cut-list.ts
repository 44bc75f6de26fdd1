/** Pieces packed into bars: by first fit, longest first; for few pieces the exact search sees whether it can be done with less. */

export type Piece = { readonly id: number; readonly long: number };
export type Cuts = { readonly bars: readonly (readonly number[])[]; readonly short: readonly number[] };

/**
 * `room`: of each bar, what there is to cut from, kerfs in the pieces. Least length that finds no room; then fewest bars begun. Exact up to
 * `exact` pieces, else first fit. Whole numbers. Pieces keep their number in `pieces`.
 */
export function cutList(pieces: readonly number[], room: readonly number[], exact: number): Cuts {
  const all = pieces.map((long, id): Piece => ({ id, long })).sort((a, b) => b.long - a.long || a.id - b.id);
  const bars = room.map((long, id): Piece => ({ id, long })).sort((a, b) => b.long - a.long || a.id - b.id);
  const first = firstFit(all, bars);
  if (pieces.length > exact || isLeast(first, all, bars)) return first;
  return searched(all, bars, first);
}

function firstFit(all: readonly Piece[], bars: readonly Piece[]): Cuts {
  const left = bars.map((bar) => bar.long);
  const put: number[][] = bars.map(() => []);
  const short: number[] = [];
  for (const piece of all) {
    const at = left.findIndex((room) => room >= piece.long);
    if (at < 0) short.push(piece.id);
    else {
      left[at] = (left[at] ?? 0) - piece.long;
      put[at]?.push(piece.id);
    }
  }
  return inPlace(put, short, bars);
}

/** Back to the bars as they were named. */
function inPlace(put: readonly (readonly number[])[], short: readonly number[], bars: readonly Piece[]): Cuts {
  const back = bars.map((bar, i) => ({ at: bar.id, ids: put[i] ?? [] })).sort((a, b) => a.at - b.at);
  return { bars: back.map((bar) => bar.ids), short };
}

const begun = (cuts: Cuts): number => cuts.bars.filter((ids) => ids.length > 0).length;

/** Nothing is short, and not even without offcuts would fewer bars do. */
function isLeast(cuts: Cuts, all: readonly Piece[], bars: readonly Piece[]): boolean {
  const total = all.reduce((sum, piece) => sum + piece.long, 0);
  const most = bars.slice(0, begun(cuts) - 1).reduce((sum, bar) => sum + bar.long, 0);
  return cuts.short.length === 0 && total > most;
}

type Score = { readonly short: number; readonly bars: number };
const worse = (a: Score, b: Score): boolean => a.short > b.short || (a.short === b.short && a.bars >= b.bars);

/** Every piece into every bar begun, the next new one of each length, or none; cut off where it is no better than what is known. */
function searched(all: readonly Piece[], bars: readonly Piece[], first: Cuts): Cuts {
  const long = new Map(all.map((piece) => [piece.id, piece.long]));
  const left = bars.map((bar) => bar.long);
  const put: number[][] = bars.map(() => []);
  const short: number[] = [];
  let best = first;
  let score: Score = { short: first.short.reduce((sum, id) => sum + (long.get(id) ?? 0), 0), bars: begun(first) };
  const walk = (i: number, now: Score): void => {
    if (worse(now, score)) return;
    const piece = all[i];
    if (!piece) {
      best = inPlace(
        put.map((ids) => [...ids]),
        [...short],
        bars,
      );
      score = now;
      return;
    }
    const tried = new Set<number>();
    for (const [at, room] of left.entries()) {
      const fresh = put[at]?.length === 0;
      if (room < piece.long || tried.has(room)) continue;
      tried.add(room);
      left[at] = room - piece.long;
      put[at]?.push(piece.id);
      walk(i + 1, fresh ? { ...now, bars: now.bars + 1 } : now);
      put[at]?.pop();
      left[at] = room;
    }
    short.push(piece.id);
    walk(i + 1, { ...now, short: now.short + piece.long });
    short.pop();
  };
  walk(0, { short: 0, bars: 0 });
  return best;
}
