/** A figure of the reasoning, with what it rests on. */

/** One derived figure: what it is, the formula in the field's own symbols, its inputs and the source it rests on. */
export type Derivation = {
  readonly of: string;
  readonly value: number;
  readonly unit: string;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly source: string;
  readonly stated: boolean;
};
