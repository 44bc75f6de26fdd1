/** SVG transcribes display lists: same numbers, inks by name, texts escaped. */
import { describe, expect, it } from 'vitest';
import type { Ink, Picture } from '../../src/model/display.ts';
import { INKS } from '../../src/render/inks.ts';
import { svgOfDocument, svgOfPicture } from '../../src/render/svg.ts';

const PICTURE: Picture = {
  width: 40,
  height: 20,
  alt: 'Nose & thread <M12×1>',
  boxes: [],
  items: [
    {
      kind: 'path',
      segments: [
        { to: 'move', x: 1, y: 2 },
        { to: 'line', x: 3.25, y: -0 },
        { to: 'curve', x1: 1, y1: 2, x2: 3, y2: 4, x: 5, y: 6 },
        { to: 'close' },
      ],
      stroke: { ink: 'new', width: 0.8, dash: [4, 0.6] },
      fill: 'taken',
    },
    { kind: 'text', x: 10, y: 12, size: 3.6, font: 'narrow-bold', ink: 'black', text: 'Ø 9.90 <+0>', width: 18, turn: 90 },
  ],
};

describe('an SVG', () => {
  const svg = svgOfPicture(PICTURE);

  it.each([
    ['its frame in millimetres', 'width="40mm" height="20mm" viewBox="0 0 40 20"'],
    ['its title for who hears it', '<title>Nose &amp; thread &lt;M12×1&gt;</title>'],
    [
      'a path with stroke, dashes and fill',
      `<path d="M1 2L3.25 0C1 2 3 4 5 6Z" fill="${INKS.taken}" stroke="${INKS.new}" stroke-width="0.8" stroke-dasharray="4 0.6"/>`,
    ],
    ['a text turned anticlockwise', 'font-family="IBM Plex Sans Condensed" font-weight="600" font-size="3.6"'],
    ['its turn', 'transform="rotate(-90 10 12)">Ø 9.90 &lt;+0&gt;</text>'],
  ])('has %s', (_, part) => {
    expect(svg).toContain(part);
  });

  it('is one for each page of a document', () => {
    const page = { width: 210, height: 297, items: PICTURE.items, label: '1', heading: 'Second grip' };
    const pages = svgOfDocument({ title: 't', language: 'en', mark: 'm', pages: [page, { ...page, heading: 'Third' }] });
    expect(pages.map((p) => /<title>(.*)<\/title>/.exec(p)?.[1])).toEqual(['Second grip', 'Third']);
  });
});

describe('the inks', () => {
  /** Lightness by the weights of sRGB luminance (IEC 61966-2-1, without its curve): what a grey printer makes of a colour. */
  const grey = (ink: Ink): number => {
    const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(INKS[ink].slice(i, i + 2), 16));
    return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
  };

  it('keep their order of lightness in grey', () => {
    const order: readonly Ink[] = ['black', 'dark', 'mid', 'light', 'pale', 'white'];
    const greys = order.map(grey);
    expect(greys).toEqual([...greys].sort((a, b) => a - b));
  });

  it('leave the new surface dark and what was taken pale, so that both read without colour', () => {
    expect(grey('new')).toBeLessThan(grey('mid') + 10);
    expect(grey('taken')).toBeGreaterThan(grey('light') + 30);
  });
});
