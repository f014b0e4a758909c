import { stepAmong, type Step, type WaysOn } from './next-step';
import { ADVICE_SETTLED, type SameAdvice } from './same-advice';
import type { Standing } from './standing';

/**
 * The next step of a case as it is told to a person: the best of these ways on, unless hardly any answer could change the
 * advice. Then the change itself: a check that would leave it first can as well be taken once it has failed.
 */
export function firstStep(standing: Standing, advice: SameAdvice | undefined, ways: WaysOn): Step {
  const settled = advice !== undefined && advice.probability >= ADVICE_SETTLED ? standing.changes.find((change) => change.id === advice.remedy) : undefined;
  return settled === undefined ? stepAmong(ways, standing) : { kind: 'change', change: settled };
}
