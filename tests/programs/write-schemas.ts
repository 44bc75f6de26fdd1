/**
 * Writes docs/fitting.schema.json and docs/workshop.schema.json anew from the schemas in the code and the words of templates/en.
 * Run: npx esbuild tests/programs/write-schemas.ts --bundle --platform=node --format=esm --packages=external --outfile=out/write-schemas.mjs && node out/write-schemas.mjs
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { words } from '../../src/base/words.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { fittingJsonSchema, workshopJsonSchema } from '../../src/phases/read/json-schema.ts';

const root = new URL('../', import.meta.url);
const folder = new URL('templates/en/', root);
const files = Object.fromEntries(
  readdirSync(folder)
    .filter((n) => n.endsWith('.hbs'))
    .sort()
    .map((n) => [n, readFileSync(new URL(n, folder), 'utf8')]),
);
const all = words(files);
for (const [name, schema] of [
  ['fitting', fittingJsonSchema(FITTING_KINDS, all)],
  ['workshop', workshopJsonSchema(all)],
] as const) {
  writeFileSync(new URL(`docs/${name}.schema.json`, root), `${JSON.stringify(schema, null, 2)}\n`);
}
