/**
 * Chains across parts: worst case of every link as its own part's chart makes it. Where that cannot be held blind, one link is cut last, to
 * the sum measured on the others: then what is left is that cut's own band, the readings, and what nobody can measure beforehand.
 */
import type { Outcome } from '../base/diagnostics.ts';
import { type Len, len, mm } from '../base/units.ts';
import { type Link, likelyPath, type Pair, sumPath } from '../geometry/chain.ts';
import { chainFacts } from '../handbook/chains.ts';
import type { Chain, ChainLink, Fitting } from '../model/part.ts';
import type { StackLink, StackPath, Working } from '../model/plan.ts';
import { type Charted, lastCutOf, linkOf } from './stack/links.ts';
import { notHeld } from './stack/not-held.ts';

export type { Charted } from './stack/links.ts';

/**
 * One record a chain. Errors: `chain.cannot-be-held` for one that is to be made blind and runs past what it asks (by how much, through
 * which links, and whether measuring and fitting which of them would hold it); `chain.cannot-be-fitted` where the last cut, the readings and
 * what can't be measured together are coarser than what is asked.
 */
export function stack(fitting: Fitting, parts: readonly Charted[]): Outcome<readonly StackPath[]> {
  const stacks = fitting.chains.map((chain) => stackOf(chain, parts));
  const found = fitting.chains.flatMap((chain, i) => {
    const path = stacks[i];
    return !path || path.met ? [] : [notHeld(chain, path, (link) => fittedAt(chain, link, parts, (made) => made.holds))];
  });
  return { value: stacks, found };
}

type Left = NonNullable<StackPath['left']> & Pair;

function stackOf(chain: Chain, parts: readonly Charted[]): StackPath {
  const ways = [chain.links, ...(chain.rivals ?? [])].map((links) => sumOf(links, parts));
  const [main] = ways;
  if (!main) throw new Error(`chain '${chain.id}' has no links`);
  const governs = ways.reduce((least, way, i) => (way.lo < (ways[least]?.lo ?? way.lo) ? i : least), 0);
  const [lo, hi] = [leastOf(ways.map((way) => way.lo)), leastOf(ways.map((way) => way.hi))];
  const plain = {
    ...{ of: chain.id, how: chain.how, links: main.links, lo, hi, likely: (ways[governs] ?? main).likely, asks: chain.asks },
    ...(chain.rivals ? { governs } : {}),
    ...(chain.open ? { open: chain.open } : {}),
  };
  const last = chain.links.find((link) => isFitted(chain, link, parts));
  const left =
    last && chain.how === 'measure and fit' ? fittedAt(chain, last, parts, ({ limits }) => len(limits.hi - limits.lo)) : undefined;
  if (!left) return { ...plain, met: isWithin(plain, chain) };
  const rest = ways.slice(1);
  const fitted = { lo: leastOf([left.lo, ...rest.map((way) => way.lo)]), hi: leastOf([left.hi, ...rest.map((way) => way.hi)]) };
  const { cut, readings, read, reckoned } = left;
  return { ...plain, fitted, left: { cut, readings, read, reckoned }, met: isWithin(fitted, chain) };
}

const leastOf = (lengths: readonly Len[]): Len => len(Math.min(...lengths));

const isWithin = (pair: Pair, { asks, open }: Chain): boolean => pair.lo >= asks.lo && (open === 'above' || pair.hi <= asks.hi);

type Way = Pair & { readonly links: readonly StackLink[]; readonly likely: Pair };
function sumOf(asked: readonly ChainLink[], parts: readonly Charted[]): Way {
  const links = asked.map((link) => linkOf(link, parts));
  const path = links.map((link, i): Link => ({ dim: `${i}`, sign: link.sign }));
  const pairs = new Map(links.map((link, i): [string, Pair] => [`${i}`, link]));
  return { links, ...sumPath(path, pairs), likely: likelyPath(path, pairs) };
}

/** The link whose drawn length is the fitted one. */
function isFitted({ fitted }: Chain, link: ChainLink, parts: readonly Charted[]): boolean {
  const part = parts.find((one) => one.part.id === fitted?.part)?.part;
  const drawn = part?.dimensions.find((one) => one.id === fitted?.dim);
  return drawn !== undefined && link.part === part?.id && [drawn.a, drawn.b].includes(link.a) && [drawn.a, drawn.b].includes(link.b);
}

/**
 * With that link cut last, to the sum measured on the others: about what is aimed at, the band of its last cut, what each reading may be out,
 * and what links that can't be measured may come to. `band`: its limits, or what its process holds. Undefined where no cut of a planned part
 * makes it.
 */
function fittedAt(chain: Chain, last: ChainLink, parts: readonly Charted[], band: (made: Working) => Len): Left | undefined {
  const made = lastCutOf(last, parts);
  if (!made) return undefined;
  const others = chain.links.filter((link) => link !== last);
  const kept = others.filter((link) => !isMeasured(link)).map((link) => strayOf(link));
  const readings = readingsOf(others);
  const [cut, read] = [band(made), mm(chainFacts.value('reading')) * readings];
  const below = Math.floor(cut / 2);
  const low = below + read - total(kept.map((one) => one.lo));
  const high = cut - below + read + total(kept.map((one) => one.hi));
  const { target } = chain.asks;
  const figures = { cut: len(cut), readings, read: len(2 * read), reckoned: len(total(kept.map((one) => one.hi - one.lo))) };
  return { ...figures, lo: len(target - low), hi: len(target + high) };
}

const total = (lengths: readonly number[]): number => lengths.reduce((sum, one) => sum + one, 0);

/** A ring under the nut and packing in its box are what they will come to be; read with what they stand in, they are there already. */
const isMeasured = (link: ChainLink): boolean => link.together !== undefined || (link.by !== 'tightened' && link.by !== 'packed');

/** How far it may lie from what the sum reckons with, as it counts in the sum. */
function strayOf({ nominal, limits, sign }: ChainLink): { readonly lo: number; readonly hi: number } {
  const [lo, hi] = limits ? [limits.lo - nominal, limits.hi - nominal] : [0, 0];
  return sign === 1 ? { lo, hi } : { lo: -hi, hi: -lo };
}

/** Links that are put together are read at once. */
function readingsOf(links: readonly ChainLink[]): number {
  const measured = links.filter(isMeasured);
  const together = new Set(measured.flatMap((link) => link.together ?? []));
  return together.size + measured.filter((link) => link.together === undefined).length;
}
