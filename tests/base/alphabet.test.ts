import { describe, expect, it } from 'vitest';
import { alphabetical } from '../../src/base/alphabet.ts';

describe('the order of words', () => {
  it('takes letters with marks as those without, and capitals as small ones (DIN 5007-1)', () => {
    expect(['Zapfen', 'Öl', 'anreißen', 'Ansatz', 'Bohrer', 'ölen', 'Anriss', 'Ahle', 'Äser'].sort(alphabetical)).toEqual([
      'Ahle',
      'anreißen',
      'Anriss',
      'Ansatz',
      'Äser',
      'Bohrer',
      'Öl',
      'ölen',
      'Zapfen',
    ]);
  });
  it('parts equals by code unit, so that it does not hang on the order in which they come', () => {
    expect(['ol', 'öl', 'Ol'].sort(alphabetical)).toEqual(['öl', 'Ol', 'ol'].sort(alphabetical));
    expect(alphabetical('bit', 'bit')).toBe(0);
  });
});
