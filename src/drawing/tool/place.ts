/** Where a tool stands, and what comes of it: shared by all forms of tools. */
import type { Len } from '../../base/units.ts';
import type { Half } from '../paper.ts';
import { type Edge, placed, type Sketch, type UR } from '../sketch.ts';
import type { Window } from '../window.ts';

/**
 * `edge`: what of the ring is drawn as a line; the tool goes on where it is open, as it does between the ring's last point and its first.
 * `knurled`: crossed hatching, as on the work.
 */
export type Outline = { readonly half: Half; readonly ring: readonly UR[]; readonly edge?: readonly UR[]; readonly knurled?: true };
/** `made`: the edges that it has cut; `mm`: from paper to work; `out`: how far it reaches out, mm on paper. */
export type Place = {
  readonly made: readonly Edge[];
  readonly sketch: Sketch;
  readonly shown: Window;
  readonly mm: (onPaper: number) => number;
  readonly out: Out;
};
/** Past the work, away from the axis and past its end; mm on paper. */
export type Out = { readonly side: number; readonly end: number };

/** Where there is room. */
export const OUT: Out = { side: 7, end: 10 };
/** On paper, mm: the body of what is held in the tool post; how far the edge of a boring tool stands out of its bar. */
export const BODY = { wide: 6, bar: 5, bit: 1.3 } as const;
/** On paper, mm: what is new stays in sight beside the tool that made it. */
export const CLEAR = 0.45;
export const NEAR = 1e-6;
/** Half of the 60 degrees of a thread's form, and of a centre hole. */
export const FLANK = Math.tan(Math.PI / 6);

/** mm */
export const radiusOf = (diameter: Len): number => placed({ z: 0, d: diameter }, 'second').r;
