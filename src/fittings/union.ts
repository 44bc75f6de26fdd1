/** A union nut and its nipple, for a pipe soldered into the nipple's tail. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len, len, minus, mm, toMm } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor, nextBar } from './bar.ts';
import { drilledHole } from './drawer.ts';
import { about, between, general, half, MM, ratio, size, stock, TENTH, tidy } from './limits.ts';
import { type Hole, partFrom, type Section } from './outline.ts';
import { insideChamfer, type ThreadPair } from './threads.ts';

export type UnionAsk = {
  readonly thread: ThreadPair;
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  readonly quantity: number;
  readonly material: string;
};

const tailOf = (ask: UnionAsk): Len =>
  tidy(add(add(ask.pipe.outside, size('pipe.fit')), add(size('nipple.wall'), size('nipple.wall'))), TENTH, 'up');
const headOf = (ask: UnionAsk): Len => tidy(minus(ask.thread.inside.minor.lo, size('nipple.head.under')), TENTH, 'down');

export function unionNut(ask: UnionAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const depth = size('nut.depth');
  const length = add(depth, size('nut.floor'));
  const least = tidy(add(ask.thread.outside.major.hi, size('nut.over-thread')), MM, 'near');
  const across = nextBar({ material: ask.material, section: 'hexagon' }, least, workshop);
  const hole = add(tailOf(ask), size('nut.clear'));
  if (hole >= headOf(ask))
    found.push({
      code: 'design.nut-has-no-floor',
      severity: 'error',
      grounds: { thread: ask.thread.name, pipe: ask.pipe.outside, hole, head: headOf(ask) },
    });
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

export function nipple(ask: UnionAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const inside = minus(ask.pipe.outside, add(ask.pipe.wall, ask.pipe.wall));
  const tip = add(inside, add(size('nipple.tip.wall'), size('nipple.tip.wall')));
  const head = headOf(ask);
  const cone = tidy(mm(toMm(half(minus(head, tip))) / Math.tan(radians(ratio('coupling.cone')))), TENTH, 'up');
  const tail = size('nipple.tail');
  const headLength = add(cone, size('nipple.head'));
  const length = add(headLength, tail);
  const socket = size('nipple.socket');
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
  const tail = size('nipple.tail');
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
  const socket = size('nipple.socket');
  const pocket = add(ask.pipe.outside, size('pipe.fit'));
  const drilled = size('band.drilled');
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
      size: between(pocket, add(pocket, drilled), pocket, 'solder fit'),
      from: minus(length, socket),
      to: length,
      opens: ['second'],
      floor: { letter: 'L', role: 'free' },
    },
  ];
}
