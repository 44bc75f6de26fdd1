/** What the commands are handed, so that none of them loads what it does not need and each can be tried with a planner that fails. */
import type { Words } from '../base/words.ts';
import type { Compiled } from '../compile.ts';
import type { Assets, Inputs } from '../model/assets.ts';
import type { Plan } from '../model/plan.ts';
import type { Format } from './commands.ts';

/** `inputs`: the files that it was made from, which travel in the sheet. */
/** `edition`: for whom the sheet is. */
export type Planned = Compiled & { readonly plan: Plan; readonly inputs?: Inputs; readonly edition?: 'bench' | 'learner' };
export type Tools = {
  compile(inputs: Inputs, assets: Assets): Promise<Compiled>;
  /** The whole file, as it is to stand on the disk. */
  print(planned: Planned, format: Format, assets: Assets, words: Words): Promise<Uint8Array | string>;
};
export type Paint = Readonly<Record<'error' | 'warning' | 'dim', (text: string) => string>>;
export type Console = {
  out(text: string): void;
  err(text: string): void;
  readonly paint: Paint;
  /** One line that the next one takes the place of; '' takes it away. Only where a person looks on. */
  progress?(text: string): void;
  /** Lines of a person or of a pipe, as they come. */
  answers?(): AsyncIterator<string, unknown>;
};

/** 0 done · 1 the input cannot be read, designed or planned · 2 the proof failed · 70 our fault */
export type Exit = 0 | 1 | 2 | 70;
