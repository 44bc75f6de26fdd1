/** A ball check valve from what was asked: parts, bought things, the lift's measured sum, and the reasoning. */
import type { Outcome } from '../../base/diagnostics.ts';
import type { Fitting } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { flangeFor, flangePart } from '../ends.ts';
import { nipple, unionNut } from '../union.ts';
import { arrangementOf } from './arrangement.ts';
import type { CheckValveAsked } from './asked.ts';
import { body } from './body.ts';
import { branch } from './branch.ts';
import { cap, lift } from './cap.ts';
import { reasonCheckValve } from './reason.ts';
import { seatPiece } from './seat-piece.ts';
import { assembly, bought, cautions, tests } from './steps.ts';
import { straightCap } from './straight-cap.ts';

export function designCheckValve(asked: CheckValveAsked, workshop: Workshop): Outcome<Fitting> {
  const { sizes, material, book } = reasonCheckValve(asked, workshop);
  const found = book.found;
  if (!sizes || !material) return { found };
  const { form } = sizes.end;
  const unions = form === 'union' ? 1 + 1 : 1;
  const union = { thread: sizes.coupling, pipe: asked.pipe, quantity: unions, material: material.id };
  const lifted = {
    seatPiece: seatPiece(sizes, material.id, workshop, found),
    body: body(sizes, material.id, workshop, found),
    cap: sizes.stop ? straightCap(sizes, sizes.stop, material.id, workshop, found) : cap(sizes, material.id, workshop, found),
  };
  const parts = [
    lifted.seatPiece,
    ...(sizes.stop ? [] : [branch(sizes, material.id, workshop, found)]),
    ...(form === 'flanged' ? [flangePart(flangeFor(sizes.outlet), { quantity: 1, material: material.id }, workshop, found)] : []),
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
    bought: bought(sizes),
    chains: [lift(sizes, lifted)],
    derivations: book.derivations,
    assembly: assembly(sizes),
    tests: tests(sizes),
    cautions: cautions(material.lead),
    arrangement: arrangementOf(sizes, parts),
  };
  return { value: fitting, found };
}
