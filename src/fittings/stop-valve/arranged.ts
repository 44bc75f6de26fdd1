/** The stop valve put together, shut: body, bonnet and gland in one line, the spindle on its seat, the branches coupled up. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { ArrangedRing, Arrangement, Part } from '../../model/part.ts';
import { jointRing, type LevelEnd, levelEnd, uprightEnd, wheelNut } from '../arranged.ts';
import { half, size, TENTH, tidy } from '../limits.ts';
import { screwedLength } from '../threads.ts';
import type { StopValveAsked } from './asked.ts';
import { branchId, endsSaid } from './ends.ts';
import { type BodyLayout, layOutBody, layOutBonnet, layOutSpindle, noseLength, nutDepth } from './layout.ts';
import type { StopValveSizes } from './shared.ts';

/** Heights over the body's foot. */
type Heights = {
  readonly body: BodyLayout;
  /** Underside of the bonnet, floor of its box, nose of the follower, tip of the spindle, underside of the wheel. */
  readonly bonnet: Len;
  readonly box: Len;
  readonly nose: Len;
  readonly tip: Len;
  readonly wheel: Len;
};

export function arrangementOf(asked: StopValveAsked, sizes: StopValveSizes, parts: readonly Part[]): Arrangement {
  const at = heightsOf(sizes);
  const straight = asked.pattern === 'straight';
  const low = straight ? undefined : uprightEnd('down', { thread: sizes.coupling, pipe: asked.pipe }, len(0), parts);
  const ends = [levelEnd(endAt(sizes, at, 'outlet'), parts), ...(straight ? [levelEnd(endAt(sizes, at, 'inlet'), parts)] : [])];
  return {
    stand: 'any way',
    stands: [...(low ? [low.nut] : []), ...standing(sizes, at, straight), ...(low ? [low.nipple] : [])],
    branches: ends.flatMap((end) => end.branches),
    rings: [...ends.flatMap((end) => end.rings), ...(low?.rings ?? []), ...ringsOf(sizes, at, straight)],
    flow: [
      straight ? { end: 'left', at: at.body.inlet, does: 'in' } : { end: 'below', at: len(0), does: 'in' },
      { end: 'side', at: at.body.outlet, does: 'out' },
    ],
    grounds: { ...endsSaid(asked, sizes), pattern: asked.pattern },
  };
}

function heightsOf(sizes: StopValveSizes): Heights {
  const body = layOutBody(sizes);
  const [inBonnet, spindle] = [layOutBonnet(sizes), layOutSpindle(sizes)];
  const bonnet = minus(add(body.length, size('joint.ring.tight')), screwedLength(sizes.bonnet));
  const tip = minus(body.seat, sizes.coneBelow);
  return {
    ...{ body, bonnet, tip, box: add(bonnet, inBonnet.boxFloor) },
    nose: minus(add(bonnet, inBonnet.length), size('gland.enter')),
    wheel: add(tip, add(spindle.plug, add(spindle.thread, spindle.stem))),
  };
}

/** What stands in one line, from outside inward. */
function standing(sizes: StopValveSizes, at: Heights, straight: boolean): Arrangement['stands'] {
  const flange = add(at.nose, add(noseLength(sizes), size('gland.flange')));
  return [
    { part: 'body', way: 'up', at: len(0) },
    ...(straight ? [{ part: 'plug', way: 'down' as const, at: minus(screwedLength(sizes.bonnet), size('joint.ring.tight')) }] : []),
    { part: 'gland-nut', way: 'up', at: minus(flange, nutDepth(sizes)) },
    { part: 'bonnet', way: 'up', at: at.bonnet },
    { part: 'follower', way: 'up', at: at.nose },
    { part: 'handwheel', way: 'up', at: at.wheel },
    { part: 'spindle', way: 'up', at: at.tip, whole: true },
  ];
}

function ringsOf(sizes: StopValveSizes, at: Heights, straight: boolean): readonly ArrangedRing[] {
  const top = add(at.wheel, add(size('wheel.rim'), size('wheel.hub')));
  return [
    { item: 'packing', from: at.box, to: at.nose, inside: sizes.stem, outside: sizes.box, shown: 'soft' },
    jointRing(sizes.bonnet, at.body.length),
    ...(straight ? [jointRing(sizes.bonnet, minus(len(0), size('joint.ring.tight')))] : []),
    ...wheelNut(sizes.end, top),
  ];
}

/** The inlet's branch opens below the seat, into the foot's thread; the outlet's above it. */
function endAt(sizes: StopValveSizes, { body }: Heights, which: 'inlet' | 'outlet'): LevelEnd {
  const spigot = tidy(add(half(minus(body.barrel, sizes.chamber)), size('solder.proud')), TENTH, 'up');
  return {
    ...{ branch: branchId(sizes, which), form: sizes.ends[which], coupling: sizes.coupling, pipe: sizes.ends.pipe },
    ...{ at: which === 'inlet' ? body.inlet : body.outlet, from: minus(half(body.barrel), spigot) },
    clear: half(which === 'inlet' ? sizes.bonnet.inside.minor.target : sizes.chamber),
    ...(which === 'inlet' ? { side: 'left' as const } : {}),
  };
}
