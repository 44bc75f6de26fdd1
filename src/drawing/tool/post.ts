/** Tools in the tool post: what cuts from outside stands below the axis, what cuts inside is seen above it, where the work is cut. */
import { type Edge, metalAt, placed, rootOf, type UR } from '../sketch.ts';
import type { ToolShown } from '../view.ts';
import { BODY, CLEAR, FLANK, NEAR, type Outline, type Place, radiusOf } from './place.ts';

/** Feeds toward the headstock: its edge stands square to the axis, its end clears what it has turned. */
export function knife({ side }: ToolShown, place: Place): readonly Outline[] {
  if (side === 'inside') return bar(place);
  const tip = leftEnd(place.made.filter((e) => e.a.u !== e.b.u));
  if (!tip) return [];
  return [
    front(place, tip, [
      [0.8, undefined],
      [0.8, 3],
      [0, 0],
      [5, 0.9],
      [BODY.wide, 2.4],
      [BODY.wide, undefined],
    ]),
  ];
}

/** Feeds toward the axis along the face. */
export function facing(_: ToolShown, place: Place): readonly Outline[] {
  const all = place.made.filter((e) => e.a.u === e.b.u);
  const u = Math.max(...all.map((e) => e.a.u));
  const walls = all.filter((e) => e.a.u === u);
  const [wall] = walls;
  if (!wall) return [];
  const r = Math.min(...walls.flatMap((e) => [e.a.r, e.b.r]));
  const way = metalAt(place.sketch.loops, { u: u + NEAR, r: (wall.a.r + wall.b.r) / 2 }) ? -1 : 1;
  const profile: Profile = [
    [0.8, undefined],
    [0.8, 4],
    [0, 0],
    [2.4, 0.8],
    [BODY.wide, 4],
    [BODY.wide, undefined],
  ];
  return [
    front(
      place,
      { u, r },
      profile.map(([x, y]) => [way * x, y]),
    ),
  ];
}

/** As wide as what it has cut, or as its kerf. */
export function blade({ side, wide }: ToolShown, place: Place): readonly Outline[] {
  const us = place.made.flatMap((e) => [e.a.u, e.b.u]);
  const rs = place.made.flatMap((e) => [e.a.r, e.b.r]);
  if (us.length === 0 || side === 'inside') return [];
  const right = Math.max(...us);
  const left = wide === undefined ? Math.min(...us) : right - 2 * radiusOf(wide);
  const tip = wide === undefined ? Math.min(...rs) : 0;
  const [width, clear] = [(right - left) / place.mm(1), Math.min(CLEAR, (right - left) / place.mm(4))];
  return [
    front(place, { u: left, r: tip }, [
      [clear, undefined],
      [clear, clear],
      [width - clear, clear],
      [width - clear, undefined],
    ]),
  ];
}

/** Across, out from the tip; undefined: past the rim. mm on paper */
type Profile = readonly (readonly [number, number | undefined])[];

function front({ shown, mm, out }: Place, tip: UR, profile: Profile): Outline {
  const past = shown.rim + mm(out.side);
  return { half: 'below', ring: profile.map(([x, y]) => ({ u: tip.u + mm(x), r: y === undefined ? past : tip.r + mm(y) })) };
}

/** From the tailstock's side into the bore, its bit at the wall. */
function bar(place: Place): readonly Outline[] {
  const tip = leftEnd(place.made.filter((e) => e.a.u !== e.b.u));
  return tip
    ? [
        inBore(place, tip, [
          [0.5, 1],
          [0, 0],
          [BODY.bit, 1],
        ]),
      ]
    : [];
}

/** `bit`: across, and in toward the bar, which is at 1. */
function inBore({ shown, mm, out }: Place, tip: UR, bit: readonly (readonly [number, number])[]): Outline {
  const stands = Math.min(mm(BODY.bit), tip.r / 3);
  const thick = Math.min(mm(BODY.bar), (tip.r - stands) * 0.9);
  const end = shown.right + mm(out.end);
  const front = bit[0]?.[0] ?? 0;
  const top = tip.r - stands;
  return {
    half: 'above',
    ring: [
      { u: end, r: top - thick },
      { u: tip.u + mm(front), r: top - thick },
      ...bit.map(([x, y]) => ({ u: tip.u + mm(x), r: tip.r - y * stands })),
      { u: end, r: top },
    ],
  };
}

/** Its edge lies along the bevel, a little longer at both ends where nothing is in its way. */
export function bevel({ side }: ToolShown, place: Place): readonly Outline[] {
  const slope = place.made.find((e) => e.a.u !== e.b.u && e.a.r !== e.b.r);
  if (!slope) return [];
  const [left, right] = slope.a.u < slope.b.u ? [slope.a, slope.b] : [slope.b, slope.a];
  const long = Math.hypot(right.u - left.u, right.r - left.r);
  const over = place.mm(1.5) / long;
  const on = (t: number): UR => ({ u: left.u + (right.u - left.u) * t, r: left.r + (right.r - left.r) * t });
  const reaching = (past: number, end: UR): UR =>
    metalAt(place.sketch.loops, past < 0 ? on(past / 2) : on((1 + past) / 2)) ? end : on(past);
  const [from, to] = [reaching(-over, left), reaching(1 + over, right)];
  if (side === 'inside')
    return [
      inBore(place, { u: from.u, r: to.r }, [
        [0, 1],
        [0, (to.r - from.r) / place.mm(1)],
        [(to.u - from.u) / place.mm(1), 0],
      ]),
    ];
  const past = place.shown.rim + place.mm(place.out.side);
  const back = Math.max(from.u, to.u) + place.mm(BODY.wide / 2);
  return [{ half: 'below', ring: [{ u: from.u, r: past }, from, to, { u: back, r: to.r }, { u: back, r: past }] }];
}

/** At the middle of its thread. */
export function vee({ side }: ToolShown, place: Place): readonly Outline[] {
  const band = place.sketch.bands.find((b) => b.made && b.side === side);
  if (!band) return [];
  const us = band.polygon.map((p) => p.u);
  const tip = { u: (Math.min(...us) + Math.max(...us)) / 2, r: rootOf(band.polygon, side) };
  if (side === 'inside')
    return [
      inBore(place, tip, [
        [-FLANK * BODY.bit, 1],
        [0, 0],
        [FLANK * BODY.bit, 1],
      ]),
    ];
  const half = BODY.wide / 2;
  return [
    front(place, tip, [
      [-half, undefined],
      [-half, half / FLANK],
      [0, 0],
      [half, half / FLANK],
      [half, undefined],
    ]),
  ];
}

/** At the headstock's end of what it has rolled: a knurled wheel in its holder, its axle along the work. It is pressed in, and cuts nothing. */
export function wheel({ rolls }: ToolShown, { sketch, shown, mm, out }: Place): readonly Outline[] {
  if (!rolls) return [];
  const ends = [rolls.from, rolls.to].map((z) => placed({ z, d: rolls.diameter }, sketch.out));
  const [left, right] = [Math.min(...ends.map((p) => p.u)), Math.max(...ends.map((p) => p.u))];
  const low = ends[0]?.r ?? 0;
  const wide = Math.min(mm(BODY.wide), right - left);
  const past = Math.max(shown.rim, low) + mm(out.side);
  const high = low + (past - low) * WHEEL;
  const cheek = mm(CLEAR * 2);
  const holder = [
    { u: left - cheek, r: past },
    { u: left - cheek, r: (low + high) / 2 },
    { u: left + wide + cheek, r: (low + high) / 2 },
    { u: left + wide + cheek, r: past },
  ];
  const round = [
    { u: left, r: low },
    { u: left, r: high },
    { u: left + wide, r: high },
    { u: left + wide, r: low },
    { u: left, r: low },
  ];
  return [
    { half: 'below', ring: holder },
    { half: 'below', ring: round, knurled: true },
  ];
}
/** Of what a knurling tool reaches out, as a share: its wheel. */
const WHEEL = 0.6;

function leftEnd(edges: readonly Edge[]): UR | undefined {
  const ends = edges.map((e) => (e.a.u < e.b.u ? e.a : e.b));
  return ends.reduce<UR | undefined>((best, p) => (best && best.u <= p.u ? best : p), undefined);
}
