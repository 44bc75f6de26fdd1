/**
 * Every part under specs/fittings/parts, planned: set-ups, operations with their sizes and figures, what is proved, or what was refused and
 * what would help. Beside each plan (NAME.txt) stands what a turner said of it (NAME.md); a plan that changes is read again.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { planAsText } from './parts-as-text.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const GOLDENS = join(ROOT, 'tests', 'goldens', 'parts');
const read = (...path: readonly string[]) => ({ name: path.at(-1) ?? '', text: readFileSync(join(ROOT, ...path), 'utf8') });
const plan = (part: string, workshop: string) =>
  compile({ fitting: read('specs', 'fittings', 'parts', `${part}.yaml`) }, { workshop: read('specs', 'workshops', `${workshop}.yaml`) });

const PARTS = readdirSync(join(ROOT, 'specs', 'fittings', 'parts'))
  .map((name) => name.replace('.yaml', ''))
  .sort();
/** What is not on the usual bench lathe. */
const ELSEWHERE: readonly (readonly [part: string, workshop: string])[] = [['chest-cover', 'small-lathe']];
/** Cannot be planned: what is said of them is the golden. */
const REFUSED: Readonly<Record<string, string>> = { 'sleeve-too-thin': 'design.part-wall', 'chest-cover on small-lathe': 'plan.no-route' };
/** Parts whose plan is not yet what a turner would do: they are planned or refused, and no golden is kept of it. */
const NOT_YET: Readonly<Record<string, string>> = {};

describe("a part of one's own", () => {
  const jobs = [...PARTS.map((part) => [part, 'bench-lathe'] as const), ...ELSEWHERE].map(
    ([part, workshop]) => [workshop === 'bench-lathe' ? part : `${part} on ${workshop}`, part, workshop] as const,
  );
  it.each(jobs.filter(([name]) => !(name in NOT_YET)))('%s', async (name, part, workshop) => {
    const compiled = plan(part, workshop);
    const refused = REFUSED[name];
    if (refused) expect(compiled.found.map((d) => d.code)).toContain(refused);
    else expect(compiled.plan?.parts.map((p) => [p.part.id, p.proof.holds])).toEqual(compiled.plan?.parts.map((p) => [p.part.id, true]));
    expect(compiled.plan === undefined).toBe(refused !== undefined);
    const file = name.replaceAll(' ', '-');
    await expect(planAsText(compiled)).toMatchFileSnapshot(join(GOLDENS, `${file}.txt`));
    expect(existsSync(join(GOLDENS, `${file}.md`))).toBe(true);
  });
  it('every exception named here is a part that there is, and has no golden', () => {
    const names = jobs.map(([name]) => name);
    expect([...Object.keys(NOT_YET), ...Object.keys(REFUSED)].filter((name) => !names.includes(name))).toEqual([]);
    expect(Object.keys(NOT_YET).filter((name) => existsSync(join(GOLDENS, `${name}.txt`)))).toEqual([]);
  });
  it('is planned alike twice', () =>
    expect(planAsText(plan('gland-nut', 'bench-lathe'))).toBe(planAsText(plan('gland-nut', 'bench-lathe'))));
});
