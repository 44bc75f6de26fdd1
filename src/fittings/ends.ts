/**
 * How a fitting meets its pipe: by a union, by a plain socket that the pipe is soldered into, or by a flange on a spigot. What stands on the
 * part itself is a stretch of outline (`endOf`); the flange is a part of its own, silver-soldered on and drilled at the bench.
 */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len, len, minus, showMm, toMm } from '../base/units.ts';
import { FLANGE_SOURCE, ringPlateFactor, ringPlateStress } from '../handbook/flange.ts';
import { boreArea } from '../handbook/valve-ball.ts';
import type { BoughtItem, Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor } from './bar.ts';
import { type Book, CUSTOM, note, refuse } from './book.ts';
import { couplingCone, couplingLength, couplingSection } from './coupling.ts';
import { pipePocket } from './drawer.ts';
import { about, between, general, half, MM, ratio, size, TENTH, tidy, times } from './limits.ts';
import { type EndAsk, type Hole, type OutlineAsk, partFrom, type Section, type Side } from './outline.ts';
import type { Wall } from './strength.ts';
import { reliefOf, type ThreadPair } from './threads.ts';
import { pipeOverlap } from './union.ts';

export const END_FORMS = ['union', 'plain', 'flanged'] as const;
export type EndForm = (typeof END_FORMS)[number];

export type EndSizes = {
  readonly form: EndForm;
  readonly coupling: ThreadPair;
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  /** Bore that comes to this end. */
  readonly bore: Len;
};

/** A stretch of outline at the second end of a part, from the shoulder `letter` on. */
export type EndOutline = {
  /** Least diameter of what the part carries behind it. */
  readonly collar: Len;
  readonly length: Len;
  readonly sections: readonly Section[];
  readonly end: EndAsk;
  /** Where the part's own bore stops short of the end, and what takes it up from there. */
  readonly socket?: Len;
  readonly holes: (length: Len, workshop: Workshop) => readonly Hole[];
  readonly cone?: NonNullable<Hole['cone']>;
  readonly lengths: OutlineAsk['lengths'];
};

export function endOf(sizes: EndSizes, letter: string): EndOutline {
  return FORMS[sizes.form](sizes, letter);
}

const FORMS: Readonly<Record<EndForm, (sizes: EndSizes, letter: string) => EndOutline>> = {
  union: ({ coupling }, letter) => ({
    collar: tidy(add(coupling.outside.major.hi, size('branch.collar.over')), MM, 'near'),
    length: couplingLength(coupling),
    sections: [couplingSection(coupling, 'second')],
    end: { letter: 'E', role: 'sealing' },
    holes: () => [],
    cone: couplingCone(coupling, 'second'),
    lengths: [{ from: letter, to: 'coupling.wall', limits: reliefOf(coupling.outside).width }],
  }),
  plain: ({ pipe }) => {
    const socket = pipeOverlap(pipe);
    return {
      collar: plainCollar(pipe),
      length: add(socket, size('nipple.tail.free')),
      sections: [],
      end: { letter: 'E', role: 'clearance' },
      socket,
      holes: (length, workshop) => [pipeSocket(pipe, socket, length, workshop)],
      lengths: [{ from: 'L', to: 'E', limits: general(socket) }],
    };
  },
  flanged: ({ bore }) => {
    const { spigot, hole, length } = flangeSpigot(bore);
    const limits = between(minus(hole, size('solder.fit.most')), minus(hole, size('solder.fit.least')), spigot, 'solder fit');
    return {
      collar: tidy(add(spigot, size('flange.collar')), half(MM), 'up'),
      length,
      sections: [{ name: 'flange-spigot', role: 'register', size: limits, length }],
      end: { letter: 'E', role: 'clearance' },
      holes: () => [],
      lengths: [],
    };
  },
};

const plainCollar = ({ outside }: EndSizes['pipe']): Len =>
  tidy(add(add(outside, size('pipe.fit')), add(size('wall.least'), size('wall.least'))), MM, 'up');

/** As a nipple has it: the pipe stands on its floor while it is soldered. */
function pipeSocket(pipe: EndSizes['pipe'], depth: Len, length: Len, workshop: Workshop): Hole {
  return {
    ...{ name: 'socket', role: 'register', from: minus(length, depth), to: length, opens: ['second'] },
    size: pipePocket(pipe.outside, workshop),
    floor: { letter: 'L', role: 'free' },
  };
}

/** What a flange is soldered on, its hole, and how long the spigot is: a little short of the joint face. */
export function flangeSpigot(bore: Len): { readonly spigot: Len; readonly hole: Len; readonly length: Len } {
  const spigot = tidy(add(bore, add(size('branch.wall'), size('branch.wall'))), TENTH, 'near');
  return { spigot, hole: add(spigot, TENTH), length: minus(size('flange.thick'), size('flange.short')) };
}

// ---- the flange --------------------------------------------------------------------------------------------------------
export type FlangeSizes = {
  /** of the flange, for its spigot */
  readonly hole: Len;
  readonly collar: Len;
  /** that the bolts stand on */
  readonly circle: Len;
  readonly outside: Len;
  readonly bolts: number;
};

export function flangeFor(bore: Len): FlangeSizes {
  const { spigot, hole } = flangeSpigot(bore);
  const collar = tidy(add(spigot, size('flange.collar')), half(MM), 'up');
  const clear = size('flange.bolt.clear');
  const circle = tidy(add(add(collar, add(clear, clear)), size('flange.bolt.corners')), half(MM), 'up');
  const edge = times(size('flange.bolt.hole'), ratio('flange.edge'));
  return { hole, collar, circle, outside: tidy(add(circle, add(edge, edge)), MM, 'up'), bolts: ratio('flange.bolts') };
}

/** A thin disc: bored for its spigot and faced in one setting, the joint face first; its holes are marked out and drilled at the bench. */
export function flangePart(flange: FlangeSizes, made: Making, workshop: Workshop, found: Diagnostic[]): Part {
  const thick = size('flange.thick');
  const id = 'pipe-flange';
  return partFrom({
    ...{ id, kind: id, quantity: made.quantity, use: 'fitting' },
    stock: barFor({ part: id, material: made.material, section: 'round', across: flange.outside, turned: true }, workshop, found),
    first: { letter: 'J', role: 'sealing' },
    second: { letter: 'R', role: 'register' },
    sections: [{ name: 'rim', role: 'free', size: general(flange.outside), length: thick }],
    holes: [
      {
        ...{ name: 'bore', role: 'register', from: len(0), to: thick, opens: ['first', 'second'] },
        size: between(flange.hole, add(flange.hole, size('band.bore.seat')), flange.hole, 'solder fit'),
      },
    ],
    sides: [boltHoles(flange, thick)],
    lengths: [{ from: 'J', to: 'R', limits: about(thick, size('band.length'), 'flange') }],
  });
}
type Making = { readonly quantity: number; readonly material: string };

function boltHoles(flange: FlangeSizes, thick: Len): Side {
  const hole = size('flange.bolt.hole');
  return {
    ...{ name: 'bolt-holes', does: 'bolt-holes', on: 'rim', role: 'free', at: half(thick), half: half(thick), count: flange.bolts },
    size: between(hole, add(hole, size('band.drilled')), hole, 'drilled'),
    circle: about(flange.circle, size('flange.circle.band'), 'bolt circle'),
  };
}

/** What stands on the barrel for a branch with a flange: it is soldered in the same heat as the branch. */
export function flangeSide(name: string, on: string, at: Len, collar: Len): Side {
  return {
    ...{ name, does: 'flange', on, role: 'sealing', at, half: half(collar) },
    joins: { part: 'pipe-flange', by: 'silver-solder' },
  };
}

export const boltsFor = (flange: FlangeSizes, flanges: number): readonly BoughtItem[] => [
  {
    id: 'flange-bolt',
    kind: 'flange-bolt',
    quantity: flanges * flange.bolts,
    grounds: { bolt: showMm(size('flange.bolt'), 0), hold: showMm(add(size('flange.thick'), size('flange.thick')), 0) },
  },
  {
    id: 'flange-joint',
    kind: 'flange-joint',
    quantity: flanges,
    grounds: { outside: showMm(innerOf(flange), 1), inside: showMm(flange.hole, 1) },
  },
];

/** Inside the bolts: as wide as the joint may be. */
const innerOf = ({ circle }: FlangeSizes): Len => minus(circle, size('flange.bolt.hole'));

/** The thinnest place of an end that is soldered to its pipe; the spigot of a flange is that of its branch. */
export function endWalls(form: EndForm, pipe: EndSizes['pipe']): readonly Wall[] {
  if (form !== 'plain') return [];
  return [{ where: 'pipe-socket', inside: add(pipe.outside, size('pipe.fit')), outside: plainCollar(pipe) }];
}

/** Widest bore that leaves a ledge for a pipe that is soldered in. */
export const widestBore = ({ outside }: EndSizes['pipe']): Len =>
  minus(add(outside, size('pipe.fit')), add(size('end.ledge'), size('end.ledge')));

/** What the ends say of themselves: refused where the pipe does not fit its socket, the flange's circle and what a bolt holds. */
export function noteEnd(sizes: EndSizes, pressure: number, book: Book): void {
  const { form, pipe, bore } = sizes;
  const ledge = half(minus(add(pipe.outside, size('pipe.fit')), bore));
  if (form === 'plain') {
    if (ledge < size('end.ledge'))
      refuse(book, 'design.pipe-without-ledge', { pipe: pipe.outside, bore, has: ledge, wants: size('end.ledge') });
    const inputs = { D: toMm(pipe.outside), t: toMm(pipe.wall) };
    note(book, 'pipe-overlap', [toMm(pipeOverlap(pipe)), 'mm', 'l >= D, and 3 t at least', inputs, 'alpha-braze.com; AWS C3.1']);
  }
  if (form === 'flanged') {
    const flange = flangeFor(bore);
    note(book, 'flange-outside', [toMm(flange.outside), 'mm', 'bolt circle + 2 holes, to 1', { B: toMm(flange.circle) }, CUSTOM]);
    note(book, 'flange-circle', [toMm(flange.circle), 'mm', 'collar + 2 clearances + head', { c: toMm(flange.collar) }, CUSTOM]);
    const wide = toMm(innerOf(flange));
    const pull = (boreArea(wide) * pressure) / 10 / flange.bolts;
    note(book, 'flange-bolt', [pull, 'N', 'pi/4 j^2 p / n', { j: wide, p: pressure, n: flange.bolts }]);
    noteBending(flange, pull * flange.bolts, book);
  }
}

/** Held up round its bolt circle, pulled at its spigot by all that the bolts hold: neither what it has outside the bolts nor its collar counted. */
function noteBending({ circle, hole }: FlangeSizes, pull: number, book: Book): void {
  const plate = { outer: toMm(half(circle)), inner: toMm(half(hole)), thick: toMm(size('flange.thick')) };
  const inputs = { F: pull, a: plate.outer, b: plate.inner, t: plate.thick, K: ringPlateFactor(plate.outer, plate.inner) };
  note(book, 'flange-stress', [ringPlateStress(plate, pull), 'N/mm2', '6 K F a / (2 pi b t^2)', inputs, FLANGE_SOURCE]);
}
