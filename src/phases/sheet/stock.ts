/** The bar to have ready, how it is cut up, and how long the job takes, as sections of the cover. */
import { ownWords } from '../../base/own-words.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import type { Column, Section } from '../../model/sheet.ts';
import type { BarCut, PackStock, StockKind } from '../../model/stock.ts';
import { minutesOf } from './bar-and-time.ts';
import { partName } from './names.ts';
import type { SheetWords } from './said.ts';

/** A row a kind of bar; then what is cut from which bar, each to tick. */
export function stockSections(plan: Plan, stock: PackStock, words: SheetWords): readonly Section[] {
  const column = (id: string, share: number, manner: Column['manner']): Column => ({ label: words.say(`label.${id}`), share, manner });
  const table: Section = {
    kind: 'table',
    title: words.say('ready.bars'),
    text: words.say('bar.how', { packs: stock.packs }),
    columns: [column('bar', 10, 'strong'), column('bar-used', 1, 'figure'), column('grams', 1, 'figure'), column('spindle', 10, 'small')],
    rows: stock.kinds.map((kind) => [
      kindName(kind, words),
      words.bar(kind.uses, 'over'),
      kind.grams === undefined ? '' : String(Math.round(kind.grams)),
      throughSaid(kind, words),
    ]),
  };
  const items = stock.kinds.flatMap((kind) => cutsOf(plan, kind, words));
  return [table, { kind: 'notes', title: words.say('bar.cuts'), items, manner: 'ticked' }];
}

const kindName = ({ material, section, across }: StockKind, words: SheetWords): string =>
  words.say('stock.bar', { material: ownWords('material', material, words), section, across: words.named(across) });

function throughSaid({ way, behind }: StockKind, words: SheetWords): string {
  if (way === 'sawn') return words.say('bar.spindle.sawn');
  return behind
    ? words.say('bar.spindle.behind', { most: words.bar(behind.most, 'under'), rpm: behind.rpm })
    : words.say('bar.spindle.through');
}

function cutsOf(plan: Plan, kind: StockKind, words: SheetWords): readonly string[] {
  const stock = kindName(kind, words);
  const bars = kind.bars.map((bar) =>
    words.say('bar.cut', {
      stock,
      length: words.bar(bar.length, 'under'),
      pieces: piecesOf(plan, bar.pieces, words),
      left: words.barLeft(
        bar.length,
        bar.pieces.map((piece) => piece.takes),
      ),
    }),
  );
  if (kind.short.length === 0) return bars;
  return [...bars, words.say('bar.short', { stock, pieces: piecesOf(plan, kind.short, words), length: words.bar(kind.lacks, 'over') })];
}

/** Equal neighbours counted together. */
function piecesOf(plan: Plan, pieces: BarCut['pieces'], words: SheetWords): string {
  const runs = new Map<string, number>();
  for (const { part, takes } of pieces) {
    const planned = plan.parts.find((p) => p.part.id === part);
    const name = words.say('bar.piece', { part: planned ? partName(planned.part, words) : part, length: words.bar(takes, 'over') });
    runs.set(name, (runs.get(name) ?? 0) + 1);
  }
  return [...runs].map(([name, count]) => words.say('bar.pieces', { name, count })).join('; ');
}

// ---- time -----------------------------------------------------------------------------------------------------------------
export function timeSections(plan: Plan, words: SheetWords): readonly Section[] {
  const { time } = plan;
  if (!time) return [];
  const column = (id: string, share: number, manner: Column['manner']): Column => ({ label: words.say(`label.${id}`), share, manner });
  const rows = time.parts.flatMap(({ part, times, all }) => {
    const planned = plan.parts.find((p) => p.part.id === part);
    if (!planned?.time) return [];
    const { hold, cutting, handling } = planned.time;
    const weight = plan.stock?.finished.find((f) => f.part === part)?.grams;
    return [
      [
        partName(planned.part, words),
        String(times),
        ...[hold, cutting, handling, all].map((seconds) => String(minutesOf(seconds))),
        weight === undefined ? '' : String(weight),
      ],
    ];
  });
  return [
    {
      kind: 'table',
      title: words.say('time.title'),
      text: words.say('time.how', { hours: hoursOf(time.whole, words), clean: minutesOf(time.clean) }),
      columns: [
        ...[
          column('part', 10, 'strong'),
          column('quantity', 1, 'figure'),
          column('time-hold', 1, 'figure'),
          column('time-cut', 1, 'figure'),
        ],
        ...[column('time-hand', 1, 'figure'), column('time-all', 1, 'figure'), column('weight', 1, 'figure')],
      ],
      rows,
    },
  ];
}

/** '5 h 40 min', the minutes in tens. */
export function hoursOf(seconds: number, words: Pick<SheetWords, 'say'>): string {
  const hour = numbersTable.value('minute');
  const tens = Math.round(seconds / numbersTable.value('minute') / 10) * 10;
  return words.say('time.hours', { hours: Math.floor(tens / hour), minutes: tens % hour });
}
