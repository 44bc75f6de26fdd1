/** On bench pages, the tool of what the panel is about: datum and numbers make room for it, and no picture is the worse for it. */
import { describe, expect, it } from 'vitest';
import { collisions } from '../../src/drawing/collisions.ts';
import { drawStage } from '../../src/drawing/stage.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { oneInThree } from '../fixtures/every-plan.ts';
import { words } from '../fixtures/views.ts';
import { ADVANCES } from '../render/assets.ts';

const pictures = oneInThree(1).flatMap(({ spec, plan, stages }) =>
  sheet(plan, stages, { words, advances: ADVANCES, language: 'en' }).drawn.flatMap(({ key, asked }) => {
    const { toolIfFree, ...bare } = asked;
    return toolIfFree ? [{ name: `${spec} ${key}`, full: drawStage(asked), bare: drawStage(bare) }] : [];
  }),
);

describe('a tool that is shown where there is a place', () => {
  it.each(pictures)('$name: as large, and all that stood there still does', ({ full, bare }) => {
    expect([full.scale, full.rung, full.lettered, full.unplaced]).toEqual([bare.scale, bare.rung, bare.lettered, bare.unplaced]);
    const named = (what: string): boolean => ['ring', 'mark', 'text'].includes(what.split(' ')[0] ?? '') && what !== 'text tool';
    const standing = ({ boxes }: typeof full): readonly string[] =>
      boxes
        .map(({ what }) => what)
        .filter(named)
        // a letter stands at its face's line or in a frame
        .map((what) => what.replace(/^(mark|text) origin/, 'origin'))
        .sort();
    // with the numbers elsewhere there may be a place for an enlarged detail besides
    const more = [...standing(full)];
    const gone = standing(bare).filter((what) => {
      const at = more.indexOf(what);
      if (at >= 0) more.splice(at, 1);
      return at < 0;
    });
    expect(gone).toEqual([]);
    expect(collisions(full)).toEqual([]);
  });
  it('has a place in most of them', () => {
    const shown = pictures.filter(({ full }) => full.boxes.some(({ what }) => what === 'work tool'));
    expect(shown.length).toBeGreaterThan(pictures.length / 2);
  });
});
