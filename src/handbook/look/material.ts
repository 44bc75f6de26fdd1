/** `look material`: what is in it, how heavy and strong, how it is cut, what to mind. */
import { lubricantFor } from '../lubricants.ts';
import { findMaterial, type Material, nearestMaterials } from '../materials.ts';
import { numbersTable } from '../numbers.ts';
import { type Ask, type Found, figure, type Ground, grounds, named, type Part, type Row, row, rowAbout, span, word } from './answer.ts';

export function lookMaterial({ words }: Ask): Found {
  const m = findMaterial(words);
  if (!m) return { unknown: words, near: nearestMaterials(words) };
  return {
    answer: {
      subject: 'material',
      name: m.id,
      parts: [makePart(m), strengthPart(m), cutPart(m)],
      notes: m.cautions.map((c) => `caution.${c}`),
      sources: grounds(m, m.physical, ...m.strength, m.annealed, ...forceGround(m)),
    },
  };
}

function makePart(m: Material): Part {
  return {
    title: 'make-up',
    rows: [
      row('kind', word(`kind.${m.kind}`)),
      row('also', ...m.aliases.map(named)),
      row('density', figure(m.density, 'kg/m³', 0)),
      row('modulus', figure(m.modulus, 'GPa', 0)),
      row('zinc', span(m.zincPercent.lo, m.zincPercent.hi, '%', 1)),
      row('lead', span(m.leadPercent.lo, m.leadPercent.hi, '%', 2)),
    ],
  };
}

function strengthPart(m: Material): Part {
  const all = [...m.strength, ...(m.annealed ? [m.annealed] : [])];
  const rows: readonly Row[] = all.map((s) => rowAbout('strength', s.condition, figure(s.tensile, 'MPa', 0), figure(s.proof, 'MPa', 0)));
  return { title: 'strengths', rows };
}

function cutPart(m: Material): Part {
  const lubricant = (operation: 'turn-rough' | 'drill' | 'tap') => {
    const id = lubricantFor(m.id, operation)?.id;
    return id === undefined ? [] : [row(`lubricant-${operation}`, word(`lubricant.${id}`))];
  };
  return {
    title: 'cutting',
    rows: [
      ...(m.machinability ? [row('machinability', figure(m.machinability.value, '', 0))] : []),
      ...lubricant('turn-rough'),
      ...lubricant('drill'),
      ...lubricant('tap'),
      row('cutting-stress', figure(numbersTable.value(`kc.${m.cutting}`), 'N/mm²', 0)),
    ],
  };
}

function forceGround(m: Material): readonly (Ground | undefined)[] {
  const fact = numbersTable.row(`kc.${m.cutting}`);
  return [m.machinability, fact];
}
