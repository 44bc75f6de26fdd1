/** Last pages: what was proved and with which worst figures, what was not, how good the order is, and the sources. */
import { ownWords } from '../../base/own-words.ts';
import { signs, signsOf } from '../../handbook/signs.ts';
import type { Claim, Plan, PlannedPart } from '../../model/plan.ts';
import type { Column, PlainPage, Section } from '../../model/sheet.ts';
import { cautionSaid } from './caution.ts';
import { dangersOf } from './dangers.ts';
import { deskOf, namedIn } from './lookup.ts';
import { partName } from './names.ts';
import type { SheetWords } from './said.ts';
import { takenLines } from './taken.ts';

export function proofPage(plan: Plan, words: SheetWords): PlainPage {
  return {
    kind: 'plain',
    key: 'proof',
    heading: words.say('proof.heading'),
    name: words.say('proof.heading').toUpperCase(),
    about: plan.fitting.title,
    right: '',
    sections: [
      dimensionTable(plan, words),
      ...cornerTable(plan, words),
      claimTable(plan, words),
      ...failed(plan, words),
      notProved(words),
      orders(plan, words),
      ...taken(plan, words),
      sources(plan, words),
    ],
    cautions: [cautionSaid(words, 'proof.caution')],
    mayFollow: true,
  };
}

export const holds = (plan: Plan): boolean => plan.parts.every((planned) => planned.proof.holds) && (plan.day?.proof.holds ?? true);

const allClaims = (plan: Plan): readonly Claim[] => [...plan.parts.flatMap(({ proof }) => proof.claims), ...(plan.day?.proof.claims ?? [])];

/** Every drawing dimension at its two worst corners, two to a row. */
function dimensionTable(plan: Plan, words: SheetWords): Section {
  const rows = plan.parts.flatMap((planned) => {
    const cells = planned.proof.claims.flatMap((claim) => dimensionCells(planned, claim, words));
    const half = Math.ceil(cells.length / 2);
    return cells.slice(0, half).map((left, i) => [i === 0 ? partName(planned.part, words) : '', ...left, ...(cells[half + i] ?? [])]);
  });
  const columns: readonly Column[] = [
    { label: words.say('label.dimension'), share: 10, manner: 'small' },
    { label: words.say('label.asked'), share: 1, manner: 'figure' },
    { label: words.say('label.worst'), share: 1, manner: 'figure' },
  ];
  const part: Column = { label: words.say('label.part'), share: 10, manner: 'small' };
  return {
    kind: 'table',
    title: words.say('proof.dimensions'),
    text: words.say('proof.dimensions.how'),
    columns: [part, ...columns, ...columns],
    rows,
  };
}

function dimensionCells(planned: PlannedPart, claim: Claim, words: SheetWords): readonly (readonly string[])[] {
  const { worst } = claim;
  if (claim.kind !== 'dimension' || !worst) return [];
  const found = words.range(worst.lo, worst.hi);
  const { lo, hi } = worst.limits;
  return [[aboutOf(planned, claim, words), words.range(lo, hi), claim.holds ? found : words.say('proof.no', { found })]];
}

/**
 * Where more than one working dimension matters: which of them stood at which end of its limits at the worst; and of each part the surface
 * that is left shortest. Where only one matters, its own limits are the corner.
 */
function cornerTable(plan: Plan, words: SheetWords): readonly Section[] {
  const rows = plan.parts.flatMap((planned) => {
    const several = planned.proof.claims.flatMap((claim) => severalRow(planned, claim, words));
    const own = [...several, ...shortestRow(planned, words)];
    return own.map((cells, i) => [i === 0 ? partName(planned.part, words) : '', ...cells]);
  });
  if (rows.length === 0) return [];
  const column = (id: string, share: number, manner: Column['manner']): Column => ({ label: words.say(id), share, manner });
  return [
    {
      ...{ kind: 'table', title: words.say('proof.corners'), text: words.say('proof.corners.how') },
      columns: [
        column('label.part', 10, 'small'),
        column('label.dimension', 10, 'small'),
        column('label.worst', 1, 'figure'),
        column('proof.corners.least', 10, 'small'),
        column('proof.corners.greatest', 10, 'small'),
      ],
      rows,
    },
  ];
}

function severalRow(planned: PlannedPart, claim: Claim, words: SheetWords): readonly (readonly string[])[] {
  const { worst } = claim;
  const corners = worst?.corners;
  if (claim.kind !== 'dimension' || !worst || !corners || Object.keys({ ...corners.lo, ...corners.hi }).length < 2) return [];
  const told = (corner: Corner): string => cornerOf(planned, corner, words);
  return [[aboutOf(planned, claim, words), words.range(worst.lo, worst.hi), told(corners.lo), told(corners.hi)]];
}

type Corner = Readonly<Record<string, 'lo' | 'hi'>>;
function cornerOf({ part }: PlannedPart, corner: Corner, words: SheetWords): string {
  const ids = Object.keys(corner);
  return ids.map((id) => words.say('proof.corner', { what: id.slice(part.id.length + 1), side: corner[id] ?? 'hi' })).join(', ');
}

/** The surface with least to spare; its claim tells its figures and its corner. */
function shortestRow(planned: PlannedPart, words: SheetWords): readonly (readonly string[])[] {
  const stays = planned.proof.claims.filter((claim) => claim.kind === 'every surface stays');
  const [least] = [...stays].sort((a, b) => Number(a.grounds.length) - Number(b.grounds.length));
  if (!least || least.grounds.corner === '') return [];
  const about = words.say('proof.shortest', { what: namedIn(least.about, words), least: words.plain(String(least.grounds.least)) });
  return [[about, words.plain(String(least.grounds.length)), String(least.grounds.corner), '']];
}

/** 'A to S' for a dimension between two faces; else what the claim is about, in words. */
function aboutOf(planned: PlannedPart, claim: Claim, words: SheetWords): string {
  const dimension = planned.part.dimensions.find((d) => d.id === claim.about);
  if (!dimension) return words.say('proof.about', { what: namedIn(claim.about, words) });
  const desk = deskOf(planned);
  return words.say('proof.between', { a: desk.letter(dimension.a), b: desk.letter(dimension.b) });
}

/** The other claims, counted by part and kind. */
function claimTable(plan: Plan, words: SheetWords): Section {
  const all = allClaims(plan);
  const kinds = [...new Set(all.map((claim) => claim.kind))];
  const rows = kinds.map((kind) => {
    const claims = all.filter((claim) => claim.kind === kind);
    return [words.say(`claim.${kind.replace(/ /g, '-')}`), String(claims.length), String(claims.filter((claim) => claim.holds).length)];
  });
  return {
    kind: 'table',
    title: words.say('proof.claims'),
    text: words.say('proof.claims.how', { replays: plan.parts.reduce((sum, planned) => sum + planned.proof.replays, 0) }),
    columns: [
      { label: words.say('label.claim'), share: 10, manner: 'text' },
      { label: words.say('label.judged'), share: 1, manner: 'figure' },
      { label: words.say('label.hold'), share: 1, manner: 'figure' },
    ],
    rows,
  };
}

function failed(plan: Plan, words: SheetWords): readonly Section[] {
  const line = (planned: PlannedPart, claim: Claim): string =>
    words.say('proof.failed.line', {
      part: partName(planned.part, words),
      claim: words.say(`claim.${claim.kind.replace(/ /g, '-')}`),
      about: claim.about,
      at: claim.at ?? '',
    });
  const items = plan.parts.flatMap((planned) => {
    const ofDay = plan.day?.proof.claims.filter(({ grounds }) => grounds.part === planned.part.id) ?? [];
    return [...planned.proof.claims, ...ofDay].filter((claim) => !claim.holds).map((claim) => line(planned, claim));
  });
  return items.length === 0 ? [] : [{ kind: 'notes', title: words.say('proof.failed'), items, manner: 'panel' }];
}

function notProved(words: SheetWords): Section {
  return {
    kind: 'notes',
    title: words.say('proof.not'),
    items: ['a', 'b', 'c'].map((item) => words.say(`proof.not.${item}`)),
    manner: 'plain',
  };
}

function orders(plan: Plan, words: SheetWords): Section {
  const rows = plan.parts.map(({ part, route }) => [
    partName(part, words),
    String(route.cost.setUps),
    String(route.cost.toolChanges),
    route.asGood,
    route.proved === 'best' ? words.say('proof.best') : words.say('proof.best-found', { ...(route.atLeast ?? route.cost) }),
  ]);
  return {
    kind: 'table',
    title: words.say('proof.orders'),
    text: [words.say('proof.orders.how'), ...daySaid(plan, words)].join(' '),
    columns: [
      { label: words.say('label.part'), share: 10, manner: 'text' },
      { label: words.say('label.grips'), share: 1, manner: 'figure' },
      { label: words.say('label.tool-changes'), share: 1, manner: 'figure' },
      { label: words.say('label.as-good'), share: 1, manner: 'figure' },
      { label: words.say('label.order'), share: 10, manner: 'small' },
    ],
    rows,
  };
}

/** How often tooling is made in the chuck, where it is. */
function daySaid({ day }: Plan, words: SheetWords): readonly string[] {
  if (!day || day.makings === 0) return [];
  const { makings, atLeast } = day;
  return [words.say(day.proved === 'best' ? 'proof.day' : 'proof.day.found', { makings, atLeast })];
}

/** Nothing where the workshop file says it all. */
function taken({ workshop }: Plan, words: SheetWords): readonly Section[] {
  const items = takenLines(workshop.taken, words, words.short);
  if (items.length === 0) return [];
  return [{ kind: 'notes', title: words.say('taken.title'), items: [words.say('taken.how'), ...items], manner: 'plain' }];
}

function sources(plan: Plan, words: SheetWords): Section {
  const { derivations, assembly, tests } = plan.fitting;
  const cautions = dangersOf(plan);
  const said = [...assembly, ...tests, ...cautions].flatMap(({ id, grounds }) =>
    words.has(`${id}.source`) ? [words.say(`${id}.source`, grounds)] : [],
  );
  const carried = cautions.flatMap(({ id }) => signsOf(id));
  const drawn = signs.filter((sign) => carried.includes(sign.id));
  const named = [...[...derivations, ...drawn].map((one) => ownWords('source', one.source, words)), ...said];
  return {
    kind: 'notes',
    title: words.say('proof.sources'),
    items: [...new Set(named)].filter((source) => source !== '').sort(byCodeUnit),
    manner: 'plain',
  };
}

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
