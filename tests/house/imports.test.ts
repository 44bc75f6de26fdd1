/** Who may know whom. */
import { describe, expect, it } from 'vitest';
import { type Code, code, roomOf } from './sources.ts';

/** Top down: a file imports from rooms above its own and from its own. */
const ROOMS = [
  'base',
  'handbook',
  'model',
  'geometry',
  'fittings',
  'rules',
  'drawing',
  'phases',
  'render',
  'record',
  'compile',
  'files',
  'cli',
  'index',
];
/** Pairs that do not know each other, whichever stands above. */
const STRANGERS: readonly (readonly [string, string])[] = [
  ['rules', 'fittings'],
  ['fittings', 'rules'],
];
/** Rooms that know no more than these (and themselves). */
const ONLY: Readonly<Record<string, readonly string[]>> = {
  base: [],
  handbook: ['base'],
  model: ['base', 'handbook'],
  render: ['base', 'model'],
  files: ['base', 'model'],
};
/** Packages that each room may use; `node:` modules are for the disk's door and the command line. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  base: ['handlebars', 'yaml', 'zod'],
  fittings: ['zod'],
  phases: ['yaml', 'zod'],
  render: ['pdfkit'],
  files: ['node:fs', 'node:path', 'node:url'],
  cli: [
    'node:fs',
    'node:module',
    'node:path',
    'node:process',
    'node:readline',
    'node:tty',
    'node:url',
    'node:util',
    'node:v8',
    'node:vm',
    'node:zlib',
  ],
};

/** The phases that replay and judge, and what works out the sizes that they judge. */
const JUDGE = ['prove', 'replay'];
const SUMS = ['src/geometry/chain.ts', 'src/geometry/sharing.ts'];

type Import = { readonly by: string; readonly line: number; readonly what: string };

function importsOf(file: Code): readonly Import[] {
  return file.tokens.flatMap((t, i) => {
    if (t.kind !== 'string') return [];
    const before = file.tokens[i - 1]?.text;
    const called = before === '(' && file.tokens[i - 2]?.text === 'import';
    return before === 'from' || before === 'import' || called ? [{ by: file.path, line: t.line, what: t.text }] : [];
  });
}

/** './a.ts' as seen from 'src/b/c.ts' is 'src/b/a.ts'. */
function resolved(by: string, what: string): string {
  const parts = by.split('/').slice(0, -1);
  for (const step of what.split('/')) {
    if (step === '..') parts.pop();
    else if (step !== '.') parts.push(step);
  }
  return parts.join('/');
}

/** The phase that a file under src/phases belongs to: its own name, or its folder's. */
const phaseOf = (path: string): string => (path.split('/')[2] ?? '').replace(/\.ts$/, '');

function complaint({ by, what }: Import): string | undefined {
  const room = roomOf(by);
  if (!what.startsWith('.')) return (PACKAGES[room] ?? []).includes(what) ? undefined : `${room} may not use the package`;
  const to = resolved(by, what);
  if (!to.startsWith('src/') || !to.endsWith('.ts')) return 'not a .ts file under src';
  const other = roomOf(to);
  if (other === room) return room === 'phases' && phaseOf(by) !== phaseOf(to) ? 'phases do not import each other' : undefined;
  if (ROOMS.indexOf(other) > ROOMS.indexOf(room)) return `${other} stands below ${room}`;
  if (STRANGERS.some(([a, b]) => a === room && b === other)) return `${room} and ${other} do not know each other`;
  return ONLY[room] && !ONLY[room].includes(other) ? `${room} knows only ${ONLY[room].join(', ')}` : undefined;
}

describe('imports', () => {
  it('every file stands in a room', () => {
    expect(
      code()
        .map((f) => f.path)
        .filter((path) => !ROOMS.includes(roomOf(path))),
    ).toEqual([]);
    expect(code().length).toBeGreaterThan(0);
  });
  it('go one way', () => {
    const wrong = code()
      .flatMap(importsOf)
      .map((i) => ({ i, why: complaint(i) }))
      .filter(({ why }) => why !== undefined);
    expect(wrong.map(({ i, why }) => `${i.by}:${i.line} imports ${i.what}: ${why}`)).toEqual([]);
  });
  it('the judge knows nothing of the arithmetic that it judges', () => {
    const wrong = code()
      .filter((f) => roomOf(f.path) === 'phases' && JUDGE.includes(phaseOf(f.path)))
      .flatMap(importsOf)
      .filter((i) => SUMS.includes(resolved(i.by, i.what)));
    expect(wrong).toEqual([]);
  });
  it('close no ring, not even of types', () => {
    const graph = new Map(
      code().map((f) => [
        f.path,
        importsOf(f)
          .filter((i) => i.what.startsWith('.'))
          .map((i) => resolved(f.path, i.what)),
      ]),
    );
    expect(rings(graph)).toEqual([]);
  });
  it.each([
    ['src/render/pdf.ts', '../handbook/practice.ts', 'render knows only base, model'],
    ['src/rules/grips.ts', '../fittings/union.ts', 'rules and fittings do not know each other'],
    ['src/model/plan.ts', '../geometry/chain.ts', 'geometry stands below model'],
    ['src/phases/order.ts', './sequence.ts', 'phases do not import each other'],
    ['src/phases/read/schema.ts', '../read.ts', undefined],
    ['src/geometry/chain.ts', 'node:fs', 'geometry may not use the package'],
    ['src/cli/program.ts', '../compile.ts', undefined],
    ['src/cli/main.ts', '../../tests/a.ts', 'not a .ts file under src'],
  ])('%s importing %s: %s', (by, what, why) => {
    expect(complaint({ by, what, line: 1 })).toBe(why);
  });
});

/** Each ring once, as the path that closes it. Walks depth first; a file is left for good when all below it is clean. */
function rings(graph: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const clean = new Set<string>();
  const found: string[] = [];
  const walk = (path: string, way: readonly string[]): void => {
    if (clean.has(path)) return;
    if (way.includes(path)) {
      found.push([...way.slice(way.indexOf(path)), path].join(' > '));
      return;
    }
    for (const next of graph.get(path) ?? []) walk(next, [...way, path]);
    clean.add(path);
  };
  for (const path of graph.keys()) walk(path, []);
  return found;
}
