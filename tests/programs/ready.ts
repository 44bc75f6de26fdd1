/**
 * What stands in place of src/cli/ready.ts when the program is put in one file: of every language the blocks that are for the engine, as it
 * has compiled them, each beside its own text, and each a function of its own, so that a run touches those alone that it says.
 */
import Handlebars from 'handlebars';
import { blocksIn, hasFields, READING, stretchesOf } from '../../src/base/blocks.ts';
import { languages, loadWords } from '../../src/files.ts';

/** Gives the text of a module. */
export function readyModule(): string {
  const all = languages().map((language) => `${JSON.stringify(language)}: () => new Map([${rowsOf(loadWords(language))}])`);
  return `const READY = {${all.join(',\n')}};\nexport const readyIn = (language) => READY[language]?.() ?? new Map();\n`;
}

function rowsOf(files: Readonly<Record<string, string>>): string {
  const bodies = Object.entries(files).flatMap(([name, text]) => blocksIn(name, text).map(([, body]) => body));
  const rows = [...new Set(bodies)]
    .filter((body) => hasFields(body) && !stretchesOf(body))
    .map((body) => [JSON.stringify(body), Handlebars.precompile(body, READING as never)]);
  return rows.map(([body, made]) => `[${body}, () => (${made})]`).join(',\n');
}
