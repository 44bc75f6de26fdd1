/** What the day asks of a plan: the tooling that a hold or an operation wants, by the name of its part, and what is bored for a hold. */
import { toolingId } from '../fittings/tooling/make.ts';
import type { Asking } from '../phases/sequence.ts';
import { boredFor } from '../rules/grips/bored.ts';
import { toolingOf } from '../rules/grips/plug.ts';

export const ASKING: Asking = {
  holds: ({ grip }) => toolingOf(grip).map(toolingId),
  wants: ({ tool, asks }) => [...(tool.made ? [tool.made] : []), ...(asks ?? [])].map(toolingId),
  bored: boredFor,
};
