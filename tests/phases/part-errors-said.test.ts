/** The same fault for different reasons: what is said is the reason that holds, and what is advised, followed, helps. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { planOwn } from '../fixtures/own-part.ts';

const say = words(loadWords());
const ENDS = ['first: { letter: A }', 'second: { letter: B }'];
function saidOf(lines: readonly string[], material = 'PB102'): string {
  return planOwn([...ENDS, ...lines], [], material)
    .found.map(({ code, grounds }) => `${say.say(`error.${code}`, grounds)} ${say.say(`error.${code}.do`, grounds)}`)
    .join('\n');
}

describe('a radius where an end is full-round', () => {
  const ball = (radius: string): readonly string[] => [
    'outside:',
    `  - { name: ball, diameter: 5 mm, length: 6 mm, full-round: first${radius} }`,
    '  - { name: collar, diameter: 12 mm, length: 16 mm }',
  ];
  it('is told that the end is round already, not that something is in the way', () => {
    expect(saidOf(ball(', radius: 2.2 mm'))).toContain('full-round at its one free end already');
    expect(saidOf(ball(''))).not.toContain('free corner');
  });
});

describe('a cone that is too long', () => {
  const plug = (diameter: string, cone: string): readonly string[] => [
    'outside:',
    `  - { name: plug, diameter: ${diameter}, length: 14 mm, cone: { at: first, ${cone} } }`,
    '  - { name: head, diameter: 16 mm, length: 14 mm }',
  ];
  it('only at its limits is told so; with closer ones it fits', () => {
    expect(saidOf(plug('12 mm', 'length: 12 mm, tip: 11 mm'))).toContain('give its two diameters closer limits');
    expect(saidOf(plug('12 ±0.05', 'length: 12 mm, tip: 11 ±0.05'))).toBe('');
  });
  it('as it is drawn is told to be made shorter', () => {
    const said = saidOf(plug('12 mm', 'angle: 5 deg, tip: 10 mm'));
    expect(said).toContain('Make the piece longer');
    expect(said).not.toContain('closer limits');
  });
});

describe('a bar that is not there', () => {
  const pin = (bar: string, as: string): readonly string[] => [`bar: ${bar}`, 'outside:', `  - { name: pin, ${as}, length: 12 mm }`];
  it('that the description names, though it is turned away, is not said to stay as its outside', () => {
    const said = saidOf(pin('round 13 mm', 'diameter: 10 mm'));
    expect(said).toContain('because this bar is asked for');
    expect(said).toContain("leave 'bar' out");
    expect(saidOf(['outside:', '  - { name: pin, diameter: 10 mm, length: 12 mm }'])).toBe('');
  });
  it('that stays as the outside is said to', () => expect(saidOf(pin('round 13 mm', 'as-bar: yes'))).toContain('its outside stays as bar'));
});

describe('a hole that no boring tool goes into', () => {
  const helps = (inside: string): string =>
    (planOwn([...ENDS, 'outside: [{ name: body, diameter: 18 mm, length: 20 mm }]', 'inside:', `  - { ${inside} }`]).noRoutes ?? [])
      .flatMap((none) => none.wouldHelp)
      .map(({ because }) => say.say(`rule.${because.rule}.change`, because.grounds))
      .join('\n');
  it('is helped by more depth where the point of a drill has no room above the floor', () => {
    expect(helps('name: recess, diameter: 14 mm, from: first, depth: 2 mm, bottom: flat')).toContain('a deeper recess');
    expect(helps('name: recess, diameter: 14 mm, from: first, depth: 3.5 mm, bottom: flat')).toBe('');
  });
  it('is helped by a reamer where it goes right through and something fits in it', () => {
    expect(helps('name: bore, diameter: 4 +0.07 +0.04, from: first, depth: through, role: running')).toContain('a reamer holds');
    expect(helps('name: bore, diameter: 4 H8, from: first, depth: through, role: running')).toBe('');
  });
});

describe('work that would stand too far out', () => {
  const tube = (outside: string, inside: string, ends = ''): readonly string[] => [
    ...[`first: { letter: A${ends} }`, `second: { letter: B${ends} }`, ...(outside.startsWith('as-bar') ? ['bar: round 10 mm'] : [])],
    `outside: [{ name: tube, ${outside}, length: 80 mm }]`,
    ...(inside ? [`inside: [{ name: bore, ${inside} }]`] : []),
  ];
  const [BORE, TURNED] = ['diameter: 5 mm, from: first, depth: through', 'diameter: 9 mm'];
  const planned = (lines: readonly string[]) => planOwn(lines);
  const helps = (lines: readonly string[]): string =>
    (planned(lines).noRoutes ?? [])
      .flatMap((none) => none.wouldHelp)
      .filter(({ because }) => because.rule === 'stick-out')
      .map(({ because }) => say.say(`rule.${because.rule}.change`, because.grounds))
      .join('\n');
  it('is helped by a centre in its free end, and followed it is made', () => {
    expect(helps(tube(TURNED, ''))).toContain("'centre: may'");
    expect(planned(tube(TURNED, '', ', centre: may')).plan?.parts[0]?.proof.holds).toBe(true);
  });
  it('is not told of a centre where a hole opens there; left as the bar is, it is made', () => {
    expect(helps(tube(TURNED, BORE))).toMatch(/^The bar's own surface/);
    expect(helps(tube(TURNED, BORE))).not.toContain('centre');
    expect(planned(tube('as-bar: yes', BORE)).plan?.parts[0]?.proof.holds).toBe(true);
  });
});

describe('two cones that meet', () => {
  const olive = (cone: (at: string) => string): readonly string[] => [
    ...['outside:', `  - { name: front, diameter: 8.5 mm, length: 2 mm, ${cone('first')} }`],
    ...[`  - { name: back, diameter: 8.5 mm, length: 2 mm, ${cone('second')} }`],
    'inside: [{ name: bore, diameter: 6 mm, from: first, depth: through }]',
  ];
  it('with a land between them are told to run right along; then there is no fault', () => {
    expect(saidOf(olive((at) => `cone: { at: ${at}, angle: 60 deg, tip: 7 ±0.05 }`))).toContain('they meet in a ridge');
    expect(saidOf(olive((at) => `cone: { at: ${at}, length: 2 mm, tip: 7 ±0.05 }`))).not.toContain('face between');
  });
});

describe('a part of two tapers and nothing to hold it by', () => {
  it('is told that no hold leaves them free, where there is none to refuse', () => {
    const said = saidOf([
      ...['outside:', '  - { name: front, diameter: 8.5 mm, length: 2 mm, cone: { at: first, length: 2 mm, tip: 7 ±0.05 } }'],
      '  - { name: back, diameter: 8.5 mm, length: 2 mm, cone: { at: second, length: 2 mm, tip: 7 ±0.05 } }',
      'inside: [{ name: bore, diameter: 6 mm, from: first, depth: through }]',
    ]);
    expect(said).toContain('no hold that there is leaves free what is still to be cut');
    expect(said).toContain('a plain piece');
    expect(said).toContain('a bore right through with close limits');
    expect(said).not.toMatch(/\b0 holds|refusals/);
  });
});
