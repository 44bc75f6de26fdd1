/** What `new check-valve` asks, in this order; the words are those of the keys. */
import type { Step } from '../question.ts';

export const CHECK_VALVE_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Feed check valve' },
  { key: 'duty.serves', usual: 'feed-pump' },
  { key: 'duty.pressure', usual: '7 bar' },
  { key: 'duty.pump.bore', usual: '10 mm', when: { key: 'duty.serves', is: ['feed-pump', 'hand-pump'] } },
  { key: 'duty.pump.stroke', usual: '15 mm', when: { key: 'duty.serves', is: ['feed-pump', 'hand-pump'] } },
  { key: 'duty.pump.speed', usual: '240 /min', when: { key: 'duty.serves', is: ['feed-pump', 'hand-pump'] } },
  { key: 'pattern', usual: 'angle' },
  { key: 'pipe.outside', usual: '6 mm' },
  { key: 'pipe.wall', usual: '0.8 mm' },
  { key: 'ends.outlet' },
  { key: 'material', usual: 'PB102' },
  { key: 'ball' },
  { key: 'bore' },
  { key: 'land' },
  { key: 'lift' },
  { key: 'threads.seat' },
  { key: 'threads.cap' },
  { key: 'threads.coupling' },
];
