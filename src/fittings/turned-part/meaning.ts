/** What a description comes to: sections, holes and lengths with limits, as an outline asks for them; or why it can't be. */
import { add, len } from '../../base/units.ts';
import type { OutlineAsk } from '../outline.ts';
import type { AskedEnd, TurnedPartAsked } from './asked.ts';
import { type Fault, type Faults, fault, type Path } from './fault.ts';
import { holesOf } from './inside.ts';
import { lengthsOf } from './lengths.ts';
import { type Letters, lettersOf } from './letters.ts';
import type { Meant } from './meant.ts';
import { sectionsOf } from './outside.ts';
import { checkArcs } from './radius-room.ts';
import { recessesOf, withRecesses } from './recess.ts';
import { checkRemains } from './remains.ts';
import { sidesOf } from './sides.ts';
import { slotsOf } from './slot.ts';
import { checkWalls } from './walls.ts';

export function meaningOf(asked: TurnedPartAsked): { readonly value?: Meant; readonly faults: readonly Fault[] } {
  const faults: Faults = [];
  const letters = lettersOf(asked, faults);
  checkNames(asked, faults);
  // 'free' leaves an end as the parting tool leaves it: that has to be asked for.
  const end = ({ letter, role }: AskedEnd) => ({ letter: letters.take(letter), role: role ?? 'clearance' });
  const [first, second] = [end(asked.first), end(asked.second)];
  const sections = sectionsOf(asked, letters, faults);
  if (!sections) {
    checkReferences(asked, letters, faults);
    return { faults };
  }
  const length = sections.reduce((sum, s) => add(sum, s.length), len(0));
  const laid = holesOf(asked, length, letters, faults);
  const ends = { first: first.letter, second: second.letter };
  const bored = laid.map(({ hole }) => (hole.edge ? { ...hole, edge: ends[hole.edge === 'first' ? 'first' : 'second'] } : hole));
  const recesses = recessesOf(asked, { holes: bored, length, ends }, letters, faults);
  const holes = withRecesses(bored, recesses);
  checkWalls(asked, sections, holes, faults);
  checkArcs({ asked, sections, faults }, holes);
  const sides = [...sidesOf(asked, sections, holes, faults), ...slotsOf(asked, sections, ends, faults)];
  const truths = coaxialOf(asked, faults);
  const lengths = lengthsOf(asked, { ends: [first.letter, second.letter], sections, holes: laid, recesses }, letters, faults);
  const outline = { first, second, sections, holes, sides, lengths, truths };
  if (faults.length === 0) checkRemains(asked, { outline, name: asked.name }, faults);
  if (faults.length > 0) return { faults };
  const turned = sections.filter((s) => !s.asStock).map((s) => (s.blank ?? s.size).hi);
  return {
    faults,
    value: {
      ...{ title: asked.title, name: asked.name, material: asked.material, quantity: asked.quantity },
      ...(asked.bar ? { bar: asked.bar } : {}),
      keepsBar: sections.some((s) => s.asStock),
      widest: len(Math.max(0, ...turned)),
      centres: (['first', 'second'] as const).filter((e) => asked[e].centre === 'may'),
      outline,
    },
  };
}

/** Where the sections are not known: letters and names that cannot be there however they come out. */
function checkReferences(asked: TurnedPartAsked, letters: Letters, faults: Faults): void {
  const unnamed = 2 + asked.outside.length + 2 * asked.inside.length;
  const given = Array.from({ length: unnamed }, () => letters.take(undefined));
  const named = [asked.first, asked.second, ...asked.outside.map((one) => one.shoulder), ...asked.inside].flatMap(
    (one) => one?.letter ?? [],
  );
  asked.lengths.forEach((one, i) => {
    for (const end of ['from', 'to'] as const) {
      const known = letters.isNamed(one[end]) || given.includes(one[end]);
      if (!known) fault(faults, ['lengths', i, end], 'no-such-face', { letter: one[end], letters: named.join(', ') });
    }
  });
  const sections = asked.outside.map((one) => one.name);
  asked.side.forEach(({ name, on }, i) => {
    if (!sections.includes(on)) fault(faults, ['side', i, 'on'], 'no-such-section', { feature: name, on, sections: sections.join(', ') });
  });
}

/** Pieces of the outside, or holes, that are to run true to one another. */
function coaxialOf(asked: TurnedPartAsked, faults: Faults): NonNullable<OutlineAsk['truths']> {
  const names = [...asked.outside, ...asked.inside].map((one) => one.name);
  asked.coaxial.forEach((one, i) => {
    for (const key of ['of', 'to'] as const)
      if (!names.includes(one[key])) fault(faults, ['coaxial', i, key], 'coaxial-with-nothing', { word: one[key], any: names.join(', ') });
  });
  return asked.coaxial.map(({ of, to, within }) => ({ a: to, b: of, asks: within }));
}

function checkNames(asked: TurnedPartAsked, faults: Faults): void {
  const seen = new Set<string>();
  const see = (name: string, path: Path): void => {
    if (seen.has(name)) fault(faults, [...path, 'name'], 'name-twice', { feature: name });
    seen.add(name);
  };
  for (const key of ['outside', 'inside', 'side'] as const) {
    asked[key].forEach((one, i) => {
      see(one.name, [key, i]);
    });
  }
}
