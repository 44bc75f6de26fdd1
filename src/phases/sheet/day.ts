/** What stands in the spindle for a page and whom it serves; a part that is laid aside; why the day is so, for who learns. */
import type { Part } from '../../model/part.ts';
import type { Plan, Sequence } from '../../model/plan.ts';
import type { DayShown } from '../../model/sheet.ts';
import { minutesOf } from './bar-and-time.ts';
import { keyOf, partName } from './names.ts';
import type { SheetWords } from './said.ts';

/** `tooling`: what stands there; without it jaws bored in place. `served`: places in the day, in order; `this`: which of them, -1 on its own page. */
export type Standing = {
  readonly since: number;
  readonly tooling?: Part;
  readonly served: readonly number[];
  readonly here: number;
};

/** `at`: a page's place in the day. Nothing where it neither stands on something made in the spindle nor is that. */
export function standingAt(plan: Plan, at: number): Standing | undefined {
  const here = plan.sequence[at];
  const own = here && partOf(plan, here.part);
  const begun =
    own?.use === 'tooling made in place' ? plan.sequence.findLastIndex((e, i) => i <= at && e.part === own.id && e.setUp === 0) : here?.on;
  if (begun === undefined || begun < 0) return undefined;
  const tooling = partOf(plan, plan.sequence[begun]?.part ?? '');
  const served = plan.sequence.flatMap((e, i) => (e.on === begun ? [i] : []));
  return { since: begun, served, here: served.indexOf(at), ...(tooling?.use === 'tooling made in place' ? { tooling } : {}) };
}

/** The mark of the sheet that begins there; of a second making its own. */
export function sheetAt({ sequence }: Plan, at: number): string {
  const here = sequence[at];
  if (!here) return '';
  const times = sequence.slice(0, at + 1).filter((e) => e.part === here.part && e.setUp === here.setUp).length;
  return `{sheet:${keyOf(here.part, here.setUp)}${times > 1 ? `@${times}` : ''}}`;
}

/** The sheet of the hold before on the same standing thing; '' for the first. */
export function stillFrom(plan: Plan, at: number): string {
  const standing = standingAt(plan, at);
  const before = standing?.served[standing.here - 1];
  return before === undefined ? '' : sheetAt(plan, before);
}

/** On tooling's own page: the sheets that it serves, where there are several. */
export function servesSaid(plan: Plan, at: number): string {
  const standing = standingAt(plan, at);
  return standing && standing.here < 0 && standing.served.length > 1 ? standing.served.map((i) => sheetAt(plan, i)).join(', ') : '';
}

/** What is to be left in the spindle for a hold that comes, and a part that is laid aside. `to`: place in the day of the last work on the page. */
export function goesOnSaid(plan: Plan, at: number, to: number, words: SheetWords): readonly string[] {
  const standing = standingAt(plan, at);
  const next = standing && standing.here >= 0 ? standing.served[standing.here + 1] : undefined;
  const aside = asideUntil(plan, to);
  return [
    ...(next === undefined
      ? []
      : [words.say('checkpoint.leave', { what: standing?.tooling ? 'mandrel' : 'jaws', sheet: sheetAt(plan, next) })]),
    ...(aside === undefined ? [] : [words.say('checkpoint.aside', { sheet: sheetAt(plan, aside) })]),
  ];
}

/** Where a part goes on that another one comes before; tooling that is made for it does not count. */
function asideUntil(plan: Plan, to: number): number | undefined {
  const here = plan.sequence[to];
  const later = plan.sequence.flatMap((e, i) => (i > to && !isMadeForHold(partOf(plan, e.part)) ? [i] : []));
  const on = later.find((i) => plan.sequence[i]?.part === here?.part);
  return here && !isMadeForHold(partOf(plan, here.part)) && on !== later[0] ? on : undefined;
}

const isMadeForHold = (part: Part | undefined): boolean => part?.use === 'tooling made in place' || part?.use === 'tooling made to fit';
const partOf = (plan: Plan, id: string): Part | undefined => plan.parts.find(({ part }) => part.id === id)?.part;

// ---- for who learns ------------------------------------------------------------------------------------------------------
/** Of tooling that serves several holds: why it is made here, why a part is held on it now, why a part is begun and laid aside before. */
export function dayShown(plan: Plan, at: number, to: number, words: SheetWords): DayShown | undefined {
  const aside = asideUntil(plan, to);
  const [own, coming] = [standingAt(plan, at), aside === undefined ? undefined : standingAt(plan, aside)];
  const standing = isShared(own) ? own : coming;
  if (!isShared(standing)) return undefined;
  const facts = { tooling: nameOf(standing, words), parts: partsOn(plan, standing, words), sheet: sheetAt(plan, standing.since) };
  const minutes = standing.tooling && plan.parts.find(({ part }) => part === standing.tooling)?.time?.whole;
  const which = standing !== own ? 'aside' : own.here < 0 ? 'made' : own.here === 0 ? 'first' : 'still';
  return {
    why: words.say(`day.${which}.why`, facts),
    otherwise: words.say('day.otherwise', { ...facts, minutes: minutes === undefined ? '' : minutesOf(minutes) }),
    ...(which === 'made' ? { ask: words.say('question.day', facts) } : {}),
  };
}

const isShared = (standing: Standing | undefined): standing is Standing => standing !== undefined && standing.served.length > 1;
const nameOf = ({ tooling }: Standing, words: SheetWords): string => (tooling ? partName(tooling, words) : words.say('day.jaws'));

/** Each part that is held on it, once, in the order of the day. */
function partsOn(plan: Plan, { served }: Standing, words: SheetWords): string {
  const ids = [...new Set(served.map((i) => plan.sequence[i]?.part ?? ''))];
  return ids
    .flatMap((id) => partOf(plan, id) ?? [])
    .map((part) => partName(part, words))
    .join(', ');
}

/** What a part is held on together with others, named once each: for an answer page. */
export function sharedBy(plan: Plan, part: string, words: SheetWords): readonly { readonly tooling: string; readonly parts: string }[] {
  const shared = plan.sequence.flatMap((e, i) => {
    const standing = e.part === part ? standingAt(plan, i) : undefined;
    return isShared(standing) && standing.here >= 0 && isAcross(plan, standing) ? [standing] : [];
  });
  const once = [...new Map(shared.map((one) => [one.since, one])).values()];
  return once.map((one) => ({ tooling: nameOf(one, words), parts: partsOn(plan, one, words) }));
}

const isAcross = ({ sequence }: { readonly sequence: Sequence }, { served }: Standing): boolean =>
  new Set(served.map((i) => sequence[i]?.part)).size > 1;
