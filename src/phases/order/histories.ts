/** Histories of holds by number, so that a state holds one: which holds the work has been in, in order, and which tooling is paid for. */

export type Histories = {
  /** The history that has `grip` behind `history`. */
  after(history: number, grip: number): number;
  list(history: number): readonly number[];
  /** Of the tooling that the hold asks for, what no hold before it asked for. */
  unpaid(history: number, grip: number): readonly number[];
};

/** `tooling`: by hold, the numbers of the tooling that it asks for. Two holds may share one. */
export function newHistories(grips: number, tooling: (grip: number) => readonly number[]): Histories {
  const lists: (readonly number[])[] = [[]];
  const known = new Map<number, number>();
  return {
    list: (history) => lists[history] ?? [],
    unpaid: (history, grip) => {
      const asked = tooling(grip);
      if (asked.length === 0) return asked;
      return asked.filter((one) => !(lists[history] ?? []).some((earlier) => tooling(earlier).includes(one)));
    },
    after(history, grip) {
      const key = history * grips + grip;
      const id = known.get(key) ?? lists.length;
      if (id === lists.length) lists.push([...(lists[history] ?? []), grip]);
      known.set(key, id);
      return id;
    },
  };
}
