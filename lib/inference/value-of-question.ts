import { expectedCost, oneCauseScenarios, perfectRepair } from './repair-cost';
import { orderByProbabilityOverCost } from './repair-order';

export interface QuestionValue {
  /** Probability of the answer "yes". */
  readonly yes: number;
  /** Expected repair cost without asking, after yes and after no. */
  readonly costNow: number;
  readonly costAfterYes: number;
  readonly costAfterNo: number;
  /** What asking first saves on average, its own cost deducted; below 0 when it does not pay. */
  readonly net: number;
}

/**
 * Value of a yes/no question before the repairs, when exactly one cause is present and each repair is perfect.
 *
 * `yesIf[i]` is the chance of "yes" when cause i is the one. p = .4 .3 .2 .1, costs 8 3 1 4, yesIf .9 .2 .2 .5 and a
 * question that costs .5: P(yes) = .51, 7.8 without, 7.42 with asking, so it saves .38.
 */
export function valueOfQuestion(probabilities: readonly number[], costs: readonly number[], yesIf: readonly number[], questionCost: number): QuestionValue {
  const joint = probabilities.map((p, i) => p * (yesIf[i] ?? 0));
  const yes = joint.reduce((sum, p) => sum + p, 0);
  const best = (weights: readonly number[]) => {
    if (weights.every((weight) => weight === 0)) return 0;
    const repairs = costs.map((cost, i) => perfectRepair(cost, i));
    return expectedCost(orderByProbabilityOverCost(weights, costs), repairs, oneCauseScenarios(weights));
  };
  const costNow = best(probabilities);
  const costAfterYes = best(joint);
  const costAfterNo = best(probabilities.map((p, i) => p * (1 - (yesIf[i] ?? 0))));
  return { yes, costNow, costAfterYes, costAfterNo, net: costNow - (questionCost + yes * costAfterYes + (1 - yes) * costAfterNo) };
}
