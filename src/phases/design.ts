/** From the job as read to a fitting: the kind's own design does the work. */
import type { Outcome } from '../base/diagnostics.ts';
import type { Designs } from '../fittings/designs.ts';
import type { Fitting } from '../model/part.ts';
import type { Job } from '../model/workshop.ts';

/** Throws Error for a kind that can be read but not designed: our fault. */
export function design(job: Job, designs: Designs): Outcome<Fitting> {
  const make = designs[job.fitting];
  if (!make) throw new Error(`no design for '${job.fitting}'`);
  return make(job.asked, job.workshop);
}
