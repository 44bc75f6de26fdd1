/** `look square`: a square of this size across, and the squares that a round of this size takes. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len, showMm } from '../../base/units.ts';
import { squareCorners, squareWithin } from '../bar-stock.ts';
import { cite } from '../sources.ts';
import { pairsOfRound, pairsOfSquare, type SquarePair, squareOn, wheelSquare } from '../squares.ts';
import { type Ask, type Found, grounds, length, limits, type Part, row, rowAbout } from './answer.ts';

/** '6 mm'; '6 on 8' for one square on one round. */
export function lookSquare({ words }: Ask): Found {
  const [first = '', second] = words.split(/\s+on\s+/);
  const [size, round] = [sizeOf(first), second === undefined ? undefined : sizeOf(second)];
  if (size === undefined || (second !== undefined && (round === undefined || round < size)))
    return { unknown: words, near: ['6 mm', '4.9 on 6', '1/4 in'] };
  const wheel = wheelSquare(size);
  const pairs = [...pairsOfSquare(size), ...pairsOfRound(size)];
  return {
    answer: {
      subject: 'square',
      name: second === undefined ? showMm(size) : `${showMm(size)} / ${showMm(round ?? size)}`,
      parts: round === undefined ? [acrossPart(size), roundPart(size), ...wheelPart(wheel)] : [onePart(size, round)],
      notes: ['square-check'],
      sources: grounds(
        { source: cite('here', 'geometry'), standing: 'derived' },
        ...pairs,
        wheel && { source: wheel.source, standing: 'standard' },
      ),
    },
  };
}

function sizeOf(text: string): Len | undefined {
  const size = readQuantity(text.trim(), 'length');
  return typeof size === 'number' && size > 0 ? len(size) : undefined;
}

function acrossPart(across: Len): Part {
  const rows = [row('full-round', length(squareCorners(across))), ...pairsOfSquare(across).map((p) => pairRow(p))];
  return { title: 'across', about: showMm(across), rows };
}

function roundPart(round: Len): Part {
  const full = squareWithin(round);
  return {
    title: 'on-round',
    about: showMm(round),
    rows: [row('full-square', length(full)), ...pairsOfRound(round).map((p) => pairRow(p))],
  };
}

function pairRow({ round, across }: SquarePair) {
  const s = squareOn(round, across);
  return rowAbout('pair', `${showMm(across)} / ${showMm(round)}`, length(s.flat), length(s.width));
}

function onePart(across: Len, round: Len): Part {
  const s = squareOn(round, across);
  const rows = [
    row('flat', length(s.flat)),
    row('flat-width', length(s.width)),
    row('over-one', length(s.overOne)),
    row('sharp-corner', length(s.sharpCorner)),
  ];
  return { title: 'one', about: `${showMm(across)} / ${showMm(round)}`, rows };
}

function wheelPart(wheel: ReturnType<typeof wheelSquare>): readonly Part[] {
  if (!wheel) return [];
  return [
    {
      title: 'wheel',
      rows: [
        row('diagonal', limits(wheel.diagonal)),
        row('hole-diagonal', length(wheel.holeLeast)),
        row('wheel-bore', length(wheel.boreMost)),
      ],
    },
  ];
}
