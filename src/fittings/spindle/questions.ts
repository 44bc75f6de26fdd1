/** What `new spindle` asks, in this order; the words are those of the keys. */
import type { Step } from '../question.ts';

export const SPINDLE_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Spindle of the blower valve' },
  { key: 'material', usual: 'stainless 316' },
  { key: 'rod' },
  { key: 'bore', usual: '6 mm' },
  { key: 'room' },
  { key: 'cone.angle', usual: '60 deg' },
  { key: 'cone.tip' },
  { key: 'plug.across' },
  { key: 'plug.length' },
  { key: 'thread.size' },
  { key: 'thread.length', usual: '12 mm' },
  { key: 'stem.across' },
  { key: 'stem.length', usual: '30 mm' },
  { key: 'square.across' },
  { key: 'square.length', usual: '7 mm' },
  { key: 'end.size' },
  { key: 'end.length' },
];
