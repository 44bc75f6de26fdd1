/** Keeps a list of what a file left out and what was taken in its place. */
import type { Taken } from '../../model/workshop.ts';

export type Taker = {
  /** What was said of `key`; when nothing was, `usual`, and the list has it. `unit`: 'mm', '/min', 'W' or '' for plain values. */
  <T extends Taken['value']>(key: string, said: T | undefined, usual: T, unit?: string): T;
  /** The same for a thing of several figures: `shown` stands in the list. */
  whole<T>(key: string, said: T | undefined, usual: T, shown: Taken['value'], unit?: string): T;
};

export function takerInto(list: Taken[]): Taker {
  const whole: Taker['whole'] = (key, said, usual, shown, unit = '') => {
    if (said !== undefined) return said;
    if (!list.some((one) => one.key === key)) list.push({ key, value: shown, unit });
    return usual;
  };
  return Object.assign(
    <T extends Taken['value']>(key: string, said: T | undefined, usual: T, unit = ''): T => whole(key, said, usual, usual, unit),
    {
      whole,
    },
  );
}
