/** The worked example of docs/method.md, with the figures of a plan as it is now: one part's chart and proof, as one would do it by hand. */
import { type Len, showMm } from '../../../src/base/units.ts';
import { type Edge, findPath, growTree, type Link, sumPath } from '../../../src/geometry/chain.ts';
import type { Claim, PlannedPart, Working } from '../../../src/model/plan.ts';

/** Markdown between the marks of the page. */
export function workedExample(planned: PlannedPart): string {
  return [
    ...cutTable(planned),
    '',
    ...drawnTable(planned),
    '',
    ...stockLines(planned),
    '',
    ...truthLines(planned),
    '',
    ...proofTable(planned),
  ].join('\n');
}

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
const table = (heads: readonly string[], rows: readonly (readonly (string | number)[])[]): readonly string[] => [
  row(heads),
  row(heads.map(() => '---')),
  ...rows.map(row),
];
const range = ({ lo, hi }: { readonly lo: Len; readonly hi: Len }): string => `${showMm(lo)} to ${showMm(hi)}`;
const shortIn =
  ({ part }: PlannedPart) =>
  (id: string): string =>
    id.startsWith(`${part.id}/`) ? id.slice(part.id.length + 1) : id;
const lengths = ({ chart }: PlannedPart): readonly Working[] => chart.working.filter((one) => one.measures === 'length');

/** Step 1: the cuts in the order of work. */
function cutTable(planned: PlannedPart): readonly string[] {
  const short = shortIn(planned);
  const holdOf = (op: string): number => planned.route.setUps.find((setUp) => setUp.operations.includes(op))?.no ?? 0;
  return [
    '**Step 1. Write down the cuts that make a face, in the order of work, each with what it is measured from.**',
    '',
    ...table(
      ['grip', 'operation', 'makes', 'from', 'limits to work to', 'aim at', 'the process holds'],
      lengths(planned).map((one) => [
        holdOf(one.op),
        short(one.op),
        `${short(one.makes)}${one.stage === 'rough' ? ', with more to come off' : ''}`,
        short(one.from),
        range(one.limits),
        showMm(one.limits.target),
        showMm(one.holds),
      ]),
    ),
  ];
}

const sumOf = (links: readonly Link[], planned: PlannedPart, side: 'lo' | 'hi'): string =>
  links
    .map((link, i) => {
      const limits = planned.chart.working.find((one) => one.id === link.dim)?.limits;
      const value = limits ? showMm(link.sign === 1 ? limits[side] : limits[side === 'lo' ? 'hi' : 'lo']) : '?';
      return `${link.sign === 1 ? (i === 0 ? '' : '+ ') : '− '}${value}`;
    })
    .join(' ');

/** The sum written out, where there is one. */
const summed = (links: readonly Link[], planned: PlannedPart, side: 'lo' | 'hi', of: Len): string =>
  links.length === 1 ? showMm(of) : `${sumOf(links, planned, side)} = ${showMm(of)}`;

/** What nobody asked for comes out too: over all, from the first end to the second. */
function overall(planned: PlannedPart): readonly (string | number)[] {
  const short = shortIn(planned);
  const ends = planned.part.features.flatMap((one) => (one.kind === 'end' ? [one] : []));
  const face = (end: 'first' | 'second'): string => ends.find((one) => one.end === end)?.face ?? '';
  const finals = lengths(planned).filter((one) => one.stage === 'final' && one.from !== one.makes && one.from !== 'bar end');
  const tree = growTree(finals.map((one): Edge => ({ dim: one.id, from: one.from, to: one.makes, toward: one.toward })));
  const links = findPath(tree, face('first'), face('second')) ?? [];
  const found = sumPath(links, new Map(planned.chart.working.map((one) => [one.id, one.limits])));
  const name = `${short(face('first'))}-${short(face('second'))}`;
  const signed = links.map((link) => `${link.sign === 1 ? '+' : '−'}${short(link.dim)}`).join(' ');
  return [name, signed, summed(links, planned, 'lo', found.lo), summed(links, planned, 'hi', found.hi), 'nothing', ''];
}

/** Step 2: each dimension of the drawing. */
function drawnTable(planned: PlannedPart): readonly string[] {
  const short = shortIn(planned);
  return [
    '**Step 2. For each dimension of the drawing walk from one face to the other along the cuts, and add up the worst.**',
    '',
    ...table(
      ['dimension', 'links', 'least', 'greatest', 'asked', 'statistical'],
      planned.chart.drawing
        .map((path): readonly (string | number)[] => [
          short(path.of),
          path.links.map((link) => `${link.sign === 1 ? '+' : '−'}${short(link.dim)}`).join(' '),
          summed(path.links, planned, 'lo', path.lo),
          summed(path.links, planned, 'hi', path.hi),
          range(path.asks),
          path.likely ? range(path.likely) : '',
        ])
        .concat([overall(planned)]),
    ),
  ];
}

/** Step 3: what each cut on a face that was cut before finds to take. */
function stockLines(planned: PlannedPart): readonly string[] {
  const short = shortIn(planned);
  const versions = new Map<string, number>();
  const at = (face: string): string => `${face}#${versions.get(face) ?? 0}`;
  const edges: Edge[] = [];
  const again: { readonly dim: string; readonly face: string; readonly a: string; readonly b: string }[] = [];
  for (const one of lengths(planned)) {
    const from = at(one.from);
    const before = versions.get(one.makes);
    versions.set(one.makes, (before ?? 0) + 1);
    edges.push({ dim: one.id, from, to: at(one.makes), toward: one.toward });
    if (before !== undefined) again.push({ dim: one.id, face: one.makes, a: `${one.makes}#${before}`, b: at(one.makes) });
  }
  const tree = growTree(edges);
  const pairs = new Map(planned.chart.working.map((one) => [one.id, one.limits]));
  const lines = again.flatMap(({ dim, face, a, b }) => {
    const air = planned.part.surfaces.find((one) => one.id === face);
    const links = air?.shape === 'face' && air.air === 'second' ? findPath(tree, b, a) : findPath(tree, a, b);
    if (!links) return [];
    const found = sumPath(links, pairs);
    return [
      `- ${short(dim)}: ${links.map((link) => `${link.sign === 1 ? '+' : '−'}${short(link.dim)}`).join(' ')}: least ${summed(links, planned, 'lo', found.lo)}, greatest ${summed(links, planned, 'hi', found.hi)}`,
    ];
  });
  return [
    '**Step 3. Do the same from a face as it was to the face as it is after a second cut: that is the stock it finds.**',
    '',
    ...lines,
  ];
}

/** Step 4: run-out. */
function truthLines(planned: PlannedPart): readonly string[] {
  const short = shortIn(planned);
  const lines = (planned.chart.truths ?? []).map((path) => {
    const sum = path.links.map((link) => `${showMm(link.runout)} (${short(link.grip)})`).join(' + ');
    return `- ${short(path.b)} to ${short(path.a)}: ${sum === '' ? 'one grip' : sum} = ${showMm(path.worst)}; at most ${showMm(path.asks)} is asked`;
  });
  return ['**Step 4. Add up the run-out of each re-grip between what must run true to each other.**', '', ...lines];
}

/** Step 5: the proof's own figures. */
function proofTable(planned: PlannedPart): readonly string[] {
  const { proof, part } = planned;
  const short = shortIn(planned);
  const corner = (of: Readonly<Record<string, 'lo' | 'hi'>> | undefined): string =>
    Object.entries(of ?? {})
      .map(([dim, side]) => `${short(dim)} ${side === 'hi' ? '+' : '−'}`)
      .join(', ');
  const isLength = (claim: Claim): boolean => claim.kind === 'dimension' && part.dimensions.some((one) => one.id === claim.about);
  return [
    `**Step 5. Run the route on a half-section, ${proof.replays} times, and measure.** Every claim ${proof.holds ? 'holds' : 'is told, and not all hold'}.`,
    '',
    ...table(
      ['dimension', 'measured', 'asked', 'least at', 'greatest at'],
      proof.claims
        .filter(isLength)
        .map((claim) => [
          short(claim.about),
          claim.worst ? range(claim.worst) : '',
          claim.worst ? range(claim.worst.limits) : '',
          corner(claim.worst?.corners?.lo),
          corner(claim.worst?.corners?.hi),
        ]),
    ),
  ];
}
