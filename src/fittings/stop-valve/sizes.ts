/** Every size of a stop valve that its parts share: what was stated is kept and checked, what is open is derived, with its formula. */
import { add, type Len, len, minus, mm, toMm } from '../../base/units.ts';
import { boreArea, ringChamber, seatForce } from '../../handbook/valve-ball.ts';
import { plugArea, plugFullLift, plugShare, turnsToFull } from '../../handbook/valve-cone.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, newBook, note, refuse, refused } from '../book.ts';
import { crossHoleFor } from '../branch.ts';
import { fineThread, squareOn, stemFrom, threadBetween } from '../choose-thread.ts';
import { couplingThread } from '../coupling.ts';
import { half, MM, ratio, size, TENTH, tidy, times } from '../limits.ts';
import { thinWall } from '../strength.ts';
import { type ThreadPair, threadPair, wallIn } from '../threads.ts';
import type { Stops, StopValveAsked } from './asked.ts';
import { inletAcross, seatDepth } from './layout.ts';
import type { Ends, StopValveSizes } from './shared.ts';

export function sizeStopValve(asked: StopValveAsked, workshop: Workshop, book: Book): StopValveSizes | undefined {
  const bore = chooseBore(asked, workshop, book);
  return sizesFor(bore, asked, workshop, book);
}

function sizesFor(bore: Len, asked: StopValveAsked, workshop: Workshop, book: Book): StopValveSizes | undefined {
  const seat = sizeSeat(bore, asked, book);
  const gland = sizeGland(asked, seat.bore, workshop, book);
  const threads = chooseThreads(asked, seat, gland, workshop, book);
  if (!threads || refused(book)) return undefined;
  const square = squareOn(gland.stem);
  const end = endThread(square, workshop, book);
  noteWorking(asked, seat, threads.spindle, book);
  const wheel = asked.wheel ?? tidy(times(seat.bore, ratio('wheel.ratio')), MM, 'up');
  return (
    end && {
      ...seat,
      ...gland,
      ...threads,
      crossHole: crossHoleFor(seat.outlet, workshop),
      square,
      end,
      wheel,
      ends: chooseEnds(asked, book),
    }
  );
}

function chooseEnds({ ends = {}, pattern, pipe }: StopValveAsked, book: Book): Ends {
  const { inlet = 'union', outlet = 'union' } = ends;
  if (pattern === 'angle' && inlet !== 'union') refuse(book, 'design.inlet-in-line', { end: inlet });
  return { inlet, outlet, pipe };
}

type Seat = Pick<
  StopValveSizes,
  'bore' | 'cone' | 'plug' | 'tip' | 'coneBelow' | 'coneAbove' | 'fullLift' | 'travel' | 'chamber' | 'outlet'
>;

function sizeSeat(bore: Len, asked: StopValveAsked, book: Book): Seat {
  const cone = asked.cone ?? ratio(QUICK.includes(asked.duty.serves) ? 'stop.cone.quick' : 'stop.cone.throttle');
  note(book, 'cone', [cone, 'deg', '60 to regulate, 90 to open quickly', {}, CUSTOM], asked.cone);
  const plug = add(bore, size('stop.plug.over'));
  const tip = tidy(times(bore, ratio('stop.tip.share')), TENTH, 'near');
  const fullLift = mm(plugFullLift(toMm(bore), cone));
  const inputs = { d: toMm(bore), a: cone / 2 };
  note(book, 'full-lift', [toMm(fullLift), 'mm', 'h = d (1 - sqrt(1 - cos a)) / (2 sin a cos a)', inputs]);
  const travel = asked.lift ?? tidy(add(fullLift, size('stop.travel.over')), TENTH, 'up');
  note(book, 'travel', [toMm(travel), 'mm', 'h + 0.5, to a tenth', { h: toMm(fullLift) }, CUSTOM], asked.lift);
  const chamber = tidy(mm(ringChamber(toMm(plug), toMm(bore))), size('stop.bore.step'), 'up');
  note(book, 'stop-chamber', [toMm(chamber), 'mm', 'C >= sqrt(P^2 + d^2)', { P: toMm(plug), d: toMm(bore) }]);
  const outlet = pipeBore(asked);
  return { bore, cone, plug, tip, ...coneLengths(cone, bore, plug, tip), fullLift, travel, chamber, outlet };
}
const QUICK: readonly Stops[] = ['blow-down', 'injector-steam'];

/** Along the axis from the tip to the seat's circle, and from there to the plug's full diameter. */
function coneLengths(cone: number, bore: Len, plug: Len, tip: Len): Pick<StopValveSizes, 'coneBelow' | 'coneAbove'> {
  const slope = (2 / 1) * Math.tan(((cone / 2) * Math.PI) / ratio('turn.half'));
  return { coneBelow: mm(toMm(minus(bore, tip)) / slope), coneAbove: mm(toMm(minus(plug, bore)) / slope) };
}

function pipeBore(asked: StopValveAsked): Len {
  return tidy(minus(asked.pipe.outside, add(asked.pipe.wall, asked.pipe.wall)), TENTH, 'near');
}

/** Not tighter than the pipe, and wide enough for a boring tool of the drawer: seat and bonnet's thread are bored in one setting. */
function chooseBore(asked: StopValveAsked, workshop: Workshop, book: Book): Len {
  const pipe = pipeBore(asked);
  if (pipe <= 0) refuse(book, 'design.pipe-wall', { outside: asked.pipe.outside, wall: asked.pipe.wall });
  const least = tidy(len(Math.max(pipe, MM)), size('stop.bore.step'), 'up');
  const bore = asked.bore ?? boreForDrawer(least, asked, workshop) ?? soundFrom(least, asked, workshop);
  if (bore < pipe) refuse(book, 'design.seat-under-pipe', { bore, pipe });
  note(book, 'bore', [toMm(bore), 'mm', 'd >= pipe bore, and a boring tool reaches', { pipe: toMm(pipe) }, CUSTOM], asked.bore);
  return bore;
}

/** The smallest bore from `least` up that a boring tool of the drawer enters, after its drill, and whose seat it reaches from the bonnet's side. */
function boreForDrawer(least: Len, asked: StopValveAsked, workshop: Workshop): Len | undefined {
  const tools = [...workshop.tools.boring].sort((a, b) => a.smallest - b.smallest);
  return tools
    .map((tool) => ({
      tool,
      bore: tidy(len(Math.max(least, add(tool.smallest, size('single-lip.stock.deep')))), size('stop.bore.step'), 'up'),
    }))
    .find(({ tool, bore }) => {
      const sizes = sizesFor(bore, asked, workshop, newBook());
      return sizes !== undefined && seatDepth(sizes) <= tool.reach;
    })?.bore;
}

/** Where no boring tool will do: the smallest whose own choices are not refused, so that it is the tool which is told to be wanting. */
function soundFrom(least: Len, asked: StopValveAsked, workshop: Workshop): Len {
  const { threads: _threads, stem: _stem, packing: _packing, ...open } = asked;
  const step = size('stop.bore.step');
  for (let bore = least; bore <= add(least, least); bore = add(bore, step)) if (sizesFor(bore, open, workshop, newBook())) return bore;
  return least;
}

/** A running thread of whole millimetres has to lie between it and the plug; under the root of one that is asked for. */
function thickestStem({ threads }: StopValveAsked, bore: Len): Len {
  const root = threads?.spindle === undefined ? undefined : threadPair(threads.spindle)?.outside.root;
  const widest = tidy(minus(add(bore, size('stop.plug.over')), half(MM)), MM, 'down');
  return root === undefined ? minus(widest, size('stop.thread.over-stem')) : minus(root, TENTH);
}

type Gland = Pick<StopValveSizes, 'stem' | 'packing' | 'rings' | 'box' | 'boxDepth'>;

function sizeGland(asked: StopValveAsked, bore: Len, workshop: Workshop, book: Book): Gland {
  // the stem is what the spindle is held by while its cone is cut
  const held = tidy(times(add(bore, size('stop.plug.over')), ratio('grip.share')), half(MM), 'up');
  const usual = len(Math.max(tidy(times(bore, ratio('stop.stem.share')), half(MM), 'near'), size('stop.stem.least'), held));
  const stem = asked.stem ?? stemFrom(usual, thickestStem(asked, bore), workshop);
  note(book, 'stem', [toMm(stem), 'mm', '0.65 d, half the plug at least', { d: toMm(bore) }, CUSTOM], asked.stem);
  const wide = tidy(times(stem, ratio('packing.share')), size('packing.step'), 'near');
  const packing = asked.packing ?? len(Math.max(wide, size('packing.least')));
  note(
    book,
    'packing',
    [toMm(packing), 'mm', 'W = 0.35 s, at least 1.2', { s: toMm(stem) }, 'scaled from the Tribology Handbook, table 25.2: judgement'],
    asked.packing,
  );
  const rings = ratio('packing.rings');
  const pressed = times(packing, rings * (1 - ratio('packing.squeeze')));
  const squeeze = { n: rings, W: toMm(packing), c: ratio('packing.squeeze') };
  note(book, 'packing-pressed', [toMm(pressed), 'mm', 'n W (1 - c)', squeeze, CUSTOM]);
  const box = add(stem, add(packing, packing));
  const boxDepth = tidy(add(times(packing, rings * ratio('packing.over')), size('gland.enter')), TENTH, 'up');
  note(book, 'box', [toMm(box), 'mm', 'B = s + 2 W', { s: toMm(stem), W: toMm(packing) }]);
  return { stem, packing, rings, box, boxDepth };
}

type Threads = Pick<StopValveSizes, 'bonnet' | 'spindle' | 'gland' | 'coupling'>;

/** What is not asked for: the smallest fine thread of the drawer that is large enough and leaves its walls. */
function chooseThreads(asked: StopValveAsked, seat: Seat, gland: Gland, workshop: Workshop, book: Book): Threads | undefined {
  const named = asked.threads ?? {};
  const wall = size('wall.least');
  const bonnetLeast = add(add(seat.chamber, wall), MM);
  const glandLeast = add(add(gland.box, add(size('gland.wall'), size('gland.wall'))), add(MM, MM));
  const { pipe } = asked;
  const least = add(gland.stem, size('stop.thread.over-stem'));
  const spindle = find('spindle', named.spindle ?? threadBetween({ stem: gland.stem, least, below: seat.plug }, workshop), book);
  const running = spindle?.inside.major.hi ?? gland.stem;
  const clear = (t: ThreadPair): boolean => t.inside.minor.lo > seat.chamber && wallIn(t, running) >= wall;
  const bonnet = find('bonnet', named.bonnet ?? fineThread({ least: bonnetLeast, pipe, suits: clear }, workshop), book);
  const walled = (t: ThreadPair): boolean => wallIn(t, gland.box) >= size('gland.wall');
  const gland_ = find('gland', named.gland ?? fineThread({ least: glandLeast, pipe, suits: walled }, workshop), book);
  const passes = asked.pattern === 'angle' ? inletAcross(seat) : seat.outlet;
  const coupling = find('coupling', named.coupling ?? couplingThread(pipe, workshop, (t) => wallIn(t, passes) >= wall), book);
  if (!bonnet || !spindle || !gland_ || !coupling) return undefined;
  checkThreads({ bonnet, spindle, gland: gland_, coupling }, seat, gland, book);
  return { bonnet, spindle, gland: gland_, coupling };
}

function checkThreads(threads: Threads, seat: Seat, gland: Gland, book: Book): void {
  if (threads.bonnet.inside.minor.lo <= seat.chamber)
    refuse(book, 'design.thread-under-chamber', {
      which: 'bonnet',
      thread: threads.bonnet.name,
      chamber: seat.chamber,
      minor: threads.bonnet.inside.minor.lo,
    });
  if (threads.spindle.outside.root <= gland.stem)
    refuse(book, 'design.spindle-thread-under-stem', {
      thread: threads.spindle.name,
      stem: gland.stem,
      root: threads.spindle.outside.root,
    });
  if (threads.spindle.outside.major.hi >= seat.plug)
    refuse(book, 'design.spindle-thread-over-plug', { thread: threads.spindle.name, plug: seat.plug, key: 'bore' });
  const wall = wallIn(threads.gland, gland.box);
  if (wall < size('gland.wall')) refuse(book, 'design.wall-thin', thinWall('stuffing-box', wall, size('gland.wall')));
}

/** The largest thread of the drawer that the wheel's square passes over. */
function endThread(square: Len, workshop: Workshop, book: Book): ThreadPair | undefined {
  const found = workshop.tools.dies.flatMap((name) => threadPair(name) ?? []).filter((t) => t.outside.major.hi <= square);
  const best = found.sort((a, b) => b.outside.major.hi - a.outside.major.hi)[0];
  if (!best) refuse(book, 'design.no-end-thread', { square });
  return best;
}

function find(which: string, name: string, book: Book): ThreadPair | undefined {
  const pair = threadPair(name);
  if (!pair) refuse(book, 'design.thread-unknown', { which, name });
  return pair;
}

/** What the person at the wheel will feel: turns to full bore, flow at each turn, force on the seat. */
function noteWorking(asked: StopValveAsked, seat: Seat, spindle: ThreadPair, book: Book): void {
  const pitch = toMm(spindle.outside.pitch);
  const [d, cone] = [toMm(seat.bore), seat.cone];
  note(book, 'turns', [turnsToFull(d, cone, pitch), 'turns', 'h / P', { h: toMm(seat.fullLift), P: pitch }]);
  const first = plugArea(d, cone, pitch) ?? boreArea(d);
  note(book, 'first-turn', [100 * plugShare(d, cone, pitch), '%', 'A(P) / (pi/4 d^2)', { A: first, d }]);
  note(book, 'seat-force', [seatForce(d, asked.duty.pressure), 'N', 'pi/4 d^2 p', { d, p: asked.duty.pressure }]);
}
