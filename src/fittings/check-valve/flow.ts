/** How much water the valve is to pass: stated, or from what the boiler steams, or from the pump; its mean and its peak. */
import { type Len, toMm } from '../../base/units.ts';
import { dutyFacts } from '../../handbook/duty.ts';
import { flowFacts } from '../../handbook/flow.ts';
import { pumpFlow, pumpPeak } from '../../handbook/valve-ball.ts';
import { type Book, note } from '../book.ts';
import type { CheckValveAsked } from './asked.ts';

/** mm3 a second */
export type Flow = { readonly mean: number; readonly peak: number };

/** Nothing where neither flow nor steam nor pump is told: then the pipe alone says how wide. */
export function flowOf(asked: CheckValveAsked, book: Book): Flow | undefined {
  const { duty } = asked;
  const fed = fedFlow(asked, book);
  if (fed !== undefined) return noted(fed, duty.pump === undefined ? 1 : fact('pump.peak'), asked, book);
  if (!duty.pump) return undefined;
  const { bore, stroke, speed } = duty.pump;
  const yields = fact('pump.yields');
  const mean = pumpFlow(toMm(bore), toMm(stroke), speed, yields);
  const inputs = { b: toMm(bore), s: toMm(stroke), n: speed, e: yields };
  note(book, 'flow', [mean, 'ml/min', 'Q = pi/4 b^2 s n e', inputs, dutyFacts.row('pump.yields').source]);
  // the peak is of what is swept: a stroke that loses nothing is the worst for the seat
  const peak = pumpPeak(toMm(bore), toMm(stroke), speed);
  note(book, 'peak', [perMinute(peak), 'ml/min', 'pi x what is swept', { b: toMm(bore), s: toMm(stroke), n: speed }]);
  return { mean: perSecond(mean), peak };
}

/** ml/min that are asked for, or that the boiler is to be given for what it steams; nothing where neither is told. */
function fedFlow({ duty }: CheckValveAsked, book: Book): number | undefined {
  if (duty.flow !== undefined) return duty.flow;
  const steam = duty.evaporation ?? steamOf(duty.surface, book);
  if (steam === undefined) return undefined;
  // kg/h to ml/min of cold water
  return ((steam * fact('feed.over-steam')) / fact('water.cold')) * (ML_PER_M3 / fact('minutes'));
}
const ML_PER_M3 = 1e6;

/** kg/h that so much heating surface steams. */
function steamOf(surface: number | undefined, book: Book): number | undefined {
  if (surface === undefined) return undefined;
  const rate = flowFacts.row('bourne');
  const steam = (rate.value * surface) / CM2_PER_M2;
  note(book, 'steaming', [steam, 'kg/h', 'A x 33.8 kg/(m2 h)', { A: surface }, rate.source]);
  return steam;
}
const CM2_PER_M2 = 1e4;

function noted(mean: number, peakOver: number, { duty }: CheckValveAsked, book: Book): Flow {
  const steam = duty.evaporation ?? (duty.surface === undefined ? undefined : (flowFacts.value('bourne') * duty.surface) / CM2_PER_M2);
  const row = dutyFacts.row('feed.over-steam');
  if (duty.flow !== undefined || steam === undefined) note(book, 'flow', [mean, 'ml/min', 'Q', {}], duty.flow);
  else note(book, 'flow', [mean, 'ml/min', 'Q = 1.5 E / W', { E: steam, W: fact('water.cold') }, row.source]);
  const peak = mean * peakOver;
  if (peakOver > 1) note(book, 'peak', [peak, 'ml/min', 'pi Q', { Q: mean }, dutyFacts.row('pump.peak').source]);
  return { mean: perSecond(mean), peak: perSecond(peak) };
}

const fact = (id: string): number => dutyFacts.value(id);
const perSecond = (mlPerMinute: number): number => (mlPerMinute * 1000) / fact('minutes');
const perMinute = (mm3PerSecond: number): number => (mm3PerSecond * fact('minutes')) / 1000;

/** Bore of the pipe; nothing or less where its walls meet. */
export const pipeBore = ({ pipe }: CheckValveAsked): Len => (pipe.outside - 2 * pipe.wall) as Len;
