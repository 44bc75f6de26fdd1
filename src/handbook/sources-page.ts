/**
 * What rests on which source, as a page of Markdown (docs/sources.md). It is made from the tables themselves, so a figure that changes its
 * source moves with them. For those who keep the handbook: nothing of it is printed on a sheet.
 */
import { ballMaterials, ballSizes } from './balls.ts';
import { inchBars, metricBars, nutHexagons } from './bar-stock.ts';
import { bendingRelations } from './bending.ts';
import { centreDrills } from './centre-drills.ts';
import { conesRelations } from './cones.ts';
import { cuttingData } from './cutting.ts';
import { forceRelations } from './cutting-force.ts';
import { SPEEDS } from './cutting-speeds.ts';
import { drillLoadRelations } from './drill-load.ts';
import { drills } from './drills.ts';
import type { Standing } from './fact.ts';
import { FACT_TABLES } from './fact-tables.ts';
import { flowRelations } from './flow.ts';
import { materials } from './materials.ts';
import { pipes } from './pipes.ts';
import { reliefRelations } from './relief-steam.ts';
import { SIGNS_CHOSEN, signedCautions, signs } from './signs.ts';
import { cite, type SourceId, sources } from './sources.ts';
import { spindleRelations } from './spindle.ts';
import { squarePairs } from './squares.ts';
import { stiffnessRelations } from './stiffness.ts';
import { tappingRelations } from './tapping-torque.ts';
import { inchThreads } from './threads.ts';
import { timeRelations } from './times.ts';
import { ballRelations, type Relation } from './valve-ball.ts';
import { coneRelations } from './valve-cone.ts';

/** One figure, or one table that is spoken of as a whole. */
export type Use = { readonly file: string; readonly what: string; readonly source: string; readonly standing: Standing };

/** Everything that has a source, in the order of the tables. */
export function handbookUses(): readonly Use[] {
  return [...FACT_TABLES.flatMap(([file, table]) => table.rows.map((row) => ({ ...row, file }))), ...recordUses(), ...WHOLE.map(whole)];
}

/** Markdown. The same handbook gives the same page. */
export function sourcesPage(): string {
  const uses = handbookUses();
  const listed = sources.map(({ id, cite: work, seen }) => ({ id, work, seen, rest: uses.filter((u) => sourceOf(u.source) === id) }));
  const others = uses.filter((u) => sourceOf(u.source) === undefined);
  const recalled = uses.filter((u) => u.standing === 'from memory');
  return `${[
    '# Where the figures come from',
    'Made from `src/handbook` by `npm run vitest -- tests/handbook/sources.test.ts -u`; not edited by hand.',
    table(
      ['work', 'how it was read', 'what rests on it'],
      listed.filter((s) => s.rest.length > 0).map((s) => [s.work, s.seen, counted(s.rest)]),
    ),
    '## Named beside a figure only',
    table(['work', 'what rests on it'], byText(others)),
    '## From memory',
    table(['what', 'where', 'source'], merged(recalled)),
    '## Read and not yet used',
    listed
      .filter((s) => s.rest.length === 0)
      .map((s) => `- ${s.work}`)
      .join('\n'),
  ].join('\n\n')}\n`;
}

const RELATIONS: readonly (readonly [file: string, rows: readonly Relation[]])[] = [
  ['valve-ball.ts', ballRelations],
  ['valve-cone.ts', coneRelations],
  ['flow.ts', flowRelations],
  ['relief-steam.ts', reliefRelations],
  ['spindle.ts', spindleRelations],
  ['cutting-force.ts', forceRelations],
  ['stiffness.ts', stiffnessRelations],
  ['bending.ts', bendingRelations],
  ['cones.ts', conesRelations],
  ['drill-load.ts', drillLoadRelations],
  ['tapping-torque.ts', tappingRelations],
  ['times.ts', timeRelations],
];

/** Tables whose rows share one source: spoken of as a whole. */
const WHOLE: readonly (readonly [file: string, what: string, source: SourceId, standing: Standing])[] = [
  ['iso261-sizes.ts', 'diameters and pitches M1.6 to M30', 'iso-261', 'from memory'],
  ['iso965-tables.ts', 'grade 6, positions g, G, h, H', 'iso-965-1', 'standard'],
  ['iso965-tables.ts', 'other grades, positions e, f', 'iso-965-1-rest', 'from memory'],
  ['iso965-metric.ts', 'pairs outside the tables', 'iso-965-1-formulas', 'derived'],
  ['iso965-metric.ts', 'basic profile', 'iso-68-1', 'standard'],
  ['iso965-metric.ts', 'minor diameters and roots from the pitch diameter', 'mh27', 'standard'],
  ['iso965-metric.ts', 'limits 6g and 6H, checked', 'iso-965-2', 'standard'],
  ['iso965-metric.ts', 'method outside the tables, checked', 'fed-h28-21b', 'standard'],
  ['metric-tapping.ts', 'heights of the profile, checked', 'iscar-taps', 'standard'],
  ['common-set.ts', 'drills and reamers taken to be in the drawer', 'custom', 'common practice'],
  ['thread-form.ts', 'ISO form', 'iso-68-1', 'standard'],
  ['thread-form.ts', 'Whitworth form', 'bs-84', 'standard'],
  ['thread-form.ts', 'BA form', 'bs-93', 'standard'],
  ['whitworth-threads.ts', 'tolerances', 'bs-84-rest', 'from memory'],
  ['whitworth-threads.ts', 'sizes of BSW and BSF', 'bs-84', 'standard'],
  ['whitworth-threads.ts', 'Model Engineer and brass threads; drills', 'model-threads', 'common practice'],
  ['whitworth-threads.ts', 'drills of BSW', 'bs-1157', 'common practice'],
  ['ba-threads.ts', 'sizes and tolerances', 'bs-93', 'standard'],
  ['ba-threads.ts', 'tapping drills', 'model-threads', 'common practice'],
  ['iso228-threads.ts', 'sizes and tolerances', 'iso-228', 'standard'],
  ['iso228-threads.ts', 'tapping drills', 'pipe-drills', 'common practice'],
  ['unified-threads.ts', 'formulas and rounding', 'asme-b1-1', 'standard'],
  ['unified-threads.ts', 'four minor diameters as printed; the others, checked', 'fed-h28-2b', 'standard'],
  ['surface.ts', 'N grades', 'iso-1302', 'standard'],
  ['surface.ts', 'usual roughness of processes', 'process-ra', 'common practice'],
  ['surface.ts', 'roughness of a round nose', 'youssef', 'standard'],
  ['reamers.ts', 'sizes and tolerance', 'iso-522', 'from memory'],
  ['squares.ts', 'squares for handwheels', 'din-79', 'standard'],
  ['spindle.ts', 'width of packing', 'tribology', 'common practice'],
  ['cutting-force.ts', 'constants of drills, other metals', 'drill-rest', 'derived'],
  ['stiffness.ts', 'boring bar, checked', 'isakov', 'standard'],
  ['metric-tapping.ts', 'usual tapping drills', 'iso-2306', 'from memory'],
  ['metric-tapping.ts', 'share of thread on 3/4 H, checked', 'fed-h28-2b', 'standard'],
  ['metric-tapping.ts', 'depth with a sharp tool, checked', 'sumitomo', 'common practice'],
  ['drilling.ts', 'probable oversize of a drilled hole', 'fed-h28-2b', 'standard'],
  ['drilling.ts', 'feeds of drills', 'navedtra', 'common practice'],
  ['drilling.ts', 'deep holes', 'drill-card', 'common practice'],
  ['drills.ts', 'lengths of jobber drills', 'din-338', 'from memory'],
  ['gear-reach.ts', 'shafts, slot and wheels as sums of teeth', 'here', 'derived'],
  ['trains.ts', 'pitch from leadscrew and wheels', 'here', 'derived'],
  ['half-nuts.ts', 'threading dial', 'here', 'derived'],
  ['wires.ts', 'usable wires; factors, checked', 'thread-check', 'common practice'],
  ['thread-strength.ts', 'stress area', 'iso-898', 'from memory'],
  ['thread-strength.ts', 'form of the shearing areas', 'fed-h28-2b', 'standard'],
  ['din76-runout.ts', 'run-outs and undercuts', 'din-76', 'from memory'],
  ['iso286.ts', 'grades IT5 to IT13; d to h, js, m, n, p', 'iso-286-1', 'standard'],
  ['iso286.ts', 'IT14; c, k, r, s; holes K to P', 'iso-286-1-rest', 'from memory'],
  ['iso2768.ts', 'tables 1 (f, m) and 2', 'iso-2768-1', 'standard'],
  ['iso2768.ts', 'table 1, class c', 'iso-2768-1-rest', 'from memory'],
  ['balls.ts', 'grades of ISO 3290-1', 'iso-3290-1', 'standard'],
  ['balls.ts', 'grades of ABMA', 'abma-10', 'standard'],
  ['balls.ts', 'density of a steel ball, checked', 'ball-mass', 'common practice'],
  ['reaming.ts', 'stock to 20 mm', 'gtz', 'common practice'],
  ['reaming.ts', 'stock from 20 to 25 mm; most', 'applied-science', 'common practice'],
  ['thread-passes.ts', 'modified schedule', 'sandvik', 'common practice'],
  ['cutting.ts', 'speeds of D-bit, counterbore, die, relief, chamfer as parts of others', 'custom', 'common practice'],
  ['parting.ts', 'widths of blade', 'here', 'derived'],
  ['cutting.ts', 'turns a minute, checked', 'lzqtool', 'common practice'],
  ['lubricants.ts', 'bronze, copper, steels, aluminium', 'mh31', 'common practice'],
  ['lubricants.ts', 'brass and steel turned and parted', 'tm-1-420', 'common practice'],
  ['lubricants.ts', 'taps', 'tap-die', 'common practice'],
  ['pipes.ts', 'wire gauge', 'swg', 'from memory'],
  ['flange.ts', 'ring-shaped plate pulled along its inner edge', 'roark', 'from memory'],
  ['walls.ts', 'thick cylinder', 'lame', 'derived'],
  ['walls.ts', 'permissible stress of annealed copper', 'lr-ssc', 'standard'],
  ['walls.ts', 'pressure of a pipe', 'uk-copper', 'standard'],
  ['walls.ts', 'the same, checked', 'lawton', 'standard'],
  ['valve-ball.ts', 'sink of a ball, checked', 'perry', 'common practice'],
  ['valve-ball.ts', 'angle of contact, checked', 'artisan', 'common practice'],
  ['valve-ball.ts', 'standard gravity', 'bipm', 'standard'],
  ['if97-saturation.ts', 'saturation both ways', 'if97', 'standard'],
  ['if97-regions.ts', 'water and steam, regions 1 and 2', 'if97', 'standard'],
  ['if97-regions.ts', 'border of region 3 (from memory, checked with the release’s own figure)', 'if97', 'standard'],
];

function whole([file, what, source, standing]: (typeof WHOLE)[number]): Use {
  return { file, what, source: cite(source), standing };
}

function relationUses(): readonly Use[] {
  return RELATIONS.flatMap(([file, rows]) => rows.map(({ id, source, standing }) => ({ file, what: id, source, standing })));
}

function signNames(): readonly { readonly name: string; readonly source: string; readonly standing: Standing }[] {
  return [...signs.map((s) => ({ ...s, name: `${s.id}, ${s.means}` })), ...signedCautions.map((name) => ({ ...SIGNS_CHOSEN, name }))];
}

function recordUses(): readonly Use[] {
  const named = (file: string, rows: readonly { readonly name: string; readonly source: string; readonly standing: Standing }[]) =>
    rows.map(({ name, source, standing }) => ({ file, what: name, source, standing }));
  const pairs = squarePairs.map((p) => ({ ...p, name: `${p.across / 10_000} on ${p.round / 10_000}` }));
  const strengths = materials.flatMap((m) => m.strength.map((s) => ({ ...s, name: `${m.id}, ${s.condition}` })));
  return [
    ...relationUses(),
    ...named('signs.ts', signNames()),
    ...named('squares.ts', pairs),
    ...named('threads.ts', inchThreads),
    ...named('balls.ts', ballSizes),
    ...named(
      'balls.ts',
      ballMaterials.map((m) => ({ ...m, name: m.id })),
    ),
    ...named(
      'bar-stock.ts',
      [...metricBars, ...inchBars, ...nutHexagons].map((b) => ({ ...b, name: `${b.section} ${b.name}` })),
    ),
    ...named('centre-drills.ts', centreDrills),
    ...named('drills.ts', drills),
    ...named(
      'materials.ts',
      materials.map((m) => ({ ...m, name: m.id })),
    ),
    ...named(
      'materials.ts',
      materials.map((m) => ({ ...m.physical, name: `${m.id}, density and modulus` })),
    ),
    ...named('materials.ts', strengths),
    ...named(
      'pipes.ts',
      pipes.map((p) => ({ ...p, name: `${p.outside / 10_000} x ${p.wall / 10_000}` })),
    ),
    ...speedUses(),
  ];
}

/** Each group's usual turning speed, and the ranges that it was set in. */
function speedUses(): readonly Use[] {
  return Object.keys(SPEEDS).flatMap((group) => {
    const data = cuttingData(materials.find((m) => m.cutting === group)?.id ?? '', 'turn-rough', 'HSS');
    return [data?.source ?? '', ...(data?.ranges ?? [])].map((source) => ({
      file: 'cutting-speeds.ts',
      what: group,
      source,
      standing: 'common practice' as const,
    }));
  });
}

/** A citation may have a place behind it: the longest listed work that it begins with. */
function sourceOf(citation: string): string | undefined {
  const fits = sources.filter((s) => citation === s.cite || citation.startsWith(`${s.cite}; `));
  return fits.sort((a, b) => b.cite.length - a.cite.length)[0]?.id;
}

/** A few by name, many by number. */
function counted(rest: readonly Use[]): string {
  const files = [...new Set(rest.map((u) => u.file))];
  return files
    .map((file) => {
      const here = rest.filter((u) => u.file === file);
      return here.length > MOST_NAMED ? `\`${file}\`: ${here.length} figures` : `\`${file}\`: ${here.map((u) => u.what).join('; ')}`;
    })
    .join('<br>');
}
const MOST_NAMED = 6;

function byText(uses: readonly Use[]): readonly (readonly string[])[] {
  const texts = [...new Set(uses.map((u) => u.source))].sort();
  return texts.map((text) => [text, counted(uses.filter((u) => u.source === text))]);
}

/** Recalled figures, the many of one table and source in one row. */
function merged(uses: readonly Use[]): readonly (readonly string[])[] {
  const keys = [...new Set(uses.map((u) => `${u.file}\n${u.source}`))].sort();
  return keys.map((key) => {
    const [file = '', source = ''] = key.split('\n');
    const here = uses.filter((u) => u.file === file && u.source === source);
    const names = here
      .slice(0, MOST_NAMED)
      .map((u) => u.what)
      .join('; ');
    return [here.length > MOST_NAMED ? `${names} … (${here.length})` : names, `\`${file}\``, source];
  });
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}
