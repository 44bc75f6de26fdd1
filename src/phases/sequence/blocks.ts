/**
 * Stops of one part that no better day would part: nothing of another part has to come between, and no tooling that stays in the chuck is
 * asked for there. Taken together they are laid aside less often, and what is in the chuck is put out no more often.
 */
import type { Stop } from './stops.ts';

/** `in`: what it must find in the spindle; `out`: it puts out what stood there; neither: work off the lathe. */
export type Block = {
  /** Places in the list of stops, in the part's order. */
  readonly stops: readonly number[];
  readonly in?: NonNullable<Stop['on']>;
  readonly out: boolean;
  /** Something is made in the chuck for it besides: what stood there is out before. */
  readonly fresh: boolean;
};

/** By part, in the order of the parts in the list, each part's blocks in its own order. */
export function blocksOf(stops: readonly Stop[]): readonly (readonly Block[])[] {
  const waited = new Set(stops.flatMap((stop) => stop.after));
  const parts = [...new Set(stops.map((stop) => stop.part))];
  return parts.map((part) => {
    const blocks: Block[] = [];
    for (const [i, stop] of stops.entries()) {
      if (stop.part !== part) continue;
      const before = blocks.at(-1);
      const joined = before && !waited.has(before.stops.at(-1) ?? 0) && stop.after.length === 0 ? join(before, stop, i) : undefined;
      if (joined) blocks.pop();
      blocks.push(joined ?? alone(stop, i));
    }
    return blocks;
  });
}

const puts = (stop: Stop): boolean => !stop.off && stop.on === undefined;

const alone = (stop: Stop, i: number): Block => ({
  ...{ stops: [i], out: puts(stop), fresh: stop.fits.length > 0 },
  ...(stop.on ? { in: stop.on } : {}),
});

/** Bench work goes with what was before it; a hold that puts out goes with one that did so already, or with bench work alone. */
function join(before: Block, stop: Stop, i: number): Block | undefined {
  if (stop.off) return { ...before, stops: [...before.stops, i] };
  if (stop.on || before.in) return undefined;
  return { ...before, stops: [...before.stops, i], out: true, fresh: before.fresh || stop.fits.length > 0 };
}
