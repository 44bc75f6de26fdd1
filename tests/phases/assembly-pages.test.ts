/**
 * What the pages of assembly, test and caution owe whoever makes a fitting: for each spec, by what it is made of (a ball, a cone, packing,
 * a coupling, solder …), each item by the id of its words, and that those words stand on its pages.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import type { Fitting, Part, Say } from '../../src/model/part.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { PlainPage, Section } from '../../src/model/sheet.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { read, readWorkshop } from '../../src/phases/read.ts';
import { closingPage } from '../../src/phases/sheet/closing.ts';
import { coverPage } from '../../src/phases/sheet/cover.ts';
import { proofPage } from '../../src/phases/sheet/proof.ts';
import { wordsIn } from '../../src/phases/sheet/said.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { allWords } from '../render/assets.ts';

const words = allWords();
const said = wordsIn(words, 'mm');

const ROOT = join(import.meta.dirname, '..', '..', 'specs');
const shop = (name: string): Workshop => {
  const made = readWorkshop({ name, text: readFileSync(join(ROOT, 'workshops', name), 'utf8') }).value;
  if (!made) throw new Error(`no workshop '${name}'`);
  return made;
};
/** In the drawer of the one or of the other there is what it asks for. */
const SHOPS = ['bench-lathe.yaml', 'inch-lathe.yaml'].map(shop);
/** Every file of fittings as designed, with or without a plan. */
const DESIGNED = readdirSync(join(ROOT, 'fittings'))
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => {
    const text = readFileSync(join(ROOT, 'fittings', name), 'utf8');
    const job = read({ fitting: { name, text } }, { name: 'any', text: 'workshop: Any\n' }, FITTING_KINDS).value;
    const fitting = job && SHOPS.map((workshop) => DESIGNS[job.fitting]?.(job.asked, workshop).value).find((one) => one);
    return { name, fitting };
  });
const TOOLING = ['turned-part', 'mandrel', 'd-bit', 'gauge-nut'];
const isFitting = ({ kind }: Fitting): boolean => !TOOLING.includes(kind);

/** Designed from what they are for; parts of one's own and tooling are no fittings. */
const FITTINGS = everyPlan.filter(({ plan }) => isFitting(plan.fitting));

// ---- what a fitting is made of -----------------------------------------------------------------------------------------
const partsIn = ({ parts }: Fitting, kinds: readonly string[]): readonly Part[] => parts.filter(({ kind }) => kinds.includes(kind));
const isBought = ({ bought }: Fitting, kind: string): boolean => bought.some((item) => item.kind === kind);
const hasCone = ({ parts }: Fitting): boolean =>
  parts.some(({ features }) => features.some((f) => f.kind === 'cone' && f.role === 'sealing'));
const isSoldered = ({ parts }: Fitting): boolean =>
  parts.some(({ features }) => features.some((f) => f.kind === 'side' && f.joins)) || partsIn({ parts } as Fitting, ['nipple']).length > 0;
const isValve = ({ kind }: Fitting): boolean => kind.endsWith('valve');
const hasSpindle = (fitting: Fitting): boolean => partsIn(fitting, ['spindle']).length > 0;
const isAlone = ({ parts }: Fitting): boolean => parts.filter(({ use }) => use === 'fitting').length === 1;

type Has =
  | { readonly assembly: RegExp }
  | { readonly tests: RegExp }
  | { readonly cautions: RegExp }
  | { readonly figures: readonly string[] };
type Item = readonly [what: string, applies: (fitting: Fitting) => boolean, has: Has];

const always = (): boolean => true;
const isStop = (fitting: Fitting): boolean => isValve(fitting) && hasSpindle(fitting);
const ITEMS: readonly Item[] = [
  ['order of assembly', always, { assembly: /^assembly\./ }],
  ['parts washed before they go together', (f) => isValve(f) || hasSpindle(f), { assembly: /wash$/ }],
  ['packing', hasSpindle, { assembly: /pack$/ }],
  ['packing: its size and its compression', isStop, { figures: ['packing', 'packing-pressed', 'box'] }],
  ['the ball never struck, on its seat by its own weight', (f) => isBought(f, 'ball'), { assembly: /\.ball$/ }],
  ['depth measured to the ball, and the stem cut to it', (f) => isBought(f, 'ball'), { assembly: /(measure-depth|stem-sum)/ }],
  ['the lift or the travel proved', isValve, { assembly: /prove-(lift|travel)$/ }],
  ['ball by magnet', (f) => isBought(f, 'ball'), { tests: /ball-magnet$/ }],
  ['seat by syringe', (f) => isBought(f, 'ball'), { tests: /seat-syringe$/ }],
  ['open and shut by syringe, the mouth as custom', isStop, { tests: /stop-blow$/ }],
  ['the cone of a spindle by blue', hasSpindle, { tests: /(spindle-cone|cone-blue)$/ }],
  [
    'cones of unions by blue',
    (f) => hasCone(f) && partsIn(f, ['nipple', 'blank-nipple', 'pump-adaptor']).length > 0,
    { tests: /union-blue$/ },
  ],
  ['soldered joints looked at', isSoldered, { tests: /\.solder$/ }],
  ['gland', isStop, { tests: /\.gland$/ }],
  ['cold water under pressure', always, { tests: /water$|spindle-valve$/ }],
  ['under water, with breath', (f) => isValve(f) || f.kind === 'union', { tests: /\.after$/ }],
  ['parts for the day of the test', always, { tests: /day-parts$/ }],
  ['which way it flows, which way is up', isValve, { assembly: /(upright|flow-way)$/ }],
  ['nothing opened in steam', always, { cautions: /(pressure|pressure-stop|pressure-joint|closed-end)$/ }],
  ['who decides', always, { cautions: /inspector$/ }],
  ['a gland under steam', hasSpindle, { cautions: /gland$/ }],
  ['soldering', isSoldered, { cautions: /soldering$/ }],
  ['thread engagement', isValve, { figures: ['engaged.coupling', 'strip.coupling'] }],
  ['turns to full bore, closing torque, rim force', isStop, { figures: ['turns', 'turns-to-stop', 'torque', 'rim', 'close-force'] }],
  ['turns to full bore, of a spindle alone', (f) => isAlone(f) && hasSpindle(f), { figures: ['turns', 'full-lift'] }],
  ['what it is tested to', isValve, { figures: ['test-pressure', 'temperature', 'wall-margin'] }],
  [
    'a flange: bending and its margin',
    (f) => partsIn(f, ['pipe-flange']).length > 0,
    { figures: ['flange-stress', 'flange-margin', 'flange-bolt'] },
  ],
];

const idsOf = (fitting: Fitting, has: Has): { readonly ids: readonly string[]; readonly missing: readonly string[] } => {
  if ('figures' in has) {
    const noted = fitting.derivations.map(({ of }) => of);
    return { ids: has.figures, missing: has.figures.filter((figure) => !noted.includes(figure)) };
  }
  const [list, shape] =
    'assembly' in has ? [fitting.assembly, has.assembly] : 'tests' in has ? [fitting.tests, has.tests] : [fitting.cautions, has.cautions];
  const ids = list.map(({ id }) => id).filter((id) => shape.test(id));
  return { ids, missing: ids.length > 0 ? [] : [String(shape)] };
};

/** All that can be read on a page, section by section. */
const textsOf = (page: PlainPage | undefined): readonly string[] => (page?.sections ?? []).flatMap(textsIn);
function textsIn(section: Section): readonly string[] {
  if (section.kind === 'steps') return section.steps.flatMap(({ text, otherwise, boxes }) => [text, otherwise, ...boxes]);
  if (section.kind === 'cautions') return section.cautions.map(({ text }) => text);
  if (section.kind === 'notes') return section.items;
  if (section.kind === 'table') return section.rows.flat();
  if (section.kind === 'arrangement') return [section.shown.alt, ...section.shown.notes];
  return [section.title];
}
const has = (sections: readonly Section[], kind: Section['kind']): boolean => sections.some((section) => section.kind === kind);

describe.each(DESIGNED)('$name', ({ fitting }) => {
  it('has every item that applies to it', () => {
    if (!fitting) throw new Error('it is not designed');
    if (!isFitting(fitting)) return;
    const lacking = ITEMS.filter(([, applies]) => applies(fitting)).flatMap(([what, , which]) =>
      idsOf(fitting, which).missing.map((id) => `${what}: ${id}`),
    );
    expect(lacking).toEqual([]);
  });
});

describe.each(FITTINGS)('$spec', ({ plan }: { readonly plan: Plan }) => {
  const { fitting } = plan;
  const [closing, cover, proof] = [closingPage(plan, said), coverPage(plan, said), proofPage(plan, said)];

  it('prints each of its steps and tests at the bench, and its cautions on the cover', () => {
    const printed = [...textsOf(closing), ...textsOf(cover)];
    const asked: readonly Say[] = [...fitting.assembly, ...fitting.tests, ...fitting.cautions];
    expect(asked.length).toBeGreaterThan(5);
    expect(asked.filter(({ id, grounds }) => !printed.includes(said.say(id, grounds))).map(({ id }) => id)).toEqual([]);
  });

  it('says for each test what really mends it', () => {
    const tried = fitting.tests.filter(({ id }) => id !== 'test.day-parts');
    expect(tried.filter(({ id }) => !words.has(`${id}.fails`)).map(({ id }) => id)).toEqual([]);
    const printed = textsOf(closing);
    for (const { id, grounds } of tried) expect(printed).toContain(said.say('step.fails', { what: said.say(`${id}.fails`, grounds) }));
  });

  it('has room for pressure and time where it is under pressure', () => {
    const wet = fitting.tests.filter(({ id }) => /water$|spindle-valve$/.test(id));
    expect(wet.length).toBeGreaterThan(0);
    for (const { id } of wet) expect([id, ['a', 'b'].every((box) => words.has(`${id}.box-${box}`))]).toEqual([id, true]);
    expect(closing && has(closing.sections, 'boxes')).toBe(true);
  });

  it('names the source of each caution, or says that there is none, and of each leak that is allowed', () => {
    const sources = textsOf(proof);
    const told = [...fitting.cautions, ...fitting.tests.filter(({ id }) => /water$|spindle-valve$/.test(id))];
    for (const { id, grounds } of told) {
      expect([id, words.has(`${id}.source`)]).toEqual([id, true]);
      expect(sources).toContain(said.say(`${id}.source`, grounds));
    }
  });

  it('shows how it goes together where it is more than one thing', () => {
    const shown = closing !== undefined && has(closing.sections, 'arrangement');
    const plug = partsIn(fitting, ['plug']).length > 0;
    if (isValve(fitting) || plug || hasSpindle(fitting) || fitting.kind === 'union') expect(shown).toBe(true);
    expect(has(cover.sections, 'curve')).toBe(isStop(fitting));
  });
});

it('fittings of every kind and duty are looked at, and each item applies to one of them at least', () => {
  const all = DESIGNED.flatMap(({ fitting }) => (fitting && isFitting(fitting) ? [fitting] : []));
  expect(all.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['check-valve', 'stop-valve', 'union', 'spindle', 'plug']));
  expect(all.length).toBeGreaterThan(13);
  expect(ITEMS.filter(([, applies]) => !all.some(applies)).map(([what]) => what)).toEqual([]);
});
