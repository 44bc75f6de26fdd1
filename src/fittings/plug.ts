/** A blanking plug: hexagon head, outside thread, a face that seals on a ring. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { add, type Len } from '../base/units.ts';
import type { Part } from '../model/part.ts';
import type { Workshop } from '../model/workshop.ts';
import { barFor, nextBar } from './bar.ts';
import { general, MM, size, stock, tidy } from './limits.ts';
import { partFrom } from './outline.ts';
import { outsideThread, reliefOf, type ThreadPair } from './threads.ts';

export type PlugAsk = { readonly thread: ThreadPair; readonly screwed: Len; readonly quantity: number; readonly material: string };

export function plugPart(ask: PlugAsk, workshop: Workshop, found: Diagnostic[]): Part {
  const thread = ask.thread.outside;
  const least = tidy(add(thread.major.hi, add(size('body.wall'), size('body.wall'))), MM, 'near');
  const across = nextBar({ material: ask.material, section: 'hexagon' }, least, workshop);
  const head = size('plug.head');
  return partFrom({
    id: 'plug',
    kind: 'plug',
    quantity: ask.quantity,
    use: 'fitting',
    stock: barFor({ part: 'plug', material: ask.material, section: 'hexagon', across, turned: false }, workshop, found),
    first: { letter: 'N', role: 'clearance' },
    second: { letter: 'T', role: 'clearance' },
    sections: [
      {
        ...{ name: 'plug-thread', role: 'thread', size: thread.major, length: ask.screwed, thread: outsideThread(thread, 'first') },
        shoulder: { letter: 'A', role: 'sealing' },
      },
      { name: 'head', role: 'free', size: stock(across), length: head, section: 'hexagon', asStock: true },
    ],
    lengths: [
      { from: 'N', to: 'A', limits: general(ask.screwed) },
      { from: 'plug-thread.wall', to: 'A', limits: reliefOf(thread).width },
      { from: 'A', to: 'T', limits: general(head) },
    ],
  });
}
