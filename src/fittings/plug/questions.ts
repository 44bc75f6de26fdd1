/** What `new plug` asks, in this order; the words are those of the keys. */
import type { Step } from '../question.ts';

export const PLUG_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Blank nipple for the day of the test' },
  { key: 'closes', usual: 'coupling' },
  { key: 'thread', usual: 'M10x1' },
  { key: 'pipe.outside', usual: '6 mm', when: { key: 'closes', is: ['coupling', 'pump'] } },
  { key: 'pipe.wall', usual: '0.8 mm', when: { key: 'closes', is: ['coupling', 'pump'] } },
  { key: 'pump', usual: 'M6', when: { key: 'closes', is: ['pump'] } },
  { key: 'bore', when: { key: 'closes', is: ['pump'] } },
  { key: 'screwed', when: { key: 'closes', is: ['hole'] } },
  { key: 'material', usual: 'PB102' },
  { key: 'quantity', usual: '1' },
];
