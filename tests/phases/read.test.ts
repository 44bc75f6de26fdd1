/** Reading: the demo's files as they stand, every code with its message, everything at once, and no text that throws. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { report } from '../../src/base/report.ts';
import { MOST_BYTES } from '../../src/base/source.ts';
import { inch, len, mm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import type { CheckValveAsked } from '../../src/fittings/check-valve/asked.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { commonDrills } from '../../src/handbook/common-set.ts';
import type { Job } from '../../src/model/workshop.ts';
import { read } from '../../src/phases/read.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const ERRORS = join(ROOT, 'tests', 'errors');
const text = (...path: readonly string[]) => readFileSync(join(ROOT, ...path), 'utf8');
const FITTING = { name: 'launch-feed-check-valve.yaml', text: text('specs', 'fittings', 'launch-feed-check-valve.yaml') };
const WORKSHOP = { name: 'bench-lathe.yaml', text: text('specs', 'workshops', 'bench-lathe.yaml') };
const WORDS = words(
  Object.fromEntries(
    readdirSync(join(ROOT, 'templates', 'en'))
      .filter((n) => n.endsWith('.hbs'))
      .map((n) => [n, text('templates', 'en', n)]),
  ),
);

const readFitting = (content: string) => read({ fitting: { name: 'my-valve.yaml', text: content } }, WORKSHOP, FITTING_KINDS);
const readWorkshop = (content: string) =>
  read({ fitting: FITTING, workshop: { name: 'my-shop.yaml', text: content } }, WORKSHOP, FITTING_KINDS);
const codes = (outcome: ReturnType<typeof read>) => outcome.found.map((d) => d.code);

/** A valid file with lines replaced: the shortest way to say what is different. */
const but = (whole: string, line: RegExp, instead: string) => {
  expect(whole).toMatch(line);
  return whole.replace(line, instead);
};

describe('the demo', () => {
  const job = read({ fitting: FITTING }, WORKSHOP, FITTING_KINDS);
  it('is read without a word', () => expect(job.found).toEqual([]));
  it('asks what the file says', () => {
    const asked: CheckValveAsked = {
      title: 'Feed check for the launch boiler',
      duty: { serves: 'feed-pump', pressure: 7, pump: { bore: mm(10), stroke: mm(15), speed: 240 } },
      pipe: { outside: mm(6), wall: mm(0.8) },
      ball: mm(6),
      material: 'PB102',
      threads: { seat: 'M12x1', cap: 'M12x1', coupling: 'M10x1' },
    };
    expect(job.value).toMatchObject({ fitting: 'check-valve', file: FITTING.name, asked });
  });
  it('has a boring tool too short for the seat, and no D-bit or gauge nut', () => {
    expect(job.value?.workshop.tools.boring).toEqual([
      { smallest: mm(4), reach: mm(8) },
      { smallest: mm(5.5), reach: mm(28) },
      { smallest: mm(7), reach: mm(30) },
    ]);
    expect(job.value?.workshop.tools).toMatchObject({ dBits: [], gaugeNuts: [], parting: { width: mm(2), deepest: mm(30) } });
  });
  it('has ninety-one drills in the set and five more, smallest first', () => {
    const drills = job.value?.workshop.tools.drills ?? [];
    expect(drills.length).toBe(91 + 5);
    expect([drills[0], drills[32], drills[90], drills[91], drills[95]]).toEqual([mm(1), mm(4.2), mm(10), mm(10.2), mm(13)]);
  });
  it('is read the same twice', () => expect(read({ fitting: FITTING }, WORKSHOP, FITTING_KINDS)).toEqual(job));
});

describe('what may be left out', () => {
  const LEAST_FITTING = 'fitting: check-valve\ntitle: T\nduty: { serves: injector, pressure: 7 bar }\npipe: { outside: 6, wall: 0.8 }\n';
  const LEAST_WORKSHOP = text('tests', 'errors', 'read.workshop-as-fitting.yaml');
  it('of a check valve: all but title, duty and pipe', () => {
    expect((readFitting(LEAST_FITTING).value as Job | undefined)?.asked).toEqual({
      title: 'T',
      duty: { serves: 'injector', pressure: 7 },
      pipe: { outside: mm(6), wall: mm(0.8) },
      material: 'PB102',
    });
  });
  it('of a workshop: all but its name; tools beyond the usual ones are not there unless named', () => {
    const { value, found } = readWorkshop(LEAST_WORKSHOP);
    expect(found).toEqual([]);
    expect(value?.workshop).toMatchObject({
      lathe: { nose: 'screwed', gears: [], jawClearance: mm(1) },
      holding: { threeJaw: { runout: mm(0.1), largest: mm(63) }, collets: [], sleeves: true, softJaws: false, mandrels: true },
      tools: {
        turning: true,
        chamfering: true,
        files: true,
        drillPress: false,
        torch: false,
        taps: [],
        boring: [],
        threadingOutside: false,
      },
      shelf: [],
      measuring: [],
      habits: { firstEnd: {}, avoid: [] },
    });
    expect(value?.workshop.tools).toMatchObject({ drills: commonDrills, parting: { width: mm(2), deepest: mm(20) } });
  });
  it('and then it is listed, with what was taken; what was said is not', () => {
    const said = readWorkshop(LEAST_WORKSHOP).value?.workshop.taken ?? [];
    const all = readWorkshop('workshop: Nothing said\n').value?.workshop.taken ?? [];
    const keys = (taken: typeof all) => taken.map((one) => one.key);
    expect(all).toContainEqual({ key: 'lathe.centre-height', value: mm(90), unit: 'mm' });
    expect(all).toContainEqual({ key: 'lathe.half-nuts', value: true, unit: '' });
    expect(keys(all).filter((key) => !keys(said).includes(key))).toEqual([
      'lathe.centre-height',
      'lathe.speeds',
      'lathe.leadscrew',
      'lathe.between-centres',
      'lathe.spindle-bore',
      'lathe.motor',
      ...['cross', 'top', 'tailstock'].flatMap((d) => ['division', 'reads', 'turn'].map((k) => `lathe.dials.${d}.${k}`)),
    ]);
    expect(new Set(keys(all)).size).toBe(all.length);
  });
  it.each([
    ['threads: { seat: M12×1, cap: m12 X 1.0, coupling: M10 }', { seat: 'M12x1', cap: 'M12x1', coupling: 'M10' }],
    ['threads: { seat: M6x0.75 }', { seat: 'M6x0.75' }],
  ])('%s', (line, threads) =>
    expect((readFitting(LEAST_FITTING + line).value as Job<CheckValveAsked> | undefined)?.asked.threads).toEqual(threads),
  );
  it('speeds may be steps', () => {
    const steps = but(LEAST_WORKSHOP, /speeds: .*/, 'speeds: [350 /min, 120 /min, 200 rpm]');
    expect(readWorkshop(steps).value?.workshop.lathe.speeds).toEqual({ steps: [120, 200, 350] });
  });
  it.each([
    // number and letter drills: handbook/drills.ts; 0.0980 in and 0.2570 in
    [
      'tools: { drills: [3, "#40", F, 1/4 in, { from: 1, to: 1.2, by: 0.1 }] }',
      [mm(1), mm(1.1), mm(1.2), mm(2.4892), mm(3), mm(6.35), mm(6.5278)],
    ],
    ['tools: { drills: [3 mm, 3, 3.0 mm] }', [mm(3)]],
    // drills.ts: number 1 is 0.2280 in, 2 0.2210, 3 0.2130; A 0.2340, B 0.2380
    ['tools: { drills: [number 1-3, letter A-B] }', [0.213, 0.221, 0.228, 0.234, 0.238].map((d) => inch(d))],
    ['tools: { drills: fraction 1/16-1/8 }', [4, 5, 6, 7, 8].map((n) => inch(n / 64))],
    ['tools: { drills: 1/16-1/8 in by 1/64 }', [4, 5, 6, 7, 8].map((n) => inch(n / 64))],
    ['tools: { drills: [1.0-1.3 by 0.1, 2 to 3 by 0.5 mm] }', [1, 1.1, 1.2, 1.3, 2, 2.5, 3].map((d) => mm(d))],
  ])('%s', (line, drills) => expect(readWorkshop(LEAST_WORKSHOP + line).value?.workshop.tools.drills).toEqual(drills));
  it('materials on the shelf go by the name in the handbook', () => {
    const { value } = readWorkshop(`${LEAST_WORKSHOP}shelf: [{ material: EN1A, section: round, across: [16, 1/2 in], length: 300 }]\n`);
    expect(value?.workshop.shelf.map((b) => [b.material, b.across])).toEqual([
      ['230M07', mm(12.7)],
      ['230M07', mm(16)],
    ]);
  });
  it.each([
    // 25.4 / 8 exactly; 25.4 / 12 = 2.11666..., rounded once
    ['leadscrew: 8 tpi', 'leadscrew', mm(3.175)],
    ['leadscrew: 12 threads per inch', 'leadscrew', len(21_167)],
    ['gears: [30, { teeth: 20, count: 2 }]', 'gears', [20, 20, 30]],
    ['leadscrew: 8 tpi', 'leadscrewPerInch', 8],
    ['leadscrew: 2 mm', 'leadscrewPerInch', undefined],
    ['threading-dial: no', 'threadingDial', undefined],
    ['threading-dial: { wheels: [16, 14], marks: 4 }', 'threadingDial', { wheels: [16, 14], marks: 4 }],
    ['torque: { full-power-from: 1250 /min }', 'torque', [{ to: 2500, fullFrom: 1250 }]],
    [
      'torque: [{ full-power-from: 1250 /min }, { up-to: 1100 /min, full-power-from: 550 /min }]',
      'torque',
      [
        { to: 1100, fullFrom: 550 },
        { to: 2500, fullFrom: 1250 },
      ],
    ],
    ['speeds: [120 /min, 240 /min]', 'torque', []],
    [
      'banjo: { module: 20 DP, centres: 110, slot: { from: 35, to: 90 }, boss: 1/2 in }',
      'banjo',
      { module: mm(1.27), centres: mm(110), slot: { from: mm(35), to: mm(90) }, boss: mm(12.7) },
    ],
  ] as const)('%s', (line, key, wanted) => {
    const plain = line.startsWith('speeds') ? '' : '  speeds: { from: 100 /min, to: 2500 /min }\n';
    const { value, found } = readWorkshop(`workshop: X\nlathe:\n${plain}  ${line}\n`);
    expect(found).toEqual([]);
    expect(value?.workshop.lathe[key]).toEqual(wanted);
  });
  it.each([
    ['{ division: 0.001 in, turn: 0.1 in }', { division: mm(0.0254), turn: mm(2.54), units: 'in' }],
    ['{ division: 0.025 mm, turn: 1 mm, backlash: 0.1 mm }', { units: 'mm', backlash: mm(0.1) }],
    ['{ division: 0.02 mm, units: in }', { units: 'in' }],
  ])('a dial %s', (dial, wanted) =>
    expect(readWorkshop(`workshop: X\nlathe: { dials: { cross: ${dial} } }\n`).value?.workshop.lathe.dials.cross).toMatchObject(wanted),
  );
  it('tools say as much of themselves as is known', () => {
    const tools =
      'tools: { material: carbide, turning: [{ hand: left }, { material: HSS, name: knife }], parting: no, boring: [{ smallest: 6, reach: 20, shank: 4 }], centre-drills: [a1.6 / 3.35] }';
    expect(readWorkshop(`workshop: X\n${tools}\n`).value?.workshop.tools).toMatchObject({
      turners: [
        { hand: 'left', nose: mm(0.4), material: 'carbide' },
        { name: 'knife', hand: 'right', nose: mm(0.2), material: 'HSS' },
      ],
      parting: undefined,
      boring: [{ smallest: mm(6), reach: mm(20), shank: mm(4) }],
      centreDrills: [{ name: 'A1.6/3.35', pilot: mm(1.6), mouth: mm(3.35) }],
    });
  });
  it('instruments show what they say, or what such things show', () => {
    const text_ = 'measuring: [caliper, { name: micrometer 0-25, reads: 0.0001 in }, bent wire]';
    expect(readWorkshop(`workshop: X\n${text_}\n`).value?.workshop.instruments).toEqual([
      { name: 'caliper', resolution: mm(0.02) },
      { name: 'micrometer 0-25', resolution: len(25) },
      { name: 'bent wire' },
    ]);
  });
  it.each([
    ['handling: { set-bar: 90 s }', 'set-bar', 1.5],
    ['lathe: { tool-post: clamped }', 'change-tool', 4],
    ['lathe: { tool-post: quick-change }', 'change-tool', 1],
  ])('%s', (line, key, minutes) => expect(readWorkshop(`workshop: X\n${line}\n`).value?.workshop.handling[key]).toBe(minutes));
  it.each([
    [
      'M10x1, ME 1/4x40, 1/4-40 ME, 2 ba, 1/8 BSP, 1/4 UNF, 3/16 BSF',
      ['M10x1', '1/4-40 ME', '1/4-40 ME', '2BA', 'G1/8', '1/4-28 UNF', '3/16-32 BSF'],
    ],
  ])('taps %s', (taps, wanted) =>
    expect(readWorkshop(`workshop: X\ntools: { taps: [${taps}] }\n`).value?.workshop.tools.taps).toEqual(wanted),
  );
  it('speeds may not run backwards', () => {
    const backwards = but(LEAST_WORKSHOP, /speeds: .*/, 'speeds: { from: 2500 /min, to: 100 /min }');
    expect(codes(readWorkshop(backwards))).toEqual(['read.range-backwards']);
  });
});

describe('every code', () => {
  const examples = readdirSync(ERRORS)
    .filter((name) => name.endsWith('.yaml'))
    .sort();
  it.each(examples)('%s', async (name) => {
    const content = text('tests', 'errors', name);
    const isWorkshop =
      (content.startsWith('workshop:') || name === 'read.fitting-as-workshop.yaml') && name !== 'read.workshop-as-fitting.yaml';
    const outcome = isWorkshop ? readWorkshop(content) : readFitting(content);
    expect([...new Set(codes(outcome))]).toEqual([name.replace('.yaml', '')]);
    expect(outcome.value).toBeUndefined();
    const texts = { 'my-valve.yaml': content, 'my-shop.yaml': content };
    await expect(report(outcome.found, texts, WORDS)).toMatchFileSnapshot(join(ERRORS, name.replace('.yaml', '.txt')));
  });
  it('read.too-big, without a file of that size', () => {
    const outcome = readFitting(`# ${'x'.repeat(MOST_BYTES)}\n`);
    expect(report(outcome.found, {}, WORDS)).toBe(
      'my-valve.yaml:1:1: error: This file is 257 kB; a description is never over 256 kB.\n  do: See whether it is the right file.\n',
    );
  });
  it('counts bytes, not letters', () => {
    const lines = (letter: string) => `# ${letter.repeat(125)}\n`.repeat(MOST_BYTES / 256);
    expect(lines('×').length).toBe(lines('x').length);
    expect(codes(readFitting(`${lines('×')}#`))).toEqual(['read.empty-file']);
    expect(codes(readFitting(lines('×') + lines('x')))).toEqual(['read.too-big']);
    expect(codes(readFitting(lines('x') + lines('x').slice(0, 100)))).toEqual(['read.empty-file']);
  });
  it('that the source names has an example here and words to say it', () => {
    const named = new Set(sourceFiles('src').flatMap((file) => readFileSync(file, 'utf8').match(/(?<=')read\.[a-z-]+(?=')/g) ?? []));
    expect(named.size).toBeGreaterThan(40);
    const shown = new Set([...examples.map((n) => n.replace('.yaml', '')), 'read.too-big']);
    expect([...named].filter((code) => !shown.has(code))).toEqual([]);
    expect([...shown].filter((code) => !named.has(code))).toEqual([]);
    expect([...named].flatMap((code) => [`error.${code}`, `error.${code}.do`]).filter((id) => !WORDS.has(id))).toEqual([]);
  });
});

describe('all at once', () => {
  const wrong = [
    'fitting: chek-valve',
    'title: 7',
    'duty: { serves: feed-pump, presure: 7 bar }',
    'pipe: { outside: 6 bar, wall: 0.8 mm, wall: 1 mm }',
    'ball: *five',
    'bore: six',
    'constructor: 1',
    'threads: { seat: 12x1, cap: #3, }',
  ];
  it('faults of every kind in one file', () => {
    expect(codes(readFitting(wrong.slice(0, -1).join('\n'))).sort()).toEqual(
      [
        'read.unknown-kind',
        'read.text-unquoted',
        'read.unknown-key',
        'read.pump-needed',
        'read.wrong-unit',
        'read.duplicate-key',
        'read.alias',
        'read.not-a-quantity',
        'read.forbidden-key',
      ].sort(),
    );
  });
  it.each([
    ['presure', ['read.unknown-key']],
    ['thrust', ['read.missing-key', 'read.unknown-key']],
  ])('a key that is written nearly so is not missing besides: %s', (key, expected) => {
    const fitting = FITTING.text.replace(/^( +)pressure:/m, `$1${key}:`);
    expect(fitting).not.toBe(FITTING.text);
    expect(codes(readFitting(fitting)).sort()).toEqual(expected);
  });
  it('only the bracket that YAML loses, where it loses one: the rest can mean anything', () => {
    expect(codes(readFitting(wrong.join('\n')))).toEqual(['read.comment-taken-in-list']);
  });
  it('of columns only the tabs, where tabs stand in them', () => {
    const tabbed = FITTING.text.replace(/^ {2}(?=pressure:)/m, '\t');
    expect(tabbed).not.toBe(FITTING.text);
    expect(readFitting(`${tabbed}\n   odd: 1\n  too: 2\n`).found.map((d) => d.code)).toEqual(['read.tab']);
  });
  it.each(['---\n', '--- \n# nothing yet\n...\n'])('lines of YAML alone are no description: %j', (text) => {
    expect(codes(readFitting(text))).toEqual(['read.empty-file']);
  });
  it('faults of both files, each with its own name', () => {
    const outcome = read(
      { fitting: { name: 'a.yaml', text: '' }, workshop: { name: 'b.yaml', text: 'lathe: {}\n' } },
      WORKSHOP,
      FITTING_KINDS,
    );
    expect(outcome.found.map((d) => [d.code, d.place?.file])).toEqual([
      ['read.empty-file', 'a.yaml'],
      ['read.missing-key', 'b.yaml'],
    ]);
  });
  it('a value that was refused is not called missing as well', () => {
    expect(codes(readFitting('fitting: check-valve\ntitle: T\nduty:\npipe: &p { outside: 6, wall: 0x1 }\n'))).toEqual([
      'read.empty-value',
      'read.anchor',
      'read.odd-number',
    ]);
  });
  it('many faults take no long time', () => {
    const keys = Array.from({ length: 15_000 }, (_, n) => `k${n}: 1`).join('\n');
    expect(readFitting(`fitting: check-valve\n${keys}`).found.length).toBeGreaterThan(15_000);
  }, 10_000);
});

describe('texts that would bring a parser down are refused before it', () => {
  it.each([
    ['brackets in brackets', '{'.repeat(1900), 'read.too-deep'],
    ['brackets over many lines', '[\n'.repeat(50_000), 'read.too-deep'],
    ['dashes after dashes', '- '.repeat(500), 'read.too-deep'],
    ['keys within keys', 'a b: '.repeat(40_000), 'read.long-line'],
    ['steps of indentation', Array.from({ length: 400 }, (_, n) => `${' '.repeat(n)}a:\n`).join(''), 'read.too-deep'],
    ['keys within keys on a line that is just short enough', 'a b: '.repeat(399), 'read.two-keys'],
  ])('%s', (_, content, code) => expect(codes(readFitting(content)).at(0)).toBe(code));
});

describe('no text throws', () => {
  const pieces = fc.constantFrom(
    'fitting: check-valve',
    'title: T',
    'duty:',
    'pipe: { outside: 6 mm }',
    'ball: #40',
    '- ',
    '  ',
    '\t',
    '\n',
    '{',
    '}',
    '[',
    ']',
    ':',
    ', ',
    '"',
    "'",
    '&a ',
    '*a',
    '!t ',
    '? ',
    '| \n',
    '>-\n',
    '---\n',
    '...\n',
    '%YAML 1.2\n',
    '<<: ',
    '__proto__: ',
    '.nan',
    '1e999',
    '\r\n',
    '\u0000',
    '\ud800',
    '\ufeff',
    '½',
    '1/0 in',
    '# c\n',
    'workshop: X',
  );
  const anything = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.array(pieces, { maxLength: 25 }).map((p) => p.join('')),
  );
  const cut = fc.tuple(
    fc.constantFrom(FITTING.text, WORKSHOP.text),
    fc.nat(3000),
    fc.nat(60),
    fc.oneof(pieces, fc.string({ maxLength: 5 })),
  );
  const bent = cut.map(([whole, at, length, instead]) => whole.slice(0, at) + instead + whole.slice(at + length));
  it.each([
    ['made of scraps', anything, 400],
    ['a good file bent in one place', bent, 200],
  ])('%s', (_, texts, numRuns) => {
    fc.assert(
      fc.property(texts, (content) => {
        for (const [outcome, name] of [
          [readFitting(content), 'my-valve.yaml'],
          [readWorkshop(content), 'my-shop.yaml'],
        ] as const) {
          expect(outcome.value === undefined).toBe(outcome.found.length > 0);
          const said = report(outcome.found, { [name]: content }, WORDS);
          expect(said === '').toBe(outcome.found.length === 0);
          // biome-ignore lint/suspicious/noControlCharactersInRegex: none may reach a screen
          expect(said).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
        }
      }),
      { numRuns, seed: 1 },
    );
  });
});

function sourceFiles(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? sourceFiles(join(folder, e.name)) : e.name.endsWith('.ts') ? [join(ROOT, folder, e.name)] : [],
  );
}
