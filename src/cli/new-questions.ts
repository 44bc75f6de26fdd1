/** What `new workshop` asks, and what Enter gives: what stands in the workshop that comes with the program. */
import type { Step } from '../fittings/question.ts';

const KEYS: readonly string[] = [
  ...['workshop', 'lathe.centre-height', 'lathe.over-slide', 'lathe.between-centres', 'lathe.spindle-bore', 'lathe.nose'],
  ...['lathe.speeds', 'lathe.motor', 'lathe.torque', 'lathe.leadscrew', 'lathe.gears', 'lathe.banjo', 'lathe.half-nuts', 'lathe.reverse'],
  ...['lathe.tumbler', 'lathe.threading-dial'],
  ...['cross', 'top', 'tailstock'].flatMap((dial) => ['reads', 'division', 'turn'].map((key) => `lathe.dials.${dial}.${key}`)),
  ...['lathe.dials.carriage', 'lathe.travel', 'lathe.tailstock-taper', 'lathe.tool-post', 'lathe.jaw-clearance'],
  ...['holding.three-jaw', 'holding.four-jaw', 'holding.collets', 'holding.sleeves', 'holding.soft-jaws', 'holding.mandrels'],
  ...['tools.material', 'tools.turning', 'tools.parting', 'tools.grooving', 'tools.boring', 'tools.threading-outside'],
  ...['tools.threading-inside', 'tools.threading-tip', 'tools.centre-drills', 'tools.drills', 'tools.reamers', 'tools.silver-steel'],
  ...['tools.taps', 'tools.dies', 'tools.knurling', 'tools.files', 'tools.filing-guide', 'tools.drill-press', 'tools.torch'],
  ...['measuring', 'shelf', 'handling'],
];

/** `usual`: the value of that workshop's YAML. */
export function workshopQuestions(usual: unknown): readonly Step[] {
  return KEYS.map((key) => {
    const value = key.split('.').reduce<unknown>((at, step) => (isRecord(at) ? at[step] : undefined), usual);
    return value === undefined ? { key } : { key, usual: flow(value) };
  });
}

/** On one line, as YAML has it between brackets. */
function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  if (isRecord(value))
    return `{ ${Object.entries(value)
      .map(([key, one]) => `${key}: ${flow(one)}`)
      .join(', ')} }`;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
