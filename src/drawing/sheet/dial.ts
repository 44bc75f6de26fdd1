/** A dial as it stands when an operation is done: nought at the top, counting clockwise, the hand at its reading, whole turns in the middle. */
import type { Item } from '../../model/display.ts';
import type { DialShown } from '../../model/sheet.ts';
import { arrowHead, circle, line, text, type XY } from '../display.ts';
import { type Paper, RULE, STYLES } from './type.ts';

/** Width and height of the frame, mm. */
export const DIAL = 29;
const MIDDLE = DIAL / 2;
const RIM = 10.4;
const TICK = { short: 0.9, middle: 1.5, long: 2.1 } as const;
const FIGURES = RIM + 2.1;
/** Of finer dials every other, or only every fifth division is drawn. */
const MOST_TICKS = 60;
const HAND = { from: 3.8, to: RIM - 2.4, head: 2.2, width: 0.6 } as const;

export function drawDial(paper: Pick<Paper, 'advances'>, { round, turns, divisions }: DialShown): readonly Item[] {
  const every = [1, 2, 5, 10].find((n) => round / n <= MOST_TICKS) ?? 10;
  const ticks = Array.from({ length: Math.ceil(round / every) }, (_, i) => i * every);
  const numbered = numbersOf(round);
  const small = { advances: paper.advances, ...STYLES.small, size: 2.6, ink: 'black' } as const;
  const angle = turned(divisions, round);
  return [
    circle(MIDDLE, MIDDLE, RIM, { stroke: { ink: 'black', width: RULE.heavy } }),
    ...ticks.map((n) => {
      const long = n % 10 === 0 ? TICK.long : n % 5 === 0 ? TICK.middle : TICK.short;
      const [a, b] = [at(turned(n, round), RIM), at(turned(n, round), RIM - long)];
      return line(a.x, a.y, b.x, b.y, { ink: 'black', width: RULE.thin });
    }),
    ...numbered.map((n) => {
      const p = at(turned(n, round), FIGURES);
      return text(small, String(n), p.x, p.y + small.size / 3, 'middle');
    }),
    ...hand(angle),
    ...(turns > 0
      ? [text({ advances: paper.advances, ...STYLES.second }, `${turns}×`, MIDDLE, MIDDLE + STYLES.second.size / 3, 'middle')]
      : []),
  ];
}

function hand(angle: number): readonly Item[] {
  const [from, to] = [at(angle, HAND.from), at(angle, HAND.to)];
  const degrees = 90 - (angle * 180) / Math.PI;
  return [line(from.x, from.y, to.x, to.y, { ink: 'new', width: HAND.width }), arrowHead(at(angle, RIM - 0.4), degrees, HAND.head, 'new')];
}

/** Clockwise from the top, in radians. */
const turned = (divisions: number, round: number): number => (2 * Math.PI * divisions) / round;

function at(angle: number, radius: number): XY {
  return { x: MIDDLE + radius * Math.sin(angle), y: MIDDLE - radius * Math.cos(angle) };
}

/** At most ten figures, on round divisions. */
function numbersOf(round: number): readonly number[] {
  const every = [5, 10, 20, 25, 50, 100].find((n) => round / n <= 10) ?? round;
  return Array.from({ length: Math.ceil(round / every) }, (_, i) => i * every).filter((n) => n === 0 || round - n > every / 2);
}
