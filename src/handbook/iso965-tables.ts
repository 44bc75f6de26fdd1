/**
 * ISO 965-1: fundamental deviations and tolerances of metric threads, in micrometres. A blank of the standard is NaN here: no such
 * grade. The printed table rules over its own formula (they differ in about one entry in eight, e.g. TD1 grade 6 at pitch 1: formula
 * 230, table 236); the formulas stand in iso965-metric.ts for pairs that no table holds.
 */

const NONE = Number.NaN;

/** Grade to its column. Lengths in mm, all else in um. */
export type DeviationRow = { readonly pitch: number; readonly e: number; readonly f: number; readonly g: number; readonly G: number };
export type CrestRow = {
  readonly pitch: number;
  readonly outside: Readonly<Record<string, number>>;
  readonly inside: Readonly<Record<string, number>>;
};
export type PitchRow = { readonly over: number; readonly to: number } & CrestRow;

type N = number;
/** Table 1. g was checked against a published list of limits; e and f are from memory, f not verified. h and H are nought. */
const DEVIATIONS: readonly (readonly [pitch: N, e: N, f: N, g: N, G: N])[] = [
  [0.2, NONE, NONE, -17, 17],
  [0.25, NONE, NONE, -18, 18],
  [0.3, NONE, -33, -18, 18],
  [0.35, NONE, -34, -19, 19],
  [0.4, NONE, -34, -19, 19],
  [0.45, NONE, -35, -20, 20],
  [0.5, -50, -36, -20, 20],
  [0.6, -53, -36, -21, 21],
  [0.7, -56, -38, -22, 22],
  [0.75, -56, -38, -22, 22],
  [0.8, -60, -38, -24, 24],
  [1, -60, -40, -26, 26],
  [1.25, -63, -42, -28, 28],
  [1.5, -67, -45, -32, 32],
  [1.75, -71, -48, -34, 34],
  [2, -71, -52, -38, 38],
  [2.5, -80, -58, -42, 42],
  [3, -85, -63, -48, 48],
  [3.5, -90, -70, -53, 53],
  [4, -95, -75, -60, 60],
];

/** Td of the major diameter outside (grades 4, 6, 8) and TD1 of the minor inside (4 to 8). Grade 6 verified; the rest from memory. */
const CRESTS: readonly (readonly [pitch: N, td4: N, td6: N, td8: N, tD4: N, tD5: N, tD6: N, tD7: N, tD8: N])[] = [
  [0.2, 36, 56, NONE, 38, NONE, NONE, NONE, NONE],
  [0.25, 42, 67, NONE, 45, 56, NONE, NONE, NONE],
  [0.3, 48, 75, NONE, 53, 67, 85, NONE, NONE],
  [0.35, 53, 85, NONE, 63, 80, 100, NONE, NONE],
  [0.4, 60, 95, NONE, 71, 90, 112, NONE, NONE],
  [0.45, 63, 100, NONE, 80, 100, 125, NONE, NONE],
  [0.5, 67, 106, NONE, 90, 112, 140, 180, NONE],
  [0.6, 80, 125, NONE, 100, 125, 160, 200, NONE],
  [0.7, 90, 140, NONE, 112, 140, 180, 224, NONE],
  [0.75, 90, 140, NONE, 118, 150, 190, 236, NONE],
  [0.8, 95, 150, 236, 125, 160, 200, 250, 315],
  [1, 112, 180, 280, 150, 190, 236, 300, 375],
  [1.25, 132, 212, 335, 170, 212, 265, 335, 425],
  [1.5, 150, 236, 375, 190, 236, 300, 375, 475],
  [1.75, 170, 265, 425, 212, 265, 335, 425, 530],
  [2, 180, 280, 450, 236, 300, 375, 475, 600],
  [2.5, 212, 335, 530, 280, 355, 450, 560, 710],
  [3, 236, 375, 600, 315, 400, 500, 630, 800],
  [3.5, 265, 425, 670, 355, 450, 560, 710, 900],
  [4, 300, 475, 750, 375, 475, 600, 750, 950],
];

/** Td2 outside (grades 3 to 9) and TD2 inside (4 to 8), by range of diameter: over, up to and with. */
const PITCHES: readonly (readonly [over: N, to: N, pitch: N, outside3to9: readonly N[], inside4to8: readonly N[]])[] = [
  [1.4, 2.8, 0.2, [25, 32, 40, 50, NONE, NONE, NONE], [42, NONE, NONE, NONE, NONE]],
  [1.4, 2.8, 0.25, [28, 36, 45, 56, NONE, NONE, NONE], [48, 60, NONE, NONE, NONE]],
  [1.4, 2.8, 0.35, [32, 40, 50, 63, 80, NONE, NONE], [53, 67, 85, NONE, NONE]],
  [1.4, 2.8, 0.4, [34, 42, 53, 67, 85, NONE, NONE], [56, 71, 90, NONE, NONE]],
  [1.4, 2.8, 0.45, [36, 45, 56, 71, 90, NONE, NONE], [60, 75, 95, NONE, NONE]],
  [2.8, 5.6, 0.35, [34, 42, 53, 67, 85, NONE, NONE], [56, 71, 90, NONE, NONE]],
  [2.8, 5.6, 0.5, [38, 48, 60, 75, 95, NONE, NONE], [63, 80, 100, 125, NONE]],
  [2.8, 5.6, 0.6, [42, 53, 67, 85, 106, NONE, NONE], [71, 90, 112, 140, NONE]],
  [2.8, 5.6, 0.7, [45, 56, 71, 90, 112, NONE, NONE], [75, 95, 118, 150, NONE]],
  [2.8, 5.6, 0.75, [45, 56, 71, 90, 112, NONE, NONE], [75, 95, 118, 150, NONE]],
  [2.8, 5.6, 0.8, [48, 60, 75, 95, 118, 150, 190], [80, 100, 125, 160, 200]],
  [5.6, 11.2, 0.75, [50, 63, 80, 100, 125, NONE, NONE], [85, 106, 132, 170, NONE]],
  [5.6, 11.2, 1, [56, 71, 90, 112, 140, 180, 224], [95, 118, 150, 190, 236]],
  [5.6, 11.2, 1.25, [60, 75, 95, 118, 150, 190, 236], [100, 125, 160, 200, 250]],
  [5.6, 11.2, 1.5, [67, 85, 106, 132, 170, 212, 265], [112, 140, 180, 224, 280]],
  [11.2, 22.4, 1, [60, 75, 95, 118, 150, 190, 236], [100, 125, 160, 200, 250]],
  [11.2, 22.4, 1.25, [67, 85, 106, 132, 170, 212, 265], [112, 140, 180, 224, 280]],
  [11.2, 22.4, 1.5, [71, 90, 112, 140, 180, 224, 280], [118, 150, 190, 236, 300]],
  [11.2, 22.4, 1.75, [75, 95, 118, 150, 190, 236, 300], [125, 160, 200, 250, 315]],
  [11.2, 22.4, 2, [80, 100, 125, 160, 200, 250, 315], [132, 170, 212, 265, 335]],
  [11.2, 22.4, 2.5, [85, 106, 132, 170, 212, 265, 335], [140, 180, 224, 280, 355]],
  [22.4, 45, 1, [63, 80, 100, 125, 160, 200, 250], [106, 132, 170, 212, NONE]],
  [22.4, 45, 1.5, [75, 95, 118, 150, 190, 236, 300], [125, 160, 200, 250, 315]],
  [22.4, 45, 2, [85, 106, 132, 170, 212, 265, 335], [140, 180, 224, 280, 355]],
  [22.4, 45, 3, [100, 125, 160, 200, 250, 315, 400], [170, 212, 265, 335, 425]],
  [22.4, 45, 3.5, [106, 132, 170, 212, 265, 335, 425], [180, 224, 280, 355, 450]],
  [22.4, 45, 4, [112, 140, 180, 224, 280, 355, 450], [190, 236, 300, 375, 475]],
];

export const deviations: readonly DeviationRow[] = DEVIATIONS.map(([pitch, e, f, g, G]) => ({ pitch, e, f, g, G }));
export const crests: readonly CrestRow[] = CRESTS.map(([pitch, td4, td6, td8, ...inside]) => ({
  pitch,
  outside: { 4: td4, 6: td6, 8: td8 },
  inside: graded(4, inside),
}));
export const pitches: readonly PitchRow[] = PITCHES.map(([over, to, pitch, outside, inside]) => ({
  over,
  to,
  pitch,
  outside: graded(3, outside),
  inside: graded(4, inside),
}));

function graded(first: number, values: readonly number[]): Readonly<Record<string, number>> {
  return Object.fromEntries(values.map((value, i) => [String(first + i), value]));
}
