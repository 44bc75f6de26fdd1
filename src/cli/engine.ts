/** How the engine is set for a run of the command; before anything is read, for what the build kept holds for an engine that is set so. */
import { setFlagsFromString } from 'node:v8';

/**
 * How much of a function runs, in bytes of the engine's own code, before its optimising compiler looks at it: six times the usual. A run is
 * short and nearly all of it runs for the first time; what was optimised early did not earn its cost. More patience still saves the processor a
 * tenth and takes a tenth longer, for that compiler works beside the run. A long run is optimised as ever.
 */
const PATIENCE = 400_000;

export function setEngine(): void {
  setFlagsFromString(`--interrupt-budget=${PATIENCE}`);
}
