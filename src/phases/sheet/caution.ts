/** The danger at the foot of a page: of its hold, of what stands out from the work, of what is done in it. */
import type { SetUp } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import type { Desk } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** `besides`: what helps the first hold; the bench that follows says itself that the lathe is off. */
export function cautionOf(desk: Desk, setUps: readonly SetUp[], besides: readonly string[], words: SheetWords): string {
  const [first] = setUps;
  const grips = first
    ? [first.grip.kind, ...besides, ...(swings(desk, first) ? ['branched'] : [])].map((one) => `grip.${one}.caution`)
    : [];
  const verbs = setUps.flatMap((setUp) =>
    setUp.operations.map((op) => ({
      id: `verb.${desk.operation(op).verb}.caution`,
      facts: { bored: isBored(desk, setUp) ? 'yes' : 'no' },
    })),
  );
  const all = [...grips.map((id) => ({ id, facts: {} })), ...verbs].filter(({ id }) => words.has(id));
  return [...new Set(all.map(({ id, facts }) => words.say(id, facts)))].join(' ');
}

const before = (desk: Desk, setUp: SetUp): readonly SetUp[] => desk.planned.route.setUps.slice(0, desk.planned.route.setUps.indexOf(setUp));

/** Something soldered into its side goes round with the work. */
function swings(desk: Desk, setUp: SetUp): boolean {
  return !isOffLathe(setUp.grip) && before(desk, setUp).some((one) => one.operations.some((op) => desk.operation(op).verb === 'solder'));
}

/** There is a hole in the end that stands out: a rod goes up it. */
function isBored(desk: Desk, setUp: SetUp): boolean {
  const made = new Set([...before(desk, setUp), setUp].flatMap((one) => one.operations.map((op) => desk.operation(op).feature)));
  return desk.part.features.some((f) => f.kind === 'hole' && !f.centre && f.opens.includes(setUp.grip.out) && made.has(f.id));
}
