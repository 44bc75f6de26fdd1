/** The schemas for editors are those of the code, describe every key, and take the files under specs/. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { fittingJsonSchema, type JsonSchema, workshopJsonSchema } from '../../src/phases/read/json-schema.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'templates', 'en');
const WORDS = words(
  Object.fromEntries(
    readdirSync(FOLDER)
      .filter((n) => n.endsWith('.hbs'))
      .map((n) => [n, readFileSync(join(FOLDER, n), 'utf8')]),
  ),
);
const schemas: readonly (readonly [string, JsonSchema])[] = [
  ['fitting', fittingJsonSchema(FITTING_KINDS, WORDS)],
  ['workshop', workshopJsonSchema(WORDS)],
];

describe.each(schemas)('%s.schema.json', (name, schema) => {
  it('is current (tests/programs/write-schemas.ts writes it anew)', () => {
    expect(readFileSync(join(ROOT, 'docs', `${name}.schema.json`), 'utf8')).toBe(`${JSON.stringify(schema, null, 2)}\n`);
  });
  it('says of every key what it is for, and takes no other', () => {
    const { silent, open, keys } = keysOf(schema, name);
    expect(keys).toBeGreaterThan(15);
    expect(silent).toEqual([]);
    expect(open).toEqual([`${name}.habits.first-end`].filter((at) => name === 'workshop' && at));
  });
  it('asks for no more than the reader does', () => {
    const kinds = (schema.oneOf ?? [schema]) as readonly JsonSchema[];
    expect(kinds.map((kind) => kind.required)).toEqual(
      name === 'fitting'
        ? [
            ['fitting', 'title', 'duty', 'pipe'],
            ['fitting', 'title', 'diameter', 'depth'],
            ['fitting', 'title', 'thread'],
            ['fitting', 'title', 'thread', 'takes', 'depth'],
            ['fitting', 'title', 'closes', 'thread'],
            ['fitting', 'title', 'bore', 'thread', 'stem', 'square'],
            ['fitting', 'title', 'duty', 'pipe'],
            ['fitting', 'title', 'name', 'material', 'first', 'second', 'outside'],
            ['fitting', 'title', 'pipe'],
          ]
        : [['workshop']],
    );
  });
});

/** Keys without a description, records that take unknown keys, and how many keys there are. */
function keysOf(
  schema: JsonSchema,
  at: string,
): { readonly silent: readonly string[]; readonly open: readonly string[]; readonly keys: number } {
  const below = [
    ...Object.entries((schema.properties ?? {}) as Record<string, JsonSchema>).map(([key, value]) => ({
      at: `${at}.${key}`,
      value,
      key: true,
    })),
    ...[schema.items, ...((schema.anyOf ?? schema.oneOf ?? []) as readonly unknown[])]
      .filter(Boolean)
      .map((value) => ({ at, value: value as JsonSchema, key: false })),
  ];
  const deeper = below.map((b) => keysOf(b.value, b.at));
  return {
    silent: [...below.filter((b) => b.key && typeof b.value.description !== 'string').map((b) => b.at), ...deeper.flatMap((d) => d.silent)],
    open: [...(schema.type === 'object' && schema.additionalProperties !== false ? [at] : []), ...deeper.flatMap((d) => d.open)],
    keys: below.filter((b) => b.key).length + deeper.reduce((sum, d) => sum + d.keys, 0),
  };
}
