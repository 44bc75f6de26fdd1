/** A set-up as a page: who holds the part, what it is measured from, how true; its rows, its checkpoint, its dangers. */
import { type Len, len, mm } from '../../base/units.ts';
import { thread as threadName } from '../../drawing/sheet/format.ts';
import { size } from '../../fittings/limits.ts';
import { toolingId } from '../../fittings/tooling/make.ts';
import type { Plan, SetUp, ToolingAsk, Verb } from '../../model/plan.ts';
import type { GripPage, Row } from '../../model/sheet.ts';
import { isOffLathe } from '../../model/work.ts';
import { ofBar, timeOf } from './bar-and-time.ts';
import { cautionsOf } from './caution.ts';
import { dayShown, goesOnSaid, servesSaid, sheetAt, stillFrom } from './day.ts';
import { type Desk, lastOf } from './lookup.ts';
import { keyOf, partName, stockName } from './names.ts';
import { commonOf, NOTHING_COMMON, onceSaid } from './once.ts';
import { rowsOf } from './operations.ts';
import { withPanel } from './panel.ts';
import type { SheetWords } from './said.ts';
import { endMade, filedFrom } from './side-places.ts';

/** One page: the set-up at that place of the day, at the lathe or at the bench; `bench` follows it on the same page. */
export function gripPage(plan: Plan, desk: Desk, at: number, bench: readonly SetUp[], words: SheetWords): GripPage {
  const { part } = desk;
  const place = plan.sequence[at]?.setUp ?? 0;
  const setUp = desk.setUp(place);
  const shown = dayShown(plan, at, at + bench.length, words);
  const grip = gripName(desk, setUp, words);
  const name = partName(part, words);
  const own = withPanel(desk, setUp, rowsOf(desk, setUp, commonOf(desk, setUp), words), words);
  const blocks = [
    { title: '', text: '', rows: own },
    ...bench.map((b) => benchBlock(desk, b, own.some((row) => row.panel) ? 'said' : 'unsaid', words)),
  ];
  return {
    kind: 'grip',
    key: keyOf(part.id, place),
    part: part.id,
    setUp: place,
    heading: words.say('page.grip.heading', { part: name, grip }),
    name: name.toUpperCase(),
    about: `${words.say('page.about', { fitting: plan.fitting.title, stock: stockName(part, words), quantity: part.quantity })}${timeOf(desk, [setUp, ...bench], words)}`,
    grip,
    of: isOffLathe(setUp.grip) ? '' : words.say('grip.of', { count: desk.grips.length }),
    hold: holdOf(plan, desk, at, words),
    once: onceSaid(desk, setUp, words),
    columns: columnsOf(words),
    blocks,
    checkpoint: checkpointOf(
      desk,
      [setUp, ...bench],
      { sheets: servesSaid(plan, at), measured: blocks.some(({ rows }) => rows.some(({ measure }) => measure === 'box')) },
      goesOnSaid(plan, at, at + bench.length, words),
      words,
    ),
    cautions: cautionsOf(desk, [setUp, ...bench], besidesOf(setUp), words),
    ...(shown ? { day: shown } : {}),
  };
}

/** One panel a page: where the grip has its own, bench work has none. */
function benchBlock(
  desk: Desk,
  setUp: SetUp,
  panel: 'said' | 'unsaid',
  words: SheetWords,
): { readonly title: string; readonly text: string; readonly rows: readonly Row[] } {
  const rows = rowsOf(desk, setUp, NOTHING_COMMON, words);
  return {
    title: words.say('bench.then'),
    text: words.say('bench.how'),
    rows: panel === 'said' ? rows : withPanel(desk, setUp, rows, words),
  };
}

function columnsOf(words: SheetWords): GripPage['columns'] {
  const label = (id: string): string => words.say(`label.${id}`);
  return { do: label('do'), size: label('size'), rpm: label('rpm'), cuts: label('cuts'), dial: label('dial'), measured: label('measured') };
}

export function gripName(desk: Desk, setUp: SetUp, words: SheetWords): string {
  if (isOffLathe(setUp.grip)) return words.say(`grip.${setUp.grip.kind}`);
  const n = desk.grips.indexOf(setUp) + 1;
  return desk.grips.length === 1 ? words.say('grip.only') : words.say('grip.no', { n });
}

// ---- held by, measured from, true to -----------------------------------------------------------------------------------
function holdOf(plan: Plan, desk: Desk, at: number, words: SheetWords): GripPage['hold'] {
  const setUp = desk.setUp(plan.sequence[at]?.setUp ?? 0);
  const { grip } = setUp;
  const facts = {
    diameter: grip.kind.startsWith('bar')
      ? words.say('size.across', { target: words.barAcross(grip.diameter) })
      : words.say('size.across', { target: words.nominal(grip.takes?.hi ?? grip.diameter) }),
    across: words.named(grip.takes?.hi ?? grip.diameter),
    section: desk.part.stock.from === 'bar' ? desk.part.stock.section : 'round',
    length: words.short(heldLength(grip)),
    thread: grip.tooling && 'thread' in grip.tooling ? threadName(grip.tooling.thread.name) : '',
    sheet: grip.tooling ? sheetOfTooling(plan, at, grip.tooling) : '',
    still: stillFrom(plan, at),
    knurled: grip.knurled ? 'yes' : 'no',
    first: setUp === desk.grips[0] ? 'yes' : 'no',
    runout: words.about(grip.runout),
  };
  const column = (label: string, title: string, text: string) => ({
    label: words.say(label),
    title: words.say(title, facts),
    text: words.say(text, facts),
  });
  const alone = column('label.held-by', `grip.${grip.kind}.held`, `grip.${grip.kind}.how`);
  const own = besidesOf(setUp).reduce((column, one) => withBesides(column, one, plugFacts(plan, at, setUp, words), words), alone);
  const held = { ...own, text: `${own.text}${ofBar(plan, desk.part.id, setUp, words)}` };
  if (grip.kind === 'bench') return [held];
  const reads = `grip.${grip.kind}.reads`;
  return [
    held,
    { label: words.say('label.measured-from'), ...datumOf(desk, setUp, words) },
    column('label.true-to', words.has(reads) ? reads : 'grip.true', `grip.${grip.kind}.true`),
  ];
}

/** To the tenth below. */
const heldLength = ({ from, to }: SetUp['grip']): Len => len(Math.floor((to - from) / mm(0.1)) * mm(0.1));

/** A hold with a centre besides; that on bar has words of its own. */
const isAlsoCentred = ({ grip }: SetUp): boolean => grip.centre !== undefined && grip.kind !== 'bar-and-centre';

/** What helps a hold: a plug in the bore under it, a seat against the jaws, a centre in the free end. */
const besidesOf = (setUp: SetUp): readonly ('and-plug' | 'and-seat' | 'and-centre')[] => [
  ...(setUp.grip.plug ? ['and-plug' as const] : []),
  ...(setUp.grip.seated ? ['and-seat' as const] : []),
  ...(isAlsoCentred(setUp) ? ['and-centre' as const] : []),
];

type Column = GripPage['hold'][number];
const withBesides = (own: Column, one: string, facts: Readonly<Record<string, string>>, words: SheetWords): Column => ({
  ...own,
  title: words.say(`grip.${one}.held`, { ...facts, held: own.title }),
  text: words.say(`grip.${one}.how`, { ...facts, how: own.text }),
});

function plugFacts(plan: Plan, at: number, setUp: SetUp, words: SheetWords): Readonly<Record<string, string>> {
  const { plug } = setUp.grip;
  if (!plug) return {};
  const sheet = sheetOfTooling(plan, at, plug.tooling);
  return { sheet, recess: words.short(size('plug.recess')) };
}

/** The mark of the sheet on which this very tooling was made last, or the last of its kind before this set-up; '' where it stood there already. */
function sheetOfTooling(plan: Plan, at: number, ask: ToolingAsk): string {
  const id = toolingId(ask);
  const kinds = new Map(plan.parts.map((planned) => [planned.part.id, planned.part.kind]));
  const before = plan.sequence.slice(0, at);
  // the beginning of its last making: tooling in place is made anew for a hold that finds it out of the chuck
  const made = before.findLastIndex((entry) => entry.part === id && entry.setUp === 0);
  return sheetAt(plan, made < 0 ? before.findLastIndex((entry) => kinds.get(entry.part) === ask.kind) : made);
}

function datumOf(desk: Desk, setUp: SetUp, words: SheetWords): { readonly title: string; readonly text: string } {
  const datum = datumFace(desk, setUp);
  if (datum === undefined) return { title: words.say('datum.none'), text: words.say('datum.none.how') };
  const letter = desk.letter(datum);
  const kind = setUp.grip.datum === undefined && setUp.grip.kind !== 'vee-block' ? 'made' : (AGAINST[setUp.grip.kind] ?? 'stands');
  const first = setUp.operations.find((op) => desk.workings(op).some((w) => w.makes === datum));
  const facts = { letter, face: lastOf(datum), number: first ? desk.number(first) : '' };
  return { title: words.say(`datum.${kind}`, facts), text: words.say(`datum.${kind}.how`, facts) };
}

/** How the datum comes to rest, where it is not by a push against jaws or stop. */
const AGAINST: Readonly<Record<string, string>> = {
  'threaded-mandrel': 'against',
  'stub-mandrel': 'pushed',
  'threaded-sleeve': 'before',
  blank: 'over-all',
  'between-centres': 'over-all',
  'vee-block': 'marked-out',
};

/** The face that most lengths of the set-up are measured from; the grip's own datum where nothing is measured. */
export function datumFace(desk: Desk, setUp: SetUp): string | undefined {
  const froms = setUp.operations.flatMap((op) => desk.workings(op)).map((w) => w.from);
  const faces = froms.filter((from) => from !== 'axis' && from !== 'bar end');
  const count = (face: string): number => faces.filter((f) => f === face).length;
  const distinct = [...new Set(faces)];
  if (setUp.grip.datum !== undefined) return setUp.grip.datum;
  if (setUp.grip.kind === 'vee-block') return endMade(desk, setUp);
  if (setUp.grip.kind === 'bench') return filedFrom(desk, setUp);
  return distinct.reduce<string | undefined>(
    (best, face) => (best === undefined || count(face) > count(best) ? face : best),
    faced(desk, setUp),
  );
}

/** Where no limit is measured in a set-up, its places along the axis still count from the face that is cut in it. */
const faced = (desk: Desk, setUp: SetUp): string | undefined =>
  setUp.operations.flatMap((op) => desk.workings(op)).find((w) => w.from === 'bar end')?.makes;

// ---- checkpoint, caution -----------------------------------------------------------------------------------------------
function checkpointOf(
  desk: Desk,
  setUps: readonly SetUp[],
  facts: Readonly<Record<string, string | boolean>>,
  goesOn: readonly string[],
  words: SheetWords,
): GripPage['checkpoint'] {
  const topics = topicsOf(desk, setUps);
  const text = topics.flatMap((topic) => (words.has(`checkpoint.${topic}`) ? [words.say(`checkpoint.${topic}`, facts)] : []));
  const boxes = topics.flatMap((topic) => ['a', 'b'].map((box) => `checkpoint.${topic}.box-${box}`)).filter((id) => words.has(id));
  return {
    title: words.say('checkpoint.title'),
    text: [...text, ...goesOn],
    boxes: [...boxes.map((id) => words.say(id)), words.say('label.by'), words.say('label.date')],
  };
}

/** Tooling that is tried on the work, or in it, before it leaves the chuck or the work comes to it. */
function fittedTo({ part }: Desk): string | undefined {
  if (part.use === 'tooling made in place') return 'stays';
  if (part.use !== 'tooling made to fit') return undefined;
  return part.features.some((f) => f.kind === 'hole' && f.madeTo) ? 'slides-on' : 'fits';
}

/** What has to be looked at before the part leaves this grip: a seat that is finished here, a thread, tooling to be used next, else the sizes. */
function topicsOf(desk: Desk, setUps: readonly SetUp[]): readonly string[] {
  const done = setUps.flatMap((setUp) => setUp.operations);
  const lastOfSeat = desk.planned.route.setUps
    .flatMap((s) => s.operations)
    .filter((op) => desk.role(op) === 'seat')
    .at(-1);
  const cutBy = (verb: Verb): boolean => done.some((op) => desk.operation(op).verb === verb);
  const topics = [
    fittedTo(desk) ?? (setUps[0] && isOffLathe(setUps[0].grip) ? 'bench' : 'sizes'),
    cutBy('screw-cut') ? 'thread' : '',
    cutBy('tap') ? 'tapped' : '',
    cutBy('die') ? 'died' : '',
    done.some((op) => op === lastOfSeat) ? seatTopic(desk) : '',
    done.some((op) => desk.operation(op).verb === 'solder') ? 'solder' : '',
  ];
  return topics.filter((topic) => topic !== '');
}

/** A ball is tried on its seat at once; a cone only when the bonnet steers it. */
const seatTopic = (desk: Desk): string => (desk.part.features.some((f) => f.kind === 'hole' && f.takes === 'cone') ? 'seat-cone' : 'seat');
