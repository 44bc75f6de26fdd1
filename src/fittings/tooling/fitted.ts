/** Tooling that is turned to the bore of the work until that goes on, or it goes in: stub mandrels and plugs. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import { held } from '../../handbook/capability.ts';
import type { PartId } from '../../model/ids.ts';
import type { Part } from '../../model/part.ts';
import type { ToolingAsk } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor, nextBar } from '../bar.ts';
import { about, between, general, HUNDREDTH, half, MM, size, stock, tidy } from '../limits.ts';
import { type Hole, partFrom } from '../outline.ts';

type Ask<K extends ToolingAsk['kind']> = Extract<ToolingAsk, { kind: K }>;

/** Steel bar with room for the thread; the smallest on the shelf. */
export function steel(
  part: string,
  least: Len,
  workshop: Workshop,
  found: Diagnostic[],
): { readonly stock: Part['stock']; readonly across: Len } {
  const across = nextBar({ material: TOOLING_STEEL, section: 'round' }, least, workshop);
  return { across, stock: barFor({ part, material: TOOLING_STEEL, section: 'round', across, turned: false }, workshop, found) };
}
const TOOLING_STEEL = '230M07';

/**
 * A spigot for the work's bore and a shoulder for its face, turned in one grip and left there. It is turned down from the bore's upper
 * limit until the work wrings on: so its limits are the bore's own, or what turning holds where the bore is closer than that.
 */
export function stubMandrel(ask: Ask<'stub-mandrel'>, id: PartId, workshop: Workshop, found: Diagnostic[]): Part {
  const { lo, hi } = ask.bore;
  const band = held('turn', 'diameter', 'final', hi);
  const { stock: bar, across } = steel(id, len(Math.max(add(hi, size('mandrel.rim.over')), ask.rim)), workshop, found);
  return partFrom({
    id,
    kind: 'stub-mandrel',
    quantity: 1,
    use: 'tooling made in place',
    stock: bar,
    first: { letter: 'Q', role: 'free' },
    sections: [
      {
        name: 'spigot',
        role: 'register',
        size: between(len(Math.min(lo, minus(hi, band))), hi, hi, 'wrings into the bore', 'fit'),
        length: ask.depth,
        shoulder: { letter: 'M', role: 'register' },
      },
      { name: 'outside', role: 'free', size: stock(across), length: size('mandrel.shoulder'), asStock: true },
    ],
    lengths: [{ from: 'Q', to: 'M', limits: general(ask.depth) }],
  });
}

/**
 * Fills a thin tube under its hold: turned down until it goes into the work's own bore by hand, and parted off. A hole through it lets the air
 * out, and takes what pushes or draws it.
 */
export function tubePlug(ask: Ask<'tube-plug'>, id: PartId, workshop: Workshop, found: Diagnostic[]): Part {
  const loose = size('plug.loose');
  const [lo, hi] = [minus(ask.bore.lo, loose), tidy(minus(ask.bore.hi, loose), HUNDREDTH, 'down')];
  const band = held('turn', 'diameter', 'final', hi);
  const { stock: bar } = steel(id, add(hi, size('bar.clean-up')), workshop, found);
  return partFrom({
    id,
    kind: 'tube-plug',
    quantity: 1,
    use: 'tooling made to fit',
    stock: bar,
    first: { letter: 'Q', role: 'free' },
    second: { letter: 'T', role: 'free' },
    sections: [
      {
        name: 'plug',
        role: 'free',
        size: between(len(Math.min(lo, minus(hi, band))), hi, hi, 'goes into the bore', 'fit'),
        length: ask.length,
      },
    ],
    holes: ventOf(ask),
    lengths: [{ from: 'Q', to: 'T', limits: about(ask.length, half(MM), 'free') }],
  });
}

const ventOf = ({ bore, length }: Ask<'tube-plug'>): readonly Hole[] =>
  bore.target < size('plug.vent.from')
    ? []
    : [{ name: 'vent', role: 'clearance', size: general(size('plug.vent')), from: len(0), to: length, opens: ['first', 'second'] }];
