/** What a lathe's motor gives at a speed. A motor with an electronic drive pulls no harder when it is slowed: its power falls with its speed. */

/**
 * Watts at the motor at `speed` turns a minute: full from `fullFrom` up to `to`, below that in proportion. Of ranges that reach the speed the
 * strongest counts; a lathe without ranges has full power everywhere; over the fastest range there is none.
 */
export function powerAt(motor: number, ranges: readonly { readonly to: number; readonly fullFrom: number }[], speed: number): number {
  if (ranges.length === 0) return motor;
  const reached = ranges.filter((range) => range.to >= speed);
  return motor * Math.max(0, ...reached.map(({ fullFrom }) => Math.min(1, speed / fullFrom)));
}

/** N m for so many watts at so many turns a minute: 60 P / (2 pi n). */
export function torque(watts: number, speed: number): number {
  return (60 * watts) / (2 * Math.PI * speed);
}
