/** The keys of `tools` made the record that the phases work with. A lathe has a turning tool, a blade, drills and centre drills; all else is there when it is named. */
import { present } from '../../base/asking.ts';
import { mm, toMm } from '../../base/units.ts';
import { centreDrills } from '../../handbook/centre-drills.ts';
import { commonCentreDrills, commonDrills } from '../../handbook/common-set.ts';
import { usualNose } from '../../handbook/lathe-usual.ts';
import { usual } from '../../handbook/reading.ts';
import type { ToolMaterial, Turner, Workshop } from '../../model/workshop.ts';
import { stepsOrRange } from './speeds.ts';
import type { Taker } from './taken.ts';
import type { ToolsKeys } from './tools-schema.ts';

type Tools = Workshop['tools'];

export function toolsOf(keys: ToolsKeys, take: Taker): Tools {
  const material = take<ToolMaterial>('tools.material', keys.material, 'HSS');
  return {
    material,
    ...turningOf(keys, material, take),
    parting: partingOf(keys.parting, take),
    grooving: keys.grooving && { width: keys.grooving.width, ...present({ material: keys.grooving.material }) },
    boring: (keys.boring ?? []).map(({ smallest, reach, shank, 'nose-radius': nose, material: own }) => ({
      ...{ smallest, reach },
      ...present({ shank, nose, material: own }),
    })),
    threadingOutside: keys['threading-outside'] ?? false,
    threadingInside: insideOf(keys['threading-inside']),
    threadingTip: take<Tools['threadingTip']>('tools.threading-tip', keys['threading-tip'], 'sharp'),
    chamfering: keys.chamfering ?? true,
    ...racksOf(keys, take),
    files: keys.files ?? true,
    ...present({ flatDBits: keys['flat-d-bits'], counterbores: keys.counterbores, groovingInside: keys['grooving-inside'] }),
    ...present({ filingGuide: keys['filing-guide'], radiusTools: keys['radius-tools'], roundNosed: keys['round-nosed'] }),
    knurling: keys.knurling ?? false,
    ...pressOf(keys['drill-press']),
    torch: keys.torch ?? false,
  };
}

/** Its speeds where they are said; else a speed is told as about so many. */
function pressOf(keys: ToolsKeys['drill-press'] = false): Pick<Tools, 'drillPress' | 'drillPressSpeeds'> {
  return typeof keys === 'boolean' ? { drillPress: keys } : { drillPress: true, drillPressSpeeds: stepsOrRange(keys.speeds) };
}

/** `no` is a workshop without one; a list names each. */
function turningOf(keys: ToolsKeys, material: ToolMaterial, take: Taker): Pick<Tools, 'turning' | 'turners'> {
  if (keys.turning === false) return { turning: false, turners: [] };
  const listed = Array.isArray(keys.turning) ? keys.turning : [{}];
  const turners = listed.map((one: TurnerKeys): Turner => {
    const own = one.material ?? material;
    const nose = one['nose-radius'] ?? take('tools.nose-radius', keys['nose-radius'], usualNose(own), 'mm');
    return { name: one.name ?? '', hand: one.hand ?? 'right', nose, material: own };
  });
  return { turning: turners.length > 0, turners };
}
type TurnerKeys = Partial<Extract<NonNullable<ToolsKeys['turning']>, readonly unknown[]>[number]>;

function partingOf(keys: ToolsKeys['parting'], take: Taker): Tools['parting'] {
  if (keys === false) return undefined;
  const said =
    typeof keys === 'object'
      ? { width: keys.width, deepest: keys.largest, ...present({ reach: keys.reach, material: keys.material }) }
      : undefined;
  const blade = { width: mm(usual('blade.width')), deepest: mm(usual('blade.largest')) };
  return take.whole<NonNullable<Tools['parting']>>('tools.parting', said, blade, blade.deepest, 'mm');
}

/** One, or a list of them. */
function insideOf(keys: ToolsKeys['threading-inside'] = []): Tools['threadingInside'] {
  const listed = Array.isArray(keys) ? keys : [keys];
  return listed.map(({ smallest, reach, shank }) => ({ smallest, reach, ...present({ shank }) }));
}

type Racks = Pick<Tools, 'centreDrills' | 'drills' | 'reamers' | 'silverSteel' | 'taps' | 'dies' | 'dBits' | 'gaugeNuts'>;
function racksOf(keys: ToolsKeys, take: Taker): Racks {
  const ends = [commonDrills[0], commonDrills.at(-1)].flatMap((d) => (d === undefined ? [] : [toMm(d)]));
  const centres = keys['centre-drills']?.flatMap((one) => (typeof one === 'string' ? centreDrills.filter((c) => c.name === one) : [one]));
  const usualCentres = commonCentreDrills.map((c) => c.name).join(', ');
  return {
    centreDrills: take.whole<Tools['centreDrills']>('tools.centre-drills', centres, commonCentreDrills, usualCentres).map(plain),
    drills: take.whole('tools.drills', keys.drills, commonDrills, ends.join('-'), 'mm'),
    reamers: keys.reamers ?? [],
    silverSteel: keys['silver-steel'] ?? [],
    taps: keys.taps ?? [],
    dies: keys.dies ?? [],
    dBits: keys['d-bits'] ?? [],
    gaugeNuts: keys['gauge-nuts'] ?? [],
  };
}

/** Of a centre drill the phases need no more. */
const plain = ({ name, pilot, mouth }: Tools['centreDrills'][number]): Tools['centreDrills'][number] => ({ name, pilot, mouth });
