/** Limits, and the words of what they come from. */
import type { Len } from '../base/units.ts';
import type { FactId } from './ids.ts';

/** A pair, never mean and half-width. `target` is what to aim at; lo <= target <= hi. */
export type Limits = { readonly lo: Len; readonly hi: Len; readonly target: Len; readonly from: LimitSource };
/** `as`: the words of the source, e.g. 'M10x1-6g', 'h9', '±0.1', 'ISO 2768-1 m'. */
export type LimitSource = {
  readonly kind: 'stated' | 'fit' | 'thread' | 'role' | 'general' | 'stock' | 'chart';
  readonly as: string;
  /** Of a fit: the whole size as the person wrote it, where that says more than millimetres and the fit. */
  readonly written?: string;
  readonly fact?: FactId;
};
