/** How a fitting's parts stand when it is put together. */
import type { Len } from '../base/units.ts';
import type { PartId } from './ids.ts';

/** How the parts stand together, along one upright axis and level ones beside it: for a picture. Heights are over one common place. */
export type Arrangement = {
  readonly stand: 'upright' | 'any way';
  /**
   * `at`: height of its first end; `way`: where its second end lies from there. The first of them stands round the others but for those
   * that stand round it (`round`). `whole`: seen, not cut, as spindles are.
   */
  readonly stands: readonly {
    readonly part: PartId;
    readonly way: 'up' | 'down';
    readonly at: Len;
    readonly round?: true;
    readonly whole?: true;
  }[];
  /**
   * Level, to the right where no side is named, what stands round another before it: `from` is its first end's distance from the upright
   * axis, its second lies outward or inward; trimmed at `clear`.
   */
  readonly branches: readonly {
    readonly part: PartId;
    readonly way: 'out' | 'in';
    readonly at: Len;
    readonly from: Len;
    readonly clear: Len;
    readonly side?: 'left';
  }[];
  readonly rings?: readonly ArrangedRing[];
  readonly ball?: { readonly at: Len; readonly across: Len };
  /** `at`: height of an end at the side. */
  readonly flow: readonly { readonly end: 'below' | 'above' | 'side' | 'left'; readonly at: Len; readonly does: 'in' | 'out' }[];
  /** What its words are told: 'arrangement.<kind>.alt', '.flow', '.stand'. */
  readonly grounds?: Readonly<Record<string, string | number | boolean>>;
};

/**
 * What is bought, or stands there already, as a ring: `from`, `to` are heights; with `level`, distances from the upright axis at that
 * height. `item`: its words are 'arrangement.item.<item>'.
 */
export type ArrangedRing = {
  readonly item: string;
  readonly from: Len;
  readonly to: Len;
  /** diameters */
  readonly inside: Len;
  readonly outside: Len;
  readonly level?: { readonly at: Len; readonly side?: 'left' };
  /** Cut metal; soft packing; too thin to be hatched; seen and not cut. */
  readonly shown: 'metal' | 'soft' | 'thin' | 'whole';
};
