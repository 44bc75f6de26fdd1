/** What `new` can describe: a workshop, and every kind of fitting. */
import { FITTING_QUESTIONS } from '../fittings/questions.ts';

export const WORKSHOP = 'workshop';
export const kindsOfNew: readonly string[] = [WORKSHOP, ...Object.keys(FITTING_QUESTIONS).sort()];
