/** What can still be said of a described part where one of its words cannot be read; and what cannot, because it may follow from that word. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';

const WORKSHOP = join(import.meta.dirname, '..', '..', 'specs', 'workshops', 'bench-lathe.yaml');
const workshop = { name: 'w.yaml', text: readFileSync(WORKSHOP, 'utf8') };
const codes = (body: string): readonly string[] => {
  const text = `fitting: turned-part\ntitle: T\nname: t\nmaterial: PB102\nfirst: { letter: A }\nsecond: { letter: B }\n${body}`;
  return compile({ fitting: { name: 't.yaml', text } }, { workshop }).found.map((d) => d.code);
};
const pieces = (...all: readonly string[]): string => `outside:\n${all.map((one) => `  - { ${one} }\n`).join('')}`;

describe('an unreadable word', () => {
  const bad = 'name: a, diameter: 12 mm, length: 1o mm';
  const good = 'name: b, diameter: 16 mm, length: 8 mm';
  it.each<readonly [string, string, readonly string[]]>([
    [
      'a wrong letter besides',
      `${pieces(bad, good)}lengths: [{ from: A, to: Y, size: 6 ±0.1 }]\n`,
      ['read.unknown-unit', 'design.part-no-such-face'],
    ],
    [
      'a fit that is none besides',
      pieces(bad, 'name: b, diameter: 16 f99, length: 8 mm'),
      ['read.unknown-unit', 'design.part-fit-unknown'],
    ],
    ['in the same piece', pieces('name: a, diameter: 12 f99, length: 1o mm', good), ['read.unknown-unit', 'design.part-fit-unknown']],
    [
      'a piece that is none besides',
      `${pieces(bad, good)}side: [{ name: f, flats: 8 mm, on: c, at: 4 mm }]\n`,
      ['read.unknown-unit', 'design.part-no-such-section'],
    ],
    ['what may follow from it is not said', pieces(bad, 'name: b, diameter: 12 mm, length: 8 mm'), ['read.unknown-unit']],
    [
      'a name: nothing that speaks of names',
      `${pieces('name: B B, diameter: 12 mm, length: 8 mm')}side: [{ name: f, flats: 8 mm, on: b-b, at: 4 mm }]\n`,
      ['read.not-a-name'],
    ],
  ])('%s', (_, body, expected) => expect([...codes(body)].sort()).toEqual([...expected].sort()));
});
