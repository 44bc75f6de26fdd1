/** Every rule of holding, in the order in which they are asked. */
import type { GripRule } from '../rule.ts';
import { onBar, onStub } from './bar.ts';
import { betweenCentres } from './centres.ts';
import { onMandrel } from './mandrel.ts';
import { onSection } from './section.ts';
import { onStubMandrel } from './stub-mandrel.ts';
import { inThreadedSleeve } from './threaded-sleeve.ts';
import { inVee } from './vee.ts';

export const GRIP_RULES: readonly GripRule[] = [
  onBar,
  onStub,
  onSection,
  onMandrel,
  inThreadedSleeve,
  onStubMandrel,
  betweenCentres,
  inVee,
];
