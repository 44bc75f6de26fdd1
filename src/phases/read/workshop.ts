/** A workshop's keys made the record that the phases work with; what is absent is taken as not there, or as a small shop has it. */
import { present } from '../../base/asking.ts';
import { mm } from '../../base/units.ts';
import { findMaterial } from '../../handbook/materials.ts';
import { usual } from '../../handbook/reading.ts';
import type { Workshop } from '../../model/workshop.ts';
import type { WorkshopKeys } from './workshop-schema.ts';

export function workshopOf(keys: WorkshopKeys): Workshop {
  return {
    name: keys.workshop,
    lathe: latheOf(keys.lathe),
    holding: holdingOf(keys.holding),
    tools: toolsOf(keys.tools ?? {}),
    measuring: keys.measuring ?? [],
    shelf: (keys.shelf ?? []).flatMap(barsOf),
    ...(keys.holds ? { holds: keys.holds.map(ownHold) } : {}),
    habits: habitsOf(keys.habits ?? {}),
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

/** A screwed nose is the careful guess: such a chuck may come off in reverse. Without gears no thread is cut with the leadscrew. */
function latheOf(keys: WorkshopKeys['lathe']): Workshop['lathe'] {
  const { cross, top, tailstock, carriage } = keys.dials;
  return {
    centreHeight: keys['centre-height'],
    betweenCentres: keys['between-centres'],
    spindleBore: keys['spindle-bore'],
    nose: keys.nose ?? 'screwed',
    speeds: Array.isArray(keys.speeds) ? { steps: [...keys.speeds].sort((a, b) => a - b) } : keys.speeds,
    motor: keys.motor,
    leadscrew: keys.leadscrew,
    gears: [...(keys.gears ?? [])].sort((a, b) => a - b),
    dials: { cross, top, tailstock, ...present({ carriage }) },
    jawClearance: keys['jaw-clearance'] ?? mm(usual('jaw-clearance')),
  };
}

/** Sleeves and mandrels are made as they are needed, from bar: anybody has them who does not say no. Soft jaws, collets and a four-jaw chuck are bought. */
function holdingOf(keys: WorkshopKeys['holding']): Workshop['holding'] {
  return {
    threeJaw: {
      runout: keys?.['three-jaw']?.['run-out'] ?? mm(usual('runout')),
      largest: keys?.['three-jaw']?.largest ?? mm(usual('chuck')),
    },
    collets: keys?.collets ?? [],
    sleeves: keys?.sleeves ?? true,
    softJaws: keys?.['soft-jaws'] ?? false,
    mandrels: keys?.mandrels ?? true,
    ...present({ fourJaw: keys?.['four-jaw'] }),
  };
}

/** A turning tool, a chamfer and files are in every shop; all else is there when it is named. */
function toolsOf(keys: NonNullable<WorkshopKeys['tools']>): Workshop['tools'] {
  return {
    material: keys.material ?? 'HSS',
    turning: keys.turning ?? true,
    parting: keys.parting && { width: keys.parting.width, deepest: keys.parting.largest },
    grooving: keys.grooving,
    boring: keys.boring ?? [],
    threadingOutside: keys['threading-outside'] ?? false,
    threadingInside: keys['threading-inside'],
    chamfering: keys.chamfering ?? true,
    centreDrills: keys['centre-drills'] ?? [],
    drills: keys.drills ?? [],
    reamers: keys.reamers ?? [],
    silverSteel: keys['silver-steel'] ?? [],
    taps: keys.taps ?? [],
    dies: keys.dies ?? [],
    dBits: keys['d-bits'] ?? [],
    gaugeNuts: keys['gauge-nuts'] ?? [],
    files: keys.files ?? true,
    ...present({ filingGuide: keys['filing-guide'] }),
    knurling: keys.knurling ?? false,
    drillPress: keys['drill-press'] ?? false,
    torch: keys.torch ?? false,
  };
}
