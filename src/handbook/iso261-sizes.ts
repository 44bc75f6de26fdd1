/** Which metric threads there are from M1.6 to M30: the diameters and pitches of ISO 261, and fine ones of the trade beside them. */

type N = number;
/** `coarse` absent: the diameter has fine pitches only. mm. */
export type MetricSize = {
  readonly diameter: N;
  readonly choice: 1 | 2 | 3;
  readonly coarse?: N;
  readonly fine: readonly N[];
  readonly trade: readonly N[];
};

/**
 * ISO 261:1998, general plan, from memory; agrees with the extract to M11 in the Manual of Engineering Drawing, table 17.1. Coarse 0:
 * none. M14x1.25 is for spark plugs. `trade`: constant-pitch fine threads used on small fittings that ISO 261 does not list.
 */
const SIZES: readonly (readonly [diameter: N, choice: 1 | 2 | 3, coarse: N, fine: readonly N[], trade: readonly N[]])[] = [
  [1.6, 1, 0.35, [0.2], []],
  [1.8, 2, 0.35, [0.2], []],
  [2, 1, 0.4, [0.25], []],
  [2.2, 2, 0.45, [0.25], []],
  [2.5, 1, 0.45, [0.35], []],
  [3, 1, 0.5, [0.35], []],
  [3.5, 2, 0.6, [0.35], []],
  [4, 1, 0.7, [0.5], []],
  [4.5, 2, 0.75, [0.5], []],
  [5, 1, 0.8, [0.5], []],
  [5.5, 3, 0, [0.5], []],
  [6, 1, 1, [0.75], [0.5]],
  [7, 2, 1, [0.75], [0.5]],
  [8, 1, 1.25, [1, 0.75], [0.5]],
  [9, 3, 1.25, [1, 0.75], [0.5]],
  [10, 1, 1.5, [1.25, 1, 0.75], [0.5]],
  [11, 3, 1.5, [1, 0.75], []],
  [12, 1, 1.75, [1.5, 1.25, 1], [0.75]],
  [14, 2, 2, [1.5, 1.25, 1], [0.75]],
  [15, 3, 0, [1.5, 1], []],
  [16, 1, 2, [1.5, 1], [0.75]],
  [17, 3, 0, [1.5, 1], []],
  [18, 2, 2.5, [2, 1.5, 1], []],
  [20, 1, 2.5, [2, 1.5, 1], []],
  [22, 2, 2.5, [2, 1.5, 1], []],
  [24, 1, 3, [2, 1.5, 1], []],
  [25, 3, 0, [2, 1.5, 1], []],
  [26, 3, 0, [1.5], []],
  [27, 2, 3, [2, 1.5, 1], []],
  [28, 3, 0, [2, 1.5, 1], []],
  [30, 1, 3.5, [2, 1.5, 1], []],
];

export const metricSizes: readonly MetricSize[] = SIZES.map(([diameter, choice, coarse, fine, trade]) => ({
  diameter,
  choice,
  fine,
  trade,
  ...(coarse > 0 ? { coarse } : {}),
}));
