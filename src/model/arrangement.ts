/** How a fitting's parts stand when it is put together. */
import type { Len } from '../base/units.ts';
import type { PartId } from './ids.ts';

/** How the parts stand together, along one upright axis: for a picture. Heights are over one common place. */
export type Arrangement = {
  readonly stand: 'upright' | 'any way';
  /** `at`: height of its first end; `way`: where its second end lies from there. The first of them stands round the others. */
  readonly stands: readonly { readonly part: PartId; readonly way: 'up' | 'down'; readonly at: Len }[];
  /** Level, to the right: `from` is its first end's distance from the upright axis, its second lies outward or inward; trimmed at `clear`. */
  readonly branches: readonly {
    readonly part: PartId;
    readonly way: 'out' | 'in';
    readonly at: Len;
    readonly from: Len;
    readonly clear: Len;
  }[];
  readonly ball?: { readonly at: Len; readonly across: Len };
  /** `at`: height of an end at the side. */
  readonly flow: readonly { readonly end: 'below' | 'side'; readonly at: Len; readonly does: 'in' | 'out' }[];
};
