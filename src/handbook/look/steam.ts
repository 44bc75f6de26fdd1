/** `look steam`: dry saturated steam and the water beside it at a gauge pressure; what an opening passes; what copper still bears. */
import { readQuantity } from '../../base/quantity.ts';
import { criticalRatio, flowFacts, napier } from '../flow.ts';
import { type Saturated, saturated } from '../if97-regions.ts';
import { STANDARD_ATMOSPHERE, ZERO_CELSIUS } from '../if97-saturation.ts';
import { cite } from '../sources.ts';
import { copperStress } from '../walls.ts';
import { type Ask, type Found, figure, grounds, type Part, row } from './answer.ts';

/** '7 bar', '100 psi': gauge; '8 bar abs' or '8 bar a': absolute. */
export function lookSteam({ words }: Ask): Found {
  const absolute = /^(.*?)\s*(?:abs(?:olute)?|a)$/i.exec(words.trim());
  const read = readQuantity(absolute ? (absolute[1] ?? '') : words.trim().replace(/\s*(?:g|gauge)$/i, ''), 'pressure');
  if (typeof read !== 'number') return { unknown: words, near: ['7 bar', '100 psi', '8 bar abs'] };
  const pressure = absolute ? read : read + STANDARD_ATMOSPHERE;
  const state = pressure > LEAST && pressure <= MOST ? saturated(pressure / 10) : undefined;
  if (!state) return { unknown: words, near: ['0 bar', '7 bar', '150 bar'] };
  const copper = copperStress(state.temperature - ZERO_CELSIUS);
  return {
    answer: {
      subject: 'steam',
      name: words.trim(),
      parts: [statePart(pressure, state), flowPart(pressure, copper?.stress)],
      notes: [absolute ? 'absolute' : 'gauge', 'napier'],
      sources: grounds({ source: cite('if97'), standing: 'standard' }, { source: cite('napier'), standing: 'from memory' }, copper),
    },
  };
}

function statePart(pressure: number, { temperature, water, steam, latent }: Saturated): Part {
  return {
    title: 'state',
    rows: [
      row('gauge', figure(pressure - STANDARD_ATMOSPHERE, 'bar', 3)),
      row('absolute', figure(pressure, 'bar', 3)),
      row('temperature', figure(temperature - ZERO_CELSIUS, '°C', 2)),
      row('steam-volume', figure(steam.volume, 'm³/kg', 5)),
      row('steam-density', figure(1 / steam.volume, 'kg/m³', 3)),
      row('water-density', figure(1 / water.volume, 'kg/m³', 1)),
      row('water-heat', figure(water.enthalpy, 'kJ/kg', 1)),
      row('latent', figure(latent, 'kJ/kg', 1)),
      row('steam-heat', figure(steam.enthalpy, 'kJ/kg', 1)),
    ],
  };
}

function flowPart(pressure: number, copper: number | undefined): Part {
  return {
    title: 'flow',
    rows: [
      row('napier', figure(napier(pressure, 1) ?? 0, 'kg/(h mm²)', 3)),
      row('critical-outlet', figure(pressure * criticalRatio(flowFacts.value('k.saturated')), 'bar', 2)),
      ...(copper === undefined ? [] : [row('copper', figure(copper, 'MPa', 1))]),
    ],
  };
}

/** bar: steam is tabled from its triple point to region 3. */
const LEAST = 0.00611213;
const MOST = 165;
