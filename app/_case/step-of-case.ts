import type { CaseFile } from '@/lib/cases';
import { firstStep, nextChecks, possibilitiesOf, sameAdvice, standingOf, type Diagnosis, type NextCheck, type SameAdvice, type Standing, type Step } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { triedChanges } from './tried-changes';

/* Where one exact answer is dear, fewer checks are looked at, so that the page never stands still. */
const UNITS_FOR_CHECKS = 1e8;
const FEWEST_CHECKS = 6;

/** The checks that could come next, best first, for the tools that this person has. */
export function checksOfCase(result: Diagnosis, file: CaseFile, knowledge: Knowledge): readonly NextCheck[] {
  const most = Math.max(FEWEST_CHECKS, Math.floor(UNITS_FOR_CHECKS / Math.max(1, result.prepared.cost.units)));
  return nextChecks(result, knowledge, { lacksTools: file.lacksTools ?? [], most });
}

export interface StepOfCase {
  readonly standing: Standing;
  readonly advice: SameAdvice | undefined;
  readonly step: Step;
}

/** Where the case stands and what is done next: reckoned in one place, so that the case page and the plan say the same. */
export function stepOfCase(result: Diagnosis, next: readonly NextCheck[], file: CaseFile, knowledge: Knowledge): StepOfCase {
  const tried = triedChanges(file);
  const standing = standingOf(result, possibilitiesOf(knowledge, file.lacksTools ?? []), { tried });
  const advice = sameAdvice(result, next, file, knowledge, tried);
  return { standing, advice, step: firstStep(standing, advice) };
}
