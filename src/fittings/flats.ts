/** Two flats for a spanner on a round rim. */
import type { Len } from '../base/units.ts';
import { minus } from '../base/units.ts';
import { between, size } from './limits.ts';
import type { Side } from './outline.ts';

export function spannerFlats(on: string, rim: Len, at: Len, half: Len): Side {
  const across = minus(rim, size('flats.under-rim'));
  return {
    name: 'flats',
    does: 'flats',
    on,
    role: 'free',
    at,
    half,
    size: between(minus(across, size('band.length')), across, across, 'spanner'),
    count: 1 + 1,
  };
}
