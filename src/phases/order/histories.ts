/** Histories of holds by number, so that a state holds one: which holds the work has been in, in order, and which tooling is paid for. */

export type Histories = {
  /** The history that has `grip` behind `history`. */
  after(history: number, grip: number): number;
  list(history: number): readonly number[];
  /** Does the work come into this hold for the first time, and has the hold tooling to be made? */
  pays(history: number, grip: number): boolean;
};

export function newHistories(grips: number, tooled: (grip: number) => boolean): Histories {
  const lists: (readonly number[])[] = [[]];
  const known = new Map<number, number>();
  return {
    list: (history) => lists[history] ?? [],
    pays: (history, grip) => tooled(grip) && !(lists[history] ?? []).includes(grip),
    after(history, grip) {
      const key = history * grips + grip;
      const id = known.get(key) ?? lists.length;
      if (id === lists.length) lists.push([...(lists[history] ?? []), grip]);
      known.set(key, id);
      return id;
    },
  };
}
