/** Fittings put together: nothing on anything else, every part there and named, parts that meet told apart, none standing in another. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hatchesFor, meet } from '../../src/drawing/arrangement/hatching.ts';
import { type Piece, piecesOf } from '../../src/drawing/arrangement/piece.ts';
import { within } from '../../src/drawing/arrangement/places.ts';
import { drawArrangement } from '../../src/drawing/arrangement.ts';
import { collisions } from '../../src/drawing/collisions.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import type { Arrangement, Fitting, Part } from '../../src/model/part.ts';
import { read } from '../../src/phases/read.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const of = (...path: readonly string[]): string => readFileSync(join(ROOT, 'specs', ...path), 'utf8');
/** With bars for large flanges. */
const SHOP = {
  name: 'bench-lathe.yaml',
  text: of('workshops', 'bench-lathe.yaml')
    .replace('22, 25], length', '22, 25, 28, 30, 35], length')
    .replace('17, 19], length', '17, 19, 20, 22, 24], length'),
};
const words = allWords();
const FORMS = ['union', 'plain', 'flanged'];

const STRAIGHT = of('fittings', 'whistle-stop-valve.yaml');
const ANGLE = of('fittings', 'blow-down-valve.yaml');
const CHECK = of('fittings', 'launch-feed-check-valve.yaml');
const IN_LINE = FORMS.map(
  (outlet) =>
    [
      `straight check valve, ${outlet}`,
      of('fittings', 'hand-pump-delivery-check.yaml').replace('outlet: union', `outlet: ${outlet}`),
    ] as const,
);
const WHOLE: readonly (readonly [string, string])[] = [
  ...FORMS.flatMap((inlet) =>
    FORMS.map((outlet) => [`straight, ${inlet} to ${outlet}`, `${STRAIGHT}\nends: { inlet: ${inlet}, outlet: ${outlet} }\n`] as const),
  ),
  ...FORMS.map((outlet) => [`angle, ${outlet}`, `${ANGLE}\nends: { outlet: ${outlet} }\n`] as const),
  ...['supply', 'blow-down'].map((serves) => [`of 10 mm, ${serves}`, big(serves)] as const),
];

const OTHERS: readonly (readonly [string, string])[] = [
  ['check valve', CHECK],
  ...['feed-pipe-union', 'exhaust-union', 'blower-spindle', 'drain-spindle', 'wash-out-plug'].map(
    (name) => [name, of('fittings', `${name}.yaml`)] as const,
  ),
];

function big(serves: string): string {
  return `fitting: stop-valve\ntitle: Large\nduty: { serves: ${serves}, pressure: 5 bar }\npipe: { outside: 10 mm, wall: 1 mm }\n`;
}

function designed(text: string): { readonly fitting: Fitting; readonly arrangement: Arrangement; readonly part: (id: string) => Part } {
  const job = read({ fitting: { name: 'mine.yaml', text } }, SHOP, FITTING_KINDS);
  const made = job.value && DESIGNS[job.value.fitting]?.(job.value.asked, job.value.workshop);
  const fitting = made?.value;
  if (!fitting?.arrangement) throw new Error(`nothing to be put together: ${JSON.stringify([job.found, made?.found])}`);
  const part = (id: string): Part => {
    const found = fitting.parts.find((one) => one.id === id);
    if (!found) throw new Error(`no part '${id}'`);
    return found;
  };
  return { fitting, arrangement: fitting.arrangement, part };
}

function drawn(text: string) {
  const { fitting, arrangement, part } = designed(text);
  const names = Object.fromEntries([
    ...fitting.parts.map((one) => [one.id, `part ${one.id}`]),
    ...(arrangement.rings ?? []).map(({ item }) => [`item ${item}`, words.say(`arrangement.item.${item}`)]),
    ['ball', 'Ball'],
  ]);
  const said = { alt: 'picture', up: 'UP', in: 'in', out: 'out', names };
  const picture = drawArrangement({ arrangement, part, frame: { width: 184, height: 118 }, words: said, advances: ADVANCES });
  return { fitting, arrangement, part, picture, names: names as Readonly<Record<string, string>>, pieces: piecesOf(arrangement, part) };
}

describe.each([...WHOLE, ...OTHERS, ...IN_LINE])('%s', (_, text) => {
  const { fitting, arrangement, picture, pieces, names } = drawn(text);

  it('has nothing on anything else, nor outside its frame', () => {
    expect(collisions(picture).map(([a, b]) => `${a.what} on ${b.what}`)).toEqual([]);
  });

  it('tells parts that meet apart by direction or spacing', () => {
    const hatches = hatchesFor(pieces);
    const alike = pieces.flatMap((one, i) =>
      pieces.flatMap((other, j) =>
        j < i && one.id !== other.id && hatches[i] && hatches[i] === hatches[j] && meet(one, other) ? [`${one.id}, ${other.id}`] : [],
      ),
    );
    expect(alike).toEqual([]);
  });

  it('has no part deeper in another than a thread', () => {
    expect(inside(pieces, fitting)).toEqual([]);
  });

  it('names every part and thing that it shows', () => {
    const ids = new Set(pieces.map(({ id }) => names[id]));
    expect(picture.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))).toEqual(expect.arrayContaining([...ids]));
  });

  it('says which way it flows where that matters', () => {
    if (fitting.kind.endsWith('valve')) expect(arrangement.flow.map(({ does }) => does)).toEqual(['in', 'out']);
    const texts = picture.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    const wanted = [...arrangement.flow.map(({ does }) => does as string), ...(arrangement.stand === 'upright' ? ['UP'] : [])];
    expect(texts).toEqual(expect.arrayContaining(wanted));
  });
});

describe.each(WHOLE)('a stop valve, %s', (_, text) => {
  const { fitting, arrangement, part, picture, pieces } = drawn(text);

  it('shows every part, as often as it is made, and names it once', () => {
    const stands = [...arrangement.stands, ...arrangement.branches].map((one) => one.part);
    for (const { id, quantity } of fitting.parts) expect([id, stands.filter((one) => one === id).length]).toEqual([id, quantity]);
    const texts = picture.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    for (const { id } of fitting.parts) expect([id, texts.filter((one) => one === `part ${id}`).length]).toEqual([id, 1]);
    expect(texts).toEqual(expect.arrayContaining(['Packing', 'Joint ring']));
  });

  it('stands shut: the cone as wide as the seat where the seat is, and the plug clear of the bonnet by its travel', () => {
    const stand = (id: string) => arrangement.stands.find((one) => one.part === id)?.at ?? Number.NaN;
    const face = (id: string, letter: string): number => {
      const found = part(id).surfaces.find((s) => s.shape === 'face' && s.letter === letter);
      return found?.shape === 'face' ? found.z : Number.NaN;
    };
    const seat = part('body').surfaces.find((s) => s.id === 'body/seat');
    const cone = part('spindle').surfaces.find((s) => s.shape === 'cone' && s.role === 'sealing');
    if (seat?.shape !== 'cylinder' || cone?.shape !== 'cone') throw new Error('no seat, or no cone');
    const slope = 2 * Math.tan((cone.includedAngle * Math.PI) / 360);
    const wide = cone.mouth.target + slope * (stand('body') + seat.to - stand('spindle'));
    expect(Math.abs(wide - seat.size.target)).toBeLessThan(1000);
    const free = stand('bonnet') - (stand('spindle') + face('spindle', 'B'));
    const travel = fitting.chains.find(({ id }) => id === 'travel');
    expect(travel).toBeDefined();
    expect(free).toBeGreaterThan(0);
    expect(Math.abs(free - (fitting.derivations.find(({ of: what }) => what === 'travel')?.value ?? 0) * 10_000)).toBeLessThan(2000);
  });

  it('has the spindle whole, and packing round it that fills its box', () => {
    expect(pieces.find(({ id }) => id === 'spindle')?.shown).toBe('whole');
    expect(pieces.filter(({ shown }) => shown === 'soft').map(({ id }) => id)).toEqual(['item packing']);
  });
});

describe.each(IN_LINE)('a %s', (_, text) => {
  const { arrangement, part, pieces } = drawn(text);
  const stand = (id: string): number => arrangement.stands.find((one) => one.part === id)?.at ?? Number.NaN;

  it('has the ball under a solid nose, higher than it by the lift', () => {
    const bore = part('cap').surfaces.find((s) => s.id === 'cap/bore');
    if (bore?.shape !== 'cylinder') throw new Error('no bore');
    const gap = stand('cap') - ((arrangement.ball?.at ?? 0) + (arrangement.ball?.across ?? 0) / 2);
    expect(Math.abs(gap - 9_000)).toBeLessThan(1000);
    const nose = { x: 100, y: stand('cap') + 5000 };
    const cap = pieces.find(({ id }) => id === 'cap');
    expect(cap?.cuts.some((ring) => within(nose, ring))).toBe(true);
    expect(cap?.cuts.some((ring) => within({ x: 100, y: stand('cap') + bore.from + 1000 }, ring))).toBe(false);
  });

  it('shows the water holes cut through at either side, in the socket between chamber and thread', () => {
    const openings = pieces.find(({ id }) => id === 'cap')?.openings ?? [];
    expect(openings).toHaveLength(2);
    const socket = part('body').surfaces.find((s) => s.id === 'body/cap-socket');
    if (socket?.shape !== 'cylinder') throw new Error('no socket');
    for (const { y } of openings.flatMap(({ over }) => over)) {
      expect(y).toBeGreaterThan(socket.from);
      expect(y).toBeLessThan(socket.to);
    }
    expect(pieces.filter(({ id }) => id !== 'cap').flatMap((piece) => piece.openings ?? [])).toEqual([]);
  });

  it('lets the water out above', () => expect(arrangement.flow.map(({ end }) => end)).toEqual(['below', 'above']));
});

it('a bonnet that stood three millimetres too low would be found in the body', () => {
  const { fitting, arrangement, part } = drawn(STRAIGHT);
  const low = arrangement.stands.map((one) => (one.part === 'bonnet' ? { ...one, at: (one.at - 30_000) as typeof one.at } : one));
  expect(inside(piecesOf({ ...arrangement, stands: low }, part), fitting)).not.toEqual([]);
});

/** Deeper than a thread of pitch 1 and its play. */
const DEEP = 7500;
/** A branch stands in a hole that its barrel's half-section does not show. */
const inside = (pieces: readonly Piece[], fitting: Fitting): readonly string[] => {
  const branches = fitting.parts.map(({ id }) => id).filter((id) => id.endsWith('branch'));
  const metal = pieces.filter(({ shown, id }) => (shown === 'metal' || shown === 'thin') && !branches.includes(id));
  return metal.flatMap((one, i) => metal.flatMap((other, j) => (j < i && overlaps(one, other) ? [`${one.id} in ${other.id}`] : [])));
};

function overlaps(one: Piece, other: Piece): boolean {
  const step = 4000;
  return one.cuts.some((ring) => {
    const [xs, ys] = [ring.map((p) => p.x), ring.map((p) => p.y)];
    for (let x = Math.min(...xs); x < Math.max(...xs); x += step)
      for (let y = Math.min(...ys); y < Math.max(...ys); y += step) {
        const cross = [
          { x: x - DEEP / 2, y },
          { x: x + DEEP / 2, y },
          { x, y: y - DEEP / 2 },
          { x, y: y + DEEP / 2 },
        ];
        if (cross.every((p) => within(p, ring) && other.cuts.some((cut) => within(p, cut)))) return true;
      }
    return false;
  });
}
