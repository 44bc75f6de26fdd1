/** What a set-up's page says of its time, and of the bar that turns in it. */
import { numbersTable } from '../../handbook/numbers.ts';
import type { Plan, SetUp } from '../../model/plan.ts';
import type { PackStock } from '../../model/stock.ts';
import type { Desk } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** To the nearest minute, one at least. */
export const minutesOf = (seconds: number): number => Math.max(1, Math.round(seconds / SECONDS));
const SECONDS = numbersTable.value('minute');

/** Of these set-ups together, set off from what stands before it; '' where no time is known. */
export function timeOf(desk: Desk, setUps: readonly SetUp[], words: SheetWords): string {
  const { time, route } = desk.planned;
  if (!time) return '';
  const whole = setUps.reduce((sum, setUp) => sum + (time.setUps[route.setUps.indexOf(setUp)]?.whole ?? 0), 0);
  return `  \u00b7  ${words.say('time.about', { minutes: minutesOf(whole) })}`;
}

/** Said where the bar itself turns: a blank to saw first, or how far it may stand out behind, where the bar on the shelf is longer. */
export function ofBar(plan: Plan, part: string, { grip }: SetUp, words: SheetWords): string {
  const blank = plan.stock?.blanks.find((b) => b.part === part);
  const kind = kindOf(plan.stock, part);
  if (!grip.kind.startsWith('bar') || !blank || !kind) return '';
  if (kind.way === 'sawn')
    return `. ${words.say('bar.sawn', { length: words.bar((blank.uses + blank.hold) as typeof blank.uses, 'over') })}`;
  const longest = Math.max(kind.lacks, ...kind.bars.map((bar) => bar.length));
  const { behind } = kind;
  return behind && longest > behind.most ? `. ${words.say('bar.behind', { most: words.bar(behind.most, 'under'), rpm: behind.rpm })}` : '';
}

export function kindOf(stock: PackStock | undefined, part: string): PackStock['kinds'][number] | undefined {
  return stock?.kinds.find((k) => [...k.bars.flatMap((bar) => bar.pieces), ...k.short].some((piece) => piece.part === part));
}
