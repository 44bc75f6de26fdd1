/** The project's own files, for the tests of the house. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Token, tokens } from './tokens.ts';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
/** `path` from the project's own folder, with forward slashes. */
export type Source = { readonly path: string; readonly text: string };
export type Code = Source & { readonly tokens: readonly Token[] };

const SKIPPED = new Set(['node_modules', 'dist', '.git', 'out']);

/** All files under `folder` whose name ends so, in order of their paths. */
export function filesUnder(folder: string, ending: string): readonly Source[] {
  return walk(join(ROOT, folder))
    .filter((path) => path.endsWith(ending))
    .map((path) => ({ path: relative(ROOT, path).replaceAll('\\', '/'), text: readFileSync(path, 'utf8') }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

let read: readonly Code[] | undefined;
/** Everything under src, read once. */
export function code(): readonly Code[] {
  read ??= filesUnder('src', '.ts').map((file) => ({ ...file, tokens: tokens(file.text) }));
  return read;
}

/** 'src/phases/read/schema.ts' is of room 'phases'; files that stand right under src are rooms by their own names. */
export function roomOf(path: string): string {
  return (path.split('/')[1] ?? '').replace(/\.ts$/, '');
}

function walk(folder: string): readonly string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (SKIPPED.has(name)) return [];
    return statSync(path).isDirectory() ? walk(path) : [path];
  });
}
