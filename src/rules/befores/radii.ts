/** Rounded edges and fillets are cut where face and cylinder stand. */
import type { Operation } from '../../model/plan.ts';
import { type BeforeRule, CUSTOM, type Work } from '../rule.ts';
import { all, of } from './select.ts';

const makesFinal =
  (surface: string) =>
  (o: Operation): boolean =>
    Object.values(o.ways).some((w) => w.cuts.some((k) => k.makes === surface && k.stage === 'final'));

const arcsOf = (work: Work) => work.c.part.surfaces.flatMap((s) => (s.shape === 'arc' ? [s] : []));

export const turnBeforeRadius: BeforeRule = {
  id: 'turn-before-radius',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) => arcsOf(work).flatMap((arc) => all(work.operations.filter(makesFinal(arc.until)), of(work, arc.feature))),
};

export const faceBeforeRadius: BeforeRule = {
  id: 'face-before-radius',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    arcsOf(work).flatMap((arc) =>
      all(
        work.operations.filter((o) => o.feature !== arc.feature && makesFinal(arc.at)(o)),
        of(work, arc.feature),
      ),
    ),
};
