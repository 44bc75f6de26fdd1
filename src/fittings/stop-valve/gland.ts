/** Gland nut and follower: the nut presses the follower, the follower the packing. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, mm, toMm } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { about, between, general, ratio, size, stock, TENTH, tidy } from '../limits.ts';
import { type Hole, partFrom } from '../outline.ts';
import { insideChamfer } from '../threads.ts';
import { bonnetHexagon } from './bonnet.ts';
import { noseLength, nutDepth } from './layout.ts';
import type { StopValveSizes } from './shared.ts';

export function glandNut(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const across = bonnetHexagon(sizes, material, workshop);
  const depth = nutDepth(sizes);
  const length = add(depth, size('nut.floor'));
  const thread = sizes.gland.inside;
  return partFrom({
    id: 'gland-nut',
    kind: 'gland-nut',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'gland-nut', material, section: 'hexagon', across, turned: false }, workshop, found),
    first: { letter: 'M', role: 'clearance' },
    second: { letter: 'T', role: 'clearance' },
    sections: [{ name: 'hexagon', role: 'free', size: stock(across), length, section: 'hexagon', asStock: true }],
    holes: [
      {
        ...{ name: 'socket', role: 'thread', size: thread.minor, from: len(0), to: depth, opens: ['first'] },
        floor: { letter: 'L', role: 'register' },
        thread: { size: thread, to: minus(depth, mm(toMm(thread.pitch) * ratio('thread.dead'))), chamfer: insideChamfer(thread) },
      },
      stemHole('hole', sizes, depth, length),
    ],
    lengths: [
      { from: 'M', to: 'L', limits: general(depth) },
      { from: 'M', to: 'T', limits: general(length) },
    ],
  });
}

export function follower(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const flange = tidy(minus(sizes.gland.inside.minor.lo, size('nipple.head.under')), TENTH, 'down');
  const thick = size('gland.flange');
  const nose = noseLength(sizes);
  const [least, most] = [size('gland.fit.least'), size('gland.fit.most')];
  const least_ = minus(minus(sizes.box, size('band.plug')), most);
  return partFrom({
    id: 'follower',
    kind: 'follower',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'follower', material, section: 'round', across: flange, turned: true }, workshop, found),
    first: { letter: 'F', role: 'register' },
    second: { letter: 'H', role: 'free' },
    sections: [
      {
        ...{ name: 'nose', role: 'running', length: nose, shoulder: { letter: 'C', role: 'free' } },
        size: between(least_, minus(minus(sizes.box, size('band.plug')), least), tidy(least_, TENTH, 'up'), 'slides in the box'),
      },
      {
        name: 'flange',
        role: 'clearance',
        size: about(minus(flange, size('band.clearance')), size('band.clearance'), 'passes the nut'),
        length: thick,
      },
    ],
    holes: [stemHole('bore', sizes, len(0), add(nose, thick))],
    lengths: [
      { from: 'F', to: 'C', limits: about(nose, size('band.length'), 'nose') },
      { from: 'C', to: 'H', limits: general(thick) },
    ],
  });
}

function stemHole(name: string, sizes: StopValveSizes, from: Len, to: Len): Hole {
  const clear = add(sizes.stem, size('stop.stem.clear'));
  const limits = between(clear, add(clear, size('band.drilled')), clear, 'drilled');
  return { name, role: 'clearance', size: limits, from, to, opens: ['first', 'second'] };
}
