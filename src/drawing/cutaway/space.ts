/** Points in space, x to the right along the first cut, y up, z along the second cut toward the eye; and the eye that looks at them. */
import type { XY } from '../display.ts';

export type Place = { readonly x: number; readonly y: number; readonly z: number };
/** Where it stands, `far` from what it looks at; and its own axes: `right` and `up` on the picture, `toward` from what it looks at to itself. */
export type Eye = {
  readonly at: Place;
  readonly on: Place;
  readonly far: number;
  readonly right: Place;
  readonly up: Place;
  readonly toward: Place;
};

export const dot = (p: Place, q: Place): number => p.x * q.x + p.y * q.y + p.z * q.z;
export const less = (p: Place, q: Place): Place => ({ x: p.x - q.x, y: p.y - q.y, z: p.z - q.z });
export const along = (p: Place, by: number, q: Place): Place => ({ x: p.x + by * q.x, y: p.y + by * q.y, z: p.z + by * q.z });
export const cross = (p: Place, q: Place): Place => ({ x: p.y * q.z - p.z * q.y, y: p.z * q.x - p.x * q.z, z: p.x * q.y - p.y * q.x });
export const long = (p: Place): number => Math.sqrt(dot(p, p));

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** `turn`: degrees from x toward z; `rise`: degrees over the level; `far`: from `on`, in the units of the places. */
export function eyeOn(on: Place, { turn, rise, far }: { readonly turn: number; readonly rise: number; readonly far: number }): Eye {
  const [t, r] = [radians(turn), radians(rise)];
  const toward = { x: Math.cos(r) * Math.cos(t), y: Math.sin(r), z: Math.cos(r) * Math.sin(t) };
  const right = { x: Math.sin(t), y: 0, z: -Math.cos(t) };
  const at = along(on, far, toward);
  return { at, on, far: dot(less(at, on), toward), right, up: cross(toward, right), toward };
}

/** In central perspective: sizes at what the eye looks at stay as they are. y downward. Asked ten thousand times a picture: written out. */
export function seenBy({ on, far, right, up, toward }: Eye, p: Place): XY {
  const x = p.x - on.x;
  const y = p.y - on.y;
  const z = p.z - on.z;
  const share = far / (far - (x * toward.x + y * toward.y + z * toward.z));
  return { x: share * (x * right.x + y * right.y + z * right.z), y: -share * (x * up.x + y * up.y + z * up.z) };
}
