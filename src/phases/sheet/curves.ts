/** Curves of the fitting on the sheet: axes with their ticks, what is told beside them, and the picture in words. */
import type { Curve } from '../../model/part.ts';
import type { Plan } from '../../model/plan.ts';
import type { AxisShown, CurveShown, Section } from '../../model/sheet.ts';
import type { SheetWords } from './said.ts';

/** A section each; none where the fitting has no curve. */
export function curveSections(plan: Plan, words: SheetWords): readonly Section[] {
  return (plan.fitting.curves ?? []).map((curve) => ({
    kind: 'curve',
    title: words.say(`curve.${curve.of}.title`, curve.grounds),
    curve: shown(curve, words),
  }));
}

function shown(curve: Curve, words: SheetWords): CurveShown {
  const { of, grounds, levels, stop } = curve;
  const say = (what: string): string => words.say(`curve.${of}.${what}`, grounds);
  const points = curve.marks.map(({ at, say: { id, grounds: told } }) => ({ ...at, text: words.say(id, told) }));
  const along = Math.ceil(Math.max(stop, ...curve.curve.map((p) => p.x)));
  return {
    notes: [say('text')],
    x: { label: say('x'), to: along, ticks: ticksTo(along, along) },
    y: { label: say('y'), to: 100, ticks: ticksTo(100, 2 * 2) },
    curve: curve.curve,
    bare: curve.bare,
    levels: levels.map((level) => ({ at: level.at, label: say(`level.${level.of}`) })),
    stop: { at: stop, label: say('stop') },
    points,
    alt: [say('alt'), ...points.map((point) => point.text)].join(' '),
  };
}

/** From nought, in so many even steps. */
function ticksTo(to: number, steps: number): AxisShown['ticks'] {
  return Array.from({ length: steps + 1 }, (_, i) => (to * i) / steps).map((at) => ({ at, label: String(at) }));
}
