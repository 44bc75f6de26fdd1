/** --language: what languages there are, how one is asked for, and what is said where there is none such. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { languageAsked, readAsk } from '../../src/cli/ask.ts';
import { COMMANDS } from '../../src/cli/commands.ts';
import { consoleOf } from '../../src/cli/console.ts';
import { plainAnswer } from '../../src/cli/new-ask.ts';
import { run } from '../../src/cli/run.ts';
import type { Tools } from '../../src/cli/tools.ts';
import { languages, loadAssets, loadWords } from '../../src/files.ts';
import { ROOT } from '../house/sources.ts';

const none = async (): Promise<never> => {
  throw new Error('nothing is planned here');
};
const NO_TOOLS: Tools = { compile: none, print: none };

async function said(argv: readonly string[]): Promise<{ readonly exit: number; readonly out: string; readonly err: string }> {
  const texts = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({ write: (text: string) => (texts[to] += text) });
  const exit = await run(argv, NO_TOOLS, consoleOf(stream('out'), stream('err'), {}));
  return { exit, ...texts };
}

describe('languages', () => {
  it('are the folders that hold words; English first', () => {
    expect(languages()[0]).toBe('en');
    expect(languages()).not.toContain('fonts');
    for (const language of languages()) expect(Object.keys(loadWords(language))).toContain('cli.hbs');
  });
  it('go with the words to whoever prints', () => {
    for (const language of languages()) expect(loadAssets(language)).toMatchObject({ language, words: loadWords(language) });
    expect(loadAssets().language).toBe('en');
  });
  it('can be chosen in every command', () => {
    expect(COMMANDS.filter((c) => !c.options.some((o) => o.name === 'language')).map((c) => c.name)).toEqual([]);
  });
  it.each([...languages()])('%s: help is in it, wherever it is asked for', async (language) => {
    const about = words(loadWords(language)).say('cli.check.in-short');
    for (const argv of [['--help', '--language', language], [`--language=${language}`], ['help', '--language', language]])
      expect((await said(argv)).out.replace(/\s+/g, ' ')).toContain(about);
    const usage = words(loadWords(language)).say('cli.title.example');
    for (const argv of [
      ['check', '--help', '--language', language],
      ['help', 'check', `--language=${language}`],
    ])
      expect((await said(argv)).out).toContain(`\n${usage}\n`);
  });
  it.each([...languages()])('%s: mistakes on the command line are told in it', async (language) => {
    const { exit, err } = await said(['chek', '--language', language]);
    expect({ exit, told: err.includes(words(loadWords(language)).say('error.cli.unknown-command', { word: 'chek' })) }).toEqual({
      exit: 1,
      told: true,
    });
  });
  it.each([...languages()])('%s: yes and no may be said in it, or as a file has them', (language) => {
    const say = words(loadWords(language));
    expect([say.say('new.yes'), say.say('new.no'), 'yes', 'NO', 'perhaps'].map((word) => plainAnswer(word, say))).toEqual([
      'yes',
      'no',
      'yes',
      'no',
      'perhaps',
    ]);
  });
});

describe('a language that there is not', () => {
  it('is told of, with those that there are', async () => {
    const [asked = '', ...lines] = readFileSync(join(ROOT, 'tests/errors/command-line/cli.no-such-language.txt'), 'utf8').split('\n');
    const { exit, out, err } = await said(asked.split(' ').slice(2));
    expect({ exit, out, err }).toEqual({ exit: 1, out: '', err: lines.join('\n') });
  });
  it('is not guessed at', () => {
    expect(languageAsked(['check', '--language', 'eng'])).toBeUndefined();
    expect(readAsk(['check', 'a.yaml', '--language']).found).toMatchObject([{ code: 'cli.option-wants' }]);
    expect(readAsk(['help', 'check', 'more']).found).toMatchObject([{ code: 'cli.too-many' }]);
  });
});
