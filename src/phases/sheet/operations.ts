/** An operation as a row: title, sizes, speed, cuts, dial, checks. SheetWords come from templates, figures from chart and figures. */

import { type Len, len } from '../../base/units.ts';
import { thread as threadName } from '../../drawing/sheet/format.ts';
import { practice } from '../../handbook/practice.ts';
import type { OpId } from '../../model/ids.ts';
import type { Feature, Surface } from '../../model/part.ts';
import type { Because, Figures, Operation, SetUp, ToolUse, Working } from '../../model/plan.ts';
import type { Row, SizeShown } from '../../model/sheet.ts';
import { isOffLathe } from '../../model/work.ts';
import { dialText, figuresSaid, passesText } from './dials.ts';
import { type Desk, namedIn, wayOf } from './lookup.ts';
import { type Common, materialSaid } from './once.ts';
import { squareOf, stairsSaid } from './radii.ts';
import type { SheetWords } from './said.ts';
import { facingFacts, meetsOf, placeShown, solderFacts } from './side-places.ts';
import { bladeEnd, isCentre, sizesOf } from './sizes.ts';
import { SUMS } from './sums.ts';
import { nutsOf, threadSaid, wheelsOf } from './thread-words.ts';

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
/** Degrees: holes right across stand evenly in half a turn. */
const HALF_TURN = practice.value('turn.half');

/**
 * The rows of one set-up, in order. `letters` of sizes are given through the set-up: the picture may show them instead of values.
 * `common`: what the page says once over all of them.
 */
export function rowsOf(desk: Desk, setUp: SetUp, common: Common, words: SheetWords): readonly Row[] {
  const lengths = setUp.operations.flatMap((op) => desk.workings(op)).filter((w) => w.measures === 'length');
  const letterOf = (working: Working): string => (working.measures === 'length' ? (LETTERS[lengths.indexOf(working)] ?? '') : '');
  const told = new Set<string>();
  return setUp.operations.map((op) => rowOf({ desk, setUp, op, words, letterOf, told, common }));
}

type RowAsk = {
  readonly desk: Desk;
  readonly setUp: SetUp;
  readonly op: OpId;
  readonly words: SheetWords;
  readonly letterOf: (working: Working) => string;
  readonly told: Set<string>;
  readonly common: Common;
};

function rowOf({ desk, setUp, op, words, letterOf, told, common }: RowAsk): Row {
  const operation = desk.operation(op);
  const figures = desk.figures(op);
  const sizes = [...sizesOf(desk, setUp, operation, words, letterOf), ...placeShown(desk, setUp, operation, words)];
  const facts = { ...factsOf(desk, setUp, operation, sizes, words), ...figureFacts(operation, figures, common, words) };
  return {
    op,
    number: desk.number(op),
    title: words.say(`verb.${operation.verb}.do`, facts),
    note: words.say(`verb.${operation.verb}.note`, facts),
    sizes,
    rpm: rpmOf(figures, words),
    cuts: cutsOf(operation, figures, words),
    dial: dialOf(figures, words),
    measure: isMeasured(desk, setUp, operation) ? 'box' : 'nothing',
    says: [
      ...narrowSaid(figures, words),
      ...stairsSaid(desk, operation, words),
      ...saidIn(desk, operation, setUp).flatMap((because) => said(because, words)),
    ],
    under: saidOnce(
      [
        ...threadSaid(figures, words),
        ...figuresSaid(operation, figures, words),
        ...shoulderSaid(desk, figures, words),
        ...bladeSaid(desk, setUp, operation, words),
      ],
      told,
    ).join(` ${words.say('under.between')} `),
  };
}

/** Where the carriage counts from another face than the length: what to reckon its reading from. */
function shoulderSaid(desk: Desk, { along, alongBy }: Partial<Figures> = {}, words: SheetWords): readonly string[] {
  if (!along || !alongBy) return [];
  const { from, end, size, way } = alongBy;
  const facts = { slide: words.say(`slide.${along.which}`), from: desk.letter(from), end: desk.letter(end), size: words.size(size), way };
  return [words.say('dial.along-by', facts)];
}

/** What a blade's carriage reading counts from: its headstock side on the end in use. */
function bladeSaid(desk: Desk, setUp: SetUp, operation: Operation, words: SheetWords): readonly string[] {
  const end = bladeEnd(desk, setUp, operation);
  return end === undefined ? [] : [words.say('dial.blade', { slide: words.say('slide.carriage'), end: desk.letter(end) })];
}

/** Of the lathe's spindle, or of the drill press: about so many where nobody said what it has. */
function rpmOf({ rpm, press }: Partial<Figures> = {}, words: SheetWords): string {
  const turns = rpm?.value ?? press?.value;
  if (turns === undefined) return '';
  return press?.about ? words.say('rpm.about', { turns }) : String(turns);
}

/** What was said in an earlier row of this grip is not said again. */
function saidOnce(lines: readonly string[], told: Set<string>): readonly string[] {
  const fresh = lines.filter((line) => !told.has(line));
  for (const line of fresh) told.add(line);
  return fresh;
}

/** Only what is final and decides something is written down: no box for a roughing cut, a chamfer, or what a drill leaves for the next tool. */
function isMeasured(desk: Desk, setUp: SetUp, operation: Operation): boolean {
  if (operation.verb === 'chamfer' || operation.verb === 'stone' || operation.verb === 'deburr' || operation.verb === 'slit') return false;
  if (isCentre(desk, operation)) return false;
  const { verb } = operation;
  if (verb === 'screw-cut' || verb === 'tap' || verb === 'die' || isOffLathe(setUp.grip)) return verb !== 'solder' && verb !== 'harden';
  return (
    desk.workings(operation.id).some((w) => w.stage === 'final' && w.from !== 'bar end') || verb === 'bore-start' || verb === 'part-off'
  );
}

// ---- words -------------------------------------------------------------------------------------------------------------
/** All that the words of a verb may ask for; '' where there is no such thing. */
export type OpFacts = Readonly<Record<string, string | number | boolean>>;

function factsOf(desk: Desk, setUp: SetUp, operation: Operation, sizes: readonly SizeShown[], words: SheetWords): OpFacts {
  const cuts = wayOf(operation, setUp)?.cuts ?? [];
  const length = desk.workings(operation.id).find((w) => w.measures === 'length');
  return {
    ...featureFacts(desk, operation, words),
    ...facingFacts(desk, operation, (id) => namedIn(id, words)),
    ...solderFacts(desk, setUp, operation, words),
    lies: operation.lies ? 'yes' : '',
    meets: meetsOf(desk, operation),
    toHole: toHoleOf(desk, operation),
    square: squareOf(desk, setUp, operation, words),
    stub: wayOf(operation, setUp)?.sweeps.some((sweep) => sweep.take === 'part' && sweep.stub !== undefined) ? 'yes' : '',
    mouth: isCentre(desk, operation) ? words.diameter(mouthOf(desk, operation)) : '',
    stage: cuts.some((cut) => cut.stage === 'final') ? 'final' : 'rough',
    size: sizes[0]?.text ?? '',
    length: length ? words.target(length.limits) : '',
    from: length && length.from !== 'axis' && length.from !== 'bar end' && length.from !== length.makes ? desk.letter(length.from) : '',
  };
}

/** 'one' or 'each' where a shaft is turned to its hole: several of them each to its own. */
function toHoleOf(desk: Desk, operation: Operation): 'one' | 'each' | '' {
  const feature = desk.feature(operation.feature);
  if (feature?.kind !== 'outside' || !feature.madeTo) return '';
  return desk.part.quantity > 1 ? 'each' : 'one';
}

/** The widest that it makes. */
const mouthOf = (desk: Desk, operation: Operation): Len =>
  len(Math.max(0, ...desk.workings(operation.id).flatMap((w) => (w.measures === 'diameter' ? [w.limits.target] : []))));

/** Feed to the hundredth: no lathe of this kind feeds finer than a person can tell. */
function figureFacts(operation: Operation, figures: Figures | undefined, common: Common, words: SheetWords): OpFacts {
  const { lubricant, feed } = figures ?? {};
  return {
    tool: nameOfTool(operation.tool, words, materialSaid(operation, common)),
    lubricant: lubricant === undefined || lubricant === common.lubricant ? '' : words.say(`lubricant.${lubricant}`),
    feed: feed === undefined ? '' : words.feed(Math.round(feed * 100) / 100),
    nuts: nutsOf(figures, words),
  };
}

function featureFacts(desk: Desk, operation: Operation, words: SheetWords): OpFacts {
  const feature = desk.feature(operation.feature);
  const thread = desk.thread(operation.feature);
  const serves = feature && 'serves' in feature ? (feature.serves ?? '') : '';
  const side = feature?.kind === 'side' ? feature : undefined;
  return {
    thread: thread ? threadName(thread.name) : '',
    servesThread: threadName(desk.thread(serves)?.name ?? ''),
    kind: feature?.kind ?? 'bar',
    does: feature && 'does' in feature ? feature.does : '',
    fitted: feature?.kind === 'end' && feature.fitted ? 'yes' : '',
    sums: `{sheet:${SUMS}}`,
    role: feature?.role ?? 'free',
    side: feature ? sideOf(desk, feature) : 'outside',
    feature: namedIn(operation.feature, words),
    host: feature ? hostOf(desk, feature, words) : '',
    angle: feature ? coneAngle(desk, feature) : 0,
    half: feature ? coneAngle(desk, feature) / 2 : 0,
    large: feature ? largeEnd(desk, feature, words) : '',
    blank: feature && isBlank(desk, feature) ? 'yes' : '',
    through: feature?.kind === 'hole' && !feature.floor && !feature.blind ? 'yes' : 'no',
    count: side?.count ?? 1,
    apart: HALF_TURN / (side?.count ?? 1),
    relief: side?.does === 'half-flat' ? practice.value('d-bit.end.relief') : 0,
    circle: side?.circle ? words.diameter(side.circle.target) : '',
    joins: side?.joins ? namedIn(side.joins.part, words) : '',
    width: feature ? grooveWidth(desk, feature, words) : '',
    // of several of its kind in the drawer
    chosen: operation.tool.size === undefined ? '' : 'yes',
    plunges: feature && isWider(desk, feature, operation.tool) ? 'many' : 'one',
  };
}

function sideOf(desk: Desk, feature: Feature): 'outside' | 'inside' {
  if (feature.kind === 'cone') return coneOf(desk, feature)?.side ?? 'outside';
  if (feature.kind === 'arc') return desk.surface(feature.arc).side;
  if (feature.kind === 'groove' || feature.kind === 'thread') return feature.side;
  return feature.kind === 'hole' ? 'inside' : 'outside';
}

export function nameOfTool(tool: ToolUse, words: SheetWords, material: string = tool.material): string {
  return words.say(`tool.${tool.kind}`, {
    size: tool.name ?? (tool.size === undefined ? '' : words.named(tool.size)),
    thread: threadName(tool.thread ?? ''),
    material,
  });
}

function coneOf(desk: Desk, feature: Feature): (Surface & { readonly shape: 'cone' }) | undefined {
  const surface = feature.kind === 'cone' ? desk.surface(feature.cone) : undefined;
  return surface?.shape === 'cone' ? surface : undefined;
}
/** What a chamfer or cone stands on. */
function hostOf(desk: Desk, feature: Feature, words: SheetWords): string {
  const cone = coneOf(desk, feature);
  if (!cone) return '';
  const [own = '', ...pieces] = feature.id.split('.');
  return namedIn(pieces.length > 0 ? own : desk.surface(cone.until).feature, words);
}

/** Of a taper that runs out: what it is measured by at its other end, with its limits. */
function largeEnd(desk: Desk, feature: Feature, words: SheetWords): string {
  const size = coneOf(desk, feature)?.ends?.size;
  return size ? words.say('size.large-end', { size: words.target(size), limits: words.limits(size) }) : '';
}

function isBlank(desk: Desk, feature: Feature): boolean {
  const on = feature.kind === 'outside' ? desk.surface(feature.cylinder) : undefined;
  return on?.shape === 'cylinder' && on.blank === true;
}

const coneAngle = (desk: Desk, feature: Feature): number => coneOf(desk, feature)?.includedAngle ?? 0;

function grooveWidth(desk: Desk, feature: Feature, words: SheetWords): string {
  if (feature.kind !== 'groove') return '';
  const floor = desk.surface(feature.floor);
  return floor.shape === 'cylinder' ? words.short((floor.to - floor.from) as typeof floor.to) : '';
}

function isWider(desk: Desk, feature: Feature, tool: ToolUse): boolean {
  const floor = feature.kind === 'groove' ? desk.surface(feature.floor) : undefined;
  return floor?.shape === 'cylinder' && tool.size !== undefined && floor.to - floor.from > tool.size;
}

// ---- speed, cuts, dial -------------------------------------------------------------------------------------------------
function cutsOf(operation: Operation, figures: Figures | undefined, words: SheetWords): string {
  const cuts = figures?.passes ?? [];
  if (cuts.length === 0) return words.has(`verb.${operation.verb}.cuts`) ? words.say(`verb.${operation.verb}.cuts`) : '';
  if (figures && operation.verb !== 'screw-cut') return passesText(figures, words);
  const deep = cuts.reduce((sum, cut) => (sum + cut) as typeof cut);
  return words.say('cuts.thread', { count: cuts.length, deep: words.short(deep) });
}

/** What the drill left narrow above a floor is opened first. */
function narrowSaid({ narrow }: Partial<Figures> = {}, words: SheetWords): readonly string[] {
  return narrow ? [words.say('cuts.narrow', { long: words.size(narrow.long), passes: words.passes(narrow.passes) })] : [];
}

function dialOf(figures: Figures | undefined, words: SheetWords): string {
  if (figures?.wheels) return wheelsOf(figures.wheels, words);
  return figures ? dialText(figures, words) : '';
}

/** What an operation says in this hold. */
export const saidIn = (desk: Desk, operation: Operation, setUp: SetUp): readonly Because[] =>
  operation.says.filter(
    ({ held, comesOut }) => (held === undefined || held === setUp.grip.kind) && (!comesOut || desk.figures(operation.id)?.comesOut),
  );

/** A check or caution in a line. */
function said(because: Because, words: SheetWords): readonly string[] {
  return words.has(`rule.${because.rule}.title`) ? [words.say(`rule.${because.rule}.title`, because.grounds)] : [];
}
