/** Tooling that a plan asks for and the workshop lacks, designed to the sizes of what it serves; a part like any other. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { PartId } from '../../model/ids.ts';
import type { Part } from '../../model/part.ts';
import type { ToolingAsk } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { about, between, general, half, MM, ratio, size, stock, TENTH, tidy, times } from '../limits.ts';
import { type Hole, partFrom } from '../outline.ts';
import { insideChamfer, outsideThread, reliefOf, threadPair } from '../threads.ts';
import { steel, stubMandrel, tubePlug } from './fitted.ts';
import { guidePin, guideRoller, splitSleeve, threadedSleeve } from './kept.ts';

/** One name for one piece of tooling, so that two askers share it. */
export function toolingId(ask: ToolingAsk): PartId {
  if (ask.kind === 'd-bit') return `${ask.end === 'flat' ? 'flat-' : ''}d-bit-${ask.diameter / MM}`;
  if (ask.kind === 'gauge-nut') return `gauge-nut-${inId(ask.thread.name)}`;
  if (ask.kind === 'stub-mandrel') return `stub-mandrel-${ask.bore.target / MM}-${ask.serves}`;
  if (ask.kind === 'tube-plug') return `plug-${ask.bore.target / MM}x${ask.length / MM}-${ask.serves}`;
  if (ask.kind === 'split-sleeve') return `split-sleeve-${ask.work / MM}x${ask.length / MM}${ask.to ? `-${ask.to.serves}` : ''}`;
  if (ask.kind === 'threaded-sleeve') return `threaded-sleeve-${inId(ask.thread.name)}x${ask.length / MM}`;
  if (ask.kind === 'guide-roller' || ask.kind === 'guide-pin') return `${ask.kind}-${ask.across / MM}`;
  return `mandrel-${inId(ask.thread.name)}-${ask.side}`;
}

/** '1/4-40 ME' as '1-4-40-ME': a stroke or a space would part the id. */
const inId = (name: string): string => name.replace(/[/ ]/g, '-');

/**
 * One ask for two that go by one name. A mandrel over the work's thread is as deep as the longer of them asks, one that screws into the work
 * no longer than the shallower takes before its face meets the shoulder; a D-bit is as long as the deeper bore asks.
 */
export function servesBoth(a: ToolingAsk, b: ToolingAsk): ToolingAsk {
  if (a.kind === 'd-bit' && b.kind === 'd-bit') return { ...a, length: larger(a.length, b.length) };
  if (a.kind !== 'threaded-mandrel' || b.kind !== 'threaded-mandrel') return a;
  const depth = a.side === 'inside' ? larger(a.depth, b.depth) : len(Math.min(a.depth, b.depth));
  return { ...a, depth, rim: larger(a.rim, b.rim), clears: larger(a.clears, b.clears) };
}

/** The ask names the work's thread; the tooling gets the mate. */
export function makeTooling(asked: ToolingAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const ask = withMate(asked);
  if (ask.kind === 'd-bit') return dBit(ask, workshop, found);
  if (ask.kind === 'gauge-nut') return gaugeNut(ask, workshop, found);
  if (ask.kind === 'stub-mandrel') return stubMandrel(ask, toolingId(ask), workshop, found);
  if (ask.kind === 'tube-plug') return tubePlug(ask, toolingId(ask), workshop, found);
  if (ask.kind === 'split-sleeve') return splitSleeve(toolingId(ask), ask, workshop, found);
  if (ask.kind === 'threaded-sleeve') return threadedSleeve(toolingId(ask), ask, workshop, found);
  if (ask.kind === 'guide-roller') return guideRoller(toolingId(ask), ask, workshop, found);
  if (ask.kind === 'guide-pin') return guidePin(toolingId(ask), ask, workshop, found);
  return ask.side === 'inside' ? mandrelOver(ask, workshop, found) : mandrelInto(ask, workshop, found);
}

function withMate(ask: ToolingAsk): ToolingAsk {
  if (!('thread' in ask)) return ask;
  const pair = threadPair(ask.thread.name);
  if (!pair) throw new Error(`no thread '${ask.thread.name}' in the handbook`);
  return { ...ask, thread: ask.kind === 'threaded-mandrel' && ask.side === 'outside' ? pair.outside : pair.inside };
}

type Mandrel = Extract<ToolingAsk, { kind: 'threaded-mandrel' }>;

/**
 * Takes an outside thread of the work into its bore, the work's shoulder against its face. The mouth is wider than the thread, clear of
 * the work's relief, so that the last skim of the face does not touch the thread.
 */
function mandrelOver(ask: Mandrel, workshop: Workshop, found: Diagnostic[]): Part {
  const id = toolingId(ask);
  const depth = add(ask.depth, size('mandrel.clear'));
  const mouth = times(reliefOf(ask.thread).width.target, ratio('mandrel.mouth.ratio'));
  const { stock: bar, across } = steel(id, larger(add(ask.thread.major.lo, size('mandrel.rim.over')), ask.rim), workshop, found);
  return partFrom({
    id,
    kind: 'threaded-mandrel',
    quantity: 1,
    use: 'tooling made in place',
    stock: bar,
    first: { letter: 'M', role: 'register', skimmed: true },
    sections: [{ name: 'outside', role: 'free', size: stock(across), length: add(depth, size('mandrel.clear')), asStock: true }],
    holes: [mandrelMouth(ask, mouth), mandrelBore(ask, mouth, depth)],
    lengths: [
      { from: 'M', to: 'R', limits: general(mouth) },
      { from: 'M', to: 'F', limits: general(depth) },
    ],
  });
}

const mandrelMouth = (ask: Mandrel, to: Len): Hole => ({
  name: 'mouth',
  role: 'clearance',
  size: general(tidy(add(ask.thread.major.lo, add(size('mandrel.mouth.over'), size('band.length'))), TENTH, 'up')),
  from: len(0),
  to,
  opens: ['first'],
  floor: { letter: 'R', role: 'free' },
});

const mandrelBore = (ask: Mandrel, from: Len, to: Len): Hole => ({
  name: 'bore',
  role: 'thread',
  size: ask.thread.minor,
  from,
  to,
  opens: ['first'],
  floor: { letter: 'F', role: 'free' },
  thread: { size: ask.thread, to: minus(to, times(ask.thread.pitch, ratio('thread.dead'))) },
});

/** Screws into an inside thread of the work, the work's face against its shoulder. */
function mandrelInto(ask: Mandrel, workshop: Workshop, found: Diagnostic[]): Part {
  const id = toolingId(ask);
  const { stock: bar, across } = steel(id, larger(add(ask.thread.major.hi, size('mandrel.rim.over')), ask.rim), workshop, found);
  const thread = outsideThread(ask.thread, 'first');
  return partFrom({
    id,
    kind: 'threaded-mandrel',
    quantity: 1,
    use: 'tooling made in place',
    stock: bar,
    first: { letter: 'Q', role: 'free' },
    sections: [
      { name: 'thread', role: 'thread', size: ask.thread.major, length: ask.depth, thread, shoulder: { letter: 'M', role: 'register' } },
      { name: 'outside', role: 'free', size: stock(across), length: size('mandrel.shoulder'), asStock: true },
    ],
    lengths: [
      { from: 'Q', to: 'M', limits: general(ask.depth) },
      { from: 'thread.wall', to: 'M', limits: thread.relief?.width ?? general(size('mandrel.clear')) },
    ],
  });
}

function gaugeNut(ask: Extract<ToolingAsk, { kind: 'gauge-nut' }>, workshop: Workshop, found: Diagnostic[]): Part {
  const id = toolingId(ask);
  const { stock: bar, across } = steel(id, add(ask.thread.major.lo, size('mandrel.rim.over')), workshop, found);
  return partFrom({
    id,
    kind: 'gauge-nut',
    quantity: 1,
    use: 'kept tooling',
    stock: bar,
    first: { letter: 'M', role: 'register' },
    second: { letter: 'T', role: 'free' },
    sections: [{ name: 'outside', role: 'free', size: stock(across), length: ask.length, asStock: true }],
    holes: [
      {
        name: 'bore',
        role: 'thread',
        size: ask.thread.minor,
        from: len(0),
        to: ask.length,
        opens: ['first', 'second'],
        thread: { size: ask.thread, to: ask.length, chamfer: insideChamfer(ask.thread) },
      },
    ],
    lengths: [{ from: 'M', to: 'T', limits: about(ask.length, half(MM), 'free') }],
  });
}

/** Silver steel as bought; half filed away at one end, hardened, tempered, stoned. */
function dBit(ask: Extract<ToolingAsk, { kind: 'd-bit' }>, workshop: Workshop, found: Diagnostic[]): Part {
  const id = toolingId(ask);
  const flat = times(ask.diameter, ratio('d-bit.flat'));
  const remains = half(ask.diameter);
  return partFrom({
    id,
    kind: ask.end === 'flat' ? 'flat-d-bit' : 'd-bit',
    quantity: 1,
    use: 'kept tooling',
    stock: barFor({ part: id, material: 'silver steel', section: 'round', across: ask.diameter, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'register' },
    second: { letter: 'T', role: 'free' },
    sections: [{ name: 'shank', role: 'running', size: stock(ask.diameter), length: ask.length, asStock: true }],
    sides: [
      {
        name: 'flat',
        does: 'half-flat',
        on: 'shank',
        role: 'running',
        at: half(flat),
        half: half(flat),
        size: between(remains, add(remains, size('band.bore.seat')), remains, 'half, not under'),
      },
      { name: 'temper', does: 'harden', on: 'shank', role: 'running', at: half(flat), half: half(flat) },
    ],
    lengths: [{ from: 'Q', to: 'T', limits: about(ask.length, MM, 'free') }],
  });
}

const larger = (a: Len, b: Len): Len => len(Math.max(a, b));
