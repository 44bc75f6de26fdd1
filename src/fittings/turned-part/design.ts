/** A user's own turned part: its description is understood already; here it meets the shelf and the drawer. */
import type { Diagnostic, Outcome } from '../../base/diagnostics.ts';
import { add, len } from '../../base/units.ts';
import { findMaterial, nearestMaterial } from '../../handbook/materials.ts';
import type { End } from '../../model/ids.ts';
import type { Fitting, Say, Stock } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { centreFor } from '../centre.ts';
import { ratio } from '../limits.ts';
import { type EndAsk, partFrom } from '../outline.ts';
import type { Meant } from './meant.ts';

export function designTurnedPart(asked: Meant, workshop: Workshop): Outcome<Fitting> {
  const found: Diagnostic[] = [];
  const material = findMaterial(asked.material);
  if (!material) return { found: [unknownMaterial(asked.material)] };
  const stock = stockFor(asked, material.id, workshop, found);
  if (found.length > 0) return { found };
  const { first, second, sections, holes, sides, lengths, truths } = asked.outline;
  const part = partFrom({
    ...{ id: asked.name, kind: asked.name, quantity: asked.quantity, use: 'fitting', stock },
    ...{ sections, lengths, ...(truths ? { truths } : {}), ...(holes ? { holes } : {}), ...(sides ? { sides } : {}) },
    first: { ...first, ...centreIn(asked, 'first', workshop) },
    second: { ...second, ...centreIn(asked, 'second', workshop) },
  });
  const fitting: Fitting = {
    ...{ kind: 'turned-part', title: asked.title, parts: [part], bought: [], chains: [], derivations: [], assembly: [], tests: [] },
    cautions: cautions(material.lead),
  };
  return { value: fitting, found };
}

function unknownMaterial(material: string): Diagnostic {
  const near = nearestMaterial(material) ?? '';
  return { code: 'design.part-material', severity: 'error', grounds: { material, near } };
}

/** The bar that was asked for, or the smallest that cleans up. */
function stockFor(asked: Meant, material: string, workshop: Workshop, found: Diagnostic[]): Stock {
  const { bar } = asked;
  if (!bar) return barFor({ part: asked.name, material, section: 'round', across: asked.widest, turned: true }, workshop, found);
  if (bar.across < asked.widest)
    found.push({ code: 'design.part-bar-small', severity: 'error', grounds: { part: asked.name, bar: bar.across, wants: asked.widest } });
  const ask = { part: asked.name, material, section: bar.section, across: bar.across, turned: false, named: !asked.keepsBar };
  const stock = barFor(ask, workshop, found);
  if (stock.from !== 'bar' || asked.keepsBar) return stock;
  const { asStock: _, ...turned } = stock;
  return turned;
}

/** An end that may carry a centre is given one where the part is slender enough to want it, and the drawer has the drill. */
function centreIn(asked: Meant, end: End, workshop: Workshop): Pick<EndAsk, 'centre' | 'centreUnder'> {
  const { sections, holes } = asked.outline;
  // a hole that opens there leaves no room for one
  if (!asked.centres.includes(end) || (holes ?? []).some((hole) => hole.opens.includes(end))) return {};
  const long = sections.reduce((sum, s) => add(sum, s.length), len(0));
  const slim = Math.min(...sections.map((s) => s.size.target));
  if (long <= slim * ratio('grip.stick-out.most')) return {};
  const at = end === 'first' ? sections[0] : sections.at(-1);
  return centreFor(workshop, at?.cone && (at.cone.at === end || at.cone.twin) ? at.cone.mouth.target : (at?.size.target ?? len(0)));
}

function cautions(lead: boolean): readonly Say[] {
  const ids = ['caution.lathe', 'caution.bar', 'caution.parting', ...(lead ? ['caution.lead'] : [])];
  return ids.map((id) => ({ id, grounds: {} }));
}
