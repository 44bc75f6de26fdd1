/** Answers as a YAML file: a key a line with what it is for behind it; what was left out stands there as a comment. */
import { askedWords } from '../base/asked-words.ts';
import type { Words } from '../base/words.ts';

/** `path`: keys from the outside in, a number for an entry of a list. `value`: as it stands in the file; undefined where left out. */
export type Answer = { readonly path: readonly (string | number)[]; readonly value: string | undefined };

const WIDE = 34;

/** `head`: lines before the first key, each a comment. `about`: 'workshop' or the kind, for the words of keys. */
export function fileOf(head: readonly string[], answers: readonly Answer[], about: string, words: Words): string {
  const lines = head.map((line) => `# ${line}`.trimEnd());
  let open: readonly (string | number)[] = [];
  for (const answer of answers) {
    const parents = answer.path.slice(0, -1);
    let shared = 0;
    while (shared < parents.length && shared < open.length && parents[shared] === open[shared]) shared += 1;
    if (parents.length === 0 && open.length > 0) lines.push('');
    const fresh = parents.slice(shared);
    lines.push(...fresh.flatMap((key, i) => (typeof key === 'number' ? [] : heading(parents.slice(0, shared + i + 1), answers))));
    lines.push(
      line(
        answer,
        fresh.some((key) => typeof key === 'number'),
        about,
        words,
      ),
    );
    open = parents;
  }
  return `${lines.join('\n')}\n`;
}

/** Keys only count for the indent; an entry's dash stands in it. */
const depth = (path: readonly (string | number)[]): number => path.length - 1;
/** A key with nothing said below it is a comment itself. */
function heading(path: readonly (string | number)[], answers: readonly Answer[]): readonly string[] {
  const below = answers.filter((answer) => path.every((key, i) => answer.path[i] === key));
  const mark = below.some((answer) => answer.value !== undefined) ? '' : '# ';
  return [...(path.length === 1 ? [''] : []), `${'  '.repeat(depth(path))}${mark}${path.at(-1)}:`];
}

function line({ path, value }: Answer, begins: boolean, about: string, words: Words): string {
  const id = [about, ...path.filter((key) => typeof key === 'string')].join('.');
  const { what, example } = askedWords(words, id);
  const indent = '  '.repeat(depth(path));
  const dashed = begins ? `${indent.slice(0, -2)}- ` : indent;
  const text = value === undefined ? `${indent}# ${example}` : `${dashed}${path.at(-1)}: ${value}`;
  return what === '' ? text : `${text.padEnd(WIDE)}  # ${what}`;
}
