/** The boxes that the texts of a page fill, and what is wrong with them: outside the margins, or one upon another. */
import { textBox } from '../../src/drawing/display.ts';
import type { Page } from '../../src/model/display.ts';

/** Nothing is printed nearer to the edge, mm: what most printers leave white. */
const MARGIN = 10;
/** Boxes are a little higher than the ink in them. */
const TOUCH = 0.25;

export function faultsOf(page: Page): readonly string[] {
  const boxes = page.items.flatMap((item) => (item.kind === 'text' ? [textBox(item)] : []));
  const outside = boxes.filter((b) => b.x < MARGIN || b.y < MARGIN || b.x + b.w > page.width - MARGIN || b.y + b.h > page.height - MARGIN);
  const upon = boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => {
        const wide = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
        const high = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
        return wide > TOUCH && high > TOUCH;
      })
      .map((b) => `${a.what} / ${b.what}`),
  );
  return [...outside.map((b) => `outside: ${b.what}`), ...upon.map((pair) => `upon: ${pair}`)];
}
