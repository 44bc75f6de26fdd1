/** The bar that a pack takes: a blank for each part, a cut list for each kind of bar, what the shelf lacks, and the weights. */
import { cutList } from '../base/cut-list.ts';
import { add, type Len, len, mm, toMm } from '../base/units.ts';
import { findMaterial } from '../handbook/materials.ts';
import { parting } from '../handbook/parting.ts';
import { practice } from '../handbook/practice.ts';
import { whipLength } from '../handbook/stiffness.ts';
import { barArea, stockFacts } from '../handbook/stock-facts.ts';
import type { PlannedPart } from '../model/plan.ts';
import type { Blank, PackStock, StockKind } from '../model/stock.ts';
import type { Workshop } from '../model/workshop.ts';

type Shop = Pick<Workshop, 'shelf' | 'lathe'>;
type Bar = { readonly material: string; readonly section: 'round' | 'hexagon'; readonly across: Len };
type Made = { readonly planned: PlannedPart; readonly bar: Bar; readonly blank: Blank; readonly count: number };

/** `packs`: of how many of the fitting; `begun`: how often a piece of tooling is made. */
export function stock(parts: readonly PlannedPart[], packs: number, begun: (part: string) => number, shop: Shop): PackStock {
  const made = parts.flatMap((planned): readonly Made[] => {
    const { part } = planned;
    if (part.stock.from !== 'bar') return [];
    const { material, section, across } = part.stock;
    const count = part.use === 'fitting' ? part.quantity * packs : Math.max(1, begun(part.id));
    return [{ planned, bar: { material, section, across }, blank: blankOf(planned, across), count }];
  });
  const kinds = new Map<string, Made[]>();
  for (const m of made) kinds.set(keyOf(m.bar), [...(kinds.get(keyOf(m.bar)) ?? []), m]);
  return {
    packs,
    blanks: made.map((m) => m.blank),
    kinds: [...kinds.values()].flatMap((of) => kindOf(of, shop)),
    finished: parts.flatMap(({ part, proof }) => {
      const density = findMaterial(part.stock.material ?? '')?.density;
      return density === undefined || proof.volume === undefined || part.staysInChuck
        ? []
        : [{ part: part.id, grams: gramsOf(proof.volume, density) }];
    }),
  };
}

const keyOf = ({ material, section, across }: Bar): string => `${material} ${section} ${across}`;
/** mm³ and kg/m³; to the tenth of a gram. */
const gramsOf = (volume: number, density: number): number => Math.round((volume * density) / 1e5) / 10;

// ---- a blank --------------------------------------------------------------------------------------------------------------
function blankOf({ part, route, chart }: PlannedPart, across: Len): Blank {
  const first = chart.working.find((w) => w.from === 'bar end')?.limits.target ?? mm(practice.value('bar.allowance'));
  const operations = route.chosen.flatMap((m) => m.operations);
  const ends = operations.flatMap((o) =>
    Object.values(o.ways).flatMap((way) =>
      way.sweeps.flatMap((s) => (s.take === 'part' ? [{ past: s.stub ?? way.cuts[0]?.leaves ?? len(0), kerf: s.kerf }] : [])),
    ),
  );
  // what stays in the chuck is sawn off when its work is done
  const kerf = mm(parting.value('saw.kerf'));
  const past = len(Math.max(part.staysInChuck ? kerf : 0, ...ends.map((e) => e.past + e.kerf)));
  const uses = add(add(first, part.length), past);
  const jaws = len(Math.round(across * practice.value('grip.bar.ratio')) + mm(practice.value('grip.stick-out.room')));
  const out = route.setUps.map(({ grip }) =>
    grip.kind.startsWith('bar') ? first + (grip.out === 'first' ? grip.to : part.length - grip.from) : 0,
  );
  return { part: part.id, uses, hold: len(Math.max(jaws, ...out.map((reach) => reach - uses))), kerf };
}

// ---- a kind of bar --------------------------------------------------------------------------------------------------------
function kindOf(of: readonly Made[], shop: Shop): readonly StockKind[] {
  const [{ bar } = { bar: undefined }] = of;
  if (!bar) return [];
  const through = widestOf(bar) <= shop.lathe.spindleBore;
  const hold = len(Math.max(...of.map((m) => m.blank.hold)));
  const pieces = of.flatMap((m) =>
    Array.from({ length: m.count }, () => ({ part: m.blank.part, takes: through ? m.blank.uses : sawn(m.blank) })),
  );
  const shelf = shop.shelf.filter((s) => keyOf(s) === keyOf(bar));
  // fed through, the last piece still has to be held; sawn, the last blank needs no cut behind it
  const spare = (length: Len): number => (through ? length - hold : length + mm(parting.value('saw.kerf')));
  const cuts = cutList(
    pieces.map((p) => p.takes),
    shelf.map((s) => Math.max(0, spare(s.length))),
    stockFacts.value('cut-list.exact'),
  );
  const at = (ids: readonly number[]): typeof pieces => ids.flatMap((id) => pieces[id] ?? []);
  const used = (ids: readonly number[]): number => at(ids).reduce((sum, p) => sum + p.takes, 0);
  const bars = shelf.flatMap((s, i) => {
    const ids = cuts.bars[i] ?? [];
    return ids.length === 0 ? [] : [{ length: s.length, pieces: at(ids), left: len(Math.max(0, s.length - used(ids))) }];
  });
  const lacks = len(cuts.short.length === 0 ? 0 : used(cuts.short) + (through ? hold : 0));
  const uses = len(pieces.reduce((sum, p) => sum + p.takes, 0) + (through ? bars.length * hold + (lacks > 0 ? hold : 0) : 0));
  const density = findMaterial(bar.material)?.density;
  return [
    {
      ...bar,
      way: through ? 'through' : 'sawn',
      ...behindOf(of, bar, through),
      ...{ bars, short: at(cuts.short), lacks, uses },
      ...(density === undefined ? {} : { grams: gramsOf(barArea(bar.section, bar.across) * toMm(uses), density) }),
    },
  ];
}

const sawn = ({ uses, hold, kerf }: Blank): Len => add(add(uses, hold), kerf);

function widestOf({ section, across }: Bar): number {
  return section === 'round' ? across : across * stockFacts.value('hexagon.corners');
}

/** Free behind the spindle at the fastest speed of any set-up in which the bar turns. */
function behindOf(of: readonly Made[], bar: Bar, through: boolean): Pick<StockKind, 'behind'> {
  const material = findMaterial(bar.material);
  const rpm = Math.max(
    0,
    ...of.flatMap(({ planned: { route, figures } }) =>
      route.setUps
        .filter((s) => s.grip.kind.startsWith('bar'))
        .flatMap((s) => s.operations.map((op) => figures.find((f) => f.op === op)?.rpm?.value ?? 0)),
    ),
  );
  if (!through || !material || rpm === 0) return {};
  const free = whipLength(toMm(bar.across), rpm * stockFacts.value('whip.share'), material.modulus, material.density);
  return { behind: { most: mm(Math.floor(free / 10) * 10), rpm } };
}
