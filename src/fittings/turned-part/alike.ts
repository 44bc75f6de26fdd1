/** Sections of one size on either side of a groove: a turner takes them in one cut, and they are one cylinder. */
import type { Limits } from '../../model/part.ts';
import type { AskedRole, AskedSection, TurnedPartAsked } from './asked.ts';
import { type Faults, fault } from './fault.ts';
import { isTaper } from './taper.ts';

/** By section, the name of the one that it is cut with (the longest of them), or nothing; and the role that is the strictest among them. */
export type Alike = { readonly oneWith?: string; readonly role?: AskedRole };

export function alikeOf(asked: TurnedPartAsked, sizes: readonly Limits[], faults: Faults): readonly Alike[] {
  const groups = groupsOf(asked, sizes, faults);
  return asked.outside.map((_, i): Alike => {
    const group = groups.find((one) => one.includes(i));
    if (!group) return {};
    const sections = group.map((k) => asked.outside[k] as AskedSection);
    const lead = sections.reduce((a, b) => (b.length.nominal > a.length.nominal ? b : a));
    const role = STRICTEST.find((one) => sections.some((s) => s.role === one));
    return { ...(lead === asked.outside[i] ? {} : { oneWith: lead.name }), ...(role ? { role } : {}) };
  });
}

const STRICTEST: readonly AskedRole[] = ['seat', 'sealing', 'register', 'running', 'clearance', 'free'];

/** Two neighbours but for grooves: one cut if their limits are the same; if these overlap and differ, neither of two cuts is sure of metal. */
function groupsOf(asked: TurnedPartAsked, sizes: readonly Limits[], faults: Faults): readonly (readonly number[])[] {
  const groups: number[][] = [];
  const plain = asked.outside.flatMap((section, i) => (section.groove ? [] : [i]));
  plain.slice(1).forEach((i, n) => {
    const before = plain[n] as number;
    const [a, b] = [sizes[before], sizes[i]];
    if (isTaper(asked.outside[before]) || isTaper(asked.outside[i])) return;
    if (i === before + 1 || !a || !b || a.hi < b.lo || b.hi < a.lo) return;
    if (a.lo === b.lo && a.hi === b.hi && isOneCut(asked, before, i)) {
      const group = groups.find((one) => one.includes(before));
      if (group) group.push(i);
      else groups.push([before, i]);
      return;
    }
    const grounds = { feature: asked.outside[i]?.name ?? '', before: asked.outside[before]?.name ?? '' };
    const thread = isThreaded(asked, before) || isThreaded(asked, i);
    fault(faults, ['outside', i], 'alike-across-groove', { ...grounds, thread, same: isSameThread(asked, before, i) });
  });
  return groups;
}

/** Both plain, or both of one thread that starts from one end: a groove divides it. */
function isOneCut(asked: TurnedPartAsked, i: number, k: number): boolean {
  const [a, b] = [asked.outside[i], asked.outside[k]];
  if (!a || !b || a['as-bar'] === true || b['as-bar'] === true) return false;
  const starts = a.starts === undefined || b.starts === undefined || a.starts === b.starts;
  return isSame(a, b) && starts;
}

const isSame = (a: AskedSection, b: AskedSection): boolean => a.thread?.thread === b.thread?.thread && a.thread?.fit === b.thread?.fit;

/** Of one thread, each from an end of its own: from one end it is one cut. */
function isSameThread(asked: TurnedPartAsked, i: number, k: number): boolean {
  const [a, b] = [asked.outside[i], asked.outside[k]];
  return a?.thread !== undefined && b?.thread !== undefined && isSame(a, b);
}

const isThreaded = (asked: TurnedPartAsked, i: number): boolean => asked.outside[i]?.thread !== undefined;

/** The first and the last piece of the thread that piece `i` belongs to: it may be divided by grooves. */
export function threadSpan(asked: TurnedPartAsked, i: number): { readonly first: number; readonly last: number } {
  const reach = (from: number, way: 1 | -1): number => {
    const [groove, beyond] = [asked.outside[from + way], from + 2 * way];
    return groove?.groove && isThreaded(asked, beyond) && isOneCut(asked, from, beyond) ? reach(beyond, way) : from;
  };
  return { first: reach(i, -1), last: reach(i, 1) };
}
