/** A sheet opened again: what went in comes out, what was changed since is refused, and what differs between two plans is told. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { attachedTo } from '../../src/record/attached.ts';
import { differences } from '../../src/record/compare.ts';
import { type OldPlan, openSheet } from '../../src/record/open.ts';
import { plan as sample } from '../cli/sample.ts';
import { attached, changed, fitting, latin, plan, renamed, sheet, words, workshop } from '../fixtures/small-sheets.ts';

const refusal = async (bytes: Uint8Array): Promise<readonly string[]> => (await openSheet(bytes, 'a.pdf')).found.map((each) => each.code);

describe('what went in comes out', () => {
  it.each(['yes', 'no'] as const)('byte for byte, packed: %s', async (compress) => {
    const { value, found } = await openSheet(await sheet(attached, compress), 'a.pdf');
    expect(found).toEqual([]);
    expect(value?.fitting).toEqual({ name: fitting.name, bytes: fitting.bytes });
    expect(value?.workshop).toEqual({ name: workshop.name, bytes: new TextEncoder().encode(workshop.text) });
    expect(JSON.stringify({ ...value?.plan })).toBe(JSON.stringify(JSON.parse(JSON.stringify(plan))));
  });

  it('also after a box was ticked: what is appended counts, the rest stays', async () => {
    const bytes = latin(await sheet(attached));
    const root = /\/Root (\d+) 0 R/.exec(bytes)?.[1] ?? '';
    const ticked = `${bytes}\n99999 0 obj\n<</Type/Annot/V/Yes>>\nendobj\ntrailer\n<</Size 100000/Root ${root} 0 R>>\n%%EOF\n`;
    expect((await openSheet(new Uint8Array(Buffer.from(ticked, 'latin1')), 'a.pdf')).value?.fitting.bytes).toEqual(fitting.bytes);
  });

  const QPDF = spawnSync('qpdf', ['--version']).status === 0;
  it.skipIf(!QPDF)(`also after another program wrote it anew${QPDF ? '' : ' (skipped: there is no qpdf on the path)'}`, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
    writeFileSync(join(folder, 'a.pdf'), await sheet(attached));
    const again = ['--object-streams=disable', '--object-streams=generate'].map((manner) => {
      execFileSync('qpdf', [manner, join(folder, 'a.pdf'), join(folder, 'b.pdf')]);
      return new Uint8Array(readFileSync(join(folder, 'b.pdf')));
    });
    rmSync(folder, { recursive: true });
    for (const bytes of again) expect((await openSheet(bytes, 'a.pdf')).value?.fitting.bytes).toEqual(fitting.bytes);
  });
});

describe('what is no sheet, or not as it was printed, is refused', () => {
  it.each<[string, () => Promise<Uint8Array>, string]>([
    ['a text', async () => new TextEncoder().encode('fitting: turned-part'), 'record.not-a-pdf'],
    ['nothing', async () => new Uint8Array(), 'record.not-a-pdf'],
    ['the first half', async () => (await sheet(attached)).slice(0, 800), 'record.cut-short'],
    ['a PDF without files', () => sheet([]), 'record.no-inputs'],
    ['one without the plan', () => sheet(attached.filter((file) => file.kind !== 'plan')), 'record.no-inputs'],
    ['a fitting that was changed', () => changed('turned-part', 'turned-pant'), 'record.changed'],
    ['a plan that was changed', () => changed('"title":"Plug"', '"title":"Plag"'), 'record.changed'],
    ['a plan whose mark is not its own', () => sheet(attachedTo(sample, { fitting }, workshop, words)), 'record.changed'],
    ['a locked one', async () => new TextEncoder().encode('%PDF-1.7\ntrailer <</Root 1 0 R/Encrypt 2 0 R>>'), 'record.locked'],
    ['dictionaries without end', async () => new TextEncoder().encode(`%PDF-1.7\n1 0 obj\n${'<</A '.repeat(100_000)}`), 'record.cut-short'],
    [
      'a reference to itself',
      async () => new TextEncoder().encode('%PDF-1.7\n1 0 obj\n1 0 R\nendobj\ntrailer <</Root 1 0 R>>'),
      'record.no-inputs',
    ],
  ])('%s', async (_, make, code) => {
    expect(await refusal(await make())).toEqual([code]);
  });

  it.each(['../plug.yaml', '/etc/plug.yaml', 'a\\plug.yaml', 'C:plug.yaml', '..', '.', '', 'plug\n.yaml', 'bench.yaml'])(
    'a file called %j goes nowhere',
    async (name) => {
      expect(await refusal(await sheet(renamed('fitting', name)))).toEqual(['record.odd-name']);
    },
  );

  it.each(['not-a-pdf', 'cut-short', 'locked', 'no-inputs', 'changed', 'odd-name', 'in-the-way', 'too-large'])(
    'record.%s has its words',
    (code) => {
      const facts = { path: 'a.pdf', name: 'b', megabytes: 70, most: 64 };
      expect(words.say(`error.record.${code}`, facts)).toMatch(/a\.pdf/);
      expect(words.say(`error.record.${code}.do`, facts)).toMatch(/\.$/);
    },
  );
});

describe('in what two plans differ', () => {
  type Loose = Record<string, unknown>;
  const old = (change: (plan: Loose) => void = () => undefined): OldPlan => {
    const copy = JSON.parse(JSON.stringify(plan)) as Loose;
    change(copy);
    return copy as OldPlan;
  };
  const part = (copy: Loose): Loose => (copy.parts as Loose[])[0] ?? {};
  const route = (copy: Loose): { setUps: { operations: string[]; grip: Loose }[] } => part(copy).route as never;
  const ids = (before: OldPlan, now = plan): readonly string[] => differences(before, now).map((each) => each.id);
  it.each<[string, (copy: Loose) => void, readonly string[]]>([
    ['nothing', () => undefined, []],
    ['the version alone', (copy) => void Object.assign(copy, { version: '0' }), []],
    ['no parts then', (copy) => void Object.assign(copy, { parts: [] }), ['part-new']],
    ['a part more then', (copy) => void (copy.parts as Loose[]).push({ part: { id: 'nut' } }), ['part-gone']],
    ['an operation more then', (copy) => void route(copy).setUps[0]?.operations.push('plug/second/file'), ['operation-gone']],
    ['an operation less then', (copy) => void route(copy).setUps[0]?.operations.pop(), ['operation-new']],
    ['another order', (copy) => void route(copy).setUps[0]?.operations.reverse(), ['order']],
    ['another hold', (copy) => void Object.assign(route(copy).setUps[0]?.grip ?? {}, { kind: 'collet' }), ['holds']],
    ['other figures', (copy) => void Object.assign(part(copy), { figures: [{ op: 'plug/hole/drill', rpm: 1 }] }), ['figures']],
    ['another day', (copy) => void (copy.sequence as unknown[]).reverse(), ['day-order']],
    ['something else', (copy) => void Object.assign(part(copy), { proof: {} }), ['rest']],
    ['a plan of another shape', (copy) => void Object.assign(copy, { parts: 7, sequence: null }), ['part-new', 'day-order']],
  ])('%s', (_, change, expected) => {
    expect(ids(old(change))).toEqual(expected);
  });
  it('a size tells what it was and what it is', () => {
    const working = (hi: number) => ({ id: 'plug/A-B', op: 'plug/second/face', limits: { lo: 99_000, hi } });
    const sized = (hi: number): Loose => ({
      ...JSON.parse(JSON.stringify(plan)),
      parts: [{ ...plan.parts[0], chart: { working: [working(hi)] } }],
    });
    const [only, ...more] = differences(sized(100_000) as OldPlan, sized(100_500) as never);
    expect(more).toEqual([]);
    expect(words.say(`reopen.${only?.id}`, only?.facts ?? {})).toBe(
      'plug: A-B (second/face) is worked to 9.9 – 10.05 mm; before: 9.9 – 10 mm.',
    );
  });
  it.each(['part-gone', 'part-new', 'holds', 'operation-gone', 'operation-new', 'order', 'size', 'figures', 'day-order', 'rest'])(
    'reopen.%s has its words',
    (id) => {
      expect(words.say(`reopen.${id}`, { part: 'plug', op: 'hole/drill', dim: 'A', before: 'x', after: 'y' }).length).toBeGreaterThan(10);
    },
  );
});
