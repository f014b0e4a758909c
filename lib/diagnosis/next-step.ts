import type { Change } from './changes';
import { GIVING_UP, type ScoredCheck, type Standing } from './standing';

/** What is to be done next: a check, a change, or neither because giving up costs less than going on. */
export type Step = { readonly kind: 'check'; readonly check: ScoredCheck } | { readonly kind: 'change'; readonly change: Change } | { readonly kind: 'give-up' };

/** Below this many bits a check would hardly change anything. Estimate. */
export const TOO_LITTLE = 0.03;
/** Checks that are weighed by the cost of what comes after them. Chosen by `npm run simulate`; the figures stand in DEVELOPERS.md. */
const WEIGHED = 5;

/**
 * The shipped rule for the next step. Of the five checks that take away most doubt per minute, the one after which the
 * rest costs least, when taking it now is cheaper than changes alone, and cheaper than making the best change first and
 * checking only when that did not cure it. Else that change; with neither, giving up.
 *
 * Costs are expected minutes: a person's own, money, and `givingUp` for what stays uncured (see standing.ts).
 */
export function nextStep(standing: Standing, givingUp = GIVING_UP): Step {
  const candidates = mostTelling(standing.scoredChecks()).slice(0, WEIGHED);
  const costs = candidates.map((check) => ({ check, cost: costWithCheck(standing, check, givingUp) }));
  return beforeOrAfter(standing, costs.reduce<WeighedCheck | undefined>((best, each) => (best === undefined || each.cost < best.cost ? each : best), undefined), givingUp);
}

/** Checks worth their minutes, most bits a minute first; those that lack a tool only when no other is left. */
export function mostTelling(checks: readonly ScoredCheck[]): ScoredCheck[] {
  const worthIt = checks.filter((check) => check.gain > TOO_LITTLE);
  const atHand = worthIt.filter((check) => !check.isLacking);
  return (atHand.length > 0 ? atHand : worthIt).sort((a, b) => b.gain / b.minutes - a.gain / a.minutes);
}

/** Expected cost when this check is taken now and only changes are made after it. */
export function costWithCheck(standing: Standing, check: Pick<ScoredCheck, 'id' | 'minutes' | 'answers'>, givingUp = GIVING_UP): number {
  return check.answers.reduce((sum, _, answer) => {
    const after = standing.afterAnswer(check, answer);
    return after.total === 0 ? sum : sum + (after.total / standing.total) * after.orderOfChanges(givingUp).cost;
  }, check.minutes);
}

interface WeighedCheck {
  readonly check: ScoredCheck;
  readonly cost: number;
}

/** The check when it pays now; the best change when it does not, or when it pays no less after that change has failed. */
export function beforeOrAfter(standing: Standing, best: WeighedCheck | undefined, givingUp = GIVING_UP): Step {
  const plan = standing.orderOfChanges(givingUp);
  const change = plan.changes[0];
  if (best === undefined || best.cost >= plan.cost) return change === undefined ? { kind: 'give-up' } : { kind: 'change', change };
  if (change === undefined) return { kind: 'check', check: best.check };
  const failed = standing.afterFailed(change);
  const rest = failed.total === 0 ? 0 : Math.min(costWithCheck(failed, best.check, givingUp), failed.orderOfChanges(givingUp).cost);
  const checkAfter = change.cost + (failed.total / standing.total) * rest;
  return best.cost <= checkAfter ? { kind: 'check', check: best.check } : { kind: 'change', change };
}
