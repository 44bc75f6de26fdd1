/** Where the work lies on paper, the line widths that every picture uses, and what a drawing step hands on. */
import type { Box, Item } from '../model/display.ts';
import type { Stroke, XY } from './display.ts';
import type { UR } from './sketch.ts';

/** `left`: x of u0; `axis`: y of the centre line; `scale`: mm on paper a mm of work. */
export type Paper = { readonly scale: number; readonly u0: number; readonly left: number; readonly axis: number };
export type Half = 'above' | 'below';
/** What a step draws, and the boxes that its texts and marks fill. */
export type Layer = { readonly items: readonly Item[]; readonly boxes: readonly Box[] };

/** Line groups of ISO 128-2: wide and narrow 2:1 (0.35/0.18). New surfaces are wider still, so that a grey print tells them apart. */
export const WIDE: Stroke = { ink: 'black', width: 0.35 };
export const NARROW: Stroke = { ink: 'black', width: 0.18 };
export const MADE: Stroke = { ink: 'new', width: 0.8 };
export const HATCHED: Stroke = { ink: 'dark', width: 0.13 };
/** Centre line, type 04.1; outline before the cut and the bar, type 05.1. Elements in line widths: long dash 24, gap 3, dot 0.5 (ISO 128-2). */
export const CENTRE: Stroke = { ink: 'black', width: 0.18, dash: [4.3, 0.6, 0.3, 0.6] };
export const FORMER: Stroke = { ink: 'mid', width: 0.18, dash: [2.2, 0.6, 0.3, 0.6, 0.3, 0.6] };

export const NOTHING: Layer = { items: [], boxes: [] };

export function joined(layers: readonly Layer[]): Layer {
  return { items: NOTHING.items.concat(...layers.map((l) => l.items)), boxes: NOTHING.boxes.concat(...layers.map((l) => l.boxes)) };
}

export function across(paper: Paper, u: number): number {
  return paper.left + (u - paper.u0) * paper.scale;
}

export function level(paper: Paper, r: number, half: Half): number {
  return half === 'above' ? paper.axis - r * paper.scale : paper.axis + r * paper.scale;
}

export function onPaper(paper: Paper, at: UR, half: Half): XY {
  return { x: across(paper, at.u), y: level(paper, at.r, half) };
}

export function ringOnPaper(paper: Paper, ring: readonly UR[], half: Half): readonly XY[] {
  return ring.map((p) => onPaper(paper, p, half));
}
