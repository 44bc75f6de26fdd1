/** A turned part described feature by feature, as `fitting: turned-part` has it. */
import type { Size } from '../../base/size.ts';
import type { Len } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';

export const ROLES = ['seat', 'sealing', 'register', 'running', 'clearance', 'free'] as const;
export type AskedRole = (typeof ROLES)[number];
export const ENDS = ['first', 'second'] as const;

export type AskedFace = { readonly letter?: string; readonly role?: AskedRole };
export type AskedEnd = AskedFace & { readonly centre?: 'may' | 'must not'; readonly slot?: AskedSlot };
/** Sawn right across the end, through its middle. */
export type AskedSlot = { readonly width: Size; readonly depth: Len };
export type AskedSection = {
  readonly name: string;
  readonly diameter?: Size;
  readonly thread?: Size;
  readonly 'as-bar'?: boolean;
  readonly length: Size;
  readonly role?: AskedRole;
  readonly shoulder?: AskedFace;
  readonly starts?: End;
  readonly relief?: boolean;
  readonly groove?: boolean;
  readonly knurl?: boolean;
  /** On the radius, at the end `chamfer-at`, which may be a groove's wall, or at every free corner. */
  readonly chamfer?: Size;
  readonly 'chamfer-at'?: End | 'both';
  /** At the end `radius-at` or at every free corner. */
  readonly radius?: Size;
  readonly 'radius-at'?: End;
  /** That end of the part is rounded nearly to its middle. */
  readonly 'full-round'?: End;
  /** Left in every corner under a higher piece. */
  readonly fillet?: Size;
  /** By the angle between its sides, or by its length from tip to full diameter; `both`: one at either end. */
  readonly cone?: {
    readonly at: End | 'both';
    readonly angle?: number;
    readonly length?: Len;
    readonly tip: Size;
    readonly role?: AskedRole;
  };
};
/** Does that end of the piece run out in its cone? */
export const isConed = ({ cone }: Pick<AskedSection, 'cone'>, end: End): boolean => cone?.at === end || cone?.at === 'both';
/** The ends at which it does. */
export const conedAt = (section: Pick<AskedSection, 'cone'>): readonly End[] => ENDS.filter((end) => isConed(section, end));
export type AskedHole = {
  readonly name: string;
  readonly diameter?: Size;
  readonly thread?: Size;
  readonly from: End;
  readonly depth: Size | 'through';
  readonly full?: Len;
  readonly bottom?: 'flat' | 'point';
  readonly letter?: string;
  readonly 'floor-role'?: AskedRole;
  readonly role?: AskedRole;
  /** Of this width, its far wall at `depth`. */
  readonly groove?: Size;
  /** Behind its thread. */
  readonly relief?: boolean;
  /** At its own end, or of a hole right through at either. */
  readonly cone?: { readonly at?: 'both'; readonly angle: number; readonly mouth: Size; readonly role?: AskedRole };
  /** Of its mouth, and of the corner at its flat floor. */
  readonly radius?: Size;
  readonly fillet?: Size;
};
export type AskedSide = {
  readonly name: string;
  readonly on: string;
  readonly flats?: Size;
  readonly square?: Size;
  readonly hexagon?: Size;
  readonly 'cross-hole'?: Size;
  readonly at: Len;
  readonly length?: Len;
  readonly role?: AskedRole;
};
export type AskedLength = { readonly from: string; readonly to: string; readonly size: Size };
export type AskedBar = { readonly section: 'round' | 'hexagon'; readonly across: Len };
/** As written, every word of it understood by itself. */
export type TurnedPartAsked = {
  readonly title: string;
  readonly name: string;
  readonly material: string;
  readonly quantity: number;
  readonly bar?: AskedBar;
  readonly first: AskedEnd;
  readonly second: AskedEnd;
  readonly outside: readonly AskedSection[];
  readonly inside: readonly AskedHole[];
  readonly side: readonly AskedSide[];
  /** Run-out of `of` to `to`, both names of sections or holes. */
  readonly coaxial: readonly { readonly of: string; readonly to: string; readonly within: Len }[];
  readonly lengths: readonly AskedLength[];
};
