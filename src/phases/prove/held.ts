/** While a cut is made: the work is held, what is cut hangs on what is held, nothing falls off, and no cut runs into the hold. */

import type { Step } from '../../geometry/replay.ts';
import { at, TOUCH } from '../../geometry/section/lines.ts';
import { type Pieces, piecesOf } from '../../geometry/section/pieces.ts';
import { isSolid, type Section, type Slab } from '../../geometry/section.ts';
import type { Claim, Grip } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { type Case, claim, figure, short } from './claims.ts';
import { heldStretches, holdsInside } from './grip.ts';

export function heldClaims(asked: Case, step: Step): readonly Claim[] {
  if (isOffLathe(step.setUp.grip) || step.way.sweeps.every((sweep) => sweep.take === 'side')) return [];
  const reason = reasonOf(asked, step);
  const id = step.operation.id;
  const grounds = { operation: short(asked.part.id, id), hold: short(asked.part.id, step.setUp.grip.id), reason, corner: '' };
  return [claim('held', id, reason === '', grounds, id)];
}

function reasonOf(asked: Case, step: Step): 'nothing-held' | 'not-joined' | 'falls-off' | 'in-the-hold' | 'on-the-centre' | '' {
  const pieces = piecesOf(step.before);
  const held = new Set(heldStretches(asked, step.before, pieces, step.setUp.grip).map((one) => one.piece));
  const cells = cutCells(step);
  if (held.size === 0) return 'nothing-held';
  if (cells.some((cell) => !held.has(pieceAt(step.before, pieces, cell.z, (cell.low + cell.high) / 2)))) return 'not-joined';
  const parts = step.way.sweeps.some((sweep) => sweep.take === 'part');
  if (!parts && piecesOf(step.after).count > pieces.count) return 'falls-off';
  if (isOnCentre(step.setUp.grip) && step.way.sweeps.some((sweep) => sweep.take === 'face' || sweep.take === 'bore'))
    return 'on-the-centre';
  // drawn out of its hold to be sawn, as far as it takes, with the lathe stopped
  if (step.operation.verb === 'saw-off') return '';
  return inHoldOf(asked, step, cells) > figure('proof.hold.slack') ? 'in-the-hold' : '';
}

/** Holds in which a centre fills the end of the work. */
const isOnCentre = ({ kind, centre }: Grip): boolean => kind === 'between-centres' || centre !== undefined;

/** Length of the held stretch that this cut takes the skin off. */
export function inHoldOf(asked: Case, step: Step, cells: readonly Cell[] = cutCells(step, step.setUp.grip)): number {
  return cells.reduce((sum, cell) => sum + lengthInHold(asked, step, cell), 0);
}

/** Metal that this step took or threaded, cell by cell, in the middle of each; with `within`, of the slabs that reach into it. */
export type Cell = { readonly from: number; readonly to: number; readonly z: number; readonly low: number; readonly high: number };
export function cutCells(step: Step, within?: { readonly from: number; readonly to: number }): readonly Cell[] {
  const found: Cell[] = [];
  const { id } = step.operation;
  for (const slab of step.after.slabs) {
    if (within && (slab.to <= within.from || slab.from >= within.to)) continue;
    for (let k = 0; k < slab.bounds.length; k += 1) {
      const paint = slab.paints[k];
      if (paint && 'by' in paint && paint.by === id && paint.state !== 'dropped') found.push(cellOf(slab, k));
    }
  }
  return found;
}

function cellOf({ from, to, bounds }: Slab, k: number): Cell {
  const [under, over] = [bounds[k - 1], bounds[k]];
  const z = (from + to) / 2;
  return { from, to, z, low: under ? at(under.line, z) : 0, high: over ? at(over.line, z) : Number.POSITIVE_INFINITY };
}

function pieceAt(section: Section, pieces: Pieces, z: number, d: number): number {
  const i = slabOf(section, z);
  const cell = section.slabs[i]?.bounds.findIndex((bound) => at(bound.line, z) > d) ?? -1;
  return pieces.of[i]?.[cell] ?? -1;
}

const slabOf = (section: Section, z: number): number => section.slabs.findIndex((slab) => slab.from <= z && z <= slab.to);

/** How much of the held stretch loses the skin that the hold closes on: outside, or inside where it holds by the bore. */
function lengthInHold(asked: Case, step: Step, cell: Cell): number {
  const { grip } = step.setUp;
  const length = Math.min(cell.to, grip.to) - Math.max(cell.from, grip.from);
  return length > 0 && isSkin(asked, step, cell) ? length : 0;
}

function isSkin(asked: Case, step: Step, cell: Cell): boolean {
  const { grip } = step.setUp;
  const slab = step.before.slabs[slabOf(step.before, cell.z)];
  if (!slab) return false;
  const solids = slab.paints.flatMap((paint, k) => (isSolid(paint) ? [k] : []));
  if (holdsInside(asked, grip)) {
    const under = slab.bounds[(solids[0] ?? 0) - 1];
    return under !== undefined && cell.low <= at(under.line, cell.z) + TOUCH;
  }
  const over = slab.bounds[solids.at(-1) ?? 0];
  return over !== undefined && cell.high >= at(over.line, cell.z) - TOUCH;
}
