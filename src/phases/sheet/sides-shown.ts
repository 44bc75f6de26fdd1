/** What is made on the side of a part, as a picture shows it. */
import { sideShown } from '../../drawing/sides.ts';
import type { SideShown } from '../../model/stage.ts';
import type { Desk } from './lookup.ts';

type Made = SideShown['made'];

/** `made`: when, by feature; undefined for what is not there yet. */
export function sidesShown(desk: Desk, made: (feature: string) => Made | undefined): readonly SideShown[] {
  return desk.part.features.flatMap(({ id }) => {
    const when = made(id);
    const side = when && sideOf(desk, id, when);
    return side ? [side] : [];
  });
}

/** Undefined for a feature that is not on the side, or leaves no mark seen from there. */
export function sideOf(desk: Desk, feature: string, made: Made): SideShown | undefined {
  const f = desk.feature(feature);
  const on = f?.kind === 'side' ? desk.surface(f.on) : undefined;
  return f?.kind === 'side' && on?.shape === 'cylinder' ? sideShown(f, on.size.target, made) : undefined;
}
