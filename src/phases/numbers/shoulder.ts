/** A shoulder that is measured from the datum of its hold, while the carriage counts from the other end: what stands between them is measured first. */
import type { Figures } from '../../model/plan.ts';
import type { Asked } from './asked.ts';

/** Nothing where the carriage counts from the face that the length is measured from, or from one that was cut by the same dial. */
export function alongBy({ part, chart, removal: { along, operation, setUp } }: Asked): Partial<Pick<Figures, 'alongBy'>> {
  const { out, datum } = setUp.grip;
  const working = chart.working.find((one) => one.op === operation.id && one.measures === 'length');
  const feature = part.features.find((one) => one.kind === 'end' && one.end === out);
  const end = feature?.kind === 'end' ? feature.face : undefined;
  if (along === undefined || datum === undefined || end === undefined || end === datum || working?.from !== datum) return {};
  const z = (id: string): number => {
    const face = part.surfaces.find((one) => one.id === id);
    return face?.shape === 'face' ? face.z : Number.NaN;
  };
  const between = Math.abs(z(working.makes) - z(end)) < Math.abs(z(datum) - z(end));
  return { alongBy: { from: datum, end, size: working.limits.target, way: between ? 'less' : 'more' } };
}
