/** A description as it is understood, before it meets shelf and drawer. */
import type { Len } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import type { OutlineAsk } from '../outline.ts';
import type { AskedBar } from './asked.ts';

export type Meant = {
  readonly title: string;
  readonly name: string;
  readonly material: string;
  readonly quantity: number;
  readonly bar?: AskedBar;
  /** The bar's own surface stays somewhere. */
  readonly keepsBar: boolean;
  /** Greatest diameter that is turned. */
  readonly widest: Len;
  /** Ends that may carry a centre hole. */
  readonly centres: readonly End[];
  readonly outline: Pick<OutlineAsk, 'first' | 'sections' | 'holes' | 'sides' | 'lengths' | 'truths'> & {
    readonly second: OutlineAsk['first'];
  };
};
