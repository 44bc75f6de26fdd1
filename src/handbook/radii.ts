/** Shop figures of rounded edges, fillets and full-round ends: what a form tool bears, what is left beside an arc, what is held. */
import { type Len, mm } from '../base/units.ts';
import { type FactTable, factTable } from './fact.ts';
import { cite } from './sources.ts';

type Row = readonly [id: string, value: number, unit: 'mm' | 'ratio', what: string];
const ROWS: readonly Row[] = [
  ['form.width.most', 5, 'mm', 'widest cut of a form tool on a small lathe; wider, it chatters: steps and a file instead'],
  ['band.small', 0.1, 'mm', 'either way on a radius under 0.5 mm, where ISO 2768-1 is silent'],
  ['band.full-round', 0.1, 'mm', 'either way on the radius of a full-round end'],
  ['full-round.flat', 0.3, 'mm', 'least flat that a full-round end keeps in its middle: the face that lengths are read from'],
  ['full-round.step', 0.1, 'mm', 'the radius of a full-round end is rounded down to this'],
  ['form.width.narrow', 2, 'mm', 'widest edge that cuts as a parting blade does, wherever the work is held'],
  ['form.stick-out.most', 2, 'ratio', 'stick-out to diameter within which a wider edge is plunged without chatter'],
  ['mouth.least', 4, 'mm', 'least bore whose mouth a hollow form tool rounds: the toe of its edge has to go in'],
  ['land.least', 0.5, 'mm', 'cylinder left beside an arc, or between two'],
  ['face.least', 0.2, 'mm', 'face left beside an arc, or between two, on diameter'],
  ['steps.pitch', 0.5, 'mm', 'how far apart along the axis the steps are turned that a file then takes down to the gauge'],
  ['steps.round', 0.05, 'mm', 'diameters of steps are rounded up to this'],
];

export const radii: FactTable = factTable(
  ROWS.map(([id, value, unit, what]) => ({ id, value, unit, what, source: cite('custom'), standing: 'common practice' })),
);

export const radiusFigure = (id: string): Len => mm(radii.value(id));
