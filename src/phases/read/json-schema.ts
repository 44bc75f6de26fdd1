/** The schemas of both files as JSON Schema, so that an editor completes keys and shows what each is for. */
import * as z from 'zod';
import { askedWords } from '../../base/asked-words.ts';
import type { Words } from '../../base/words.ts';
import type { FittingKinds } from '../../fittings/kinds.ts';
import { workshopSchema } from './workshop-schema.ts';

/** A JSON Schema, draft 7: plain records, ready for JSON.stringify. */
export type JsonSchema = { readonly [key: string]: unknown };

export function workshopJsonSchema(words: Words): JsonSchema {
  return schemaOf(workshopSchema(), 'workshop', words);
}

/** One schema for any of the kinds; which one is said by `fitting`. */
export function fittingJsonSchema(kinds: FittingKinds, words: Words): JsonSchema {
  const each = Object.keys(kinds)
    .sort()
    .flatMap((kind) => {
      const schema = kinds[kind];
      return schema ? [schemaOf(schema(), kind, words)] : [];
    });
  const plain = each.map(({ $schema: _, ...rest }) => rest);
  return { $schema: each[0]?.$schema, ...(plain.length === 1 ? plain[0] : { oneOf: plain }) };
}

function schemaOf(schema: z.ZodType, about: string, words: Words): JsonSchema {
  return described(z.toJSONSchema(schema, { io: 'input', target: 'draft-7' }) as JsonSchema, about, words);
}

/** Puts the words of each key into its schema, all the way down. */
function described(schema: JsonSchema, id: string, words: Words): JsonSchema {
  const { what, example } = askedWords(words, id);
  const below = (value: unknown, path: string): unknown => (isRecord(value) ? described(value, path, words) : value);
  const { properties, items, anyOf } = schema;
  return {
    ...schema,
    ...(what && { description: example ? `${what} (${example})` : what }),
    ...(isRecord(properties) && {
      properties: Object.fromEntries(Object.entries(properties).map(([key, value]) => [key, below(value, `${id}.${key}`)])),
    }),
    ...(isRecord(items) && { items: withoutWords(below(items, id)) }),
    ...(Array.isArray(anyOf) && { anyOf: anyOf.map((one) => withoutWords(below(one, id))) }),
  };
}

/** A list says what its items are; the items need not say it again. */
function withoutWords(value: unknown): unknown {
  if (!isRecord(value)) return value;
  const { description: _, ...rest } = value;
  return rest;
}

function isRecord(value: unknown): value is JsonSchema {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
