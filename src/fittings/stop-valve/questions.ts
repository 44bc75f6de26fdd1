/** What `new stop-valve` asks, in this order; the words are those of the keys. */
import type { Step } from '../question.ts';

export const STOP_VALVE_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Steam stop valve' },
  { key: 'duty.serves', usual: 'supply' },
  { key: 'duty.pressure', usual: '7 bar' },
  { key: 'pattern', usual: 'straight' },
  { key: 'pipe.outside', usual: '6 mm' },
  { key: 'pipe.wall', usual: '0.8 mm' },
  { key: 'ends.inlet' },
  { key: 'ends.outlet' },
  { key: 'material', usual: 'PB102' },
  { key: 'spindle-material', usual: 'stainless 316' },
  { key: 'bore' },
  { key: 'cone' },
  { key: 'lift' },
  { key: 'stem' },
  { key: 'packing' },
  { key: 'wheel' },
  { key: 'threads.bonnet' },
  { key: 'threads.spindle' },
  { key: 'threads.gland' },
  { key: 'threads.coupling' },
];
