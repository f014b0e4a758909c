import { nextStep, type Step } from './next-step';
import { ADVICE_SETTLED, type SameAdvice } from './same-advice';
import type { Standing } from './standing';

/**
 * The next step of a case as it is told to a person: that of the shipped rule (next-step.ts), unless hardly any answer could
 * change the advice. Then the change itself: a check that would leave it first can as well be taken once it has failed.
 */
export function firstStep(standing: Standing, advice: SameAdvice | undefined): Step {
  const settled = advice !== undefined && advice.probability >= ADVICE_SETTLED ? standing.changes.find((change) => change.id === advice.remedy) : undefined;
  return settled === undefined ? nextStep(standing) : { kind: 'change', change: settled };
}
