/** What is offered where limits cannot be met is carried out here anew, from its words alone: it plans, and its proof holds. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/base/diagnostics.ts';
import { len, mm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { heldBy } from '../../src/handbook/capability.ts';
import type { Part } from '../../src/model/part.ts';
import type { Route } from '../../src/model/plan.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { candidates } from '../../src/phases/candidates.ts';
import { chart } from '../../src/phases/chart.ts';
import { design } from '../../src/phases/design.ts';
import { order } from '../../src/phases/order.ts';
import { prove } from '../../src/phases/prove.ts';
import { read } from '../../src/phases/read.ts';
import { demoWorkshop } from '../fixtures/shop.ts';

const file = (path: string) => ({
  name: path.slice(path.lastIndexOf('/') + 1),
  text: readFileSync(new URL(`../../specs/fittings/${path}`, import.meta.url), 'utf8'),
});

/** A lathe that holds one process so coarsely that this part's lengths cannot be met; and the kinds of change that are offered. */
const COARSE: readonly (readonly [spec: string, holds: string, offered: readonly string[]])[] = [
  ['parts/blind-nipple.yaml', 'process: face, length: 0.35 mm', ['limit']],
  ['parts/blind-nipple.yaml', 'process: turn, length: 0.35 mm', ['datum', 'limit']],
  ['parts/chest-cover.yaml', 'process: turn, length: 0.35 mm', ['limit']],
  ['parts/crosshead-pin.yaml', 'process: turn, length: 0.35 mm', ['limit']],
  ['parts/drain-nozzle.yaml', 'process: turn, length: 0.35 mm', ['limit']],
  ['parts/drain-plug.yaml', 'process: groove, length: 0.3 mm', ['limit']],
  ['parts/gland-nut.yaml', 'process: face, length: 0.35 mm', ['limit']],
  ['parts/packing-sleeve.yaml', 'process: face, length: 0.35 mm', ['datum', 'limit']],
  ['parts/packing-sleeve.yaml', 'process: bore, length: 0.5 mm', ['datum', 'limit']],
  ['parts/stepped-bush.yaml', 'process: face, length: 0.35 mm', ['datum', 'limit']],
  ['parts/stepped-bush.yaml', 'process: bore, length: 0.5 mm', ['datum', 'limit']],
  ['parts/strainer-body.yaml', 'process: face, length: 0.35 mm', ['datum', 'limit']],
  ['parts/thin-ring.yaml', 'process: face, length: 0.35 mm', ['limit']],
  ['parts/wheel-spindle.yaml', 'process: turn, length: 0.35 mm', ['limit']],
];

type Job = { readonly part: Part; readonly route: Route; readonly workshop: Workshop; readonly short: readonly Diagnostic[] };
function jobOf(spec: string, holds: string): Job {
  const workshop = { ...demoWorkshop, text: `${demoWorkshop.text.trimEnd()}\nholds:\n  - { ${holds} }\n` };
  const short = compile({ fitting: file(spec), workshop }, { workshop: demoWorkshop }).found.filter(
    (one) => one.code === 'chart.cannot-be-met',
  );
  const job = read({ fitting: file(spec), workshop }, demoWorkshop, FITTING_KINDS).value;
  const part = job && design(job, DESIGNS).value?.parts.find((one) => one.id === short[0]?.grounds.part);
  const route = job && part && order(candidates(part, job.workshop), job.workshop).route;
  if (!job || !part || !route) throw new Error(`no part and route of ${spec}`);
  return { part, route, workshop: job.workshop, short };
}
const shortId = (part: Part, name: unknown): string => `${part.id}/${String(name)}`;

/** What stays short, and what the proof says against it. */
function leftWith({ workshop }: Job, part: Part, route: Route): readonly unknown[] {
  const { value, found } = chart(part, route, heldBy(workshop.holds ?? []));
  if (!value) return found.map((one) => one.grounds.dimension);
  return prove({ part, route, chart: value, workshop }).claims.filter((one) => !one.holds);
}

const setBy = (route: Route, part: Part, { hold, datum }: Diagnostic['grounds']): Route => ({
  ...route,
  setUps: route.setUps.map((one) =>
    one.grip.id === shortId(part, hold) ? { ...one, grip: { ...one.grip, datum: shortId(part, datum) } } : one,
  ),
});

function wider(part: Part, short: readonly Diagnostic[]): Part {
  const dimensions = part.dimensions.map((one) => {
    const asked = short.find(({ grounds }) => shortId(part, grounds.dimension) === one.id && grounds.limit === true);
    const by = asked ? mm(Number(asked.grounds.wider)) : 0;
    return { ...one, limits: { ...one.limits, lo: len(one.limits.lo - by), hi: len(one.limits.hi + by) } };
  });
  return { ...part, dimensions };
}

describe('what is offered', () => {
  it.each(COARSE)('%s, %s', (spec, holds, offered) => {
    const job = jobOf(spec, holds);
    const { part, route, workshop, short } = job;
    const told = short.flatMap(({ grounds }) => [...(grounds.datum === '' ? [] : ['datum']), ...(grounds.limit === true ? ['limit'] : [])]);
    expect([...new Set(told)].sort()).toEqual(offered);
    expect(leftWith(job, part, route)).toEqual(short.map((one) => one.grounds.dimension));
    for (const { grounds } of short.filter((one) => one.grounds.datum !== '')) {
      const left = leftWith(job, part, setBy(route, part, grounds));
      expect(left).not.toContain(grounds.dimension);
      expect(short.map((one) => one.grounds.dimension)).toEqual(expect.arrayContaining([...left]));
    }
    // the limits written anew on the drawing, all that are offered at once: planned from the beginning
    const drawn = wider(part, short);
    const again = order(candidates(drawn, workshop), workshop).route;
    if (!again) throw new Error('no route');
    expect(leftWith(job, drawn, again)).toEqual([]);
  });
});
