/**
 * The graph of befores as SVG, in layers from top to bottom (after Sugiyama, Tagawa and Toda 1981): an operation stands below all that
 * must come before it; an arc over several layers keeps a lane in each. Arcs carry letters, told below with their rules.
 */
import type { Words } from '../base/words.ts';
import type { Graph, GraphArc } from './graph.ts';
import { FACES, INKS } from './inks.ts';
import { escapeXml } from './svg.ts';

// millimetres
const BOX = { width: 48, height: 8, gap: 5 };
const LANE = 5;
const LAYER = 24;
const MARGIN = 8;
const TEXT = 3;
const LINE = 5;
/** Sweeps down and up that bring neighbours together; more change little at this size. */
const SWEEPS = 8;

export function svgOfGraph(graph: Graph, words: Words): string {
  const drawn = layOut(graph);
  const letters = lettersOf(graph);
  const key = keyLines(letters, words);
  const keyTop = MARGIN + drawn.layers * LAYER;
  const [width, height] = [Math.max(drawn.width, longest(key) * TEXT * 0.6) + 2 * MARGIN, keyTop + key.length * LINE + MARGIN];
  const body = [
    ...graph.arcs.map((arc, i) => arcShape(arc, drawn.ways[i] ?? [], letters)),
    ...graph.nodes.map((n, i) => boxShape(n.label, n.bench === 'bench' ? INKS.panel : INKS.white, drawn.boxes[i] ?? { x: 0, y: 0 })),
    ...key.map((line, i) => textShape(line, MARGIN, keyTop + (i + 1) * LINE, 'start')),
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}" role="img">`,
    `<title>${escapeXml(graph.title)}</title>`,
    `<defs><marker id="end" viewBox="0 0 6 6" refX="6" refY="3" markerWidth="6" markerHeight="6" orient="auto"><path d="M0 0L6 3L0 6Z" fill="${INKS.dark}"/></marker></defs>`,
    `<rect width="${num(width)}" height="${num(height)}" fill="${INKS.white}"/>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}

type Point = { readonly x: number; readonly y: number };
type Drawn = {
  readonly width: number;
  readonly layers: number;
  readonly boxes: readonly Point[];
  readonly ways: readonly (readonly Point[])[];
};
/** A box, or the lane of an arc through a layer. */
type Cell = { readonly width: number; x: number; readonly beside: Cell[] };

function layOut(graph: Graph): Drawn {
  const layerOf = layersOf(graph);
  const layers = Math.max(0, ...layerOf) + 1;
  const rows: Cell[][] = Array.from({ length: layers }, () => []);
  const place = (width: number, layer: number): Cell => {
    const cell: Cell = { width, x: 0, beside: [] };
    rows[layer]?.push(cell);
    return cell;
  };
  const boxes = graph.nodes.map((_, i) => place(BOX.width, layerOf[i] ?? 0));
  const chains = graph.arcs.map((arc) => {
    const [top, bottom] = [layerOf[arc.first] ?? 0, layerOf[arc.then] ?? 0];
    const step = Math.sign(bottom - top);
    const between = Array.from({ length: Math.max(0, Math.abs(bottom - top) - 1) }, (_, k) => place(LANE, top + (k + 1) * step));
    return [boxes[arc.first], ...between, boxes[arc.then]].flatMap((cell) => cell ?? []);
  });
  for (const chain of chains)
    for (const [k, cell] of chain.entries()) cell.beside.push(...[chain[k - 1], chain[k + 1]].flatMap((c) => c ?? []));
  const width = arrange(rows);
  const y = new Map(rows.flatMap((row, layer) => row.map((cell) => [cell, MARGIN + layer * LAYER] as const)));
  const at = (cell: Cell, down: number): Point => ({ x: cell.x, y: (y.get(cell) ?? 0) + down });
  return {
    width,
    layers,
    boxes: boxes.map((cell) => at(cell, 0)),
    ways: chains.map((chain, i) => {
      const arc = graph.arcs[i];
      const [near, far] = arc && arc.first < arc.then ? [0, BOX.height] : [BOX.height, 0];
      const lanes = chain.slice(1, -1).flatMap((c) => [at(c, near), at(c, far)]);
      return [...chain.slice(0, 1).map((c) => at(c, far)), ...lanes, ...chain.slice(-1).map((c) => at(c, near))];
    }),
  };
}

/** Longest way from a start; what points back in the order of work does not count. */
function layersOf({ nodes, arcs }: Graph): readonly number[] {
  const layer = nodes.map(() => 0);
  nodes.forEach((_, i) => {
    for (const arc of arcs) if (arc.first === i && arc.then > i) layer[arc.then] = Math.max(layer[arc.then] ?? 0, (layer[i] ?? 0) + 1);
  });
  return layer;
}

/** Sets every cell's x; gives the width of all. */
function arrange(rows: readonly Cell[][]): number {
  const widths = rows.map((row) => row.reduce((sum, c) => sum + c.width + BOX.gap, -BOX.gap));
  const width = Math.max(BOX.width, ...widths);
  const spread = (row: readonly Cell[], i: number): void => {
    let x = MARGIN + (width - (widths[i] ?? 0)) / 2;
    for (const cell of row) {
      cell.x = x + cell.width / 2;
      x += cell.width + BOX.gap;
    }
  };
  rows.forEach(spread);
  const middle = ({ beside, x }: Cell): number => (beside.length === 0 ? x : beside.reduce((sum, c) => sum + c.x, 0) / beside.length);
  for (let n = 0; n < SWEEPS; n += 1)
    for (const [i, row] of [...rows.entries()]) {
      const wanted = new Map(row.map((cell) => [cell, middle(cell)]));
      row.sort((a, b) => (wanted.get(a) ?? 0) - (wanted.get(b) ?? 0));
      spread(row, i);
    }
  return width;
}

function lettersOf(graph: Graph): ReadonlyMap<string, string> {
  const rules = [...new Set(graph.arcs.flatMap((a) => a.rules))];
  return new Map(rules.map((rule, i) => [rule, letter(i)]));
}
const ALPHABET = 'abcdefghijklmnopqrstuvwxyz';
const letter = (i: number): string =>
  (i < ALPHABET.length ? '' : letter(Math.floor(i / ALPHABET.length) - 1)) + (ALPHABET[i % ALPHABET.length] ?? '');

function keyLines(letters: ReadonlyMap<string, string>, words: Words): readonly string[] {
  return [words.say('why.graph.key'), ...[...letters].map(([rule, sign]) => `${sign}  ${rule}`)];
}
const longest = (lines: readonly string[]): number => Math.max(...lines.map((l) => l.length));

function arcShape(arc: GraphArc, way: readonly Point[], letters: ReadonlyMap<string, string>): string {
  const [a, b] = way;
  if (!a || !b) return '';
  const curves = way.slice(1).map((to, i) => {
    const from = way[i] ?? to;
    const half = (from.y + to.y) / 2;
    return `C${num(from.x)} ${num(half)} ${num(to.x)} ${num(half)} ${num(to.x)} ${num(to.y)}`;
  });
  const dash = arc.force === 'preferred' ? ' stroke-dasharray="2 1.5"' : '';
  const told = escapeXml(arc.rules.join('; '));
  const line = `<path d="M${num(a.x)} ${num(a.y)}${curves.join('')}" fill="none" stroke="${INKS.dark}" stroke-width="0.35"${dash} marker-end="url(#end)"><title>${told}</title></path>`;
  const signs = arc.rules.map((rule) => letters.get(rule) ?? '').join(', ');
  return `${line}\n${textShape(signs, (a.x + 2 * b.x) / 3, (a.y + 2 * b.y) / 3, 'middle')}`;
}

function boxShape(label: string, fill: string, { x, y }: Point): string {
  const box = `<rect x="${num(x - BOX.width / 2)}" y="${num(y)}" width="${BOX.width}" height="${BOX.height}" fill="${fill}" stroke="${INKS.black}" stroke-width="0.35"/>`;
  return `${box}\n${textShape(label, x, y + BOX.height / 2 + TEXT / 3, 'middle')}`;
}

function textShape(text: string, x: number, y: number, anchor: 'start' | 'middle'): string {
  const { family, weight } = FACES.narrow;
  const halo = `stroke="${INKS.white}" stroke-width="0.9" paint-order="stroke"`;
  return `<text x="${num(x)}" y="${num(y)}" font-family="${family}" font-weight="${weight}" font-size="${TEXT}" text-anchor="${anchor}" fill="${INKS.black}" ${halo}>${escapeXml(text)}</text>`;
}

const num = (n: number): string => String(Math.round(n * 100) / 100 + 0);
