/** Rules, fittings and phases write no figures of their own: every other number is a row of the handbook, with source and standing. */
import { describe, expect, it } from 'vitest';
import { type Code, code, roomOf } from './sources.ts';
import { tokens } from './tokens.ts';

const ROOMS = ['rules', 'fittings', 'phases'];
/** Files, each with the numbers that it may write besides, and why they are no facts of the trade. */
const EXCEPTIONS: Readonly<Record<string, { readonly numbers: readonly string[]; readonly why: string }>> = {};

/** 0, 1, 2 and whole or broken powers of ten; the sign is no part of the number. */
function isPlain(number: string): boolean {
  const value = Number(number.replaceAll('_', '').replace(/n$/, ''));
  return value === 0 || value === 2 || (!/^0[xob]/i.test(number) && Math.abs(Math.log10(value) - Math.round(Math.log10(value))) < 1e-9);
}

function figures(file: Code): readonly string[] {
  const allowed = EXCEPTIONS[file.path]?.numbers ?? [];
  return file.tokens
    .filter((t) => t.kind === 'number' && !isPlain(t.text) && !allowed.includes(t.text))
    .map((t) => `${file.path}:${t.line} writes ${t.text}`);
}

describe('figures', () => {
  it('stand in the handbook, not in rules, fittings and phases', () => {
    expect(
      code()
        .filter((f) => ROOMS.includes(roomOf(f.path)))
        .flatMap(figures),
    ).toEqual([]);
  });
  it('no exception is left over', () => {
    const written = (path: string): readonly string[] =>
      code()
        .find((f) => f.path === path)
        ?.tokens.filter((t) => t.kind === 'number')
        .map((t) => t.text) ?? [];
    const idle = Object.entries(EXCEPTIONS).flatMap(([path, { numbers }]) =>
      numbers.filter((n) => !written(path).includes(n)).map((n) => `${path}: ${n}`),
    );
    expect(idle).toEqual([]);
  });
  it.each([
    ['a[0] + b[1] - 2 * 10_000 + 1e3 + 0.1 + 1n', []],
    ["x(3) + 0.8 - 'M12' + 0x10", ['3', '0.8', '0x10']],
  ])('%s: %j', (text, expected) => {
    expect(figures({ path: 'src/rules/a.ts', text, tokens: tokens(text) })).toEqual(expected.map((n) => `src/rules/a.ts:1 writes ${n}`));
  });
});
