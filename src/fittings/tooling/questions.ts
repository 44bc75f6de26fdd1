/** What `new mandrel`, `new d-bit` and `new gauge-nut` ask, in this order; the words are those of the keys. */
import type { Step } from '../question.ts';

export const MANDREL_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Mandrel' },
  { key: 'thread', usual: 'M12x1' },
  { key: 'takes', usual: 'outside-thread' },
  { key: 'depth', usual: '9 mm' },
  { key: 'rim' },
];
export const D_BIT_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'D-bit' },
  { key: 'diameter', usual: '5 mm' },
  { key: 'depth', usual: '25 mm' },
  { key: 'end', usual: 'sloped' },
];
export const GAUGE_NUT_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Gauge nut' },
  { key: 'thread', usual: 'M12x1' },
  { key: 'length' },
];
