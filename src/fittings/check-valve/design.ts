/** A ball check valve from what was asked: parts, bought things, the lift's measured sum, and the reasoning. */
import type { Outcome } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, showMm, toMm } from '../../base/units.ts';
import type { Arrangement, BoughtItem, Fitting, Part, Say } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { boltsFor, type EndForm, flangeFor, flangePart } from '../ends.ts';
import { half, MM, size, TENTH, tidy } from '../limits.ts';
import { nipple, pipeOverlap, unionNut } from '../union.ts';
import type { CheckValveAsked } from './asked.ts';
import { body, layOutBody } from './body.ts';
import { branch } from './branch.ts';
import { ballDepth, cap, lift } from './cap.ts';
import { reasonCheckValve } from './reason.ts';
import { seatPiece } from './seat-piece.ts';
import type { CheckValveSizes } from './sizes.ts';

export function designCheckValve(asked: CheckValveAsked, workshop: Workshop): Outcome<Fitting> {
  const { sizes, material, book } = reasonCheckValve(asked, workshop);
  const found = book.found;
  if (!sizes || !material) return { found };
  const { form } = sizes.end;
  const unions = form === 'union' ? 1 + 1 : 1;
  const union = { thread: sizes.coupling, pipe: asked.pipe, quantity: unions, material: material.id };
  const flange = form === 'flanged' ? flangeFor(sizes.outlet) : undefined;
  const lifted = {
    seatPiece: seatPiece(sizes, material.id, workshop, found),
    body: body(sizes, material.id, workshop, found),
    cap: cap(sizes, material.id, workshop, found),
  };
  const parts = [
    lifted.seatPiece,
    branch(sizes, material.id, workshop, found),
    ...(flange ? [flangePart(flange, { quantity: 1, material: material.id }, workshop, found)] : []),
    lifted.body,
    unionNut(union, workshop, found),
    nipple(union, workshop, found),
    lifted.cap,
  ];
  if (found.some((d) => d.severity === 'error')) return { found };
  const fitting: Fitting = {
    kind: 'check-valve',
    title: asked.title,
    parts,
    bought: [...bought(sizes), ...(flange ? boltsFor(flange, 1) : [])],
    chains: [lift(sizes, lifted)],
    derivations: book.derivations,
    assembly: assembly(sizes),
    tests: tests(sizes),
    cautions: cautions(material.lead),
    arrangement: arrangementOf(sizes, parts),
  };
  return { value: fitting, found };
}

function bought(sizes: CheckValveSizes): readonly BoughtItem[] {
  const ring = {
    size: sizes.seat.name,
    outside: showMm(tidy(add(sizes.seat.outside.major.hi, size('flange.over-thread')), MM, 'near'), 0),
    thick: showMm(size('joint.ring'), 1),
  };
  return [
    { id: 'ball', kind: 'ball', quantity: 1, grounds: { diameter: toMm(sizes.ball) } },
    { id: 'joint-ring', kind: 'joint-ring', quantity: 1 + 1, grounds: ring },
  ];
}

/** Standing on the body's lower face: the seat piece's first end is its seat, the cap's the tip of its stem. */
function arrangementOf(sizes: CheckValveSizes, parts: readonly Part[]): Arrangement {
  const at = layOutBody(sizes);
  const long = (id: string): Len => parts.find((part) => part.id === id)?.length ?? len(0);
  const out = half(sizes.chamber.target);
  const spigot = tidy(add(half(minus(at.barrel, sizes.chamber.target)), size('solder.proud')), TENTH, 'up');
  const from = minus(half(at.barrel), spigot);
  const joint = add(add(from, long('branch')), size('flange.short'));
  return {
    stand: 'upright',
    stands: [
      { part: 'body', way: 'up', at: len(0) },
      { part: 'seat-piece', way: 'down', at: at.seat },
      { part: 'cap', way: 'up', at: minus(add(at.length, size('joint.ring.tight')), minus(long('cap'), size('cap.head'))) },
    ],
    branches: [
      ...(sizes.end.form === 'flanged' ? [{ part: 'pipe-flange', way: 'in' as const, at: at.outlet, from: joint, clear: out }] : []),
      { part: 'branch', way: 'out', at: at.outlet, from, clear: out },
    ],
    ball: { at: add(at.seat, sizes.centre), across: sizes.ball },
    flow: [
      { end: 'below', at: len(0), does: 'in' },
      { end: 'side', at: at.outlet, does: 'out' },
    ],
  };
}

/** The measured sum, in the order in which it is measured. */
function assembly(sizes: CheckValveSizes): readonly Say[] {
  const grounds = {
    lift: showMm(sizes.lift, 1),
    ring: showMm(size('joint.ring.tight'), 2),
    depth: showMm(ballDepth(sizes), 1),
    ball: showMm(sizes.ball, 1),
    overlap: showMm(pipeOverlap(sizes.end.pipe), 1),
  };
  return [
    'assembly.wash',
    'assembly.seat-piece',
    'assembly.ball',
    'assembly.measure-depth',
    'assembly.stem-sum',
    'assembly.cap',
    'assembly.prove-lift',
    ...ENDS[sizes.end.form],
    'assembly.upright',
  ].map((id) => ({ id, grounds }));
}
const ENDS: Readonly<Record<EndForm, readonly string[]>> = {
  union: [],
  plain: ['assembly.plain-end'],
  flanged: ['assembly.flange'],
};

const tests = (sizes: CheckValveSizes): readonly Say[] =>
  ['test.ball-magnet', 'test.seat-syringe', 'test.solder', 'test.lift', 'test.cold-water', 'test.after'].map((id) => ({
    id,
    grounds: { outlet: sizes.end.form },
  }));

function cautions(lead: boolean): readonly Say[] {
  const ids = [
    'caution.lathe',
    'caution.bar',
    'caution.parting',
    'caution.soldering',
    'caution.hardening',
    ...(lead ? ['caution.lead'] : []),
    'caution.pressure',
    'caution.inspector',
  ];
  return ids.map((id) => ({ id, grounds: {} }));
}
