/** Every rule of the shop, every refusal and all that a check valve says has its words, and the words ask for no more than they are told. */
import { describe, expect, it } from 'vitest';
import { type Len, len } from '../../src/base/units.ts';
import { type Words, words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { thinWall } from '../../src/fittings/strength.ts';
import { makeTooling } from '../../src/fittings/tooling/make.ts';
import { findMaterial } from '../../src/handbook/materials.ts';
import type { Part } from '../../src/model/part.ts';
import type { Because } from '../../src/model/plan.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { candidates } from '../../src/phases/candidates.ts';
import { design } from '../../src/phases/design.ts';
import { BEFORE_RULES } from '../../src/rules/befores/index.ts';
import { GRIP_RULES } from '../../src/rules/grips/index.ts';
import { METHOD_RULES } from '../../src/rules/methods/index.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { RULE_FACTS } from '../fixtures/rule-facts.ts';
import { demoJob, fittingFor, partOf, shop, withHolding, withTools } from '../fixtures/shop.ts';
import { code } from '../house/sources.ts';
import type { Token } from '../house/tokens.ts';

const w: Words = words(loadWords('en'));
const WHOLE = ['title', 'why', 'otherwise'];
const WALLS = [
  ...[
    'coupling-relief',
    'seat-relief',
    'body-flats',
    'spigot',
    'cap-relief',
    'bonnet-relief',
    'stuffing-box',
    'pipe-socket',
    'flange-spigot',
  ],
];

// ---- written in the source ---------------------------------------------------------------------------------------------
const ID = /^[a-z]+(-[a-z]+)*$/;
const inRules = code().filter((file) => file.path.startsWith('src/rules/'));

/** The strings from `rule:` (or `says:`) to the end of that field, both sides of a choice included. */
function fieldStrings(all: readonly Token[], i: number): readonly string[] {
  const [key, colon] = [all[i]?.text, all[i + 1]?.text];
  if ((key !== 'rule' && key !== 'says') || colon !== ':') return [];
  const end = all.findIndex((t, j) => j > i && t.kind === 'mark' && [',', '}', ';', ')'].includes(t.text));
  // no rules: what is compared with (f.does === 'chamfer'), and a field's type (Operation['says'])
  const no = ['===', '['];
  return all.slice(i + 2, end).flatMap((t, j, field) => (t.kind === 'string' && !no.includes(field[j - 1]?.text ?? '') ? [t.text] : []));
}

/** The strings among the arguments of `refusal(…)`. */
function refusedStrings(all: readonly Token[], i: number): readonly string[] {
  if (all[i]?.text !== 'refusal' || all[i + 1]?.text !== '(') return [];
  const end = all.findIndex((t, j) => j > i && t.text === ';');
  return all.slice(i, end).flatMap((t, j, call) => (t.kind === 'string' && call[j - 1]?.text === ',' ? [t.text] : []));
}

/** Strings between the braces that follow `const NAME`. */
function tableStrings(all: readonly Token[], name: string): readonly string[] {
  const from = all.findIndex((t, i) => t.text === name && all[i - 1]?.text === 'const');
  const open = all.findIndex((t, i) => i > from && t.text === '{' && all[i - 1]?.text === '=');
  const end = all.findIndex((t, i) => i > open && t.text === '}');
  return from < 0 ? [] : all.slice(open, end).flatMap((t, i, table) => (t.kind === 'string' && table[i - 1]?.text === ':' ? [t.text] : []));
}

function written(): readonly string[] {
  const named = inRules.flatMap(({ tokens }) => [
    ...tokens.flatMap((_t, i) => [...fieldStrings(tokens, i), ...refusedStrings(tokens, i)]),
    ...tableStrings(tokens, 'STEP_RULES'),
  ]);
  return [...new Set(named.filter((id) => ID.test(id)))].sort();
}

/** What an exercise judges an order by beside the rules, each written in its own place as 'order-…', or said there by its words' id. */
const judged = code()
  .filter((file) => ['src/phases/sheet/exercise/', 'src/cli/mark.ts'].some((place) => file.path.startsWith(place)))
  .flatMap(({ tokens }) => tokens.flatMap((t) => (t.kind === 'string' ? (/^(?:rule\.)?(order-[a-z-]+)/.exec(t.text)?.[1] ?? []) : [])));

const offered = [...METHOD_RULES, ...BEFORE_RULES, ...GRIP_RULES].map((rule) => rule.id);

// ---- met in use --------------------------------------------------------------------------------------------------------
const bare: Workshop = {
  ...withTools({
    parting: undefined,
    grooving: undefined,
    boring: [],
    threadingOutside: false,
    threadingInside: [],
    drills: [],
    silverSteel: [],
    dBits: [],
    taps: [],
    dies: [],
    files: false,
    knurling: false,
    centreDrills: [],
    drillPress: false,
    torch: false,
  }),
  holding: { ...shop.holding, collets: [], sleeves: false, mandrels: false },
};
const bore = partOf('seat-piece').features.find((f) => f.role === 'seat' && f.kind === 'hole');
const seatSize = partOf('seat-piece').surfaces.flatMap((s) => (s.shape === 'cylinder' && s.feature === bore?.id ? [s.size.target] : []));
function diametersOf(id: string): readonly Len[] {
  return partOf(id).surfaces.flatMap((s) => (s.shape === 'cylinder' && s.side === 'outside' ? [s.size.target] : []));
}
const withGears = (gears: readonly number[]): Workshop => ({ ...shop, lathe: { ...shop.lathe, gears } });
/** Workshops that between them offer every way and refuse every way. */
const SHOPS: readonly Workshop[] = [
  shop,
  bare,
  withTools({
    reamers: seatSize,
    silverSteel: [],
    dBits: [],
    boring: shop.tools.boring.map((b) => ({ ...b, reach: seatSize[0] ?? b.reach })),
  }),
  withTools({ boring: [] }),
  withTools({ groovingInside: undefined }),
  withHolding({ collets: diametersOf('nipple') }),
  withHolding({ collets: [], sleeves: false, mandrels: false }),
  withHolding({ collets: [], sleeves: false, softJaws: false, fourJaw: true }),
  withGears([]),
  withGears([20, 60, 65, 80]),
];

/** Every part of every spec, and what of the demo's tooling they ask for: a gauge nut, a mandrel and a D-bit. */
const PARTS: readonly Part[] = [
  ...fittingFor(shop).parts,
  ...everyPlan.flatMap(({ plan }) => plan.parts.map((p) => p.part)).filter((p) => p.use === 'fitting'),
];
const ASKED = PARTS.flatMap((part) => {
  const c = candidates(part, shop);
  const operations = c.methods.flatMap((m) => m.any).flatMap((m) => m.operations);
  return [
    ...operations.flatMap((o) => [...(o.tool.made ? [o.tool.made] : []), ...(o.asks ?? [])]),
    ...c.grips.flatMap((g) => g.tooling ?? []),
  ];
});
/** Each with the tooling made to what it serves. */
const partsOf = (workshop: Workshop): readonly Part[] => [...PARTS, ...ASKED.map((ask) => makeTooling(ask, workshop, []))];

type Met = { readonly because: Because; readonly refused: boolean };
function met(): readonly Met[] {
  return SHOPS.flatMap((workshop) =>
    partsOf(workshop).flatMap((part) => {
      const c = candidates(part, workshop);
      const methods = c.methods.flatMap((m) => m.any);
      const operations = methods.flatMap((m) => m.operations);
      const reasons = [
        ...methods.map((m) => m.because),
        ...operations.flatMap((o) => [...o.because, ...o.says]),
        ...c.befores.map((b) => b.because),
        ...c.grips.flatMap((g) => g.because),
      ];
      return [...reasons.map((because) => ({ because, refused: false })), ...c.refused.map((r) => ({ because: r.because, refused: true }))];
    }),
  );
}

const unsaid = (ids: readonly string[]): readonly string[] => ids.filter((id) => !w.has(id));
const all = met();
const refusals = [...new Set(all.filter((m) => m.refused).map((m) => m.because.rule))].sort();

describe('words of the rules', () => {
  it('are there for every rule that the source names', () => {
    const ids = [...new Set([...written(), ...offered])];
    expect(ids.length).toBeGreaterThan(80);
    expect(unsaid(ids.flatMap((id) => WHOLE.map((part) => `rule.${id}.${part}`)))).toEqual([]);
  });
  it('can be said with the grounds that each rule gives in use', () => {
    const ends = ({ refused }: Met): readonly string[] => (refused ? [...WHOLE, 'change'] : WHOLE);
    const once = new Map(all.map((one) => [JSON.stringify(one), one]));
    for (const one of once.values())
      for (const end of ends(one)) expect(w.say(`rule.${one.because.rule}.${end}`, one.because.grounds)).not.toBe('');
  });
  it('name a change for every refusal, and the trial shops meet most refusals there are', () => {
    const changes = w
      .ids()
      .filter((id) => /^rule\..*\.change$/.test(id))
      .map((id) => id.split('.')[1] ?? '');
    expect(refusals.filter((id) => !changes.includes(id))).toEqual([]);
    expect(changes.filter((id) => id.startsWith('no-') && !refusals.includes(id))).toEqual([]);
  });
  it('stand for rules that there are', () => {
    const known = new Set([...written(), ...offered, ...judged, ...all.map((m) => m.because.rule)]);
    const said = new Set(
      w
        .ids()
        .filter((id) => id.startsWith('rule.'))
        .map((id) => id.split('.')[1] ?? ''),
    );
    expect([...said].filter((id) => !known.has(id))).toEqual([]);
  });
  it('are short: a title on a line, a why in a breath, each sentence closed', () => {
    const long = w.ids().filter((id) => {
      if (!id.startsWith('rule.')) return false;
      const text = w.say(id, RULE_FACTS);
      const count = text.split(' ').length;
      if (id.endsWith('.title')) return count > 9 || text.endsWith('.');
      return count > 22 || !text.endsWith('.');
    });
    expect(long).toEqual([]);
  });
});

describe('words of the ball check valve', () => {
  const leadedShelf = { ...shop, shelf: shop.shelf.map((bar) => ({ ...bar, material: findMaterial('CC491K')?.id ?? '' })) };
  const leaded = design({ ...demoJob, workshop: leadedShelf, asked: { ...(demoJob.asked as object), material: 'CC491K' } }, DESIGNS);
  const cautions = leaded.value?.cautions ?? [];
  const fitting = fittingFor();
  it.each([
    ['assembly', fitting.assembly, ['', '.title']],
    // what is to be had ready cannot fail
    ['tests', fitting.tests.filter(({ id }) => id !== 'test.day-parts'), ['', '.title', '.fails']],
    ['cautions', cautions, ['', '.title']],
  ])('of its %s', (_what, says, ends) => {
    expect(says.length).toBeGreaterThan(3);
    for (const { id, grounds } of says) for (const end of ends) expect(w.say(id + end, grounds)).not.toBe('');
  });
  it('of its cautions speak of lead where the metal has it', () => {
    const ids = (says: readonly { readonly id: string }[]): readonly string[] => says.map((s) => s.id);
    expect(ids(cautions)).toContain('caution.lead');
    expect(ids(fitting.cautions).filter((id) => !ids(cautions).includes(id))).toEqual([]);
  });
  it('name its figures, what is bought and its measured sum', () => {
    const ids = [
      ...fitting.derivations.flatMap((d) => [`figure.${d.of}`, `figure.${d.of}.symbol`]),
      ...fitting.chains.map((chain) => `chain.${chain.id}`),
    ];
    expect(ids.length).toBeGreaterThan(10);
    expect(unsaid(ids)).toEqual([]);
    const bought = fitting.bought.map((item) => w.say(`bought.${item.kind}`, item.grounds));
    expect(bought[0]).toBe('Ball 6 mm, stainless, 316 for choice');
    expect(bought[1]).toMatch(/^Copper joint ring for M12x1, [.0-9]+ mm outside, 1\.0 mm thick$/);
  });
  it('tell the sum for the stem in the order in which it is measured', () => {
    const steps = fitting.assembly.map((s) => s.id);
    const order = [
      'assembly.seat-piece',
      'assembly.ball',
      'assembly.measure-depth',
      'assembly.stem-sum',
      'assembly.cap',
      'assembly.prove-lift',
    ];
    expect(steps.filter((id) => order.includes(id))).toEqual(order);
    const grounds = fitting.assembly[0]?.grounds ?? {};
    expect(w.say('assembly.stem-sum', grounds)).toContain(`X + ${grounds.ring} − ${grounds.lift} mm`);
  });
});

describe('words of what cannot be designed', () => {
  const asked = demoJob.asked as Readonly<Record<string, unknown>>;
  const mm = (value: number): number => value * 10_000;
  it.each([
    ['design.ball-crowds-seat', { bore: mm(5.6) }, 'A 6.00 mm ball on a bore of 5.60 mm'],
    ['design.bore-too-small', { bore: mm(2.5) }, 'A bore of 2.50 mm under a 6.00 mm ball'],
    ['design.bore-unusual', { bore: mm(4.1) }, 'A bore of 4.10 mm under a 6.00 mm ball'],
    ['design.lift', { lift: mm(7) }, "The 6.00 mm ball can't lift by 7.00 mm."],
    ['design.outlet-draws-ball', { bore: mm(4.9) }, '4.80 mm is the most'],
    ['design.material-unknown', { material: 'cheese' }, "no material 'cheese'"],
    ['design.thread-unknown', { threads: { seat: 'M12x0.9' } }, "no thread 'M12x0.9' for the seat"],
    ['design.pipe-wall', { pipe: { outside: mm(6), wall: mm(3) } }, '6.00 mm outside with a wall of 3.00 mm'],
    ['design.wall-thin', { threads: { coupling: 'M8x1' } }, 'relief of the coupling'],
    ['design.thread-under-chamber', { threads: { seat: 'M8x1' } }, 'M8x1'],
    ['design.chamber-chokes', { bore: mm(5.4) }, 'over 7.80 mm the ball may hang'],
    ['design.nut-has-no-floor', { threads: { coupling: 'M8x1' } }, 'union nut M8x1'],
  ])('%s shows its lengths in millimetres', (known, changed, part) => {
    const { found } = design({ ...demoJob, asked: { ...asked, ...changed } }, DESIGNS);
    const finding = found.find((d) => d.code === known);
    expect(finding && w.say(`error.${known}`, finding.grounds)).toContain(part);
    expect(finding && w.say(`error.${known}.do`, finding.grounds)).toMatch(/[.0-9]$/);
  });
  it('no bar on the shelf', () => {
    const { found } = design({ ...demoJob, workshop: { ...shop, shelf: [] } }, DESIGNS);
    const said = found.filter((d) => d.code === 'design.no-bar').map((d) => w.say('error.design.no-bar', d.grounds));
    expect(said).toContain("There is no round bar of PB102 on the shelf for 'seat-piece': it wants 16.50 mm or more.");
    expect(said).toContain(
      "There is no hexagon bar of PB102 on the shelf for 'cap': it wants 17.00 mm exactly, because its outside stays as bar.",
    );
  });
  it.each<readonly [string, Readonly<Record<string, unknown>>]>([
    ['plan.no-route', { part: 'cap', kind: 'cap', refused: 1, wouldHelp: 0, pairs: 0, feature: 'bore', slot: false }],
    ['plan.no-route', { part: 'cap', kind: 'cap', refused: 3, wouldHelp: 0, pairs: 4, feature: 'A', slot: true }],
    ['plan.no-route', { part: 'cap', kind: 'cap', refused: 7, wouldHelp: 2, pairs: 0, feature: 'bore', slot: false }],
    ...WALLS.map((where) => ['design.wall-thin', { ...thinWall(where, len(mm(0.5)), len(mm(1))) }] as const),
    ...['seat', 'bonnet'].map(
      (which) => ['design.thread-under-chamber', { which, thread: 'M8x1', chamber: mm(8), minor: mm(6.9) }] as const,
    ),
  ])('%s can be said of %o', (known, grounds) => {
    expect(w.say(`error.${known}`, grounds)).toMatch(/\.$/);
    expect(w.say(`error.${known}`, grounds)).not.toMatch(/\d{4}|wall at /);
    expect(w.say(`error.${known}.do`, grounds)).toMatch(/^[A-Z].*\.$/);
  });
  it('every finding that a design can make has its words', () => {
    const fittings = code().filter((file) => file.path.startsWith('src/fittings/'));
    const codes = fittings.flatMap((file) =>
      file.tokens.flatMap((t) => (t.kind === 'string' && t.text.startsWith('design.') ? [t.text] : [])),
    );
    expect(codes.length).toBeGreaterThan(15);
    expect(unsaid(codes.flatMap((id) => [`error.${id}`, `error.${id}.do`]))).toEqual([]);
  });
});
