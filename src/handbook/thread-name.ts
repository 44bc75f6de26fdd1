/** Names of threads as people write them, made one: `M10×1`, `m10 x 1.0` and `M10x1` are the same thread; so are `ME 1/4x40` and `1/4-40 ME`. */
import { ask } from '../base/asking.ts';
import type { Problem } from '../base/quantity.ts';
import { readSize, type Size, sizeBy } from '../base/size.ts';
import { shown } from '../base/written.ts';
import { metricName } from './iso965-metric.ts';
import { type NamedThread, nearestThreads, thread as threadCalled } from './threads.ts';

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

/** The same of either hand: 'M10x1 LH'. */
function eitherHand(word: string): string | undefined {
  const left = /^(.+?)[ -]LH$/i.exec(word.trim());
  const name = threadName(left?.[1] ?? word);
  return left && name !== undefined ? `${name} LH` : name;
}

/** A tap or die is bought without a class. */
function inchName(word: string): string | undefined {
  const found = threadCalled(word);
  return found && !found.left && found.cls === undefined && found.thread.family !== 'metric' ? found.thread.name : undefined;
}

const handed = ({ thread: { name }, left }: NamedThread): string => (left ? `${name} LH` : name);

/** A right-hand thread's name, asked for in a file: our own designs have no other. */
export const thread = () => named(threadName);

/** Of either hand: what a tap, a die or a gauge is for. */
export const handedThread = () => named(eitherHand);

const named = (read: (word: string) => string | undefined) =>
  ask({ type: 'string' }, (value): string | Problem => {
    const name = typeof value === 'string' ? read(value) : undefined;
    return name ?? notAThread(value);
  });

/** A thread as a drawing has it: 'M10x1-6g', '1/4-40 ME close', '2BA'. */
export const threadSize = () => sizeBy(sizeOf);

/** A plain size passes here: that it is no thread is told where the part is judged. */
function sizeOf(value: unknown): Size | Problem {
  const size = inchSizeOf(value) ?? readSize(value);
  return 'problem' in size && typeof value === 'string' ? notAThread(value) : size;
}

function inchSizeOf(value: unknown): Size | undefined {
  const found = typeof value === 'string' ? threadCalled(value) : undefined;
  if (typeof value !== 'string' || !found || found.thread.family === 'metric') return undefined;
  const { nominal } = found.thread;
  return { nominal, thread: handed(found), text: shown(value), ...(found.cls === undefined ? {} : { fit: found.cls }) };
}

function notAThread(value: unknown): Problem {
  const word = shown(String(value));
  if (STARTS.test(word)) return { problem: 'read.several-starts', grounds: { word } };
  return { problem: 'read.not-a-thread', grounds: { word, near: nearestThreads(word).join(', ') } };
}
/** 'M10x2 2 start', 'M10xPh2P1'. */
const STARTS = /\bstarts?\b|ph ?\d+(?:\.\d+)? ?p/i;
