/** What is made from the side: flats, a square, a hexagon, cross holes. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { SideFeature } from '../../model/part.ts';
import { size } from '../limits.ts';
import type { Hole, Section, Side } from '../outline.ts';
import type { AskedSide, TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import { limitsOf } from './limits.ts';

const KINDS = ['flats', 'square', 'hexagon', 'cross-hole'] as const;
/** Flats of one kind round the axis. */
const SIDES = { flats: 1 + 1, square: 2 + 2, hexagon: 2 + 2 + 2, 'cross-hole': 1 } as const;

export function sidesOf(asked: TurnedPartAsked, sections: readonly Section[], holes: readonly Hole[], faults: Faults): readonly Side[] {
  return asked.side.flatMap((side, i) => sideOf(side, ['side', i], sections, holes, faults) ?? []);
}

function sideOf(side: AskedSide, path: Path, sections: readonly Section[], holes: readonly Hole[], faults: Faults): Side | undefined {
  const kinds = KINDS.filter((kind) => side[kind] !== undefined);
  const [kind] = kinds;
  if (!kind || kinds.length > 1) {
    fault(faults, path, 'one-side', { feature: side.name, none: !kind });
    return undefined;
  }
  const section = sectionUnder(side, path, sections, faults);
  if (!section) return undefined;
  const asked = side[kind];
  const limits = asked && limitsOf(asked, kind === 'cross-hole' ? 'hole' : 'shaft', side.name, [...path, kind], faults);
  if (!limits) return undefined;
  const begins = startOf(sections, section);
  const long = kind === 'cross-hole' ? limits.target : (side.length ?? section.length);
  const half = len(Math.floor(long / 2));
  if (minus(side.at, half) < 0 || add(side.at, half) > section.length)
    fault(faults, [...path, 'at'], 'side-off-section', { feature: side.name, on: side.on, at: side.at, long, length: section.length });
  const placed = { at: add(begins, side.at), half };
  if (kind === 'cross-hole') {
    if (limits.hi >= section.size.lo)
      fault(faults, [...path, kind], 'cross-hole-wide', { feature: side.name, on: side.on, most: section.size.lo });
  } else checkFlats(side, kind, { ...placed, across: limits.hi, least: limits.lo }, section, holes, path, faults);
  return {
    name: side.name,
    does: kind,
    on: side.on,
    role: side.role ?? 'free',
    ...placed,
    size: limits,
    count: SIDES[kind],
  } satisfies Omit<SideFeature, 'kind' | 'id' | 'on'> & { readonly name: string; readonly on: string };
}

/** The piece that it stands on; a taper over its whole length leaves no cylinder to stand on. */
function sectionUnder({ name, on }: AskedSide, path: Path, sections: readonly Section[], faults: Faults): Section | undefined {
  const section = sections.find((s) => s.name === on);
  if (section && !section.blank) return section;
  const known = sections.map((s) => s.name).join(', ');
  if (section) fault(faults, [...path, 'on'], 'taper-bare', { feature: on, key: name });
  else fault(faults, [...path, 'on'], 'no-such-section', { feature: name, on, sections: known });
  return undefined;
}

const startOf = (sections: readonly Section[], section: Section): Len =>
  len(sections.slice(0, sections.indexOf(section)).reduce((sum, s) => sum + s.length, 0));

type Filed = { readonly at: Len; readonly half: Len; readonly across: Len; readonly least: Len };
function checkFlats(
  side: AskedSide,
  kind: string,
  filed: Filed,
  section: Section,
  holes: readonly Hole[],
  path: Path,
  faults: Faults,
): void {
  if (section.section === 'hexagon') fault(faults, [...path, 'on'], 'flats-on-hexagon', { feature: side.name, on: side.on });
  if (filed.across >= section.size.lo)
    fault(faults, [...path, kind], 'flats-wide', { feature: side.name, on: side.on, most: section.size.lo });
  const wall = size('part.wall.least');
  for (const hole of holes) {
    if (hole.to <= filed.at - filed.half || hole.from >= filed.at + filed.half) continue;
    const least = add(hole.thread?.size.root ?? hole.size.hi, add(wall, wall));
    if (filed.least < least) fault(faults, [...path, kind], 'flats-in-bore', { feature: side.name, hole: hole.name, least });
  }
}
