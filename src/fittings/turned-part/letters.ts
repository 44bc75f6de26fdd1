/** Letters of the faces: the person's own first, then the alphabet for the rest. */
import type { AskedFace, TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';

/** Letters that a drawing can be read by: no I, no O. */
const ALPHABET = [...'ABCDEFGHJKLMNPQRSTUVWXYZ'];

export type Letters = {
  /** The letter of a face: its own, or the next that is free. */
  take(own: string | undefined): string;
  /** Was it given by the person? */
  isNamed(letter: string): boolean;
};

export function lettersOf(asked: TurnedPartAsked, faults: Faults): Letters {
  const named = new Map<string, Path>();
  const name = (face: AskedFace | undefined, path: Path): void => {
    if (face?.letter === undefined) return;
    const where = [...path, 'letter'];
    if (named.has(face.letter)) fault(faults, where, 'letter-twice', { letter: face.letter });
    else named.set(face.letter, where);
  };
  name(asked.first, ['first']);
  name(asked.second, ['second']);
  asked.outside.forEach((section, i) => {
    name(section.shoulder, ['outside', i, 'shoulder']);
  });
  asked.inside.forEach((hole, i) => {
    name(hole.letter === undefined ? undefined : { letter: hole.letter }, ['inside', i]);
  });
  const used = new Set(named.keys());
  return {
    isNamed: (letter) => named.has(letter),
    take(own) {
      if (own !== undefined) return own;
      const free = ALPHABET.find((l) => !used.has(l)) ?? `Z${used.size}`;
      used.add(free);
      return free;
    },
  };
}
