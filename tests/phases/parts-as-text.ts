/** A planned part as text, short enough to be read by eye: set-ups, operations with their sizes, and the proof. */
import { len, showMm } from '../../src/base/units.ts';
import type { Compiled } from '../../src/compile.ts';
import type { Limits } from '../../src/model/part.ts';
import type { NoRoute, Operation, PlannedPart, Refusal, SetUp } from '../../src/model/plan.ts';
import { isOffLathe } from '../../src/model/work.ts';

/** `name`: of the part that was asked for; its tooling is named and not told in full. */
export function planAsText(compiled: Compiled): string {
  const { plan, found, noRoutes } = compiled;
  const said = found.map((d) => `${d.severity}: ${d.code} ${JSON.stringify(d.grounds)}`);
  if (!plan) return lines([...said, ...(noRoutes ?? []).flatMap(noRoute)]);
  const [planned, ...tooling] = plan.parts;
  if (!planned) throw new Error('a plan without a part');
  return lines([
    ...said,
    ...partLines(planned),
    ...tooling.flatMap((t) => ['', `tooling: ${t.part.id} (${t.part.use})`, ...routeLines(t)]),
  ]);
}

const lines = (all: readonly string[]): string => `${all.join('\n')}\n`;

function partLines(planned: PlannedPart): readonly string[] {
  const { part, route, proof } = planned;
  const stock = part.stock.from === 'bar' ? `${part.stock.section} bar ${showMm(part.stock.across, 1)} ${part.stock.material}` : 'bought';
  const { setUps, tooling, broken, toolChanges, minutes } = route.cost;
  return [
    `${part.id}: ${showMm(part.length, 1)} long, from ${stock}`,
    `set-ups ${setUps}, tooling to make ${tooling}, habits broken ${broken}, tool changes ${toolChanges}, minutes of setting ${minutes / 10}; ${route.proved}, as good: ${route.asGood}`,
    ...routeLines(planned),
    '',
    ...route.broken.map((b) => `broken: ${b.first} before ${b.then} (${b.because.rule})`),
    `proved: ${proof.holds ? 'yes' : 'NO'}`,
    ...proof.claims.filter((c) => !c.holds).map((c) => `fails: ${c.kind} at ${c.at ?? '-'} about ${c.about} ${JSON.stringify(c.grounds)}`),
  ];
}

function routeLines(planned: PlannedPart): readonly string[] {
  const operations = new Map(planned.route.chosen.flatMap((m) => m.operations).map((o) => [o.id, o]));
  return planned.route.setUps.flatMap((setUp) => [
    '',
    setUpLine(setUp, planned),
    ...setUp.operations.map((id) => operationLine(planned, operations.get(id), setUp)),
  ]);
}

function setUpLine({ no, grip }: SetUp, { part }: PlannedPart): string {
  if (grip.kind === 'bench') return 'bench';
  const on = grip.on.length > 0 ? ` on ${grip.on.map(short).join(', ')}` : '';
  if (isOffLathe(grip)) return `${grip.kind}${on}, dia ${showMm(grip.diameter, 1)} over ${showMm(len(grip.to - grip.from), 1)}`;
  const out = showMm(len(grip.out === 'first' ? grip.from : part.length - grip.to), 1);
  const held = grip.kind.startsWith('bar') ? `standing out ${out}` : `over ${showMm(len(grip.to - grip.from), 1)}`;
  const datum = grip.datum ? `, from ${short(grip.datum)}` : '';
  const tooling = grip.tooling ? `, ${[grip.tooling.kind, 'thread' in grip.tooling ? grip.tooling.thread.name : ''].join(' ').trim()}` : '';
  const centre = grip.centre !== undefined && grip.kind !== 'bar-and-centre' ? ' and a centre' : '';
  const plug = grip.plug ? `, a plug in ${short(grip.plug.bore)}` : '';
  const light = grip.lightOnly ? ', light cuts only' : '';
  return `${no}. ${grip.kind}${on}${centre}, ${grip.out} end out, dia ${showMm(grip.diameter, 1)} ${held}${datum}${tooling}${plug}${light}`;
}

function operationLine(planned: PlannedPart, operation: Operation | undefined, setUp: SetUp): string {
  if (!operation) throw new Error('an operation that is not there');
  const way = isOffLathe(setUp.grip) ? operation.ways.bench : operation.ways[setUp.grip.out];
  const sizes = planned.chart.working
    .filter((w) => w.op === operation.id)
    .map(
      (w) =>
        `${short(w.makes)} ${w.measures === 'diameter' ? 'dia ' : ''}${limits(w.limits)}${w.measures === 'length' ? ` from ${short(w.from)}` : ''}`,
    );
  const drill =
    way?.sweeps.flatMap((s) =>
      s.take === 'bore' && operation.verb !== 'bore'
        ? [
            `dia ${showMm(s.diameter, 1)} to ${short(s.to.face)}${s.to.beyond ? ` ${s.to.beyond > 0 ? '+' : ''}${showMm(s.to.beyond, 1)}` : ''}`,
          ]
        : [],
    ) ?? [];
  const figures = planned.figures.find((f) => f.op === operation.id);
  const speed = figures?.rpm ? `${figures.rpm.value}/min` : '';
  const passes = figures?.passes ? `passes ${figures.passes.map((p) => showMm(p)).join(' ')}` : '';
  const narrow = figures?.narrow
    ? `first over the last ${showMm(figures.narrow.long)}: ${figures.narrow.passes.map((p) => showMm(p)).join(' ')}`
    : '';
  const asks = (operation.asks ?? []).map((a) => `asks ${a.kind}`);
  return `   ${[`${operation.verb} ${short(operation.feature)}`, ...drill, ...sizes, operation.tool.key, speed, narrow, passes, ...asks].filter((t) => t !== '').join('; ')}`;
}

const limits = (l: Limits): string => `${showMm(l.target)} [${showMm(l.lo)} ${showMm(l.hi)}]`;
const short = (id: string): string => id.slice(id.indexOf('/') + 1);

const figures = ({ has, wants, most }: Refusal): string => {
  const said = { has, wants, most };
  const given = Object.entries(said).flatMap(([name, l]) => (l === undefined ? [] : [`${name} ${showMm(l)}`]));
  return given.length === 0 ? '' : ` (${given.join(', ')})`;
};

function noRoute(none: NoRoute): readonly string[] {
  const one = (r: Refusal): string => `  ${r.what}: ${r.because.rule}${figures(r)}`;
  return [
    `${none.part}: no route; stuck at ${none.stuck.map(short).join(', ')}`,
    'refused:',
    ...none.refused.map(one),
    'would help:',
    ...none.wouldHelp.map(one),
  ];
}
