/**
 * What stands in place of src/cli/ready.ts when the program is put in one file: of every language the blocks that are for the engine, as it
 * has compiled them, each beside its own text, and each a function of its own, so that a run touches those alone that it says; and the
 * package's own workshop beside what it says.
 */
import Handlebars from 'handlebars';
import { blocksIn, hasFields, READING, stretchesOf } from '../../src/base/blocks.ts';
import { languages, loadAssets, loadWords } from '../../src/files.ts';
import { readWorkshop } from '../../src/phases/read.ts';

/** Gives the text of a module. */
export function readyModule(): string {
  const all = languages().map((language) => `${JSON.stringify(language)}: () => new Map([${rowsOf(loadWords(language))}])`);
  return `const READY = {${all.join(',\n')}};\nexport const readyIn = (language) => READY[language]?.() ?? new Map();\n${workshopText()}`;
}

function workshopText(): string {
  const { workshop } = loadAssets();
  const { value, found } = readWorkshop(workshop);
  if (!value || found.length > 0) throw new Error(`the package's own workshop cannot be read: ${JSON.stringify(found)}`);
  const [text, says] = [workshop.text, JSON.stringify(value)].map((each) => JSON.stringify(each));
  return `export const readyWorkshop = (text) => (text === ${text} ? JSON.parse(${says}) : undefined);\n`;
}

function rowsOf(files: Readonly<Record<string, string>>): string {
  const bodies = Object.entries(files).flatMap(([name, text]) => blocksIn(name, text).map(([, body]) => body));
  const rows = [...new Set(bodies)]
    .filter((body) => hasFields(body) && !stretchesOf(body))
    .map((body) => [JSON.stringify(body), Handlebars.precompile(body, READING as never)]);
  return rows.map(([body, made]) => `[${body}, () => (${made})]`).join(',\n');
}
