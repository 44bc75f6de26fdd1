/** From the words on the command line to what is asked, or to findings (`cli.*`) that name the nearest thing that there is. */
import { type ParseArgsConfig, parseArgs } from 'node:util';
import type { Diagnostic, Outcome } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import { languages } from '../files.ts';
import { ALONE, COMMANDS, type Command, type Option } from './commands.ts';

export type Ask =
  | { readonly does: 'help'; readonly of?: Command }
  | { readonly does: 'version' }
  | { readonly does: Command['name']; readonly words: readonly string[]; readonly options: Readonly<Record<string, string>> };

/** `argv`: what stands after the program's own name. A switch that is given has the value ''. */
export function readAsk(argv: readonly string[]): Outcome<Ask> {
  const first = argv[0];
  if (first === undefined) return { value: { does: 'help' }, found: [] };
  if (first === 'help') return readHelp(argv.slice(1));
  if (first.startsWith('-')) return readAlone(argv);
  const command = COMMANDS.find((c) => c.name === first);
  if (!command) return wrong('unknown-command', { word: first, ...near(first, ['help', ...COMMANDS.map((c) => c.name)]) });
  return readCommand(command, argv.slice(1));
}

function readHelp(rest: readonly string[]): Outcome<Ask> {
  const { words, found } = sortOut('help', ALONE, rest);
  if (found.length > 0) return { found };
  const [word, ...more] = words;
  if (word === undefined) return { value: { does: 'help' }, found: [] };
  const of = COMMANDS.find((c) => c.name === word);
  if (!of)
    return wrong('unknown-command', {
      word,
      ...near(
        word,
        COMMANDS.map((c) => c.name),
      ),
    });
  return more.length > 0 ? wrong('too-many', { command: 'help', word: more[0] ?? '' }) : { value: { does: 'help', of }, found: [] };
}

function readAlone(argv: readonly string[]): Outcome<Ask> {
  const { options, words, found } = sortOut('', ALONE, argv);
  if (found.length > 0) return { found };
  if (words[0] !== undefined) return wrong('command-first', { word: words[0], command: words[0] });
  return { value: 'version' in options ? { does: 'version' } : { does: 'help' }, found: [] };
}

function readCommand(command: Command, rest: readonly string[]): Outcome<Ask> {
  const { options, words, found } = sortOut(command.name, command.options, rest);
  if ('help' in options) return { value: { does: 'help', of: command }, found: [] };
  const more: Diagnostic[] = [];
  const extra = command.open ? undefined : words[command.wants.length];
  if (extra !== undefined) more.push(mistake('too-many', { command: command.name, word: extra }));
  if (words.includes('')) more.push(mistake('empty-word', { command: command.name }));
  more.push(...aloneFor(command.options, options));
  if (words.length < (command.judges ? 1 : command.least))
    more.push(mistake('too-few', { command: command.name, wants: command.wants[words.length] ?? '', subject: '' }));
  const all = [...found, ...more];
  return all.length > 0 ? { found: all } : { value: { does: command.name, words, options }, found: [] };
}

/** What says nothing without another option that is not given. */
function aloneFor(known: readonly Option[], given: Readonly<Record<string, string>>): readonly Diagnostic[] {
  return known.flatMap((option) => {
    const beside = 'beside' in option ? option.beside : undefined;
    if (beside === undefined || !(option.name in given) || beside in given) return [];
    return [mistake('option-alone', { option: `--${option.name}`, beside: `--${beside}` })];
  });
}

type Sorted = { readonly options: Record<string, string>; readonly words: readonly string[]; readonly found: readonly Diagnostic[] };
type Given = {
  readonly name: string;
  readonly rawName: string;
  readonly value?: string | undefined;
  readonly inlineValue?: boolean | undefined;
};

/** `command` is '' where none is named. */
function sortOut(command: string, known: readonly Option[], argv: readonly string[]): Sorted {
  const config = Object.fromEntries(known.map((o) => [o.name, { type: o.takes === 'nothing' ? 'boolean' : 'string' } as const]));
  const { tokens, positionals } = parse(argv, config);
  const options: Record<string, string> = {};
  const found: Diagnostic[] = [];
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const bad = judge(command, known, token, options);
    if (bad) found.push(bad);
    else options[token.name] = token.value ?? '';
  }
  return { options, words: positionals, found };
}

function parse(argv: readonly string[], options: NonNullable<ParseArgsConfig['options']>) {
  return parseArgs({ args: [...argv], options, allowPositionals: true, strict: false, tokens: true });
}

function judge(command: string, known: readonly Option[], given: Given, before: Readonly<Record<string, string>>): Diagnostic | undefined {
  const option = known.find((o) => o.name === given.name);
  const at = { command, option: given.rawName };
  if (!option)
    return mistake('unknown-option', {
      ...at,
      ...near(
        given.name,
        known.map((o) => o.name),
        '--',
      ),
    });
  if (Object.hasOwn(before, given.name)) return mistake('option-twice', at);
  if (option.takes === 'nothing') return given.value === undefined ? undefined : mistake('option-takes-nothing', at);
  const value = given.value;
  // `--out --draft`: the next option is no value, unless it is tied on with '='
  if (value === undefined || value === '' || (/^-(?!\d)/.test(value) && !given.inlineValue))
    return mistake('option-wants', { ...at, wants: option.takes });
  if (option.takes === 'count' && !COUNT.test(value)) return mistake('not-a-count', { ...at, word: value });
  if (option.takes === 'picture' && !PICTURE.test(value)) return mistake('not-a-picture', { ...at, word: value });
  if (option.takes === 'language') return judgeLanguage(value);
  if (option.any && !option.any.includes(value))
    return mistake('not-one-of', { ...at, word: value, any: option.any.join(', '), ...near(value, option.any) });
  return undefined;
}

function judgeLanguage(word: string): Diagnostic | undefined {
  const any = languages();
  return any.includes(word) ? undefined : mistake('no-such-language', { word, any: any.join(', '), ...near(word, any) });
}

/** The language that is asked for, wherever it stands and whatever else is wrong; none where there is no such language. */
export function languageAsked(argv: readonly string[]): string | undefined {
  const { language } = parse(argv, { language: { type: 'string' } }).values;
  return typeof language === 'string' && languages().includes(language) ? language : undefined;
}

const PICTURE = /[^/\\]\.svg$/i;

/** As many as one would cut bar for. */
const COUNT = /^[1-9]\d{0,2}$/;

function near(word: string, known: readonly string[], before = ''): { readonly near: string } {
  const found = nearest(word, known);
  return { near: found === undefined ? '' : `${before}${found}` };
}

function mistake(code: string, grounds: Diagnostic['grounds']): Diagnostic {
  return { code: `cli.${code}`, severity: 'error', grounds };
}

function wrong(code: string, grounds: Diagnostic['grounds']): Outcome<never> {
  return { found: [mistake(code, grounds)] };
}
