/** Safety signs: each in its frame, told in grey, with its number and meaning. That sheets carry them: tests/phases/sheet-every.test.ts. */
import { describe, expect, it } from 'vitest';
import { drawSign } from '../../src/drawing/sheet/signs.ts';
import { signedCautions, signs, signsOf } from '../../src/handbook/signs.ts';
import type { Ink, PathItem } from '../../src/model/display.ts';
import { INKS } from '../../src/render/inks.ts';
import { allWords } from '../render/assets.ts';

const words = allWords();
const pathsOf = (id: (typeof signs)[number]['id']): readonly PathItem[] =>
  drawSign(id, 20, 30, 10).filter((item): item is PathItem => item.kind === 'path');
const grey = (ink: Ink): number => {
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(INKS[ink].slice(i, i + 2), 16));
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
};

describe.each(signs)('$id $means', ({ id, means }) => {
  it('stays in its frame', () => {
    const points = pathsOf(id).flatMap((item) => item.segments.flatMap((s) => (s.to === 'close' ? [] : [s])));
    expect(Math.min(...points.map((p) => p.x))).toBeGreaterThanOrEqual(20);
    expect(Math.max(...points.map((p) => p.x))).toBeLessThanOrEqual(30);
    expect(Math.min(...points.map((p) => p.y))).toBeGreaterThanOrEqual(30);
    expect(Math.max(...points.map((p) => p.y))).toBeLessThanOrEqual(40);
  });

  /** ISO 3864-1: a warning's triangle is yellow with black, a mandatory disc blue with white, a prohibition red on white with black. */
  it('has the shape and colours of its kind, its picture in the contrasting colour', () => {
    const inks = pathsOf(id).flatMap((item) => [item.fill, item.stroke?.ink].filter((ink) => ink !== undefined));
    const [ground, symbol] =
      { W: ['warned', 'black'] as const, M: ['asked', 'white'] as const, P: ['white', 'black'] as const }[id[0] ?? ''] ?? [];
    if (!ground || !symbol) throw new Error(`what kind of sign is ${id}?`);
    expect(new Set(inks)).toEqual(new Set([ground, symbol, ...(id.startsWith('P') ? ['forbidden'] : [])]));
    expect(Math.abs(grey(ground) - grey(symbol))).toBeGreaterThan(100);
    expect(Math.abs(grey('forbidden') - grey('white'))).toBeGreaterThan(100);
  });

  it('is said with its meaning', () => {
    expect(words.say('sign', { id, means: words.say(`sign.${id}`) })).toBe(`${id} ${means.replace(/ sign$/, '')}`);
  });

  it('is carried by a caution', () => {
    expect(signedCautions.some((caution) => signsOf(caution).includes(id))).toBe(true);
  });
});
