/** What holds for a whole grip is said once, over its rows: where the dials' nought is, the tools' metal and shape, what keeps the cut wet. */

import type { Figures, Operation, SetUp, Verb } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { freeSaid } from './freedom.ts';
import type { Desk } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** Common to all operations of a set-up that have such a thing; '' where they differ, or only one has it: then its row says it. */
export type Common = { readonly lubricant: string; readonly material: string };

export const NOTHING_COMMON: Common = { lubricant: '', material: '' };

export function commonOf(desk: Desk, setUp: SetUp): Common {
  if (isOffLathe(setUp.grip)) return NOTHING_COMMON;
  const lubricants = setUp.operations.flatMap((op) => desk.figures(op)?.lubricant ?? []);
  const materials = setUp.operations.map((op) => desk.operation(op).tool).filter(({ kind }) => EDGED.includes(kind));
  return { lubricant: onlyOf(lubricants), material: onlyOf(materials.map(({ material }) => material)) };
}
/** Tools whose words name their metal. */
const EDGED: readonly string[] = ['turning', 'boring'];

const onlyOf = ([first = '', ...others]: readonly string[]): string =>
  others.length > 0 && others.every((other) => other === first) ? first : '';

/** A face keeps a pip, a thread its form wrong, a cone its straight line bent, where the edge is off the centre's height. */
const ON_CENTRE: readonly Verb[] = ['face', 'screw-cut', 'cone', 'form'];

/** A thin bar is pressed down by its cut: an edge a little over the centre comes down to it and does not dig in. */
const BORED: readonly Verb[] = ['bore', 'bore-start'];

/** How the edges of this grip's tools are set. */
function settingOf(verbs: readonly Verb[], words: SheetWords): readonly string[] {
  return [
    ...(verbs.some((verb) => ON_CENTRE.includes(verb)) ? [words.say('once.height')] : []),
    ...(verbs.some((verb) => BORED.includes(verb)) ? [words.say('once.bored')] : []),
    ...(verbs.includes('screw-cut') ? [words.say('once.squared')] : []),
  ];
}

/** Lines that a row leaves to the head of its table. */
export const SAID_OVER: readonly string[] = ['say.rake', 'say.lips', 'say.hardens'];

/** '' where there is nothing to say: at the bench. */
export function onceSaid(desk: Desk, setUp: SetUp, words: SheetWords): string {
  if (isOffLathe(setUp.grip)) return '';
  const figures = setUp.operations.flatMap((op) => desk.figures(op) ?? []);
  const { lubricant, material } = commonOf(desk, setUp);
  const metal = SAID_OVER.filter((id) => figures.some(({ says = [] }) => says.some((say) => say.id === id)));
  return [
    ...(figures.some(hasDial) ? [words.say('once.dials')] : []),
    ...(material === '' ? [] : [words.say('once.material', { material })]),
    ...settingOf(
      setUp.operations.map((op) => desk.operation(op).verb),
      words,
    ),
    ...metal.map((id) => words.say(id)),
    ...(lubricant === '' ? [] : [words.say('once.lubricant', { lubricant: words.say(`lubricant.${lubricant}`) })]),
    ...[freeSaid(desk, setUp, words)].filter((said) => said !== ''),
  ].join(` ${words.say('under.between')} `);
}

const hasDial = ({ dial }: Figures): boolean => dial !== undefined;

/** The tool's metal, where its row has to say it. */
export const materialSaid = ({ tool }: Operation, common: Common): string => (tool.material === common.material ? '' : tool.material);
