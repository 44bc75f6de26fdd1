/** A moment of the replay as pictures want it: outlines, thread bands, and what this set-up has taken. */
import type { End, OpId } from '../../model/ids.ts';
import type { Outline, Polygon, Stage } from '../../model/stage.ts';
import type { Nominal } from '../nominal.ts';
import { isMetal, isTakenBy } from '../section/ask.ts';
import { outlinesOf, polygonsOf } from '../section/outline.ts';
import type { Section } from '../section.ts';

/** `ops`: the operations of the set-up so far. Threads stand at the roots that their limits allow least. */
export function stageOf(nominal: Nominal, ops: readonly OpId[], before: Section, now: Section, out: End): Stage {
  return {
    outlines: outlineOf(now),
    threads: threadBands(nominal, now),
    taken: ops.flatMap((by) => polygonsOf(now, isTakenBy(by)).map((polygon) => ({ polygon, by }))),
    before: outlineOf(before),
    out,
  };
}

/** What one step leaves is what the next one finds: worked out once. */
function outlineOf(section: Section): readonly Outline[] {
  const outline = known.get(section) ?? outlinesOf(section, isMetal);
  known.set(section, outline);
  return outline;
}
const known = new WeakMap<Section, readonly Outline[]>();

function threadBands(nominal: Nominal, section: Section): Stage['threads'] {
  return nominal.part.features.flatMap((feature) => {
    if (feature.kind !== 'thread') return [];
    const bands: readonly Polygon[] = polygonsOf(section, (paint) => paint.state === 'partial' && paint.thread === feature.id);
    return bands.map((polygon) => ({ polygon, side: feature.side, surface: feature.on }));
  });
}
