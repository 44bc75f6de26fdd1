/** The drill press: as many turns as the drill and the metal bear, of its own speeds where the workshop says which it has. */
import { cuttingData } from '../../handbook/cutting.ts';
import { numbersTable } from '../../handbook/numbers.ts';
import type { Figures } from '../../model/plan.ts';
import { chooseSpeed, type Speeds } from '../../rules/cutting.ts';
import { type Asked, CALLED } from './asked.ts';

export function pressFigures(asked: Asked): Partial<Figures> {
  const { removal, workshop, material } = asked;
  const { verb, tool } = removal.operation;
  const called = tool.kind === 'drill-press' ? CALLED[verb] : undefined;
  // drills of the rack are of high-speed steel
  const data = called && cuttingData(material, called, 'HSS');
  if (!data || tool.size === undefined) return {};
  const own = workshop.tools.drillPressSpeeds;
  const press = chooseSpeed({ vc: data.vcNom, diameter: tool.size, speeds: own ?? ANY, bounds: [] });
  return { press: own ? press : { ...press, about: true } };
}

/** Any that is told to a round figure, up to what no drill of a hand's press runs over. */
const ANY: Speeds = { from: numbersTable.value('rpm.press.least'), to: numbersTable.value('rpm.press.most') };
