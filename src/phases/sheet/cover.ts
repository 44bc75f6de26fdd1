/** Front matter: the finished parts, the parts list, the job in figures, what to have ready, cautions. */
import { ownWords } from '../../base/own-words.ts';
import { formula, thread } from '../../drawing/sheet/format.ts';
import type { Part, Say } from '../../model/part.ts';
import type { Operation, Plan, ToolUse } from '../../model/plan.ts';
import type { PlainPage, Section, WholeShown } from '../../model/sheet.ts';
import type { Verb } from '../../model/work.ts';
import { bench } from '../../rules/tools.ts';
import { cautionSaid } from './caution.ts';
import { curveSections } from './curves.ts';
import { dangersOf } from './dangers.ts';
import { sheetAt } from './day.ts';
import { partName, stockName } from './names.ts';
import type { SheetWords } from './said.ts';
import { stockSections, timeSections } from './stock.ts';
import { wheelSections } from './wheels.ts';

export function coverPage(plan: Plan, words: SheetWords): PlainPage {
  return {
    kind: 'plain',
    key: 'cover',
    heading: words.say('cover.heading'),
    name: plan.fitting.title,
    about: words.say('cover.about', {
      kind: words.has(`fitting.${plan.fitting.kind}`) ? words.say(`fitting.${plan.fitting.kind}`) : plan.fitting.kind,
    }),
    right: words.say('cover.right', { workshop: plan.workshop.name }),
    sections: [
      pictures(plan, words),
      partsTable(plan, words),
      figures(plan, words),
      ...curveSections(plan, words),
      ...(plan.stock ? stockSections(plan, plan.stock, words) : [bars(plan, words)]),
      ...timeSections(plan, words),
      bought(plan, words),
      tools(plan, words),
      ...wheelSections(plan, words),
      cautions(plan, words),
    ].filter(filled),
    cautions: [cautionSaid(words, 'cover.caution')],
  };
}

function filled(section: Section): boolean {
  switch (section.kind) {
    case 'table':
      return section.rows.length > 0;
    case 'notes':
      return section.items.length > 0;
    case 'steps':
      return section.steps.length > 0;
    case 'boxes':
      return section.boxes.length > 0;
    case 'trains':
      return section.trains.length > 0;
    case 'arrangement':
      return true;
    case 'curve':
      return section.curve.curve.length > 0;
    case 'lessons':
      return section.lessons.length > 0;
    case 'cautions':
      return section.cautions.length > 0;
    case 'strips':
      return section.strips.length > 0;
    case 'pictures':
      return section.pictures.length > 0;
  }
}

const made = (plan: Plan): readonly Part[] => plan.parts.map((planned) => planned.part);

function pictures(plan: Plan, words: SheetWords): Section {
  const own = made(plan).filter((part) => part.use === 'fitting');
  const shown = own.length > 0 ? own : made(plan).slice(0, plan.fitting.parts.length);
  const whole = wholeOf(plan, words);
  return {
    ...{ kind: 'pictures', title: '', pictures: shown.map((part) => ({ part: part.id, caption: partName(part, words) })) },
    ...(whole ? { whole } : {}),
  };
}

/** The parts put together, where the design says how they stand. */
function wholeOf(plan: Plan, words: SheetWords): WholeShown | undefined {
  const { arrangement } = plan.fitting;
  if (!arrangement) return undefined;
  const stand = [...new Set([...arrangement.stands, ...arrangement.branches].map(({ part }) => part))];
  const parts = made(plan).filter(({ id }) => stand.includes(id));
  const named = parts.map((part) => partName(part, words)).join(', ');
  return { arrangement, alt: words.say('cutaway.alt', { parts: named }), caption: words.say('cutaway.caption') };
}

// ---- parts -------------------------------------------------------------------------------------------------------------
function partsTable(plan: Plan, words: SheetWords): Section {
  const rows = made(plan).map((part) => [
    partName(part, words),
    String(part.quantity),
    stockName(part, words),
    sheetsOf(plan, part),
    words.say(`use.${useKey(part)}`, servesFacts(plan, part)),
  ]);
  const ball = plan.fitting.bought.map((item) => [
    say({ id: `bought.${item.kind}`, grounds: item.grounds }, words),
    String(item.quantity),
    words.say('stock.buy'),
    '',
    words.say('use.bought'),
  ]);
  return {
    kind: 'table',
    title: words.say('cover.parts'),
    text: '',
    columns: [
      { label: words.say('label.part'), share: 10, manner: 'strong' },
      { label: words.say('label.quantity'), share: 1, manner: 'figure' },
      { label: words.say('label.stock'), share: 10, manner: 'text' },
      { label: words.say('label.sheets'), share: 1, manner: 'figure' },
      { label: words.say('label.use'), share: 10, manner: 'small' },
    ],
    rows: [...rows, ...ball],
  };
}

/** Of tooling made in place: how often, and for how many grips. */
function servesFacts({ sequence }: Plan, part: Part): { readonly times: number; readonly grips: number } {
  const begun = sequence.flatMap((e, i) => (e.part === part.id && e.setUp === 0 ? [i] : []));
  return { times: begun.length, grips: Math.max(1, sequence.filter(({ on }) => on !== undefined && begun.includes(on)).length) };
}

const useKey = (part: Part): string => part.use.replace(/ /g, '-');

/** The sheet on which it begins; of tooling that is made several times, each. */
function sheetsOf(plan: Plan, part: Part): string {
  const begun = plan.sequence.flatMap((s, i) => (s.part === part.id && s.setUp === 0 ? [i] : []));
  return begun.map((i) => sheetAt(plan, i)).join(', ');
}

function say(what: Say, words: SheetWords): string {
  return words.has(what.id) ? words.say(what.id, what.grounds) : what.id.slice(what.id.indexOf('.') + 1).replace(/[-.]/g, ' ');
}

// ---- figures -----------------------------------------------------------------------------------------------------------
function figures(plan: Plan, words: SheetWords): Section {
  const rows = plan.fitting.derivations.map((d) => [
    words.has(`figure.${d.of}`) ? words.say(`figure.${d.of}`) : d.of,
    words.derived(d.value, d.unit === 'ratio' ? '' : d.unit),
    d.stated ? words.say('figure-stated') : formula(ownWords('formula', d.formula, words)),
    ownWords('source', d.source, words),
  ]);
  return {
    kind: 'table',
    title: words.say('cover.figures'),
    text: words.say('cover.figures.how'),
    columns: [
      { label: words.say('label.what'), share: 10, manner: 'text' },
      { label: words.say('label.value'), share: 1, manner: 'figure' },
      { label: words.say('label.formula'), share: 10, manner: 'small' },
      { label: words.say('label.source'), share: 10, manner: 'small' },
    ],
    rows,
  };
}

// ---- have ready --------------------------------------------------------------------------------------------------------
function bars(plan: Plan, words: SheetWords): Section {
  const stocks = made(plan).flatMap((part) => (part.stock.from === 'bar' ? [{ part, what: stockName(part, words) }] : []));
  const kinds = [...new Set(stocks.map((s) => s.what))];
  const items = kinds.map((what) => {
    const parts = stocks
      .filter((s) => s.what === what)
      .map((s) =>
        words.say('ready.bar.part', { part: partName(s.part, words), length: words.short(s.part.length), quantity: s.part.quantity }),
      );
    return words.say('ready.bar', { stock: what, parts: parts.join('; ') });
  });
  return { kind: 'notes', title: words.say('ready.bars'), items, manner: 'ticked' };
}

function bought(plan: Plan, words: SheetWords): Section {
  const items = plan.fitting.bought.map((item) =>
    words.say('ready.bought', {
      quantity: item.quantity * (plan.stock?.packs ?? 1),
      what: say({ id: `bought.${item.kind}`, grounds: item.grounds }, words),
    }),
  );
  return { kind: 'notes', title: words.say('ready.bought.title'), items, manner: 'ticked' };
}

/** What a row asks for beside its tool: a saw is started in a file's nick, and its burrs are filed off. */
const BESIDES: Readonly<Partial<Record<Verb, readonly ToolUse[]>>> = { 'saw-slot': [bench('file')] };

function tools(plan: Plan, words: SheetWords): Section {
  const used = new Map<string, ToolUse>();
  for (const planned of plan.parts) {
    const operations: ReadonlyMap<string, Operation> = new Map(planned.route.chosen.flatMap((m) => m.operations).map((o) => [o.id, o]));
    for (const id of planned.route.setUps.flatMap((s) => s.operations)) {
      const operation = operations.get(id);
      for (const tool of operation ? [operation.tool, ...(BESIDES[operation.verb] ?? [])] : [])
        if (tool.kind !== 'none') used.set(tool.key, tool);
    }
  }
  const kinds = [...new Set([...used.values()].map((tool) => tool.kind))].sort(byCodeUnit);
  const items = kinds.map((kind) =>
    toolLine(
      [...used.values()].filter((tool) => tool.kind === kind),
      words,
    ),
  );
  return { kind: 'notes', title: words.say('ready.tools'), items, manner: 'ticked' };
}

/** Tools of one kind in a line, their sizes and threads after one another: 'drill 4.2, 4.5, 7.1'. */
function toolLine(tools: readonly ToolUse[], words: SheetWords): string {
  const ordered = [...tools].sort((a, b) => (a.size ?? 0) - (b.size ?? 0) || byCodeUnit(a.key, b.key));
  const list = (texts: readonly string[]): string => [...new Set(texts.filter((text) => text !== ''))].join(', ');
  const size = list(ordered.map((tool) => tool.name ?? (tool.size === undefined ? '' : words.named(tool.size))));
  const threads = list(ordered.map((tool) => thread(tool.thread ?? '')));
  const material = list(ordered.map((tool) => tool.material));
  return words.say(`tool.${ordered[0]?.kind ?? 'none'}`, { size, thread: threads, material });
}

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function cautions(plan: Plan, words: SheetWords): Section {
  const shown = dangersOf(plan).map(({ id, grounds }) => ({
    title: words.has(`${id}.title`) ? words.say(`${id}.title`, grounds) : '',
    ...cautionSaid(words, id, grounds),
  }));
  return { kind: 'cautions', title: words.say('cover.cautions'), cautions: shown };
}
