/**
 * What each process holds on a small centre lathe in good order, worked by hand, as a whole band: no working dimension is asked to be
 * finer. Diameters go by tolerance grade where a grade is published, but never under what a dial's division lets a hand hit.
 */
import { type Len, len, mm } from '../base/units.ts';
import { type Fact, type FactTable, factTable, type Standing } from './fact.ts';
import { toleranceGrade } from './iso286.ts';
import { cite, type SourceId } from './sources.ts';

/**
 * The band of one cut. `process` is an operation's verb ('turn', 'drill', 'part-off' ...). Throws Error for a process that is not in the
 * table: our fault. Grades are tabled to 30 mm; above, the band grows with the cube root of the size, as the standard's formula does.
 */
export function held(process: string, measures: 'diameter' | 'length', stage: 'rough' | 'final', size: Len): Len {
  const fixed = find(`${process}.${measures}.${stage}`) ?? find(`${process}.${measures}`);
  if (!fixed) throw new Error(`nothing is known of what '${process}' holds of a ${measures}`);
  if (fixed.unit === 'mm') return mm(fixed.value);
  const band = graded(fixed.value, size);
  return REAMED.includes(process) ? band : len(Math.max(mm(capability.value('dial.least')), band));
}

/** What one shop says of its own processes: whole bands of finished cuts; what is silent is as the table has it. */
export type OwnHolds = readonly { readonly process: string; readonly diameter?: Len; readonly length?: Len }[];

/** As `held`, with a shop's own figures for finished cuts; a roughing cut is never taken to be closer than those. */
export function heldBy(own: OwnHolds): typeof held {
  return (process, measures, stage, size) => {
    const usual = held(process, measures, stage, size);
    const here = own.find((one) => one.process === process)?.[measures];
    if (here === undefined) return usual;
    return stage === 'final' ? here : len(Math.max(here, usual));
  };
}

/** Every process that the table knows, in its order. */
export const processes = (): readonly string[] => {
  const named = capability.rows.flatMap((row) => (/\.(diameter|length)/.test(row.id) ? [row.id.slice(0, row.id.indexOf('.'))] : []));
  return named.filter((one, i) => named.indexOf(one) === i);
};

function find(id: string): Fact | undefined {
  return capability.rows.find((row) => row.id === id);
}

/** A reamer's size is its own: no dial is read. */
const REAMED: readonly string[] = ['ream', 'cross-ream'];

function graded(grade: number, size: Len): Len {
  const last = mm(capability.value('grade.last'));
  const tabled = toleranceGrade(size, grade);
  const band = tabled ?? (toleranceGrade(last, grade) ?? 0) * Math.cbrt(Math.max(1, size / last));
  return len(Math.ceil(band));
}

type Row = readonly [id: string, value: number, unit: 'mm' | 'IT', what: string, source?: SourceId, standing?: Standing];
const ROWS: readonly Row[] = [
  ['dial.least', 0.02, 'mm', 'least band on a diameter: one division of a usual cross-slide dial'],
  ['grade.last', 30, 'mm', 'last size of the table of grades', 'iso-286-1', 'standard'],
  // turned
  ['turn.diameter.final', 8, 'IT', 'finished diameter, turned on a centre lathe', 'narayana'],
  ['turn.diameter.rough', 11, 'IT', 'roughed diameter', 'process-it'],
  ['turn.length.final', 0.05, 'mm', 'shoulder from a face, by top slide and depth gauge'],
  ['turn.length.rough', 0.1, 'mm', 'shoulder from a face, roughed'],
  ['face-down.diameter', 0.2, 'mm', 'where roughing cuts inward end, by the dial'],
  ['face-down.length', 0.1, 'mm', 'shoulder that they leave, by the dial'],
  ['face.length.final', 0.05, 'mm', 'face to length, by top slide and micrometer'],
  ['face.length.rough', 0.1, 'mm', 'face to length, with more to come off'],
  ['groove.diameter', 0.1, 'mm', 'floor of a relief'],
  ['groove.length', 0.1, 'mm', 'wall of a relief'],
  ['chamfer.diameter', 0.2, 'mm', 'small end of a chamfer'],
  ['chamfer.length', 0.1, 'mm', 'length of a chamfer'],
  ['cone.diameter', 0.1, 'mm', 'mouth of a cone, by its fit or by measurement'],
  ['cone.length', 0.1, 'mm', 'length of a cone'],
  ['form.diameter', 0.2, 'mm', 'twice the radius that a form tool leaves: it is ground to a gauge, and cuts its own'],
  ['form.length', 0.1, 'mm', 'how far from its face a formed arc ends'],
  ['steps.diameter', 0.4, 'mm', 'twice a radius turned in steps and filed to a gauge'],
  ['steps.length', 0.2, 'mm', 'how far from its face such an arc ends'],
  // holes
  ['bore.diameter.final', 8, 'IT', 'finished bore', 'narayana'],
  ['bore.diameter.rough', 11, 'IT', 'roughed bore', 'process-it'],
  ['bore.length', 0.1, 'mm', 'floor of a bore from a face'],
  ['bore-start.diameter', 8, 'IT', 'start bore for a single-lipped tool', 'narayana'],
  ['bore-start.length', 0.1, 'mm', 'depth of that bore'],
  ['drill.diameter', 11, 'IT', 'drilled hole, over its drill and not under', 'process-it'],
  ['drill.length', 0.3, 'mm', 'depth by the tailstock dial, from full diameter'],
  ['centre.diameter', 0.3, 'mm', 'mouth of a centre-drilled hole'],
  ['centre.length', 0.3, 'mm', 'depth of a centre-drilled hole'],
  ['ream.diameter', 8, 'IT', 'reamed hole; H7 with a good reamer', 'process-it'],
  ['ream.length', 0.3, 'mm', 'depth of a reamed hole by the tailstock dial'],
  ['d-bit.diameter', 9, 'IT', 'hole of a D-bit that was started in a bore of its size'],
  ['d-bit.length', 0.2, 'mm', 'depth of a D-bit by the tailstock dial'],
  ['counterbore.diameter', 11, 'IT', 'counterbored hole, over its cutter and not under'],
  ['counterbore.length', 0.2, 'mm', 'floor of a counterbore by the tailstock dial'],
  // threads: the class is gauged; lengths end in a relief
  ['screw-cut.diameter', 0.1, 'mm', 'pitch diameter, cut to its gauge'],
  ['screw-cut.length', 0.5, 'mm', 'end of full thread, stopped by hand in a relief'],
  ['die.diameter', 0.1, 'mm', 'pitch diameter of an adjusted die (6g)', 'custom'],
  ['die.length', 0.5, 'mm', 'end of full thread'],
  ['tap.diameter', 0.1, 'mm', 'pitch diameter of a ground tap (6H)', 'custom'],
  ['tap.length', 0.5, 'mm', 'end of full thread'],
  // off
  ['part-off.length', 13, 'IT', 'length of a part as parted off', 'custom'],
  ['saw-off.length', 1, 'mm', 'length of a part as sawn off'],
  ['cut-stub.length', 13, 'IT', 'end where a chucking stub was parted off', 'custom'],
  // bench
  ['file-flats.diameter', 0.1, 'mm', 'across filed flats'],
  ['file-flats.length', 0.3, 'mm', 'length of filed flats'],
  ['file-half.diameter', 0.03, 'mm', 'half of a D-bit, flat to back: nought to 0.03 over half', 'collins'],
  ['file-half.length', 0.3, 'mm', 'length of that flat'],
  ['cross-drill.diameter', 11, 'IT', 'cross hole on the drill press', 'process-it'],
  ['cross-drill.length', 0.2, 'mm', 'place of a cross hole, marked out and centre-punched'],
  ['cross-ream.diameter', 8, 'IT', 'cross hole reamed by hand; H7 with a good reamer', 'process-it'],
  ['solder.length', 0.2, 'mm', 'place of a part that was soldered in'],
  ['stone.length', 0.01, 'mm', 'what a few strokes of a fine stone take'],
];

/** 'mm' rows are bands; 'IT' rows are grades of ISO 286-1. */
export const capability: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = 'custom', standing = 'common practice']) => ({
    id,
    value,
    unit,
    what,
    source: cite(source),
    standing,
  })),
);
