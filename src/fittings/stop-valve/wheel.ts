/** The handwheel: knurled rim, hub, a square hole over the spindle's square. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { between, general, half, size } from '../limits.ts';
import { partFrom, type Side } from '../outline.ts';
import type { StopValveSizes } from './shared.ts';

export function handwheel(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const [rim, hub] = [size('wheel.rim'), size('wheel.hub')];
  const length = add(rim, hub);
  const across = add(sizes.square, size('wheel.hub.over'));
  return partFrom({
    id: 'handwheel',
    kind: 'handwheel',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'handwheel', material, section: 'round', across: sizes.wheel, turned: true }, workshop, found),
    first: { letter: 'M', role: 'clearance' },
    second: { letter: 'T', role: 'clearance' },
    sections: [
      { name: 'hub', role: 'free', size: general(across), length: hub, shoulder: { letter: 'C', role: 'free' } },
      { name: 'rim', role: 'free', size: general(sizes.wheel), length: rim, knurl: true },
    ],
    holes: [
      {
        ...{ name: 'hole', role: 'clearance', from: len(0), to: length, opens: ['first', 'second'] },
        size: between(sizes.square, add(sizes.square, size('band.drilled')), sizes.square, 'drilled'),
      },
    ],
    sides: [squareHole(sizes, length)],
    lengths: [
      { from: 'M', to: 'C', limits: general(hub) },
      { from: 'M', to: 'T', limits: general(length) },
    ],
  });
}

const squareHole = (sizes: StopValveSizes, length: Len): Side => ({
  ...{ name: 'square', does: 'square-hole', on: 'hole', role: 'register', at: half(length), half: half(length), count: (1 + 1) * (1 + 1) },
  size: between(sizes.square, add(sizes.square, size('band.length')), sizes.square, 'slides over the square'),
});
