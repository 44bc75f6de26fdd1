/** A chain across parts that does not come out: by how much, through what, and what would hold it. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { type Len, len, showMm } from '../../base/units.ts';
import type { Pair } from '../../geometry/chain.ts';
import type { Chain, ChainLink } from '../../model/part.ts';
import type { StackPath } from '../../model/plan.ts';

/** `fitting`: what is left where that link is cut last, to the measured sum of the others; undefined where no cut makes it. */
export function notHeld(chain: Chain, path: StackPath, fitting: (link: ChainLink) => Pair | undefined): Diagnostic {
  const pair = path.fitted ?? path;
  const short = Math.max(chain.asks.lo - pair.lo, path.open === 'above' ? 0 : pair.hi - chain.asks.hi);
  const way = [chain.links, ...(chain.rivals ?? [])][path.governs ?? 0] ?? chain.links;
  const grounds = {
    ...{ chain: chain.id, lo: showMm(pair.lo), hi: showMm(pair.hi), asksLo: showMm(chain.asks.lo), asksHi: showMm(chain.asks.hi) },
    ...{ short: showMm(len(short)), open: path.open ?? '', links: way.length },
    through: way.map((link) => `${link.part} ${nameOf(link)}`).join(', '),
  };
  if (path.fitted) return { code: 'chain.cannot-be-fitted', severity: 'error', grounds: { ...grounds, ...leftBy(chain, path) } };
  return { code: 'chain.cannot-be-held', severity: 'error', grounds: { ...grounds, ...wouldFit(chain, fitting) } };
}

const nameOf = ({ part, a, b }: ChainLink): string => {
  const short = (id: string): string => (id.startsWith(`${part}/`) ? id.slice(part.length + 1) : id);
  return `${short(a)}-${short(b)}`;
};

function leftBy({ links }: Chain, { left }: StackPath): Diagnostic['grounds'] {
  const none = len(0);
  const named = links.filter((link) => (link.by === 'tightened' || link.by === 'packed') && link.together === undefined);
  return {
    ...{ cut: showMm(left?.cut ?? none), readings: left?.readings ?? 0, read: showMm(left?.read ?? none) },
    ...{ reckoned: showMm(left?.reckoned ?? none), unmeasured: named.map((link) => link.part).join(', ') },
  };
}

/** Each link in turn is cut last to the measured sum of the others: the one that leaves least. Empty where none comes within. */
function wouldFit(chain: Chain, fitting: (link: ChainLink) => Pair | undefined): { readonly fit: string; readonly left: string } {
  const { asks, open } = chain;
  const tried = chain.links.flatMap((link): { readonly name: string; readonly band: Len }[] => {
    const left = fitting(link);
    if (!left || left.lo < asks.lo || (open !== 'above' && left.hi > asks.hi)) return [];
    return [{ name: `${link.part} ${nameOf(link)}`, band: len(left.hi - left.lo) }];
  });
  const best = tried.sort((p, q) => p.band - q.band)[0];
  return { fit: best?.name ?? '', left: showMm(best?.band ?? len(0)) };
}
