import type { Change } from './changes';
import { costOf, endingsOfChanges, endingsWithCheck, prospectOf, type Prospect } from './prospect';
import { GIVING_UP, type ScoredCheck, type Standing } from './standing';

/** What is to be done next: a check, a change, or neither because giving up costs less than going on. */
export type Step = { readonly kind: 'check'; readonly check: ScoredCheck; readonly ahead: Ahead } | { readonly kind: 'change'; readonly change: Change } | { readonly kind: 'give-up' };

/** The two ways on that the rule weighs: changes alone, and a check before them. */
export interface Ahead {
  readonly now: Prospect;
  /** The minutes of the check included. */
  readonly after: Prospect;
}

/** Below this many bits a check would hardly change anything. Estimate. */
export const TOO_LITTLE = 0.03;
/** Checks that are weighed by the cost of what comes after them. Chosen by `npm run simulate`; the figures stand in DEVELOPERS.md. */
const WEIGHED = 5;

/**
 * The shipped rule for the next step. Of the five checks that take away most doubt per minute it picks the one after which
 * changes in a fixed order cost least. It is taken if that pays when every failed proof counts (`Ahead`: the order is
 * reckoned anew after each); else comes the best change; with neither, giving up.
 *
 * Costs are expected minutes: a person's own, money, and `givingUp` for what is left in the end (see prospect.ts).
 */
export function nextStep(standing: Standing, givingUp = GIVING_UP): Step {
  const check = cheapestCheck(standing, givingUp);
  if (check !== undefined) {
    const ahead: Ahead = { now: prospectOf(endingsOfChanges(standing, givingUp)), after: prospectOf(endingsWithCheck(standing, check, givingUp)) };
    if (costOf(ahead.after, givingUp) < costOf(ahead.now, givingUp)) return { kind: 'check', check, ahead };
  }
  const change = standing.orderOfChanges(givingUp).changes[0];
  return change === undefined ? { kind: 'give-up' } : { kind: 'change', change };
}

/** Checks worth their minutes, most bits a minute first; those that lack a tool only when no other is left. */
export function mostTelling(checks: readonly ScoredCheck[]): ScoredCheck[] {
  const worthIt = checks.filter((check) => check.gain > TOO_LITTLE);
  const atHand = worthIt.filter((check) => !check.isLacking);
  return (atHand.length > 0 ? atHand : worthIt).sort((a, b) => b.gain / b.minutes - a.gain / a.minutes);
}

/** Expected cost when this check is taken now and only changes are made after it, in an order fixed by its answer. */
export function costWithCheck(standing: Standing, check: Pick<ScoredCheck, 'id' | 'minutes' | 'answers'>, givingUp = GIVING_UP): number {
  return check.answers.reduce((sum, _, answer) => {
    const after = standing.afterAnswer(check, answer);
    return after.total === 0 ? sum : sum + (after.total / standing.total) * after.orderOfChanges(givingUp).cost;
  }, check.minutes);
}

/** Of the most telling checks the one with the least expected cost; undefined when none tells enough. */
function cheapestCheck(standing: Standing, givingUp: number): ScoredCheck | undefined {
  const costed = mostTelling(standing.scoredChecks()).slice(0, WEIGHED).map((check) => ({ check, cost: costWithCheck(standing, check, givingUp) }));
  return costed.reduce<(typeof costed)[number] | undefined>((best, each) => (best === undefined || each.cost < best.cost ? each : best), undefined)?.check;
}
