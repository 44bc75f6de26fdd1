/** What code asks to be said has its words, in every language that there is. */
import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
import { type Words, words } from '../../src/base/words.ts';
import { languages, loadWords } from '../../src/files.ts';
import { code } from './sources.ts';
import type { Token } from './tokens.ts';

const LANGUAGES = languages();

type Asked = { readonly at: string; readonly id: string; readonly whole: boolean };

/**
 * Ids written in place: `.say('a.b')` in whole, `.say(\`a.${x}\`)` up to its first stretch; `code: 'a.b'` as a finding with what to do about
 * it; `rule: 'a'` as a rule's title and why.
 */
function asked(): readonly Asked[] {
  return code().flatMap((file) =>
    file.tokens.flatMap((t, i) => idsAt(file.tokens, i).map((id) => ({ at: `${file.path}:${t.line}`, ...id }))),
  );
}

function idsAt(all: readonly Token[], i: number): readonly Pick<Asked, 'id' | 'whole'>[] {
  const [t, before, call, dot] = [all[i], all[i - 1]?.text, all[i - 2]?.text, all[i - 3]?.text];
  if (!t || (t.kind !== 'string' && t.kind !== 'template')) return [];
  if (before === '(' && call === 'say' && dot === '.') {
    const whole = t.kind === 'string' || all[i + 1]?.kind === 'mark';
    return t.text === '' ? [] : [{ id: t.text, whole }];
  }
  if (before !== ':' || t.kind !== 'string') return [];
  if (call === 'code' && t.text.includes('.')) return ['', '.do'].map((part) => ({ id: `error.${t.text}${part}`, whole: true }));
  if (call === 'rule' && t.text !== '') return ['.title', '.why'].map((part) => ({ id: `rule.${t.text}${part}`, whole: true }));
  return [];
}

/** Said only where there are words for it: the same id is asked for with `.has(` in the same file. */
function isOptional({ at, id }: Asked): boolean {
  const file = code().find((f) => at.startsWith(`${f.path}:`));
  return (file?.tokens ?? []).some((t, i, all) => t.text === id && all[i - 1]?.text === '(' && all[i - 2]?.text === 'has');
}

const hasWords = (w: Words, { id, whole }: Asked): boolean => (whole ? w.has(id) : w.ids().some((known) => known.startsWith(id)));

describe.each(LANGUAGES)('words in %s', (language) => {
  it('stand once each, as blocks', () => {
    expect(words(loadWords(language)).ids().length).toBeGreaterThan(0);
  });
  it('are there for every id that code asks for', () => {
    const w = words(loadWords(language));
    expect(asked().length).toBeGreaterThan(20);
    expect(
      asked()
        .filter((a) => !hasWords(w, a) && !isOptional(a))
        .map((a) => `${a.at} asks for ${a.id}`),
    ).toEqual([]);
  });
  it('are well formed in every block', () => {
    for (const [name, text] of Object.entries(loadWords(language))) {
      const kinds = new Set(
        Handlebars.parse(text).body.map((node) =>
          node.type === 'ContentStatement' ? (node as hbs.AST.ContentStatement).value.trim() : node.type,
        ),
      );
      expect(
        [...kinds].filter((kind) => !['', 'CommentStatement', 'DecoratorBlock'].includes(kind)).map((kind) => `${name}: ${kind}`),
      ).toEqual([]);
    }
  });
  it('of a rule are whole: a title and a why', () => {
    const w = words(loadWords(language));
    const rules = new Set(
      w
        .ids()
        .filter((id) => id.startsWith('rule.'))
        .map((id) => id.replace(/\.(title|why|otherwise|change)$/, '')),
    );
    expect([...rules].filter((id) => !w.has(`${id}.title`) || !w.has(`${id}.why`))).toEqual([]);
  });
});

/** The strings of `export type Name = 'a' | 'b'` in a file of the model. */
function union(path: string, name: string): readonly string[] {
  const all = code().find((f) => f.path === path)?.tokens ?? [];
  const from = all.findIndex((t, i) => t.text === name && all[i - 1]?.text === 'type' && all[i + 1]?.text === '=');
  const end = all.findIndex((t, i) => i > from && t.text === ';');
  return from < 0 ? [] : all.slice(from, end).flatMap((t) => (t.kind === 'string' ? [t.text] : []));
}

describe.each(LANGUAGES)('words in %s', (language) => {
  it.each([
    ['src/model/work.ts', 'Verb', ['verb.*.do', 'verb.*.note', 'why.verb.*']],
    ['src/model/work.ts', 'GripKind', ['grip.*.held', 'grip.*.how', 'why.grip.*']],
    ['src/model/proof.ts', 'ClaimKind', ['claim.*']],
  ] as const)('of %s are there for every %s', (path, name, ids) => {
    const kinds = union(path, name);
    expect(kinds.length).toBeGreaterThan(5);
    const w = words(loadWords(language));
    // an id is one word: 'dimension', 'every-surface-stays'
    const wanted = kinds.flatMap((kind) => ids.map((id) => id.replace('*', kind.replaceAll(' ', '-'))));
    expect(wanted.filter((id) => !w.has(id))).toEqual([]);
  });
});
