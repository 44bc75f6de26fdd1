/**
 * The only door to the disk. Everything that the package brings is found from this file's own place, so that it works wherever it is
 * installed and from whatever folder it is run. What a user writes is read with care; what is written is written whole or not at all.
 */
import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Diagnostic, Outcome } from './base/diagnostics.ts';
import { nearest } from './base/nearest.ts';
import type { Assets, FontFiles } from './model/assets.ts';

export type Read = { readonly name: string; readonly text: string; readonly bytes: Uint8Array };
export type Written = { readonly name: string; readonly bytes: Uint8Array | string };

/** A fitting or workshop of more than this is no such thing. */
const MOST_BYTES = 256 * 1024;
/** MB */
const MOST_OF_A_SHEET = 64;
const DEFAULT_WORKSHOP = 'bench-lathe.yaml';
const FONT_FILES = {
  text: 'IBMPlexSans-Regular.ttf',
  'text-bold': 'IBMPlexSans-SemiBold.ttf',
  narrow: 'IBMPlexSansCondensed-Medium.ttf',
  'narrow-bold': 'IBMPlexSansCondensed-SemiBold.ttf',
} as const;

/** The language that is spoken where none is asked for. */
export const FIRST_LANGUAGE = 'en';

/** The languages that there are, the first one first, then by name: the folders beside the fonts that hold words. */
export function languages(): readonly string[] {
  const folders = namesIn(packagePath('templates')).filter((name) => namesIn(packagePath('templates', name)).some(isWords));
  return [FIRST_LANGUAGE, ...folders.filter((name) => name !== FIRST_LANGUAGE).sort()];
}

const isWords = (name: string): boolean => name.endsWith('.hbs');

/** Words of one language, the table of advances and the workshop that is used when none is named. Throws Error when the package is not whole. */
export function loadAssets(language = FIRST_LANGUAGE): Assets {
  return {
    language,
    words: loadWords(language),
    advances: JSON.parse(readFileSync(packagePath('templates', 'fonts', 'advances.json'), 'utf8')) as Assets['advances'],
    workshop: { name: DEFAULT_WORKSHOP, text: readFileSync(packagePath('specs', 'workshops', DEFAULT_WORKSHOP), 'utf8') },
  };
}

/** The words alone, by file name: help and mistakes in the command line need nothing else. */
export function loadWords(language = FIRST_LANGUAGE): Assets['words'] {
  const folder = packagePath('templates', language);
  const names = readdirSync(folder).filter(isWords);
  return Object.fromEntries(names.sort().map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
}

/** One file of words, for a command that says little. */
export function loadWordFile(name: string, language = FIRST_LANGUAGE): string {
  return readFileSync(packagePath('templates', language, name), 'utf8');
}

/** Opened in the order of the record, which is fixed: the bytes of a PDF depend on it. */
export function loadFonts(): FontFiles {
  const read = (name: string): Uint8Array => new Uint8Array(readFileSync(packagePath('templates', 'fonts', name)));
  return {
    text: read(FONT_FILES.text),
    'text-bold': read(FONT_FILES['text-bold']),
    narrow: read(FONT_FILES.narrow),
    'narrow-bold': read(FONT_FILES['narrow-bold']),
  };
}

export function packageVersion(): string {
  return (JSON.parse(readFileSync(packagePath('package.json'), 'utf8')) as { readonly version: string }).version;
}

/** A user's own file, by its base name. What is wrong with it is a finding (`file.*`), never an exception. */
export function readUserFile(path: string): Outcome<Read> {
  try {
    const state = statSync(path);
    if (!state.isFile()) return refused('file.not-a-file', path);
    if (state.size > MOST_BYTES)
      return refused('file.too-large', path, { kilobytes: Math.ceil(state.size / 1024), most: MOST_BYTES / 1024 });
    return asText(path, basename(path), new Uint8Array(readFileSync(path)));
  } catch (cause) {
    return codeOf(cause) === 'ENOENT' || codeOf(cause) === 'ENOTDIR'
      ? notThere(path)
      : refused('file.cannot-read', path, { reason: codeOf(cause) });
  }
}

/** `path`: as it is told; `name`: as places carry it. Of what is no UTF-8 the first letter that is none is told. */
function asText(path: string, name: string, bytes: Uint8Array): Outcome<Read> {
  try {
    return { value: { name, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), bytes }, found: [] };
  } catch {
    const before = new TextDecoder().decode(bytes).split(NO_LETTER)[0]?.split('\n') ?? [];
    const place = { file: path, line: before.length, col: (before.at(-1)?.length ?? 0) + 1 };
    return { found: [{ code: 'file.not-text', severity: 'error', place, grounds: { path } }] };
  }
}

/** What a decoder puts where bytes make no letter. */
const NO_LETTER = '\uFFFD';

/**
 * The descriptions that a word on the command line stands for: itself, or, where it is a folder, the YAML files in it (not in folders
 * within), by name; `workshop` and what else there describes a workshop is passed over.
 */
export function filesUnder(path: string, workshop?: string): Outcome<readonly string[]> {
  if (!isFolder(path)) return { value: [path], found: [] };
  const listed = listing(path);
  if (!listed.value) return listed;
  const named = listed.value.filter((name) => /\.ya?ml$/.test(name));
  const paths = [...named].sort().map((name) => join(path, name));
  const own = paths.filter((each) => (workshop === undefined || resolve(workshop) !== resolve(each)) && !isWorkshop(each));
  return own.length === 0 ? refused('file.none-in-folder', path) : { value: own, found: [] };
}

/** What can't be looked at is no folder; why it can't is told when it is read. */
function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/** What can't be read is left to be told when it is. */
function isWorkshop(path: string): boolean {
  const text = readUserFile(path).value?.text ?? '';
  return /^workshop\s*:/m.test(text) && !/^fitting\s*:/m.test(text);
}

/** Is anything there already? */
export const isThere = (path: string): boolean => existsSync(path);

/** Any file, as it is. */
export function readBytes(path: string): Outcome<Uint8Array> {
  try {
    const state = statSync(path);
    if (!state.isFile()) return refused('file.not-a-file', path);
    const megabyte = 1024 * 1024;
    if (state.size > MOST_OF_A_SHEET * megabyte)
      return refused('record.too-large', path, { megabytes: Math.ceil(state.size / megabyte), most: MOST_OF_A_SHEET });
    return { value: new Uint8Array(readFileSync(path)), found: [] };
  } catch (cause) {
    return ['ENOENT', 'ENOTDIR'].includes(codeOf(cause)) ? notThere(path) : refused('file.cannot-read', path, { reason: codeOf(cause) });
  }
}

/** The paths in `folder` that would be written over with something else. */
export function inTheWay(folder: string, files: readonly { readonly name: string; readonly bytes: Uint8Array }[]): readonly string[] {
  const same = (path: string, bytes: Uint8Array): boolean => statSync(path).isFile() && readFileSync(path).equals(bytes);
  return files
    .filter(({ name, bytes }) => existsSync(join(folder, name)) && !same(join(folder, name), bytes))
    .map(({ name }) => join(folder, name));
}

/** What is piped in, or typed and ended; its name in places is '-'. */
export function readStandardInput(): Outcome<Read> {
  try {
    return asText('-', '-', new Uint8Array(readFileSync(0)));
  } catch (cause) {
    return refused('file.cannot-read', '-', { reason: codeOf(cause) });
  }
}

/** Writes all of `files` into `folder`, or none; the folder is made when it is not there. Gives the paths, as `folder` was named. */
export function writeAll(folder: string, files: readonly Written[]): Outcome<readonly string[]> {
  const barred = notWritable(
    folder,
    files.map(({ name }) => name),
  );
  if (barred) return { found: [barred] };
  const undo: (() => void)[] = [];
  try {
    makeFolder(folder, undo);
    const staged = files.map((file) => stage(folder, file, undo));
    for (const file of staged) exchange(file, undo);
    for (const file of staged) rmSync(file.kept, { force: true });
    return { value: files.map((file) => join(folder, file.name)), found: [] };
  } catch (cause) {
    for (const step of undo.reverse()) attempt(step);
    return refused('file.cannot-write', folder, { reason: codeOf(cause) });
  }
}

/**
 * Why files of these names could not be written into `folder`, as far as that shows before: a folder stands in the place of one, a file
 * stands where the folder should be, or the folder that is there may not be written to. Nothing where nothing is in the way.
 */
export function notWritable(folder: string, names: readonly string[]): Diagnostic | undefined {
  const bar = (path: string, reason: string): Diagnostic => ({ code: 'file.cannot-write', severity: 'error', grounds: { path, reason } });
  const taken = names.map((name) => join(folder, name)).find((path) => existsSync(path) && !statSync(path).isFile());
  if (taken !== undefined) return bar(taken, 'EISDIR');
  const there = firstThere(folder);
  if (!isFolder(there)) return bar(there, 'ENOTDIR');
  try {
    accessSync(there, constants.W_OK);
    return undefined;
  } catch (cause) {
    return bar(there, codeOf(cause));
  }
}

/** `folder` itself, or the nearest above it that is there. */
function firstThere(folder: string): string {
  return existsSync(folder) || dirname(folder) === folder ? folder : firstThere(dirname(folder));
}

/** One folder after another: made at a stroke, in a place that takes no folder, the system's own call may never come back. */
function makeFolder(folder: string, undo: (() => void)[]): void {
  if (existsSync(folder)) return;
  if (dirname(folder) !== folder) makeFolder(dirname(folder), undo);
  if (existsSync(folder)) return;
  mkdirSync(folder);
  undo.push(() => rmSync(folder, { recursive: true, force: true }));
}

/** What cannot be put back must not keep the rest from being put back. */
function attempt(step: () => void): void {
  try {
    step();
  } catch {
    return;
  }
}

type Staged = { readonly path: string; readonly fresh: string; readonly kept: string };

function stage(folder: string, file: Written, undo: (() => void)[]): Staged {
  const path = join(folder, file.name);
  const beside = join(folder, `.${file.name}.${process.pid}`);
  const staged = { path, fresh: `${beside}.new`, kept: `${beside}.old` };
  undo.push(() => rmSync(staged.fresh, { force: true }));
  writeFileSync(staged.fresh, file.bytes, { flush: true });
  return staged;
}

/** The old file steps aside first, so that it can be put back when a later one of the lot cannot be written. */
function exchange(file: Staged, undo: (() => void)[]): void {
  const old = existsSync(file.path);
  if (old) {
    renameSync(file.path, file.kept);
    undo.push(() => renameSync(file.kept, file.path));
  }
  renameSync(file.fresh, file.path);
  if (!old) undo.push(() => rmSync(file.path, { force: true }));
}

function notThere(path: string): Outcome<never> {
  const near = nearest(basename(path), namesIn(dirname(path)));
  return refused('file.not-there', path, { near: near ? join(dirname(path), near) : '' });
}

function listing(folder: string): Outcome<readonly string[]> {
  try {
    return { value: readdirSync(folder), found: [] };
  } catch (cause) {
    return refused('file.cannot-read', folder, { reason: codeOf(cause) });
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function refused(code: string, path: string, more: Diagnostic['grounds'] = {}): Outcome<never> {
  return { found: [{ code, severity: 'error', grounds: { path, ...more } }] };
}

function codeOf(cause: unknown): string {
  return cause instanceof Error && 'code' in cause ? String(cause.code) : String(cause);
}

/** The package's own folder: the first above this file that holds both its description and its templates. */
function packagePath(...parts: readonly string[]): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!(existsSync(join(folder, 'package.json')) && existsSync(join(folder, 'templates')))) {
    if (folder === dirname(folder)) throw new Error('the package is not whole: no templates beside its package.json');
    folder = dirname(folder);
  }
  return join(folder, ...parts);
}
