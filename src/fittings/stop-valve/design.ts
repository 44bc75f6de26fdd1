/** A globe-style stop valve from what was asked: parts, bought things, chains, and the reasoning. */
import type { Diagnostic, Outcome } from '../../base/diagnostics.ts';
import { add, showMm, toMm } from '../../base/units.ts';
import { leakAt } from '../../handbook/leak-rates.ts';
import type { BoughtItem, Fitting, Part, Say } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { refused } from '../book.ts';
import { MM, size, tidy } from '../limits.ts';
import { plugPart } from '../plug.ts';
import { spindlePart } from '../spindle.ts';
import { screwedLength } from '../threads.ts';
import { pipeOverlap } from '../union.ts';
import { arrangementOf } from './arranged.ts';
import type { StopValveAsked } from './asked.ts';
import { angleBody, straightBody } from './body.ts';
import { bonnet } from './bonnet.ts';
import { chainsOf } from './chains.ts';
import { branchParts, endParts, endsBought, endsSaid } from './ends.ts';
import { follower, glandNut } from './gland.ts';
import { layOutSpindle } from './layout.ts';
import { openingCurve } from './opening.ts';
import { reasonStopValve } from './reason.ts';
import type { StopValveSizes } from './shared.ts';
import { handwheel } from './wheel.ts';

export function designStopValve(asked: StopValveAsked, workshop: Workshop): Outcome<Fitting> {
  const { book, sizes, material, spindle } = reasonStopValve(asked, workshop);
  if (!sizes || !material || !spindle || refused(book)) return { found: book.found };
  const parts = partsOf(asked, sizes, { body: material.id, spindle: spindle.id }, workshop, book.found);
  if (refused(book)) return { found: book.found };
  const fitting: Fitting = {
    kind: 'stop-valve',
    title: asked.title,
    parts,
    bought: [...bought(asked, sizes), ...endsBought(asked, sizes)],
    chains: chainsOf(sizes, parts),
    derivations: book.derivations,
    curves: [openingCurve(asked, sizes)],
    assembly: assembly(asked, sizes),
    tests: tests(asked, sizes),
    cautions: cautions(material.lead),
    arrangement: arrangementOf(asked, sizes, parts),
  };
  return { value: fitting, found: book.found };
}

function partsOf(
  asked: StopValveAsked,
  sizes: StopValveSizes,
  metal: { readonly body: string; readonly spindle: string },
  workshop: Workshop,
  found: Diagnostic[],
): readonly Part[] {
  const straight = asked.pattern === 'straight';
  return [
    ...branchParts(asked, sizes, metal.body, workshop, found),
    (straight ? straightBody : angleBody)(sizes, metal.body, workshop, found),
    ...(straight
      ? [plugPart({ thread: sizes.bonnet, screwed: screwedLength(sizes.bonnet), quantity: 1, material: metal.body }, workshop, found)]
      : []),
    bonnet(sizes, metal.body, workshop, found),
    glandNut(sizes, metal.body, workshop, found),
    follower(sizes, metal.body, workshop, found),
    spindle(sizes, metal.spindle, workshop, found),
    handwheel(sizes, metal.body, workshop, found),
    ...endParts(asked, sizes, metal.body, workshop, found),
  ];
}

function spindle(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutSpindle(sizes);
  return spindlePart(
    {
      cone: { angle: sizes.cone, tip: sizes.tip },
      plug: { across: sizes.plug, length: at.plug },
      thread: { pair: sizes.spindle, length: at.thread },
      stem: { across: sizes.stem, length: at.stem },
      square: { across: sizes.square, length: at.square },
      end: { pair: sizes.end, length: at.end },
      material,
    },
    workshop,
    found,
  );
}

function bought(asked: StopValveAsked, sizes: StopValveSizes): readonly BoughtItem[] {
  const ring = {
    size: sizes.bonnet.name,
    outside: showMm(tidy(add(sizes.bonnet.outside.major.hi, size('flange.over-thread')), MM, 'near'), 0),
    thick: showMm(size('joint.ring'), 1),
  };
  return [
    {
      id: 'packing',
      kind: 'packing',
      quantity: sizes.rings,
      grounds: { width: toMm(sizes.packing), stem: toMm(sizes.stem), box: toMm(sizes.box) },
    },
    { id: 'joint-ring', kind: 'joint-ring', quantity: asked.pattern === 'straight' ? 1 + 1 : 1, grounds: ring },
    { id: 'wheel-nut', kind: 'wheel-nut', quantity: 1, grounds: { thread: sizes.end.name } },
  ];
}

function assembly(asked: StopValveAsked, sizes: StopValveSizes): readonly Say[] {
  const grounds = {
    travel: showMm(sizes.travel, 1),
    rings: sizes.rings,
    width: showMm(sizes.packing, 1),
    overlap: showMm(pipeOverlap(asked.pipe), 1),
    turns: (toMm(sizes.travel) / toMm(sizes.spindle.outside.pitch)).toFixed(1),
  };
  const said = endsSaid(asked, sizes);
  const ids = [
    'assembly.wash',
    ...(asked.pattern === 'straight' ? ['assembly.plug'] : []),
    'assembly.spindle',
    'assembly.bonnet',
    'assembly.blue',
    'assembly.pack',
    'assembly.gland',
    'assembly.wheel',
    'assembly.prove-travel',
    ...(said.plain ? ['assembly.stop-plain-end'] : []),
    ...(said.flanged ? ['assembly.flange'] : []),
    'assembly.flow-way',
  ];
  return ids.map((id) => ({ id, grounds }));
}

/** With cold water, rate D of ISO 5208 is said beside rate A: scaled to the bore, which is this project's own way. */
function tests(asked: StopValveAsked, sizes: StopValveSizes): readonly Say[] {
  const grounds = {
    ...endsSaid(asked, sizes),
    leak: leakAt('D', toMm(sizes.bore)).toPrecision(1),
    coupling: sizes.coupling.name,
  };
  const ids = [
    ...['test.cone-blue', 'test.stop-blow', 'test.solder'],
    ...(grounds.unions ? ['test.union-blue'] : []),
    ...['test.day-parts', 'test.stop-water', 'test.gland', 'test.after'],
  ];
  return ids.map((id) => ({ id, grounds }));
}

function cautions(lead: boolean): readonly Say[] {
  const ids = [
    ...['caution.lathe', 'caution.bar', 'caution.parting', 'caution.soldering', 'caution.hardening'],
    ...(lead ? ['caution.lead'] : []),
    ...['caution.gland', 'caution.pressure-stop', 'caution.inspector'],
  ];
  return ids.map((id) => ({ id, grounds: {} }));
}
