/**
 * Strength and metal of a fitting: how hot it gets, what its walls, threads and pipe bear at that, and what its metals do to each other. Each
 * figure goes into the book with its margin; where nobody has published a stress that may be allowed, that is said.
 */
import type { Diagnostic } from '../base/diagnostics.ts';
import { type Len, len, toMm } from '../base/units.ts';
import { dutyFacts } from '../handbook/duty.ts';
import { boilingPoint, SATURATION_SOURCE } from '../handbook/if97-saturation.ts';
import type { Material, Strength } from '../handbook/materials.ts';
import { cite } from '../handbook/sources.ts';
import { spindleFacts } from '../handbook/spindle.ts';
import { outsideShear } from '../handbook/thread-strength.ts';
import { boreArea } from '../handbook/valve-ball.ts';
import { copperStress, lame, pipePressure } from '../handbook/walls.ts';
import { type Book, CUSTOM, type Figure, note, refuse, warn } from './book.ts';
import { times } from './limits.ts';
import type { ThreadPair } from './threads.ts';

export type Wall = { readonly where: string; readonly inside: Len; readonly outside: Len };
/** Grounds of a wall that is too thin, with the thread that a larger one would mend, by its key; none: ''. */
export const thinWall = (where: string, has: Len, wants: Len): Diagnostic['grounds'] => ({
  where,
  which: THREADS[where] ?? '',
  // where one cuts into the other no wall is left: it is none, and not less than none
  has: len(Math.max(0, has)),
  wants,
});
const THREADS: Readonly<Record<string, string>> = {
  ...{ 'coupling-relief': 'coupling', 'seat-relief': 'seat', 'cap-relief': 'cap' },
  ...{ 'bonnet-relief': 'bonnet', 'stuffing-box': 'gland' },
};
export type ScrewedJoint = { readonly which: string; readonly pair: ThreadPair; readonly engaged: Len };
export type StrengthAsk = {
  /** bar gauge */
  readonly pressure: number;
  readonly material: Material;
  readonly walls: readonly Wall[];
  readonly joints: readonly ScrewedJoint[];
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  /** Metals that are soldered in this fitting are annealed by it. */
  readonly soldered: 'yes' | 'no';
};

export function noteStrength(ask: StrengthAsk, book: Book): void {
  note(book, 'pressure', [ask.pressure, 'bar', 'p', {}, ''], ask.pressure);
  const celsius = boilingPoint(ask.pressure);
  if (celsius === undefined) return;
  note(book, 'temperature', [celsius, 'degC', 'Ts(p)', { p: ask.pressure }, SATURATION_SOURCE]);
  const bears = allowable(ask, book);
  noteWalls(ask, bears, book);
  noteFlange(ask, bears, book);
  noteJoints(ask, bears, book);
  notePipe(ask, celsius, book);
  if (ask.soldered === 'yes' && celsius > fact('braze.most')) warn(book, 'design.braze-hot', { celsius, most: fact('braze.most') });
  checkMetal(ask, celsius, book);
  const test = dutyFacts.row('test');
  note(book, 'test-pressure', [ask.pressure * test.value, 'bar', '2 p', { p: ask.pressure }, test.source]);
}

const fact = (id: string): number => dutyFacts.value(id);

/** MPa to reckon with: no published figure for these metals in steam was found, so it is made from their strength, and that is said. */
function allowable({ material, soldered }: StrengthAsk, book: Book): number | undefined {
  const strength = strengthOf(material, soldered);
  if (!strength) return undefined;
  const { tensile, proof, source, standing } = strength;
  const stress = Math.min(proof / fact('share.proof'), tensile / fact('share.tensile')) * fact('share.hot');
  const basis = standing === 'from memory' ? `${source}, ${strength.condition}` : `${source}: ${strength.condition}`;
  note(book, 'allowable', [
    stress,
    'N/mm2',
    '0.8 min(Rp / 1.5, Rm / 8)',
    { Rp: proof, Rm: tensile },
    `no published allowable stress: made from ${basis}`,
  ]);
  return stress;
}

const strengthOf = (material: Material, soldered: 'yes' | 'no'): Strength | undefined =>
  (soldered === 'yes' ? material.annealed : undefined) ?? material.strength[0];

/** Stress round the thinnest wall, and how often it is borne. */
function noteWalls({ walls, pressure }: StrengthAsk, bears: number | undefined, book: Book): void {
  const p = pressure / 10;
  const loaded = walls.filter((wall) => wall.outside > wall.inside && wall.inside > 0).map((wall) => ({ wall, stress: hoop(wall, p) }));
  for (const { wall, stress } of loaded) {
    const inputs = { p, ri: toMm(wall.inside) / 2, ro: toMm(wall.outside) / 2 };
    note(book, `hoop.${wall.where}`, [stress, 'N/mm2', 'p (ro^2 + ri^2) / (ro^2 - ri^2)', inputs, cite('lame')]);
  }
  const worst = Math.max(...loaded.map(({ stress }) => stress));
  if (bears === undefined || loaded.length === 0) return;
  note(book, 'wall-margin', [bears / worst, 'times', 'S / s', { S: bears, s: worst }]);
  const where = loaded.find(({ stress }) => stress === worst)?.wall.where ?? '';
  borne({ where, margin: bears / worst, pressure }, book);
}

/** Under 1 it would be stressed beyond what is reckoned with: no sheet is made for that, whoever chose the size; a larger one is asked for. */
function borne({ where, margin, pressure }: { where: string; margin: number; pressure: number }, book: Book): void {
  if (margin < 1) refuse(book, 'design.bears-too-little', { where, carries: margin * pressure, pressure });
}

const hoop = ({ inside, outside }: Wall, p: number): number => lame(toMm(inside) / 2, toMm(outside) / 2, p).inside;

/** Where an end has a flange its bending stands in the book already. */
function noteFlange({ pressure }: StrengthAsk, bears: number | undefined, book: Book): void {
  const bent = book.derivations.find(({ of }) => of === 'flange-stress');
  if (!bent || bears === undefined) return;
  note(book, 'flange-margin', [bears / bent.value, 'times', 'S / s', { S: bears, s: bent.value }]);
  borne({ where: 'flange', margin: bears / bent.value, pressure }, book);
}

/** The pressure pushes on the whole disc within the thread; the threads of the screwed part shear. */
function noteJoints({ joints, pressure }: StrengthAsk, bears: number | undefined, book: Book): void {
  for (const { which, pair, engaged } of joints) {
    const F = (boreArea(toMm(pair.inside.major.lo)) * pressure) / 10;
    const As = outsideShear(pair.outside, pair.inside, engaged);
    const figure: Figure =
      bears === undefined
        ? [F / As, 'N/mm2', 'F / As', { F, As }, cite('fed-h28-2b')]
        : [(bears * fact('share.shear') * As) / F, 'times', '0.6 S As / F', { S: bears, F, As }, cite('fed-h28-2b')];
    note(book, `strip.${which}`, figure);
    const [l, P] = [toMm(engaged), toMm(pair.outside.pitch)];
    note(book, `engaged.${which}`, [l / P, 'turns', 'l / P', { l, P }, CUSTOM]);
  }
}

/** A pipe whose end has been soldered is soft there: it is reckoned as annealed throughout, at the temperature of the steam. */
function notePipe({ pipe, pressure }: StrengthAsk, celsius: number, book: Book): void {
  const copper = copperStress(celsius);
  if (!copper) {
    warn(book, 'design.copper-hot', { celsius, most: fact('copper.most') });
    return;
  }
  const [outside, wall] = [toMm(pipe.outside), toMm(pipe.wall)];
  const carries = pipePressure(outside, wall, copper.stress);
  const inputs = { F: copper.stress, t: wall, D: outside };
  note(book, 'pipe-carries', [carries, 'bar', '20 F t / (D - t)', inputs, `${cite('uk-copper')}; F: ${copper.source}`]);
  if (carries < pressure) refuse(book, 'design.pipe-weak', { outside: pipe.outside, wall: pipe.wall, carries, pressure, celsius });
}

/** How hot each metal may be where that is published. */
const HEAT: Readonly<Record<string, string>> = { gunmetal: 'gunmetal.most', copper: 'copper.most' };
const UNFIT: readonly string[] = ['rusts', 'not-for-steam', 'not-for-pressure'];

function checkMetal({ material }: StrengthAsk, celsius: number, book: Book): void {
  if (material.losesZinc) warn(book, 'design.loses-zinc', { material: material.id, zinc: material.zincPercent.hi });
  const unfit = material.cautions.find((id) => UNFIT.includes(id));
  if (unfit) warn(book, 'design.metal-unfit', { material: material.id, unfit });
  const limit = HEAT[material.kind];
  const most = limit === undefined ? undefined : dutyFacts.row(limit);
  if (most) note(book, 'metal-heat', [most.value, 'degC', 'T >= Ts', { Ts: celsius }, most.source]);
}

/** How hot packing may get: the least of what glands are packed with but ramie. */
export function noteHeatOf(what: 'packing', book: Book): void {
  const row = spindleFacts.row('limit.PTFE');
  note(book, `${what}-heat`, [row.value, 'degC', 'T >= Ts', {}, row.source]);
}

/** Stainless running in stainless galls, whatever the two are called. */
export function noteRubbing(a: Material, b: Material, book: Book): void {
  if (a.id !== b.id && [a, b].every((one) => one.cautions.includes('galls'))) warn(book, 'design.galls', { one: a.id, other: b.id });
}

/** Thread that carries when it is engaged over that part of its diameter. */
export const engagedOver = (pair: ThreadPair, share: number): Len => times(pair.outside.major.lo, share);
