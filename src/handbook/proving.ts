/** Figures that the proof judges by. Those of grips and walls that rules use as well stand in practice.ts. */
import { type FactTable, factTable } from './fact.ts';

const CUSTOM = 'common practice, no source';
const OWN = 'rule of this project';

/** Lengths are in mm; walls are differences of diameter. */
export const proving: FactTable = factTable([
  {
    ...{ id: 'proof.surface.least', value: 0.05, unit: 'mm', standing: 'common practice', source: OWN },
    what: 'least length of a cylinder or cone, and least difference of diameter of a face, that must stay at every limit',
  },
  {
    ...{ id: 'proof.wall.least', value: 0.6, unit: 'mm', standing: 'common practice', source: CUSTOM },
    what: 'least difference of outside and inside diameter between two cylinders, at any moment of the work',
  },
  {
    ...{ id: 'proof.wall.shortest', value: 0.1, unit: 'mm', standing: 'common practice', source: OWN },
    what: 'a thin place shorter than this is an edge, not a wall',
  },
  {
    ...{ id: 'proof.grip.slack', value: 0.2, unit: 'mm', standing: 'common practice', source: CUSTOM },
    what: 'what is held may differ by this much in diameter from what the hold was set for',
  },
  {
    ...{ id: 'proof.stick-out.slack', value: 0.5, unit: 'mm', standing: 'common practice', source: CUSTOM },
    what: 'work is set in its hold by scale: it may stand out this much farther than so many diameters',
  },
  {
    ...{ id: 'proof.hold.slack', value: 0.5, unit: 'mm', standing: 'common practice', source: CUSTOM },
    what: 'work is set in its hold by scale: a cut may lie this far within the stretch that the hold is drawn on',
  },
  {
    ...{ id: 'proof.guide.slack', value: 0.05, unit: 'mm', standing: 'common practice', source: CUSTOM },
    what: 'a bore that differs by more than this in diameter from a steered tool does not steer it',
  },
  {
    ...{ id: 'proof.again', value: 4, unit: 'count', standing: 'common practice', source: OWN },
    what: 'plans that are tried, at most, after the proof has refused the one that was best',
  },
  {
    ...{ id: 'truth.seat', value: 0.15, unit: 'mm', standing: 'common practice', source: CUSTOM },
    what: 'run-out (full reading) that a seat or a sealing cone may have to what locates it: a register, a running fit, or the thread at a register',
  },
]);
