/** What a page, a part and its bar are called. */
import { ownWords } from '../../base/own-words.ts';
import { thread as threadName } from '../../drawing/sheet/format.ts';
import type { Part } from '../../model/part.ts';
import type { SheetWords } from './said.ts';

/** `setUp`: its place in the route, from 0. */
export const keyOf = (part: string, setUp: number): string => `${part}/${setUp}`;

/** 'Threaded mandrel M12x1'; a kind without words of its own is the user's name for it. */
export function partName(part: Part, words: SheetWords): string {
  const thread = part.features.find((f) => f.kind === 'thread');
  const facts = {
    thread: thread?.kind === 'thread' ? threadName(thread.thread.name) : '',
    side: thread?.kind === 'thread' ? thread.side : '',
    across: part.stock.from === 'bar' ? words.named(part.stock.across) : '',
  };
  if (words.has(`part.${part.kind}`)) return words.say(`part.${part.kind}`, facts);
  const name = part.kind.replace(/[-.]/g, ' ');
  return name.charAt(0).toUpperCase() + name.slice(1);
}

export function stockName(part: Part, words: SheetWords): string {
  const { stock } = part;
  if (stock.from === 'bought') return words.say('stock.bought', { what: stock.what });
  return words.say('stock.bar', {
    material: ownWords('material', stock.material, words),
    section: stock.section,
    across: words.named(stock.across),
  });
}
