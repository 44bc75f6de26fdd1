/** What `new union` asks, in this order; the words are those of the keys. */
import type { Step } from '../question.ts';

export const UNION_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Union of the feed pipe' },
  { key: 'pipe.outside', usual: '6 mm' },
  { key: 'pipe.wall', usual: '0.8 mm' },
  { key: 'thread' },
  { key: 'into.wall' },
  { key: 'into.hole', beside: 'into.wall' },
  { key: 'bore', beside: 'into.wall' },
  { key: 'material', usual: 'PB102' },
  { key: 'quantity', usual: '1' },
];
