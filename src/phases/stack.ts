/**
 * Chains across parts: worst case of every link as its own part's chart makes it. Where that cannot be held blind, one link is cut last, to
 * the sum measured on the others: then only that cut's own band is left.
 */
import type { Diagnostic, Outcome } from '../base/diagnostics.ts';
import { type Len, len, showMm } from '../base/units.ts';
import { type Link, likelyPath, type Pair, sumPath } from '../geometry/chain.ts';
import type { Chain, Fitting, Part } from '../model/part.ts';
import type { Chart, Path, StackPath, Working } from '../model/plan.ts';

export type Charted = { readonly part: Part; readonly chart: Chart };
type StackLink = StackPath['links'][number];

/**
 * One record a chain. Errors: `chain.cannot-be-held` for one that is to be made blind and runs past what it asks (by how much, through
 * which links, and whether measuring and fitting which of them would hold it); `chain.cannot-be-fitted` where the last cut is coarser than
 * what is asked.
 */
export function stack(fitting: Fitting, parts: readonly Charted[]): Outcome<readonly StackPath[]> {
  const stacks = fitting.chains.map((chain) => stackOf(chain, parts));
  const found = fitting.chains.flatMap((chain, i) => {
    const path = stacks[i];
    return !path || path.met ? [] : [notHeld(chain, path, parts)];
  });
  return { value: stacks, found };
}

function stackOf(chain: Chain, parts: readonly Charted[]): StackPath {
  const links = chain.links.map((link) => linkOf(link, parts));
  const path = links.map((link, i): Link => ({ dim: `${i}`, sign: link.sign }));
  const pairs = new Map(links.map((link, i): [string, Pair] => [`${i}`, link]));
  const worst = sumPath(path, pairs);
  const plain = { of: chain.id, how: chain.how, links, ...worst, likely: likelyPath(path, pairs), asks: chain.asks };
  const last = lastCut(chain, parts);
  if (chain.how === 'blind' || !last) return { ...plain, met: isWithin(worst, chain.asks) };
  const fitted = fittedTo(chain, last);
  return { ...plain, fitted, met: isWithin(fitted, chain.asks) };
}

const isWithin = (pair: Pair, asks: Pair): boolean => pair.lo >= asks.lo && pair.hi <= asks.hi;

/** By the part's chart; else as the link says; else its nominal size, and the record says so. */
function linkOf({ part, a, b, sign, nominal, limits }: Chain['links'][number], parts: readonly Charted[]): StackLink {
  const own = pathOf(parts, part, a, b);
  if (own) return { part, a, b, sign, lo: own.lo, hi: own.hi, from: 'chart' };
  return limits
    ? { part, a, b, sign, lo: limits.lo, hi: limits.hi, from: 'stated' }
    : { part, a, b, sign, lo: nominal, hi: nominal, from: 'nominal' };
}

/** The drawn length between the two faces, as the part's chart has it. */
function pathOf(parts: readonly Charted[], id: string, a: string, b: string): Path | undefined {
  const charted = parts.find((one) => one.part.id === id);
  const drawn = charted?.part.dimensions.find((one) => [a, b].includes(one.a) && [a, b].includes(one.b));
  return charted?.chart.drawing.find((path) => path.of === drawn?.id);
}

/** The cut that makes the fitted length. */
function lastCut(chain: Chain, parts: readonly Charted[]): Working | undefined {
  const { fitted } = chain;
  const charted = parts.find((one) => one.part.id === fitted?.part);
  const path = charted?.chart.drawing.find((one) => one.of === fitted?.dim);
  const dims = path?.links.map((link) => link.dim) ?? [];
  return charted?.chart.working.findLast((one) => dims.includes(one.id));
}

/** The sum that is measured has no band of its own any more: what is left is the band of the last cut, about what is aimed at. */
function fittedTo(chain: Chain, { limits }: Working): Pair {
  const band = limits.hi - limits.lo;
  const below = Math.floor(band / 2);
  return { lo: len(chain.asks.target - below), hi: len(chain.asks.target - below + band) };
}

// ---- what cannot be held ------------------------------------------------------------------------------------------------------
function notHeld(chain: Chain, path: StackPath, parts: readonly Charted[]): Diagnostic {
  const pair = path.fitted ?? path;
  const short = Math.max(chain.asks.lo - pair.lo, pair.hi - chain.asks.hi);
  const grounds = {
    ...{ chain: chain.id, lo: showMm(pair.lo), hi: showMm(pair.hi), asksLo: showMm(chain.asks.lo), asksHi: showMm(chain.asks.hi) },
    ...{
      short: showMm(len(short)),
      links: path.links.length,
      through: path.links.map((link) => `${link.part} ${nameOf(link)}`).join(', '),
    },
  };
  if (path.fitted) return { code: 'chain.cannot-be-fitted', severity: 'error', grounds };
  return { code: 'chain.cannot-be-held', severity: 'error', grounds: { ...grounds, ...wouldFit(chain, path, parts) } };
}

const nameOf = ({ part, a, b }: StackLink): string => {
  const short = (id: string): string => (id.startsWith(`${part}/`) ? id.slice(part.length + 1) : id);
  return `${short(a)}-${short(b)}`;
};

/** Each link in turn is cut last to the measured sum of the others: the one that leaves least. Empty where none comes within. */
function wouldFit(chain: Chain, path: StackPath, parts: readonly Charted[]): { readonly fit: string; readonly left: string } {
  const asked = chain.asks.hi - chain.asks.lo;
  const tried = path.links.flatMap((link): { readonly name: string; readonly band: Len }[] => {
    const charted = parts.find((one) => one.part.id === link.part);
    const own = pathOf(parts, link.part, link.a, link.b);
    const last = charted?.chart.working.findLast((one) => own?.links.some((each) => each.dim === one.id));
    return last ? [{ name: `${link.part} ${nameOf(link)}`, band: last.holds }] : [];
  });
  const best = tried.filter((one) => one.band <= asked).sort((p, q) => p.band - q.band)[0];
  return { fit: best?.name ?? '', left: showMm(best?.band ?? len(0)) };
}
