/** Histories of holds by number, so that a state holds one: which holds the work has been in, in order, and which tooling is paid for. */

export type Histories = {
  /** The history that has `grip` behind `history`. */
  after(history: number, grip: number): number;
  list(history: number): readonly number[];
  /** Has the hold tooling to be made, that no hold before it asked for? */
  pays(history: number, grip: number): boolean;
};

/** `tooling`: by hold, the number of the tooling that it asks for; less than 0 for none. Two holds may share one. */
export function newHistories(grips: number, tooling: (grip: number) => number): Histories {
  const lists: (readonly number[])[] = [[]];
  const known = new Map<number, number>();
  return {
    list: (history) => lists[history] ?? [],
    pays: (history, grip) => tooling(grip) >= 0 && !(lists[history] ?? []).some((earlier) => tooling(earlier) === tooling(grip)),
    after(history, grip) {
      const key = history * grips + grip;
      const id = known.get(key) ?? lists.length;
      if (id === lists.length) lists.push([...(lists[history] ?? []), grip]);
      known.set(key, id);
      return id;
    },
  };
}
