/** Damage to single features of the parts that have them: each is refused by the claim that should refuse it, and every kind is tried. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import type { Damaged } from '../fixtures/damage.ts';
import { FEATURE_DAMAGES } from '../fixtures/damage-features.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const file = (...path: readonly string[]) => ({ name: path.at(-1) ?? '', text: readFileSync(join(ROOT, ...path), 'utf8') });
const WORKSHOP = file('specs', 'workshops', 'bench-lathe.yaml');
const SPECS = ['bearing-oiler', 'taper-plug', 'guard-column', 'locked-plug', 'strainer-body', 'packing-sleeve', 'lock-nut'];

function soundOf(spec: string): readonly Proved[] {
  const { plan } = compile({ fitting: file('specs', 'fittings', 'parts', `${spec}.yaml`) }, { workshop: WORKSHOP });
  if (!plan) throw new Error(`${spec} has no plan`);
  return plan.parts.map(({ part, route, chart, figures }) => ({ part, route, chart, figures, workshop: plan.workshop }));
}

/** Empty when it is refused as it should be; else what the proof said instead. */
function accepted({ asked, by, about }: Damaged): string {
  const failed = prove(asked).claims.filter((claim) => !claim.holds);
  const right = failed.some((claim) => by.includes(claim.kind) && (about === undefined || claim.about === about));
  return right ? '' : `wanted ${by.join(' or ')} ${about ?? ''}; failed: ${failed.map((c) => `${c.kind} ${c.about}`).join(', ')}`;
}

describe('sabotage of features', () => {
  const tried = new Set<string>();
  it.each(SPECS)('%s', (spec) => {
    for (const sound of soundOf(spec)) {
      expect(prove(sound).holds).toBe(true);
      for (const { kind, spoil } of FEATURE_DAMAGES) {
        const damaged = spoil(sound);
        if (!damaged) continue;
        tried.add(kind);
        expect(accepted(damaged), `${sound.part.id}: ${kind}`).toBe('');
      }
    }
  });
  it('every kind has been tried', () => expect(FEATURE_DAMAGES.map((one) => one.kind).filter((kind) => !tried.has(kind))).toEqual([]));
});
