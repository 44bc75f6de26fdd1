/**
 * Lines of the half-section: diameter as a function of z. Their places and diameters are whole units; a slope (from an angle) and a
 * meeting point are doubles, worked out when asked for and never written back into a line.
 */

/** diameter(z) = d + slope * (z - this.z) */
export type Line = { readonly z: number; readonly d: number; readonly slope: number };

/**
 * Two places this near count as one: a thousandth of a unit (0.1 nm). Doubles hold places on a bar of half a metre to a millionth of
 * a unit, so what is derived twice meets well within it, and no two places of a drawing are so near.
 */
export const TOUCH = 1e-3;

export const level = (d: number): Line => ({ z: 0, d, slope: 0 });

export function at(line: Line, z: number): number {
  return line.slope === 0 ? line.d : line.d + line.slope * (z - line.z);
}

/** z where the two meet; nothing when they never do, or lie one on the other. */
export function meeting(p: Line, q: Line): number | undefined {
  const turn = p.slope - q.slope;
  if (turn === 0) return undefined;
  return (q.d - q.slope * q.z - p.d + p.slope * p.z) / turn;
}

/** z where the line has that diameter. Nothing for a level line. */
export function reaches(line: Line, d: number): number | undefined {
  return line.slope === 0 ? undefined : line.z + (d - line.d) / line.slope;
}

/** Change of diameter a length of a cone of that included angle, in degrees: 2 tan(angle / 2). */
export function steepness(includedAngle: number): number {
  return 2 * Math.tan((includedAngle * Math.PI) / 360);
}
