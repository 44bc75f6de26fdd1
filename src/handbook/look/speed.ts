/** `look speed`: turns a minute, feed, depth and what to put on the tool, by operation, for a material and a diameter. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len, showMm } from '../../base/units.ts';
import { type CuttingData, type CuttingOperation, cuttingData, turnsAMinute } from '../cutting.ts';
import { drillFeed } from '../drilling.ts';
import { lubricantFor } from '../lubricants.ts';
import { findMaterial, nearestMaterials } from '../materials.ts';
import { numbersTable } from '../numbers.ts';
import { type Ask, type Found, figure, grounds, length, type Part, type Row, row, type Shop, span, word } from './answer.ts';

/** 'PB102 12 mm', 'silver steel 6'. */
export function lookSpeed({ words, shop }: Ask): Found {
  const read = /^(.*\S)\s+(\d[\d./]*\s*(?:mm|in|cm|")?)$/.exec(words.trim());
  const size = readQuantity((read?.[2] ?? '').trim(), 'length');
  const material = read && findMaterial(read[1] ?? '');
  if (!read || typeof size !== 'number' || size <= 0) return { unknown: words, near: nearestMaterials(words).map((m) => `${m} 12 mm`) };
  if (!material) return { unknown: read[1] ?? '', near: nearestMaterials(read[1] ?? '') };
  const diameter = len(size);
  const told = OPERATIONS.flatMap((operation) => {
    const data = cuttingData(material.id, operation, shop.tool) ?? cuttingData(material.id, operation, 'HSS');
    return data ? [{ operation, data }] : [];
  });
  const lubricants = OPERATIONS.map((operation) => lubricantFor(material.id, operation)?.source);
  return {
    answer: {
      subject: 'speed',
      name: `${material.id} ${showMm(diameter, 0)} mm`,
      parts: told.map(({ operation, data }) => part(operation, data, diameter, material.id, shop)),
      notes: [shop.tool === 'HSS' ? 'tool-hss' : 'tool-carbide', ...material.cautions.map((c) => `caution.${c}`)],
      sources: grounds(
        ...told.map((t) => t.data),
        ...told.flatMap((t) => t.data.ranges.map((source) => ({ source, standing: 'common practice' as const }))),
        ...lubricants.flatMap((source) => (source === undefined ? [] : [{ source, standing: 'common practice' as const }])),
      ),
    },
  };
}

const OPERATIONS: readonly CuttingOperation[] = ['turn-rough', 'turn-finish', 'face', 'bore', 'drill', 'ream', 'screw-cut', 'part-off'];

function part(operation: CuttingOperation, data: CuttingData, diameter: Len, material: string, shop: Shop): Part {
  const turns = turnsAMinute(data.vcNom, diameter);
  const drill = operation === 'drill' ? drillFeed(diameter) : undefined;
  const lubricant = lubricantFor(material, operation)?.id;
  const rows: readonly Row[] = [
    row('turns', figure(available(turns, shop), '/min', 0)),
    row('surface-speed', span(data.vcLo, data.vcHi, 'm/min', 0), word('usually'), figure(data.vcNom, 'm/min', 0)),
    ...(data.feed === undefined ? [] : [row('feed', figure(data.feed, 'mm', 3))]),
    ...(drill ? [row('feed-hand', figure(drill.hand, 'mm', 3))] : []),
    ...(data.ap === undefined ? [] : [row('cut', length(data.ap))]),
    ...(lubricant === undefined ? [] : [row('lubricant', word(`lubricant.${lubricant}`))]),
  ];
  return { title: operation === 'bore' ? 'boring' : operation, rows };
}

/** The fastest that the lathe has up to the wanted turns, or its slowest; without a workshop the wanted turns, on a round figure. */
export function available(turns: number, { speeds }: Pick<Shop, 'speeds'>): number {
  if (speeds && 'steps' in speeds) return [...speeds.steps].sort((a, b) => b - a).find((s) => s <= turns) ?? Math.min(...speeds.steps);
  const step = numbersTable.value(turns > numbersTable.value('rpm.tidy.change') ? 'rpm.tidy.high' : 'rpm.tidy.low');
  const tidy = Math.max(step, Math.floor(turns / step) * step);
  return speeds ? Math.min(speeds.to, Math.max(speeds.from, tidy)) : tidy;
}
