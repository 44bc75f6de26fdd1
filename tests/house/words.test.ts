/** What code asks to be said has its words, in every language that there is. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Words, words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { code, ROOT } from './sources.ts';
import type { Token } from './tokens.ts';

const LANGUAGES = readdirSync(join(ROOT, 'templates')).filter((name) => name !== 'fonts');

type Asked = { readonly at: string; readonly id: string; readonly whole: boolean };

/** Ids written in place: say('a.b') and has('a.b') in whole, say(`a.${x}`) up to its first stretch, code: 'a.b' as error.a.b. */
function asked(): readonly Asked[] {
  return code().flatMap((file) =>
    file.tokens.flatMap((t, i) => {
      const id = idAt(file.tokens, i);
      return id === undefined ? [] : [{ at: `${file.path}:${t.line}`, ...id }];
    }),
  );
}

function idAt(all: readonly Token[], i: number): Pick<Asked, 'id' | 'whole'> | undefined {
  const [t, before, call] = [all[i], all[i - 1], all[i - 2]];
  if (!t || !before || !call) return undefined;
  if (before.text === '(' && call.text === 'say' && all[i - 3]?.text !== 'function') {
    if (t.kind === 'string') return { id: t.text, whole: true };
    return t.kind === 'template' && t.text !== '' ? { id: t.text, whole: all[i + 1]?.kind === 'mark' } : undefined;
  }
  if (before.text === ':' && call.text === 'code' && t.kind === 'string' && t.text.includes('.'))
    return { id: `error.${t.text}`, whole: true };
  return undefined;
}

const hasWords = (w: Words, { id, whole }: Asked): boolean => (whole ? w.has(id) : w.ids.some((known) => known.startsWith(id)));

describe.each(LANGUAGES)('words in %s', (language) => {
  it('stand once each, as blocks', () => {
    expect(words(loadWords(language)).ids.length).toBeGreaterThan(0);
  });
  it('are there for every id that code asks for', () => {
    const w = words(loadWords(language));
    expect(asked().length).toBeGreaterThan(20);
    expect(
      asked()
        .filter((a) => !hasWords(w, a))
        .map((a) => `${a.at} asks for ${a.id}`),
    ).toEqual([]);
  });
  it('of a rule are whole: a title and a why', () => {
    const w = words(loadWords(language));
    const rules = new Set(w.ids.filter((id) => id.startsWith('rule.')).map((id) => id.replace(/\.(title|why|otherwise)$/, '')));
    expect([...rules].filter((id) => !w.has(`${id}.title`) || !w.has(`${id}.why`))).toEqual([]);
  });
});

it('every language says the same ids', () => {
  const [first = '', ...others] = LANGUAGES;
  for (const other of others) expect(words(loadWords(other)).ids).toEqual(words(loadWords(first)).ids);
});
