import { describe, expect, it } from 'vitest';
import { tokens } from './tokens.ts';

const shown = (source: string): string =>
  tokens(source)
    .map((t) => `${t.kind[0]}:${t.text}`)
    .join(' ');

describe('tokens', () => {
  it.each([
    ['numbers of every kind', 'f(1, -2.5e3, 0xff, 1_000n, .5)', 'n:f m:( n:1 m:, m:- n:2.5e3 m:, n:0xff m:, n:1_000n m:, n:.5 m:)'],
    ['figures in names and strings are no numbers', 'm10 = \'M12x1\' + "3"', 'n:m10 m:= s:M12x1 m:+ s:3'],
    ['figures in comments are no numbers', 'a // 7\n/* 8 \n 9 */ b', 'n:a n:b'],
    [
      'figures in a template are no numbers, those in its stretches are',
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the source that is read is itself a template
      '`4 ${f({ a: 5 })} 6 ${`7 ${8}`}` + 9',
      't:4  n:f m:( m:{ n:a m:: n:5 m:} m:) t: 6  t:7  n:8 t: t: m:+ n:9',
    ],
    ['a regular expression', 'a = /[/3]\\/4{2}/g.test(b) / 5', 'n:a m:= r:/[/3]\\/4{2}/g m:. n:test m:( n:b m:) m:/ n:5'],
    ['a division', 'x = (a) / 2 / b', 'n:x m:= m:( n:a m:) m:/ n:2 m:/ n:b'],
    ['an escaped quote', "'it\\'s 5' 6", "s:it\\'s 5 n:6"],
  ])('%s', (_, source, expected) => {
    // kinds 'name' and 'number' share their first letter: told apart by the text itself
    expect(shown(source)).toBe(expected);
  });
  it('counts lines through comments and templates', () => {
    expect(tokens('a\n/* \n */ b `\n\n` c').map((t) => [t.text.trim(), t.line])).toEqual([
      ['a', 1],
      ['b', 3],
      ['', 3],
      ['c', 5],
    ]);
  });
  it('tells names from numbers', () => {
    expect(tokens('m10 10').map((t) => t.kind)).toEqual(['name', 'number']);
  });
});
