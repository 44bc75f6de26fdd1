/**
 * Every language says what English says: the same blocks, from the same fields, and none of them in English. A block that is missing here
 * is written into the file of the same name under templates/<language>, with the same id and the same fields; whoever does not speak the
 * language writes it as well as he can and says so where the change is told, so that someone who does can read it.
 */
import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { languages, loadWords } from '../../src/files.ts';
import { RULE_FACTS } from '../fixtures/rule-facts.ts';

type Block = { readonly file: string; readonly body: hbs.AST.Program };
const NO_FILES: Readonly<Record<string, Block>> = {};

/** Blocks of a language by id. */
function blocksOf(language: string): ReadonlyMap<string, Block> {
  const blocks = Object.entries(loadWords(language)).flatMap(([file, text]) =>
    Handlebars.parse(text).body.flatMap((node): (readonly [string, Block])[] => {
      if (node.type !== 'DecoratorBlock') return [];
      const { params, program } = node as hbs.AST.DecoratorBlock;
      return [[(params[0] as hbs.AST.StringLiteral).value, { file, body: program }]];
    }),
  );
  return new Map(Object.entries({ ...NO_FILES, ...Object.fromEntries(blocks) }));
}

/** A field where it is asked for: with the cases ('of = seat', 'thread', 'not thread') in which the block comes to it. */
type Asked = { readonly field: string; readonly cases: readonly string[] };

function askedIn(program: hbs.AST.Program | undefined, cases: readonly string[] = []): readonly Asked[] {
  return (program?.body ?? []).flatMap((node): readonly Asked[] => {
    if (node.type === 'MustacheStatement') {
      const { path, params } = node as hbs.AST.MustacheStatement;
      return fieldsOf(params.length > 0 ? params : [path]).map((field) => ({ field, cases }));
    }
    if (node.type !== 'BlockStatement') return [];
    const { params, program: then, inverse } = node as hbs.AST.BlockStatement;
    const told = params.map((p) => String((p as hbs.AST.PathExpression).original)).join(' = ');
    return [
      ...fieldsOf(params).map((field) => ({ field, cases })),
      ...askedIn(then, [...cases, told]),
      ...askedIn(inverse, [...cases, `not ${told}`]),
    ];
  });
}

const fieldsOf = (all: readonly hbs.AST.Expression[]): readonly string[] =>
  all.flatMap((p) => (p.type === 'PathExpression' ? [(p as hbs.AST.PathExpression).original] : []));

/** Fields that the words ask for in a case in which the English ones do not: there they may not be given. */
function unasked(own: readonly Asked[], english: readonly Asked[]): readonly string[] {
  const given = ({ field, cases }: Asked): boolean => english.some((e) => e.field === field && e.cases.every((c) => cases.includes(c)));
  return own.filter((asked) => !given(asked)).map(({ field, cases }) => [field, ...cases].join(' in the case '));
}

/** What is printed of a block, without its fields and what stands between quotes or braces: keys and commands are the same in every language. */
function printed(program: hbs.AST.Program | undefined): string {
  return (program?.body ?? [])
    .map((node) => {
      if (node.type === 'ContentStatement') return (node as hbs.AST.ContentStatement).value;
      if (node.type === 'MustacheStatement') return ` ${stringsOf((node as hbs.AST.MustacheStatement).params)} `;
      if (node.type !== 'BlockStatement') return ' ';
      const { program: then, inverse } = node as hbs.AST.BlockStatement;
      return `${printed(then)} ${printed(inverse)}`;
    })
    .join('')
    .replace(/'[^']*'|`[^`]*`|\{[^}]*\}/g, ' ');
}

/** {{plural n 'cut' 'cuts'}} */
const stringsOf = (all: readonly hbs.AST.Expression[]): string =>
  all.flatMap((p) => (p.type === 'StringLiteral' ? [(p as hbs.AST.StringLiteral).value] : [])).join(' ');

const ENGLISH = /\b(the|and|of|with|from|which|that|are|has|have|its|this|what|when|where|into|than|there|they|one|two|to|for)\b/i;
/** Examples of YAML and of the command line, and the names of published works. */
const AS_IT_STANDS = /^ask\..*\.example$|^cli\..*\.example$|\.source$|^source\.|^look\.word\.family\.|^error\.read\.not-a-set\.do$/;

const english = blocksOf('en');

describe.each(languages().filter((language) => language !== 'en'))('words in %s', (language) => {
  const own = blocksOf(language);
  const both = [...own].flatMap(([id, block]) => {
    const first = english.get(id);
    return first ? [{ id, block, first }] : [];
  });

  it('are there for every block of English, and for no other', () => {
    const missing = [...english].filter(([id]) => !own.has(id)).map(([id, { file }]) => `templates/${language}/${file} lacks ${id}`);
    const over = [...own].filter(([id]) => !english.has(id)).map(([id, { file }]) => `templates/${language}/${file}: English has no ${id}`);
    expect([...missing, ...over]).toEqual([]);
  });
  it('stand in the file of the same name', () => {
    expect(both.filter(({ block, first }) => block.file !== first.file).map(({ id }) => id)).toEqual([]);
  });
  it('tell the same fields, and ask for none in a case in which English does not', () => {
    const fields = (block: Block): string => [...new Set(askedIn(block.body).map((a) => a.field))].sort().join(', ');
    const other = both.filter(({ block, first }) => fields(block) !== fields(first));
    expect(other.map(({ id, block, first }) => `${id}: ${fields(block)}; English: ${fields(first)}`)).toEqual([]);
    const more = both.flatMap(({ id, block, first }) => unasked(askedIn(block.body), askedIn(first.body)).map((a) => `${id}: ${a}`));
    expect(more).toEqual([]);
  });
  it('are not English', () => {
    const left = [...own].filter(([id, { body }]) => !AS_IT_STANDS.test(id) && ENGLISH.test(printed(body)));
    expect(left.map(([id, { body }]) => `${id}: ${printed(body).trim()}`)).toEqual([]);
    expect(ENGLISH.test('Face the end')).toBe(true);
  });
  it('of rules are short: a title on a line, a why in a breath, each sentence closed', () => {
    const w = words(loadWords(language));
    const long = w.ids().filter((id) => {
      if (!id.startsWith('rule.')) return false;
      const text = w.say(id, RULE_FACTS);
      const count = text.split(' ').length;
      return id.endsWith('.title') ? count > 10 || text.endsWith('.') : count > 24 || !text.endsWith('.');
    });
    expect(long).toEqual([]);
  });
});
