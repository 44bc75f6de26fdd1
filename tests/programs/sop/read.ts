/**
 * Reads an instance of the sequential ordering problem in the format of TSPLIB 95 (G. Reinelt, ORSA Journal on Computing 3, 1991,
 * 376-384; type SOP, EXPLICIT weights as a FULL_MATRIX): the first number of the section is the size; -1 at (i, j): j comes before i.
 * The first node is the start and the last one the end.
 */

export type Sop = {
  readonly name: string;
  readonly nodes: number;
  /** From row to column; -1: the column's node comes before the row's. */
  readonly costs: readonly (readonly number[])[];
};

/** Throws an Error that says what is missing. */
export function readSop(text: string): Sop {
  const [head = '', section] = text.split(/^EDGE_WEIGHT_SECTION\s*$/m);
  const field = (key: string): string => new RegExp(`^${key}\\s*:\\s*(.*?)\\s*$`, 'm').exec(head)?.[1] ?? '';
  if (field('TYPE') !== 'SOP') throw new Error(`TYPE is '${field('TYPE')}', not SOP`);
  if (section === undefined) throw new Error('no EDGE_WEIGHT_SECTION');
  const [nodes = 0, ...weights] = section
    .replace(/\bEOF\s*$/, '')
    .trim()
    .split(/\s+/)
    .map(Number);
  const odd = weights.findIndex((w) => !Number.isInteger(w) || w < -1);
  if (odd >= 0) throw new Error(`weight ${odd + 1} is not a whole number from -1 up`);
  if (nodes < 2 || weights.length !== nodes * nodes) throw new Error(`${weights.length} weights, not ${nodes} times ${nodes}`);
  const costs = Array.from({ length: nodes }, (_, i) => weights.slice(i * nodes, (i + 1) * nodes));
  return { name: field('NAME'), nodes, costs };
}
