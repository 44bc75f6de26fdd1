/** Names of threads as people write them, made one: `M10×1`, `m10 x 1.0` and `M10x1` are the same thread; so are `ME 1/4x40` and `1/4-40 ME`. */
import { ask } from '../base/asking.ts';
import type { Problem } from '../base/quantity.ts';
import { shown } from '../base/written.ts';
import { metricName } from './iso965-metric.ts';
import { nearestThreads, thread as threadCalled } from './threads.ts';

/**
 * 'M10x1' for a fine pitch, 'M10' for the coarse one of ISO 261, stated or not; of other families the handbook's own name: '1/4-40 ME',
 * '2BA', 'G1/8', '1/4-28 UNF'. Nothing where the word is no name of a thread at all. Whether there is such a metric thread is asked later.
 */
export function threadName(word: string): string | undefined {
  const match = /^m ?(\d{1,3}(?:\.\d{1,3})?)(?: ?[x×*] ?(\d{1,2}(?:\.\d{1,3})?))?$/i.exec(word.trim());
  if (!match) return inchName(word);
  const name = match[2] === undefined ? `M${Number(match[1])}` : `M${Number(match[1])}x${Number(match[2])}`;
  return metricName(name) ?? name;
}

/** A tap or die is bought without a class; left-hand ones are not reckoned with. */
function inchName(word: string): string | undefined {
  const found = threadCalled(word);
  return found && !found.left && found.cls === undefined && found.thread.family !== 'metric' ? found.thread.name : undefined;
}

/** A thread's name, asked for in a file. */
export const thread = () =>
  ask({ type: 'string' }, (value): string | Problem => {
    const name = typeof value === 'string' ? threadName(value) : undefined;
    return (
      name ?? {
        problem: 'read.not-a-thread',
        grounds: { word: shown(String(value)), near: nearestThreads(shown(String(value))).join(', ') },
      }
    );
  });
