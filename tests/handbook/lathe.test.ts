/** Pitches an inch, what a motor gives when slowed, and how long the hands take. */
import { describe, expect, it } from 'vitest';
import { inch, mm } from '../../src/base/units.ts';
import { handling, handlings } from '../../src/handbook/handling.ts';
import { powerAt, torque } from '../../src/handbook/motor.ts';
import { perInch, pitchNamed } from '../../src/handbook/pitches.ts';
import { thread, threadNames } from '../../src/handbook/threads.ts';

describe('threads an inch', () => {
  it.each([
    // 1 in = 25.4 mm exactly
    ['8 tpi', 3.175],
    ['10 TPI', 2.54],
    ['16 per inch', 1.5875],
    ['20 threads per inch', 1.27],
  ])('%s is a pitch of %d mm', (word, pitch) => expect(pitchNamed(word)).toBe(mm(pitch)));
  it.each(['tpi', '0 tpi', '8', '8 mm', ''])("'%s' is none", (word) => expect(pitchNamed(word)).toBeUndefined());
  it.each([4, 8, 11, 12, 13, 19, 26, 32, 40, 60])('%d an inch is known again after rounding', (n) => expect(perInch(inch(1 / n))).toBe(n));
  it('is told of every thread of the handbook that is made so, and of no other', () => {
    const wrong = threadNames.filter((name) => {
      const found = thread(name)?.thread;
      return found && perInch(found.pitch) !== found.perInch;
    });
    // the standard rounds the pitches of pipe threads to 0.001 mm: ISO 228-1
    expect(wrong.filter((name) => !name.startsWith('G'))).toEqual([]);
  });
});

describe('a motor that is slowed', () => {
  const RANGES = [
    { to: 1100, fullFrom: 550 },
    { to: 2500, fullFrom: 1250 },
  ];
  it.each([
    // arithmetic: 400 W times speed over full speed, of the ranges that reach it the best
    [100, 400 * (100 / 550)],
    [550, 400],
    [1000, 400],
    [1200, 400 * (1200 / 1250)],
    [2500, 400],
    [2600, 0],
  ])('at %d a minute gives %d W', (speed, watts) => expect(powerAt(400, RANGES, speed)).toBeCloseTo(watts, 9));
  it('has all its power everywhere where it drives pulleys', () => expect(powerAt(250, [], 60)).toBe(250));
  it('never pulls harder when it is slowed', () => {
    const pull = (speed: number) => torque(powerAt(400, [{ to: 2500, fullFrom: 1250 }], speed), speed);
    for (let speed = 100; speed < 2500; speed += 100) expect(pull(speed)).toBeGreaterThanOrEqual(pull(speed + 100) - 1e-9);
    expect(pull(100)).toBeCloseTo(pull(1250), 9);
  });
  // definition: P = 2 pi n T / 60
  it('1 kW at 955 a minute is 10 N m', () => expect(torque(1000, 954.93)).toBeCloseTo(10, 3));
});

it.each(handlings)('%s takes between its least and its most', (id) => {
  expect(handling.value(`${id}.least`)).toBeLessThan(handling.value(id));
  expect(handling.value(id)).toBeLessThan(handling.value(`${id}.most`));
});
