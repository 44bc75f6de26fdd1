/** Tooling that is made once and kept, beside D-bits and gauge nuts: split sleeves, and the rollers and pins of a filing guide. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len } from '../../base/units.ts';
import type { Limits, Part } from '../../model/part.ts';
import type { ToolingAsk } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { about, between, half, MM, size, stock } from '../limits.ts';
import { partFrom } from '../outline.ts';
import { insideChamfer } from '../threads.ts';

type Ask<K extends ToolingAsk['kind']> = Extract<ToolingAsk, { kind: K }>;

/** Bored to the work's largest size, or to the work as it came out, the outside as bought; slit right through when all else is done. */
export function splitSleeve(id: string, ask: Ask<'split-sleeve'>, workshop: Workshop, found: Diagnostic[]): Part {
  const { length, material, across, to } = ask;
  const madeTo = to && { clear: { lo: len(0), hi: size('sleeve.over') } };
  return partFrom({
    ...{ id, kind: 'split-sleeve', quantity: 1, use: to ? 'tooling made to fit' : 'kept tooling' },
    stock: barFor({ part: id, material, section: 'round', across, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'free' },
    second: { letter: 'T', role: 'free' },
    sections: [{ name: 'outside', role: 'free', size: stock(across), length, asStock: true }],
    holes: [
      { name: 'bore', role: 'register', size: closing(ask), from: len(0), to: length, opens: ['first'], ...(madeTo ? { madeTo } : {}) },
    ],
    sides: [{ name: 'slit', does: 'slit', on: 'outside', role: 'free', at: half(length), half: half(length), size: slitOf() }],
    lengths: [{ from: 'Q', to: 'T', limits: about(length, half(MM), 'free') }],
  });
}
const closing = ({ work, to }: Ask<'split-sleeve'>): Limits =>
  between(to?.fits.lo ?? work, add(to?.fits.hi ?? work, size('sleeve.over')), work, 'closes on the work');
const slitOf = () => about(size('saw.kerf'), half(size('saw.kerf')), 'one cut of the saw');

/** Drilled, tapped right through and slit: screwed on the work, it closes on the flanks of its thread. */
export function threadedSleeve(id: string, ask: Ask<'threaded-sleeve'>, workshop: Workshop, found: Diagnostic[]): Part {
  const { thread, length, material, across } = ask;
  const mouth = insideChamfer(thread);
  return partFrom({
    ...{ id, kind: 'threaded-sleeve', quantity: 1, use: 'kept tooling' },
    stock: barFor({ part: id, material, section: 'round', across, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'free' },
    second: { letter: 'T', role: 'free' },
    sections: [{ name: 'outside', role: 'free', size: stock(across), length, asStock: true }],
    holes: [
      {
        ...{ name: 'bore', role: 'thread', size: thread.minor, from: len(0), to: length, opens: ['first', 'second'] },
        thread: { size: thread, to: length, chamfer: mouth },
      },
    ],
    sides: [{ name: 'slit', does: 'slit', on: 'outside', role: 'free', at: half(length), half: half(length), size: slitOf() }],
    lengths: [{ from: 'Q', to: 'T', limits: about(length, half(MM), 'free') }],
  });
}

/** Silver steel as bought, drilled for its pin, hardened right through: the file runs on it and does not cut it. */
export function guideRoller(id: string, ask: Ask<'guide-roller'>, workshop: Workshop, found: Diagnostic[]): Part {
  const long = size('guide.roller.length');
  const pin = pinFor(ask.across, workshop);
  const loose = between(
    add(pin, size('guide.loose.least')),
    add(pin, size('guide.loose.most')),
    add(pin, size('guide.loose')),
    'loose on its pin',
  );
  return partFrom({
    ...{ id, kind: 'guide-roller', quantity: 2, use: 'kept tooling' },
    stock: barFor({ part: id, material: SILVER_STEEL, section: 'round', across: ask.across, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'free' },
    second: { letter: 'T', role: 'free' },
    sections: [{ name: 'rim', role: 'running', size: stock(ask.across), length: long, asStock: true }],
    holes: [{ name: 'bore', role: 'clearance', size: loose, from: len(0), to: long, opens: ['first'] }],
    sides: [{ name: 'temper', does: 'harden', on: 'rim', role: 'running', at: half(long), half: half(long) }],
    lengths: [{ from: 'Q', to: 'T', limits: about(long, half(MM), 'free') }],
  });
}

/** Silver steel as bought: half of it in the rest, the roller on the other half. */
export function guidePin(id: string, ask: Ask<'guide-pin'>, workshop: Workshop, found: Diagnostic[]): Part {
  const long = add(size('guide.roller.length'), size('guide.pin.held'));
  return partFrom({
    ...{ id, kind: 'guide-pin', quantity: 2, use: 'kept tooling' },
    stock: barFor({ part: id, material: SILVER_STEEL, section: 'round', across: ask.across, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'free' },
    second: { letter: 'T', role: 'free' },
    sections: [{ name: 'outside', role: 'running', size: stock(ask.across), length: long, asStock: true }],
    lengths: [{ from: 'Q', to: 'T', limits: about(long, half(MM), 'free') }],
  });
}
const SILVER_STEEL = 'silver steel';

/** The thickest rod of the rack that leaves half the roller round it. */
const pinFor = (across: Len, workshop: Workshop): Len =>
  workshop.tools.silverSteel.filter((rod) => rod + rod <= across).sort((a, b) => b - a)[0] ?? half(across);
