/** Soft jaws bored in place: to which size and how deep. Work of the same size, held as deep, goes into the same boring while it stands there. */
import type { Grip } from '../../model/plan.ts';

/** One name for one boring; undefined where nothing is bored for the hold. */
export const boredFor = ({
  kind,
  diameter,
  from,
  to,
  knurled,
}: Pick<Grip, 'kind' | 'diameter' | 'from' | 'to' | 'knurled'>): string | undefined =>
  kind === 'bored-jaws' ? `${kind}${knurled ? ' knurled' : ''} ${diameter} ${to - from}` : undefined;
