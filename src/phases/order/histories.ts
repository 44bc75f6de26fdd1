/** Histories of holds by number, so that a state holds one: which holds the work has been in, in order, and which tooling is paid for. */

export type Histories = {
  /** The history that has `grip` behind `history`. */
  after(history: number, grip: number): number;
  list(history: number): readonly number[];
  /** By hold, what coming into it costs after this history: its own price, and the making of what it asks for and no hold before it did. */
  prices(history: number): ArrayLike<number>;
  /** What two holds that both were to follow would pay twice by those prices: the making of what both ask for. */
  twice(history: number, grip: number, other: number): number;
};
/** `tooling`: the numbers of what the hold asks for. Two holds may share one. */
type Hold = { readonly price: number; readonly tooling: readonly number[] };

/** `makings`: by the tooling's number, what making it costs. */
export function newHistories(holds: readonly Hold[], makings: readonly number[]): Histories {
  const lists: (readonly number[])[] = [[]];
  const known = new Map<number, number>();
  const priced: Float64Array[] = [];
  const asks = (grip: number): readonly number[] => holds[grip]?.tooling ?? NONE;
  const making = (history: number, tooling: number): number =>
    (lists[history] ?? NONE).some((earlier) => asks(earlier).includes(tooling)) ? 0 : (makings[tooling] ?? 0);
  const priceList = (history: number): Float64Array =>
    Float64Array.from(holds, (hold) => hold.tooling.reduce((sum, one) => sum + making(history, one), hold.price));
  return {
    list: (history) => lists[history] ?? NONE,
    prices(history) {
      const list = priced[history] ?? priceList(history);
      priced[history] = list;
      return list;
    },
    twice(history, grip, other) {
      const [a, b] = [asks(grip), asks(other)];
      if (a.length === 0 || b.length === 0) return 0;
      return a.reduce((sum, one) => sum + (b.includes(one) ? making(history, one) : 0), 0);
    },
    after(history, grip) {
      const key = history * holds.length + grip;
      const id = known.get(key) ?? lists.length;
      if (id === lists.length) lists.push([...(lists[history] ?? NONE), grip]);
      known.set(key, id);
      return id;
    },
  };
}
const NONE: readonly number[] = [];
