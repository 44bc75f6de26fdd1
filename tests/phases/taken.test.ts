/** What a workshop file leaves out is taken as usual and said: on the sheet, key by key, in the sheet's own units, and never what was said. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { loadAssets } from '../../src/files.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { viewOf } from '../../src/phases/sheet.ts';
import { allWords } from '../render/assets.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const SHOPS = join(ROOT, 'specs', 'workshops');
const file = (path: string) => ({ name: path.slice(path.lastIndexOf('/') + 1), text: readFileSync(path, 'utf8') });
/** Something that each of the shops has the bar for. */
const drift = file(join(ROOT, 'specs', 'fittings', 'parts', 'drift.yaml'));
const plug = file(join(ROOT, 'specs', 'fittings', 'wash-out-plug.yaml'));
const shops = readdirSync(SHOPS).map((name) => [name, file(join(SHOPS, name))] as const);
const schema = JSON.parse(readFileSync(join(ROOT, 'docs', 'workshop.schema.json'), 'utf8')) as unknown;

/** Every path of keys that stands anywhere in a schema, alternatives alike: 'lathe.dials.cross.turn'. */
function pathsOf(of: unknown, before = ''): readonly string[] {
  if (typeof of !== 'object' || of === null) return [];
  return Object.entries(of).flatMap(([key, value]): readonly string[] => {
    if (key !== 'properties') return ['anyOf', 'oneOf', 'allOf'].includes(key) || Array.isArray(of) ? pathsOf(value, before) : [];
    return Object.entries(value as object).flatMap(([name, inner]) => [`${before}${name}`, ...pathsOf(inner, `${before}${name}.`)]);
  });
}

function notes(workshop: (typeof shops)[number][1], units: 'mm' | 'inch'): readonly string[] {
  const { plan } = compile({ fitting: workshop.text.includes('8 tpi') ? plug : drift, workshop }, loadAssets());
  if (!plan) throw new Error(`no plan with ${workshop.name}`);
  const sections = viewOf(plan, { words: allWords(), language: 'en', units }).pages.flatMap((page) =>
    page.kind === 'plain' ? page.sections : [],
  );
  const found = sections.find((s) => s.kind === 'notes' && s.title === allWords().say('taken.title'));
  return found?.kind === 'notes' ? found.items : [];
}

const takenOf = (text: string): Workshop['taken'] => readWorkshop({ name: 'shop.yaml', text }).value?.taken ?? [];

describe('what is taken as usual', () => {
  it('bears the keys of the workshop file, so that it can be written in', () => {
    const paths = pathsOf(schema);
    expect(takenOf('workshop: Nothing said\n').filter(({ key }) => !paths.includes(key))).toEqual([]);
  });

  it.each(shops)('%s: each key stands on the sheet, in its section', (_, shop) => {
    const lines = notes(shop, 'mm').slice(1);
    const keys = takenOf(shop.text).map(({ key }) => key);
    expect(keys.length).toBeGreaterThan(0);
    const printed = lines.flatMap((line) => {
      const section = line.slice(0, line.indexOf(':'));
      return line
        .slice(section.length + 2)
        .split(', ')
        .map((one) => `${section}.${one.split(' ')[0]}`);
    });
    expect(printed).toEqual(keys);
  });

  it('is written in the units of the sheet', () => {
    const shop = {
      name: 'shop.yaml',
      text: 'workshop: Nothing but bar\nshelf: [{ material: silver steel, section: round, across: [6, 8, 10], length: 300 mm }]\n',
    };
    expect(notes(shop, 'mm').find((line) => line.startsWith('holding'))).toContain('three-jaw.inside 19-57');
    expect(notes(shop, 'inch').find((line) => line.startsWith('holding'))).toContain('three-jaw.inside 0.748-2.244');
  });

  it('is what was not said: a key that is written leaves the list', () => {
    const without = takenOf('workshop: A\n').map(({ key }) => key);
    const withNose = takenOf('workshop: A\nlathe: { nose: cam, tailstock-taper: MT1 }\n').map(({ key }) => key);
    expect(without.filter((key) => !withNose.includes(key))).toEqual(['lathe.nose', 'lathe.tailstock-taper']);
  });
});
