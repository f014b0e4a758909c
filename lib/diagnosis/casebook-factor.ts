import type { Casebook } from '../cases';
import { betaUpdate, type UpdatedChance } from '../inference';

/**
 * Own cases that weigh as much as the prior of the knowledge base. Own judgement: diagnosis.md 5 suggests 40, with which one case would more than
 * treble the odds of a usual cause. A fault that was cured was also mended, so less speaks for it to come back.
 */
const AS_MUCH_AS = 100;
/** Most that a casebook multiplies or divides the odds of a cause by: 6 dB. */
const MOST = 10 ** 0.6;

/** How common a cause is once the casebook is counted, before its odds are held within 6 dB; with its standard deviation. */
export function chanceByCasebook(prior: number, cause: string, casebook: Casebook): UpdatedChance {
  return betaUpdate(prior, AS_MUCH_AS, Math.min(casebook.cases, casebook.cured[cause] ?? 0), casebook.cases);
}

/**
 * Factor that a casebook puts on the odds of a cause: the mean of a Beta(prior · 100, (1 − prior) · 100) after its cases,
 * against the prior, kept within 6 dB either way. 1 without a casebook, and where it is left out.
 * Worked: prior 0.1, cured in 2 of 4 cases: (0.1 · 100 + 2) / 104 = 0.1154, factor (0.1154 / 0.8846) / (0.1 / 0.9) = 1.1739.
 */
export function casebookFactor(prior: number, cause: string, casebook: Casebook | undefined): number {
  if (casebook === undefined || casebook.leftOut === true) return 1;
  const { mean } = chanceByCasebook(prior, cause, casebook);
  const factor = mean / (1 - mean) / (prior / (1 - prior));
  return Math.min(MOST, Math.max(1 / MOST, factor));
}
