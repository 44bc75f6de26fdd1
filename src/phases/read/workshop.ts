/** A workshop's keys made the record that the phases work with; what is absent is taken as not there, or as a small shop has it; then it is listed. */
import { present } from '../../base/asking.ts';
import { type Len, mm, toMm } from '../../base/units.ts';
import { handling, handlings } from '../../handbook/handling.ts';
import { usualResolution } from '../../handbook/lathe-usual.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { usual } from '../../handbook/reading.ts';
import type { Taken, Workshop } from '../../model/workshop.ts';
import { latheOf } from './lathe.ts';
import { type Taker, takerInto } from './taken.ts';
import { toolsOf } from './tools.ts';
import type { WorkshopKeys } from './workshop-schema.ts';

export function workshopOf(keys: WorkshopKeys): Workshop {
  const taken: Taken[] = [];
  const take = takerInto(taken);
  const lathe = latheOf(keys.lathe ?? {}, take);
  const instruments = (keys.measuring ?? []).map(instrumentOf);
  return {
    name: keys.workshop,
    lathe,
    holding: holdingOf(keys.holding, take),
    tools: toolsOf(keys.tools ?? {}, take),
    measuring: instruments.map((one) => one.name),
    instruments,
    shelf: (keys.shelf ?? []).flatMap(barsOf),
    ...(keys.holds ? { holds: keys.holds.map(ownHold) } : {}),
    ...present({ difficulty: keys.difficulty }),
    habits: habitsOf(keys.habits ?? {}),
    handling: handlingOf(keys.handling ?? {}, lathe.toolPost, take),
    ...present({ sheet: keys.sheet && present(keys.sheet) }),
    taken,
  };
}

type OwnHold = NonNullable<Workshop['holds']>[number];
function ownHold({ process, diameter, length }: NonNullable<WorkshopKeys['holds']>[number]): OwnHold {
  return { process, ...present({ diameter, length }) };
}

function habitsOf(keys: NonNullable<WorkshopKeys['habits']>): Workshop['habits'] {
  const dieBelow = keys['die-below'];
  return { firstEnd: keys['first-end'] ?? {}, avoid: keys.avoid ?? [], ...(dieBelow === undefined ? {} : { dieBelow }) };
}

/** A material goes by the name that the handbook has for it, if it has one. */
function barsOf({ material, section, across, length }: NonNullable<WorkshopKeys['shelf']>[number]): Workshop['shelf'] {
  return across.map((size) => ({ material: findMaterial(material)?.id ?? material, section, across: size, length }));
}

/** Sleeves and mandrels are made as they are needed, from bar: anybody has them who does not say no. Soft jaws, collets and a four-jaw chuck are bought. */
function holdingOf(keys: WorkshopKeys['holding'], take: Taker): Workshop['holding'] {
  return {
    threeJaw: chuckOf(keys?.['three-jaw'] ?? {}, take),
    collets: keys?.collets ?? [],
    sleeves: take('holding.sleeves', keys?.sleeves, true),
    softJaws: keys?.['soft-jaws'] ?? false,
    mandrels: take('holding.mandrels', keys?.mandrels, true),
    ...present({ fourJaw: keys?.['four-jaw'], keptSleeves: keys?.['kept-sleeves'] }),
  };
}

function chuckOf(keys: ChuckKeys, take: Taker): Workshop['holding']['threeJaw'] {
  const largest = take('holding.three-jaw.largest', keys.largest, mm(usual('chuck')), 'mm');
  const share = (id: string): Len => mm(Math.round(toMm(largest) * usual(id)));
  const inside = { from: share('chuck.inside.from'), to: share('chuck.inside.to') };
  return {
    runout: take('holding.three-jaw.run-out', keys['run-out'], mm(usual('runout')), 'mm'),
    largest,
    smallest: take('holding.three-jaw.smallest', keys.smallest, mm(usual('chuck.smallest')), 'mm'),
    inside: take.whole('holding.three-jaw.inside', keys.inside, inside, `${toMm(inside.from)}-${toMm(inside.to)}`, 'mm'),
  };
}
type ChuckKeys = NonNullable<NonNullable<WorkshopKeys['holding']>['three-jaw']>;

/** What an instrument shows is known of the usual ones. */
function instrumentOf(one: NonNullable<WorkshopKeys['measuring']>[number]): Workshop['instruments'][number] {
  const { name, reads } = typeof one === 'string' ? { name: one } : one;
  return { name, ...present({ resolution: reads ?? usualResolution(name) }) };
}

/** Minutes of every kind of handling. A clamped post takes longer over a tool. */
function handlingOf(
  keys: NonNullable<WorkshopKeys['handling']>,
  toolPost: Workshop['lathe']['toolPost'],
  take: Taker,
): Workshop['handling'] {
  const usualOf = (id: string): number => handling.value(id === 'change-tool' && toolPost === 'clamped' ? 'change-tool-clamped' : id);
  return Object.fromEntries(handlings.map((id) => [id, take(`handling.${id}`, keys[id], usualOf(id), 'min')]));
}
