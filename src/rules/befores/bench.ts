/** Flats, cross holes, solder and heat. */
import type { SideFeature } from '../../model/part.ts';
import { pilotHole } from '../methods/drilling.ts';
import { type BeforeRule, CUSTOM, type Work } from '../rule.ts';
import { all, finishOf, isDrilling, isLeaving, of } from './select.ts';

const SOLDERED: readonly SideFeature['does'][] = ['branch', 'flange'];
const sides = (work: Work, ...does: readonly SideFeature['does'][]): readonly SideFeature[] =>
  work.c.part.features.filter((f): f is SideFeature => f.kind === 'side' && does.includes(f.does));

export const turnBeforeSideWork: BeforeRule = {
  id: 'turn-before-side-work',
  force: 'strict',
  source: 'common practice; 7 of 7 published sequences cut flats and slots after the turning',
  pairs: (work) =>
    sides(work, 'flats', 'cross-hole', 'half-flat', 'square', 'hexagon', 'knurl').flatMap((s) =>
      all(of(work, s.on, 'turn'), of(work, s.id)),
    ),
};

/** A file slips: what is filed square on a stem comes after all that is turned. */
export const squareLast: BeforeRule = {
  id: 'square-last',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, 'square', 'square-hole').flatMap((s) =>
      all(
        work.operations.filter((o) => !o.ways.bench),
        of(work, s.id),
      ),
    ),
};

/** A ring that is slit springs open: it is round and to size before. */
export const slitLast: BeforeRule = {
  id: 'slit-last',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, 'slit').flatMap((s) =>
      all(
        work.operations.filter((o) => !o.ways.bench),
        of(work, s.id),
      ),
    ),
};

/** A tool that turns over a slot knocks, and a jaw on the horns beside it closes them: it comes after all that is turned. */
export const slotLast: BeforeRule = {
  id: 'slot-last',
  force: 'strict',
  source: 'common practice; 7 of 7 published sequences cut flats and slots after the turning',
  pairs: (work) =>
    sides(work, 'slot').flatMap((s) =>
      all(
        work.operations.filter((o) => !o.ways.bench),
        of(work, s.id),
      ),
    ),
};

/** Rolling pushes metal aside and swells what stands next to it. */
export const knurlBeforeFit: BeforeRule = {
  id: 'knurl-before-fit',
  force: 'preferred',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, 'knurl').flatMap((s) => {
      const i = work.c.outsides.findIndex((o) => o.cylinder === s.on);
      const beside = [work.c.outsides[i - 1], work.c.outsides[i + 1]].flatMap((o) =>
        o && (o.role === 'running' || o.role === 'register') ? of(work, o.id, 'turn') : [],
      );
      return all(of(work, s.id), beside);
    }),
};

/** The pilot stands before the cross hole breaks into it. */
export const pilotBeforeCrossHole: BeforeRule = {
  id: 'pilot-before-cross-hole',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, 'cross-hole').flatMap((s) =>
      crossed(work, s).flatMap((h) => all(of(work, (pilotHole(work.c, h) ?? h).id).filter(isDrilling), of(work, s.id))),
    ),
};

/** A hole that is opened by a larger drill is opened before it is broken into from the side: a drill catches on the edge. */
export const openedBeforeCrossHole: BeforeRule = {
  id: 'opened-before-cross-hole',
  force: 'preferred',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, 'cross-hole').flatMap((s) =>
      crossed(work, s)
        .filter((h) => pilotHole(work.c, h))
        .flatMap((h) => all(of(work, h.id, 'drill'), of(work, s.id))),
    ),
};

export const crossHoleBeforeBore: BeforeRule = {
  id: 'cross-hole-before-bore',
  force: 'strict',
  source: CUSTOM,
  // a hole that one drill makes stands before it is broken into: what the cross drill throws up is taken out by itself
  pairs: (work) =>
    sides(work, 'cross-hole').flatMap((s) =>
      crossed(work, s).flatMap((h) =>
        all(
          of(work, s.id),
          finishOf(work, h).filter((o) => !isDrilling(o)),
        ),
      ),
    ),
};

const crossed = (work: Work, s: SideFeature) =>
  work.c.holes.filter((h) => work.c.cylinder(h.cylinder).from < s.at && s.at < work.c.cylinder(h.cylinder).to);

export const crossHoleBeforeSolder: BeforeRule = {
  id: 'cross-hole-before-solder',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, ...SOLDERED).flatMap((b) =>
      sides(work, 'cross-hole')
        .filter((s) => s.at === b.at)
        .flatMap((s) => all(of(work, s.id), of(work, b.id))),
    ),
};

/** What carries a flange stands in its hole before the flange goes on. */
export const branchBeforeFlange: BeforeRule = {
  id: 'branch-before-flange',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, 'flange').flatMap((f) =>
      sides(work, 'branch')
        .filter((b) => b.at === f.at)
        .flatMap((b) => all(of(work, b.id), of(work, f.id))),
    ),
};

/** Heat softens, scales and warps, and flux ruins taps: what is to be true is finished after it. */
export const solderBeforeFinish: BeforeRule = {
  id: 'solder-before-finish',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, ...SOLDERED).flatMap((b) => {
      const spoilt = work.c.part.features.filter((f) => SPOILT.includes(f.role) && f.kind !== 'side').map((f) => f.id);
      const threaded = work.c.threads.filter((t) => t.side === 'inside').map((t) => `${t.on}.chamfer`);
      const finishing = work.operations.filter((o) => (spoilt.includes(o.feature) || threaded.includes(o.feature)) && makesFinal(o));
      return all(of(work, b.id), [...finishing, ...crossed(work, b).flatMap((h) => finishOf(work, h))]);
    }),
};
const SPOILT: readonly string[] = ['seat', 'sealing', 'register', 'running', 'thread'];
const makesFinal = (o: Work['operations'][number]): boolean =>
  Object.values(o.ways).some((w) => w.cuts.some((k) => k.stage === 'final') || w.sweeps.some((s) => s.take === 'thread'));

/** The chucking stub stays until heat and heavy work are over. */
export const stubUntilHeatIsOver: BeforeRule = {
  id: 'stub-until-heat-is-over',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    sides(work, ...SOLDERED).flatMap((b) =>
      all(
        of(work, b.id),
        work.operations.filter((o) => o.verb === 'cut-stub'),
      ),
    ),
};

export const filedBeforeHard: BeforeRule = {
  id: 'filed-before-hardened',
  force: 'strict',
  source: 'common practice; 3 of 4 published sequences mill or file the flat before hardening',
  pairs: (work) =>
    sides(work, 'harden').flatMap((h) =>
      all(
        work.operations.filter((o) => o.feature !== h.id && !isLeaving(o)),
        of(work, h.id),
      ),
    ),
};

/** Drilling over half the diameter is done before the outside is finished. */
export const heavyDrillingFirst: BeforeRule = {
  id: 'heavy-drilling-first',
  force: 'preferred',
  source: CUSTOM,
  pairs: (work) =>
    work.c.outsides.flatMap((o) => {
      const across = work.c.cylinder(o.cylinder);
      const heavy = work.operations.filter(
        (d) => d.verb === 'drill' && (d.tool.size ?? 0) > across.size.target * HALF && overlaps(work, d.feature, across),
      );
      return all(heavy, of(work, o.id, 'turn'));
    }),
};
const HALF = 1 / 2;

function overlaps(work: Work, feature: string, along: { readonly from: number; readonly to: number }): boolean {
  const hole = work.c.holes.find((h) => h.id === feature);
  const c = hole && work.c.cylinder(hole.cylinder);
  return c !== undefined && c.from < along.to && along.from < c.to;
}
