/** Pictures of a real replay: the seat piece's grips, and the finished part. */
import { describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import { drawPart } from '../../src/drawing/finished.ts';
import { drawStage, type LengthShown } from '../../src/drawing/stage.ts';
import { drawTiny } from '../../src/drawing/tiny.ts';
import { replay, stageAtEnd } from '../../src/geometry/replay.ts';
import type { Picture } from '../../src/model/display.ts';
import type { SurfaceId } from '../../src/model/ids.ts';
import type { Stage } from '../../src/model/stage.ts';
import { seatChart, seatOperations, seatPiece, seatRoute } from '../fixtures/seat-piece.ts';
import { ADVANCES } from './stages.ts';

const run = replay(seatPiece, seatRoute, seatChart);
const named = (picture: Picture): readonly string[] => collisions(picture).map(([a, b]) => `${a.what} on ${b.what}`);
const placeOf = (stage: Stage, face: SurfaceId): LengthShown['from'] | undefined =>
  stage.outlines.flat().find((e) => e.surface === face && e.a.z === e.b.z)?.a.z as LengthShown['from'] | undefined;

describe.each(seatRoute.setUps.filter((s) => s.grip.kind !== 'bench'))('set-up $no of the seat piece, $grip.kind', (setUp) => {
  const stage = stageAtEnd(run, setUp);
  const workings = seatChart.working.filter((w) => setUp.operations.includes(w.op) && w.measures === 'length');
  const lengths = workings.flatMap((w): readonly LengthShown[] => {
    const [from, to] = [placeOf(stage, w.from), placeOf(stage, w.makes)];
    const last = workings.filter((other) => other.makes === w.makes).at(-1) === w;
    return from === undefined || to === undefined || !last
      ? []
      : [{ id: w.id, from, to, text: [(w.limits.target / 10_000).toFixed(2), '±0.05'] }];
  });
  const balloons = setUp.operations.flatMap((id, i) => {
    const operation = seatOperations.find((op) => op.id === id);
    const cuts = (operation?.ways.first ?? operation?.ways.second)?.cuts ?? [];
    return cuts.slice(-1).map((cut) => ({ text: String(10 * (i + 1)), surface: cut.makes, by: id }));
  });
  const { kind, from, to, diameter } = setUp.grip;
  const picture = drawStage({
    stage,
    hold: { kind, from, to, diameter },
    lengths,
    diameters: [],
    balloons,
    frame: { width: 161, height: 85 },
    words: { alt: 'a grip', headstock: 'headstock' },
    advances: ADVANCES,
  });

  it('shows its sizes with nothing on anything else, large enough to read', () => {
    expect(lengths.length).toBeGreaterThan(0);
    expect(named(picture)).toEqual([]);
    expect(picture.lettered).toEqual([]);
    expect(picture.unplaced).toEqual([]);
    expect(picture.scale).toBeGreaterThanOrEqual(2);
  });

  it('is a small sign in a strip as well', () => {
    const tiny = drawTiny({ stage, hold: { kind, from, to, diameter }, frame: { width: 28, height: 12 }, words: { alt: 'a grip' } });
    expect(named(tiny)).toEqual([]);
    expect(tiny.items.some((item) => item.kind === 'path' && item.fill === 'metal')).toBe(true);
  });
});

describe('the finished part', () => {
  it.each([
    ['as large as its frame allows', 'none'],
    ['with its main sizes', 'main'],
  ] as const)('is drawn %s', (_, dims) => {
    const picture = drawPart({
      part: seatPiece,
      frame: { width: 100, height: 70 },
      words: { alt: 'seat piece' },
      advances: ADVANCES,
      dims,
    });
    expect(named(picture)).toEqual([]);
    const shown = picture.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(shown.includes((seatPiece.length / 10_000).toFixed(1))).toBe(dims === 'main');
  });
});
