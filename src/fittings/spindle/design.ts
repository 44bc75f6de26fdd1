/** A spindle by itself: what was stated is kept and checked, what was left out is derived as for a stop valve's. */
import type { Outcome } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, mm, showMm, toMm } from '../../base/units.ts';
import { flatDepth } from '../../handbook/bar-stock.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { plugFullLift, turnsToFull } from '../../handbook/valve-cone.ts';
import type { Fitting, Say } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, newBook, note, refuse, refused, warn } from '../book.ts';
import { squareOn, stemFrom, threadBetween, threadNamed, threadThrough } from '../choose-thread.ts';
import { dayParts } from '../day-parts.ts';
import { half, MM, ratio, size, TENTH, tidy, times } from '../limits.ts';
import { type SpindleAsk, spindlePart } from '../spindle.ts';
import { type ThreadPair, threadPair } from '../threads.ts';
import { arrangementOf } from './arranged.ts';
import type { SpindleAsked } from './asked.ts';
import { chainsOf, noteTravel } from './chains.ts';

export function designSpindle(asked: SpindleAsked, workshop: Workshop): Outcome<Fitting> {
  const book = newBook();
  const material = findMaterial(asked.material);
  if (!material) refuse(book, 'design.material-unknown', { material: asked.material });
  const sizes = sizesOf(asked, workshop, book);
  if (!material || !sizes || refused(book)) return { found: book.found };
  const ask: SpindleAsk = { ...sizes, material: material.id, ...(asked.rod === undefined ? {} : { rod: asked.rod }) };
  const part = spindlePart(ask, workshop, book.found);
  if (refused(book)) return { found: book.found };
  const stem = showMm(sizes.stem.across);
  const fitting: Fitting = {
    ...{ kind: 'spindle', title: asked.title, parts: [part], chains: chainsOf(asked, sizes.cone, part), derivations: book.derivations },
    bought: [{ id: 'wheel-nut', kind: 'wheel-nut', quantity: 1, grounds: { thread: sizes.end.pair.name } }],
    ...{ assembly: said(ASSEMBLY, stem), tests: said(TESTS, stem), cautions: said(CAUTIONS, stem) },
    arrangement: arrangementOf(asked, sizes),
  };
  return { value: fitting, found: book.found };
}

const said = (ids: readonly string[], stem: string): readonly Say[] =>
  ids.map((id) => ({ id, grounds: { stem, ...dayParts({ coupling: '', union: 'no' }) } }));
const ASSEMBLY = [
  'assembly.spindle-wash',
  'assembly.spindle-try',
  'assembly.spindle-blue',
  'assembly.spindle-pack',
  'assembly.spindle-wheel',
];
const TESTS = ['test.spindle-thread', 'test.spindle-stem', 'test.spindle-cone', 'test.day-parts', 'test.spindle-valve'];
const CAUTIONS = ['caution.lathe', 'caution.bar', 'caution.slender', 'caution.gland', 'caution.pressure-stop', 'caution.inspector'];

type Sizes = Omit<SpindleAsk, 'material' | 'rod'>;

function sizesOf(asked: SpindleAsked, workshop: Workshop, book: Book): Sizes | undefined {
  const cone = {
    angle: asked.cone.angle ?? ratio('stop.cone.throttle'),
    tip: asked.cone.tip ?? tidy(times(asked.bore, ratio('stop.tip.share')), TENTH, 'near'),
  };
  note(book, 'cone', [cone.angle, 'deg', '60 to regulate, 90 to open quickly', {}, CUSTOM], asked.cone.angle);
  const stem = stemOf(asked, plugAcross(asked, asked.thread.size), workshop, book);
  const square = squareOf(asked, stem.across, book);
  const least = add(stem.across, size('stop.thread.over-stem'));
  const name = asked.thread.size ?? threadBetween({ stem: stem.across, least, below: asked.plug.across ?? LARGEST }, workshop);
  const running = threadNamed('spindle', name, book);
  const plug = plugOf(asked, cone, name, book);
  const end = endOf(asked, stem.across, square.across, workshop, book);
  if (!running || !end) return undefined;
  checkThread(running, stem.across, plug.across, book);
  noteWorking(asked, cone.angle, running, book);
  noteTravel(asked, cone, plug.length, book);
  return { cone, plug, thread: { pair: running, length: asked.thread.length }, stem, square, end };
}

/** A thread may be of any size where the plug is made to it. */
const LARGEST: Len = len(Number.MAX_SAFE_INTEGER);

/** Over its seat, and over a thread by a shoulder: the spindle cannot be wound out. */
function plugAcross({ plug, bore }: SpindleAsked, thread: string | undefined): Len {
  const over = add(bore, size('stop.plug.over'));
  const major = thread === undefined ? undefined : threadPair(thread)?.outside.major.hi;
  const stands = major === undefined || add(major, half(size('stop.plug.shoulder'))) <= over;
  return plug.across ?? (stands ? over : tidy(add(major, size('stop.plug.shoulder')), half(MM), 'up'));
}

/** The cone has to reach past its seat on both sides, and a plain land stands behind it. */
function plugOf(asked: SpindleAsked, cone: SpindleAsk['cone'], thread: string, book: Book): SpindleAsk['plug'] {
  const across = plugAcross(asked, thread);
  const inputs = { d: toMm(asked.bore), T: toMm(threadPair(thread)?.outside.major.hi ?? len(0)) };
  note(book, 'plug', [toMm(across), 'mm', 'P >= d + 1.5, P > T', inputs, CUSTOM], asked.plug.across);
  if (across <= asked.bore) refuse(book, 'design.plug-under-seat', { plug: across, bore: asked.bore });
  if (cone.tip >= asked.bore) refuse(book, 'design.tip-over-seat', { tip: cone.tip, bore: asked.bore });
  const slope = (2 / 1) * Math.tan(((cone.angle / 2) * Math.PI) / ratio('turn.half'));
  const least = tidy(add(mm(toMm(minus(across, cone.tip)) / slope), size('stop.land.least')), TENTH, 'up');
  const length = asked.plug.length ?? tidy(least, half(MM), 'up');
  if (length < least) refuse(book, 'design.plug-short', { length, least });
  if (asked.rod !== undefined && asked.rod < add(across, size('bar.clean-up')))
    refuse(book, 'design.rod-too-thin', { rod: asked.rod, plug: across, least: add(across, size('bar.clean-up')) });
  return { across, length };
}

/** It is held by the stem while its cone is cut: half the plug, at least. */
function stemOf(asked: SpindleAsked, plug: Len, workshop: Workshop, book: Book): SpindleAsk['stem'] {
  const held = tidy(times(plug, ratio('grip.share')), half(MM), 'up');
  const usual = len(Math.max(tidy(times(asked.bore, ratio('stop.stem.share')), half(MM), 'near'), size('stop.stem.least'), held));
  const free = asked.square.across === undefined && asked.end.size === undefined;
  const across = asked.stem.across ?? (free ? stemFrom(usual, thickest(asked, plug), workshop) : usual);
  note(book, 'stem', [toMm(across), 'mm', '0.65 d, half the plug at least', { d: toMm(asked.bore) }, CUSTOM], asked.stem.across);
  return { across, length: asked.stem.length };
}

/** As thick as the root of the running thread clears; where that is left open too, as the plug. */
function thickest({ thread }: SpindleAsked, plug: Len): Len {
  const root = thread.size === undefined ? undefined : threadPair(thread.size)?.outside.root;
  return root === undefined ? plug : minus(root, TENTH);
}

/** Filed on the stem: corners left round at three quarters, whole corners at 0.71 of it and less. */
function squareOf(asked: SpindleAsked, stem: Len, book: Book): SpindleAsk['square'] {
  const across = asked.square.across ?? squareOn(stem);
  const grounds = {
    square: across,
    stem,
    usual: tidy(times(stem, ratio('square.share')), TENTH, 'down'),
    most: tidy(times(stem, ratio('square.most')), TENTH, 'down'),
  };
  if (across >= stem) refuse(book, 'design.square-over-stem', grounds);
  else {
    note(book, 'square', [toMm(across), 'mm', 's = 0.75 D', { D: toMm(stem) }, 'DIN 79:2004'], asked.square.across);
    note(book, 'square-sharp', [toMm(stem) / Math.SQRT2, 'mm', 's = D / sqrt(2)', { D: toMm(stem) }]);
    note(book, 'square-depth', [toMm(flatDepth(stem, across)), 'mm', '(D - s) / 2', { D: toMm(stem), s: toMm(across) }]);
    if (across > grounds.most) warn(book, 'design.square-shallow', grounds);
  }
  return { across, length: asked.square.length };
}

function endOf(asked: SpindleAsked, stem: Len, square: Len, workshop: Workshop, book: Book): SpindleAsk['end'] | undefined {
  const length = asked.end.length ?? size('spindle.end');
  const pair = asked.end.size === undefined ? threadThrough(square, workshop) : threadNamed('end', asked.end.size, book);
  if (!pair && asked.end.size === undefined) refuse(book, 'design.no-end-thread', { square });
  if (pair && pair.outside.major.hi > square)
    refuse(book, 'design.end-thread-over-square', {
      thread: pair.name,
      square,
      most: tidy(times(stem, ratio('square.most')), TENTH, 'down'),
    });
  return pair && { pair, length };
}

function checkThread(running: ThreadPair, stem: Len, plug: Len, book: Book): void {
  const { root, major } = running.outside;
  if (root <= stem) refuse(book, 'design.spindle-thread-under-stem', { thread: running.name, stem, root });
  if (major.hi >= plug) refuse(book, 'design.spindle-thread-over-plug', { thread: running.name, plug, key: 'plug: across' });
}

function noteWorking(asked: SpindleAsked, angle: number, running: ThreadPair, book: Book): void {
  const [d, pitch] = [toMm(asked.bore), toMm(running.outside.pitch)];
  note(book, 'full-lift', [plugFullLift(d, angle), 'mm', 'h = d (1 - sqrt(1 - cos a)) / (2 sin a cos a)', { d, a: angle / 2 }]);
  note(book, 'turns', [turnsToFull(d, angle, pitch), 'turns', 'h / P', { h: plugFullLift(d, angle), P: pitch }]);
}
