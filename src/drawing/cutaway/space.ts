/** Points in space, x to the right along the first cut, y up, z along the second cut toward the eye; and the eye that looks at them. */
import type { XY } from '../display.ts';

export type Place = { readonly x: number; readonly y: number; readonly z: number };
/** Where it stands, and its own axes: `right` and `up` on the picture, `toward` from what it looks at to itself. */
export type Eye = { readonly at: Place; readonly on: Place; readonly right: Place; readonly up: Place; readonly toward: Place };

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
  return { at: along(on, far, toward), on, right, up: cross(toward, right), toward };
}

/** In central perspective: sizes at what the eye looks at stay as they are. y downward. */
export function seenBy(eye: Eye, p: Place): XY {
  const from = less(p, eye.on);
  const far = dot(less(eye.at, eye.on), eye.toward);
  const share = far / (far - dot(from, eye.toward));
  return { x: share * dot(from, eye.right), y: -share * dot(from, eye.up) };
}
