/** A union nut and its nipple, for a pipe soldered into the nipple's tail. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len, len, minus, mm, toMm } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor, nextBar } from './bar.ts';
import { drilledHole, pipePocket } from './drawer.ts';
import { about, general, half, MM, ratio, size, stock, TENTH, tidy, times } from './limits.ts';
import { type Hole, partFrom, type Section } from './outline.ts';
import { insideChamfer, type ThreadPair } from './threads.ts';

export type UnionAsk = {
  readonly thread: ThreadPair;
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  readonly quantity: number;
  readonly material: string;
};

/** How deep a pipe sits in its socket: its own outside, three walls at least, and no further than solder runs. */
export function pipeOverlap({ outside, wall }: UnionAsk['pipe']): Len {
  const wants = Math.max(size('nipple.socket'), times(outside, ratio('solder.overlap.tube')), times(wall, ratio('solder.overlap.thin')));
  return tidy(len(Math.min(wants, size('solder.run'))), half(MM), 'up');
}

const tailLength = (ask: UnionAsk): Len => add(pipeOverlap(ask.pipe), size('nipple.tail.free'));
/** Round its pipe a wall as usual, and round a large one as much as can be held all round without giving. */
export function tailOf({ pipe }: Pick<UnionAsk, 'pipe'>): Len {
  const pocket = add(pipe.outside, size('pipe.fit'));
  const round = times(add(pocket, size('band.drilled')), 1 / (1 - 2 * ratio('grip.wall.round')));
  const least = [add(pocket, add(size('nipple.wall'), size('nipple.wall'))), add(round, size('band.clearance'))];
  return tidy(len(Math.max(...least)), TENTH, 'up');
}
export const headOf = (ask: Pick<UnionAsk, 'thread'>): Len =>
  tidy(minus(ask.thread.inside.minor.lo, size('nipple.head.under')), TENTH, 'down');

/** Floor of its nut: the head of the nipple is wider than the hole that the nut is passed over its tail by. */
export const nutHole = (ask: Pick<UnionAsk, 'pipe'>): Len => add(tailOf(ask), size('nut.clear'));
export const nutHasFloor = (ask: Pick<UnionAsk, 'pipe' | 'thread'>): boolean => nutHole(ask) < headOf(ask);

/** With the tapping bore from which on there would be one: a head is made to a tenth. */
export function noFloor(ask: Pick<UnionAsk, 'pipe' | 'thread'>): Diagnostic['grounds'] {
  const hole = nutHole(ask);
  return {
    thread: ask.thread.name,
    pipe: ask.pipe.outside,
    hole,
    head: headOf(ask),
    bored: add(add(hole, TENTH), size('nipple.head.under')),
  };
}

export function unionNut(ask: UnionAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const depth = size('nut.depth');
  const length = nutLength();
  const across = nextBar({ material: ask.material, section: 'hexagon' }, nutAcross(ask.thread), workshop);
  const hole = nutHole(ask);
  if (!nutHasFloor(ask)) found.push({ code: 'design.nut-has-no-floor', severity: 'error', grounds: noFloor(ask) });
  return partFrom({
    id: 'union-nut',
    kind: 'union-nut',
    quantity: ask.quantity,
    use: 'fitting',
    stock: barFor({ part: 'union-nut', material: ask.material, section: 'hexagon', across, turned: false }, workshop, found),
    first: { letter: 'M', role: 'clearance' },
    second: { letter: 'T', role: 'clearance' },
    sections: [{ name: 'hexagon', role: 'free', size: stock(across), length, section: 'hexagon', asStock: true }],
    holes: nutHoles(ask, depth, length, hole, workshop),
    lengths: [
      { from: 'M', to: 'L', limits: general(depth) },
      { from: 'M', to: 'T', limits: general(length) },
    ],
  });
}

/** A wall over its thread, and round the mouth of a large one as much as jaws on the hexagon may press on. */
function nutAcross({ outside, inside }: ThreadPair): Len {
  const over = tidy(add(outside.major.hi, size('nut.over-thread')), MM, 'near');
  const round = times(insideChamfer(inside).hi, 1 / (1 - 2 * ratio('grip.wall.ratio')));
  return len(Math.max(over, tidy(round, MM, 'up')));
}

export function nipple(ask: UnionAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const inside = pipeBore(ask.pipe);
  const tip = tipOf(inside);
  const cone = coneLength(headOf(ask), tip);
  const head = headOf(ask);
  const tail = tailLength(ask);
  const headLength = add(cone, size('nipple.head'));
  const length = add(headLength, tail);
  const socket = pipeOverlap(ask.pipe);
  return partFrom({
    id: 'nipple',
    kind: 'nipple',
    quantity: ask.quantity,
    use: 'fitting',
    stock: barFor({ part: 'nipple', material: ask.material, section: 'round', across: head, turned: true }, workshop, found),
    first: { letter: 'V', role: 'clearance' },
    second: { letter: 'E', role: 'clearance' },
    sections: nippleSections(ask, tip, headLength),
    holes: nippleHoles(ask, inside, length, workshop),
    lengths: [
      { from: 'V', to: 'H', limits: general(headLength) },
      { from: 'H', to: 'E', limits: general(tail) },
      { from: 'L', to: 'E', limits: general(socket) },
    ],
  });
}

export const nutLength = (): Len => add(size('nut.depth'), size('nut.floor'));
export const pipeBore = ({ outside, wall }: UnionAsk['pipe']): Len => minus(outside, add(wall, wall));
/** Small end of a nipple's cone, a wall left round its bore. */
export const tipOf = (bore: Len): Len => add(bore, add(size('nipple.tip.wall'), size('nipple.tip.wall')));
/** Never nothing: a head that is no wider than the tip is refused with its nut. */
export const coneLength = (head: Len, tip: Len): Len =>
  len(Math.max(TENTH, tidy(mm(toMm(half(minus(head, tip))) / Math.tan(radians(ratio('coupling.cone')))), TENTH, 'up')));

const radians = (includedAngle: number): number => ((includedAngle / 2) * Math.PI) / HALF_TURN;
const HALF_TURN = ratio('turn.half');

function nutHoles(ask: UnionAsk, depth: Len, length: Len, hole: Len, workshop: Workshop): readonly Hole[] {
  return [
    {
      name: 'socket',
      role: 'thread',
      size: ask.thread.inside.minor,
      from: len(0),
      to: depth,
      opens: ['first'],
      floor: { letter: 'L', role: 'register' },
      thread: {
        size: ask.thread.inside,
        to: minus(depth, mm(toMm(ask.thread.inside.pitch) * ratio('thread.dead'))),
        chamfer: insideChamfer(ask.thread.inside),
      },
    },
    {
      name: 'hole',
      role: 'clearance',
      size: drilledHole(hole, workshop),
      from: depth,
      to: length,
      opens: ['first', 'second'],
    },
  ];
}

function nippleSections(ask: UnionAsk, tip: Len, headLength: Len): readonly Section[] {
  const head = headOf(ask);
  const tail = tailLength(ask);
  return [
    {
      name: 'head',
      role: 'clearance',
      size: about(minus(head, size('band.clearance')), size('band.clearance'), 'passes the nut'),
      length: headLength,
      cone: { at: 'first', angle: ratio('coupling.cone'), mouth: about(tip, size('band.cone.mouth'), 'union cone'), role: 'sealing' },
      shoulder: { letter: 'H', role: 'register' },
    },
    { name: 'tail', role: 'clearance', size: about(tailOf(ask), size('band.clearance'), 'passes the nut'), length: tail },
  ];
}

function nippleHoles(ask: UnionAsk, inside: Len, length: Len, workshop: Workshop): readonly Hole[] {
  const socket = pipeOverlap(ask.pipe);
  return [
    {
      name: 'bore',
      role: 'clearance',
      size: drilledHole(inside, workshop),
      from: len(0),
      to: minus(length, socket),
      opens: ['first', 'second'],
    },
    {
      name: 'socket',
      role: 'register',
      size: pipePocket(ask.pipe.outside, workshop),
      from: minus(length, socket),
      to: length,
      opens: ['second'],
      floor: { letter: 'L', role: 'free' },
    },
  ];
}
