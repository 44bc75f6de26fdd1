/** Small curves on one axis, a panel each, one over the other: what a size changes when it is taken through its values. */
import type { Advances, Box, Item, Picture } from '../model/display.ts';
import { type Lettering, line, polyline, rect, text, type XY } from './display.ts';

export type Panel = { readonly label: string; readonly values: readonly (number | undefined)[] };
export type CurvesAsk = {
  readonly title: string;
  /** `now`: which of the values stands. */
  readonly x: { readonly label: string; readonly values: readonly number[]; readonly now: number };
  readonly panels: readonly Panel[];
};

const WIDE = 90;
const HIGH = 30;
const LEFT = 16;
const RIGHT = 6;
const TOP = 8;
const GAP = 9;
const FOOT = 12;
const SMALL = 2.6;
const PLAIN = 3;
const DOT = 1.2;
const FRAME = { ink: 'mid', width: 0.18 } as const;
const CURVE = { ink: 'black', width: 0.5 } as const;
const NOW = { ink: 'mid', width: 0.18, dash: [1.5, 1] } as const;

/** Millimetres. A panel whose values do not vary is drawn as a level line; one without two values is left out. */
export function curves(ask: CurvesAsk, advances: Advances): Picture {
  const panels = ask.panels.filter((p) => p.values.filter((v) => v !== undefined).length > 1);
  const height = TOP + panels.length * (HIGH + GAP) + FOOT;
  const head = written({ advances, font: 'text-bold', size: PLAIN, ink: 'black' }, ask.title, { x: LEFT, y: PLAIN + 1 });
  const drawn = panels.flatMap((panel, i) => panelItems(panel, ask, TOP + i * (HIGH + GAP), advances));
  const base = TOP + panels.length * (HIGH + GAP);
  const small: Lettering = { advances, font: 'text', size: SMALL, ink: 'dark' };
  const ticks = ends(ask.x.values).map((value) => centred(small, show(value), { x: across(ask, value), y: base - 2 }));
  const foot = written(small, ask.x.label, { x: LEFT, y: base + 3 });
  return { width: WIDE, height, items: [head, ...drawn, ...ticks, foot], boxes: [] as readonly Box[], alt: ask.title };
}

function panelItems(panel: Panel, ask: CurvesAsk, top: number, advances: Advances): readonly Item[] {
  const known = panel.values.flatMap((v) => (v === undefined ? [] : [v]));
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const y = (v: number): number => top + 4 + (HIGH - 4) * (most === least ? 1 / 2 : (most - v) / (most - least));
  const points = ask.x.values.flatMap((x, i): XY[] => {
    const v = panel.values[i];
    return v === undefined ? [] : [{ x: across(ask, x), y: y(v) }];
  });
  const small: Lettering = { advances, font: 'text', size: SMALL, ink: 'dark' };
  const now = across(ask, ask.x.now);
  return [
    rect(LEFT, top + 4, WIDE - LEFT - RIGHT, HIGH - 4, { stroke: FRAME }),
    line(now, top + 4, now, top + HIGH, NOW),
    polyline(points, CURVE),
    ...points.map((p) => rect(p.x - DOT / 2, p.y - DOT / 2, DOT, DOT, { fill: 'black' })),
    written(small, panel.label, { x: LEFT, y: top + 3 }),
    ...(most === least ? [most] : [least, most]).map((v) => right(small, show(v), { x: LEFT - 1, y: y(v) + SMALL / 3 })),
  ];
}

function across({ x }: CurvesAsk, value: number): number {
  const [least, most] = [Math.min(...x.values), Math.max(...x.values)];
  return LEFT + 3 + (most === least ? 0 : ((value - least) / (most - least)) * (WIDE - LEFT - RIGHT - 6));
}

const ends = (values: readonly number[]): readonly number[] => [...new Set([Math.min(...values), Math.max(...values)])];
const show = (value: number): string => String(Number(value.toPrecision(3)));
const written = (lettering: Lettering, words: string, at: XY): Item => text(lettering, words, at.x, at.y);
const centred = (lettering: Lettering, words: string, at: XY): Item => text(lettering, words, at.x, at.y, 'middle');
const right = (lettering: Lettering, words: string, at: XY): Item => text(lettering, words, at.x, at.y, 'right');
