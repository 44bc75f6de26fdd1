/** What is seen of a curve, as pieces on the picture: straight ones by their ends, round ones as Bézier arcs through places on them. */
import type { Segment } from '../../model/display.ts';
import { at2, type XY } from '../display.ts';
import type { Curve } from './lines.ts';
import { nearTo } from './near.ts';
import { isSeen, type Sight } from './sight.ts';
import { seenBy } from './space.ts';

/** Places looked at on a straight line and round a circle, and halvings between two of which one is seen. */
const LOOKS = { straight: 6, bent: 4, round: 24, halvings: 6 } as const;
/** Share of a circle that one Bézier arc covers at the most. */
const ARC = { bent: 1 / 2, round: 1 / 12 } as const;
const STEP = 1e-4;

export function seenOf(curve: Curve, sight: Sight, on: (p: XY) => XY): readonly Segment[] {
  const { isThere, hiders, alone } = nearTo(curve, sight);
  const shows = (share: number): boolean => {
    const p = curve.at(share);
    return isThere(p) && isSeen(sight, p, curve.onCut ?? false, hiders);
  };
  const at = (share: number): XY => on(seenBy(sight.eye, curve.at(share)));
  return (alone ? WHOLE : runs(shows, LOOKS[curve.shape])).flatMap(([from, to]) =>
    curve.shape === 'straight' ? chord(at, from, to) : arcs(at, from, to, ARC[curve.shape]),
  );
}

type Stretch = readonly [number, number];
const WHOLE: readonly Stretch[] = [[0, 1]];

/** The stretches of 0 to 1 that show. */
function runs(shows: (share: number) => boolean, looks: number): readonly Stretch[] {
  const found: [number, number][] = [];
  let [before, start] = [shows(0), 0];
  for (let i = 1; i <= looks; i++) {
    const share = i / looks;
    const now = shows(share);
    if (now !== before) {
      const turn = change(shows, (i - 1) / looks, share, before);
      if (now) start = turn;
      else found.push([start, turn]);
    }
    before = now;
  }
  if (before) found.push([start, 1]);
  return found;
}

function change(shows: (share: number) => boolean, low: number, high: number, below: boolean): number {
  let [lo, hi] = [low, high];
  for (let i = 0; i < LOOKS.halvings; i++) {
    const middle = (lo + hi) / 2;
    if (shows(middle) === below) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
}

type At = (share: number) => XY;
const move = ({ x, y }: XY): Segment => ({ to: 'move', x: at2(x), y: at2(y) });

function chord(at: At, from: number, to: number): readonly Segment[] {
  const q = at(to);
  return [move(at(from)), { to: 'line', x: at2(q.x), y: at2(q.y) }];
}

/** Hermite to Bézier: handles a third of the arc long, along the curve. Where two arcs join, the place and its slope are looked at once. */
function arcs(at: At, from: number, to: number, most: number): readonly Segment[] {
  const count = Math.max(1, Math.ceil((to - from) / most));
  const step = (to - from) / count;
  let last = jointAt(at, from);
  return [
    move(last.place),
    ...Array.from({ length: count }, (_, i): Segment => {
      const next = jointAt(at, from + step * (i + 1));
      const [p, q] = [handle(last, step / 3), handle(next, -step / 3)];
      last = next;
      return { to: 'curve', x1: at2(p.x), y1: at2(p.y), x2: at2(q.x), y2: at2(q.y), x: at2(next.place.x), y: at2(next.place.y) };
    }),
  ];
}

/** A place of a curve, and how fast it runs there. */
type Joint = { readonly place: XY; readonly slope: XY };
function jointAt(at: At, share: number): Joint {
  const [a, b] = [at(share - STEP), at(share + STEP)];
  return { place: at(share), slope: { x: (b.x - a.x) / (2 * STEP), y: (b.y - a.y) / (2 * STEP) } };
}

const handle = ({ place, slope }: Joint, by: number): XY => ({ x: place.x + slope.x * by, y: place.y + slope.y * by });
