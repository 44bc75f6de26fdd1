/** What to put on the tool: words' ids by group of material and operation. Turning also serves for facing, boring, threading and the like. */
import type { CuttingOperation } from './cutting.ts';
import { type CuttingGroup, findMaterial } from './materials.ts';
import { cite, type SourceId } from './sources.ts';

export type Lubricant = 'dry' | 'soluble' | 'strong-soluble' | 'light-oil' | 'lard-oil' | 'cutting-oil' | 'sulphur-oil' | 'paraffin';
export type LubricantChoice = { readonly id: Lubricant; readonly source: string };

/** Nothing for a material that is not known. */
export function lubricantFor(material: string, operation: CuttingOperation): LubricantChoice | undefined {
  const group = findMaterial(material)?.cutting;
  const row = group === undefined ? undefined : ROWS[group];
  return row && { id: row[columnOf(operation)], source: row.sources.map((id) => cite(id)).join('; ') };
}

type Column = 'turning' | 'drilling' | 'tapping' | 'parting';
type Row = Readonly<Record<Column, Lubricant>> & { readonly sources: readonly SourceId[] };

const ROWS: Readonly<Record<CuttingGroup, Row>> = {
  brass: { turning: 'dry', drilling: 'dry', tapping: 'light-oil', parting: 'dry', sources: ['mh31', 'tm-1-420', 'tap-die'] },
  gunmetal: { turning: 'dry', drilling: 'soluble', tapping: 'light-oil', parting: 'dry', sources: ['tap-die', 'mh31'] },
  bronze: { turning: 'soluble', drilling: 'soluble', tapping: 'lard-oil', parting: 'soluble', sources: ['mh31'] },
  copper: { turning: 'soluble', drilling: 'soluble', tapping: 'light-oil', parting: 'soluble', sources: ['mh31', 'tap-die'] },
  303: { turning: 'sulphur-oil', drilling: 'sulphur-oil', tapping: 'sulphur-oil', parting: 'sulphur-oil', sources: ['tap-die'] },
  316: { turning: 'sulphur-oil', drilling: 'sulphur-oil', tapping: 'sulphur-oil', parting: 'sulphur-oil', sources: ['tap-die'] },
  'silver steel': {
    turning: 'lard-oil',
    drilling: 'soluble',
    tapping: 'sulphur-oil',
    parting: 'cutting-oil',
    sources: ['mh31', 'tap-die'],
  },
  'mild steel': {
    turning: 'soluble',
    drilling: 'soluble',
    tapping: 'sulphur-oil',
    parting: 'cutting-oil',
    sources: ['mh31', 'tm-1-420', 'tap-die'],
  },
  aluminium: { turning: 'paraffin', drilling: 'paraffin', tapping: 'lard-oil', parting: 'paraffin', sources: ['mh31'] },
};

const DRILLING: readonly CuttingOperation[] = ['drill', 'centre', 'ream', 'd-bit', 'counterbore'];
const TAPPING: readonly CuttingOperation[] = ['tap', 'die', 'screw-cut'];
const PARTING: readonly CuttingOperation[] = ['part-off', 'groove'];

function columnOf(operation: CuttingOperation): Column {
  if (DRILLING.includes(operation)) return 'drilling';
  if (TAPPING.includes(operation)) return 'tapping';
  return PARTING.includes(operation) ? 'parting' : 'turning';
}
