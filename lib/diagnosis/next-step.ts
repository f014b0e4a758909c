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

/** A step as it is told: which one it is, without what it was reckoned with. */
export type ToldStep = { readonly kind: 'check' | 'change'; readonly id: string } | { readonly kind: 'give-up' };

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
  return stepAmong(waysOn(standing, check === undefined ? [] : [check], givingUp), standing, givingUp);
}

/** A check with what is to come when it is taken first, its own minutes included, and the cost of that. */
export interface WeighedCheck {
  readonly check: ScoredCheck;
  readonly after: Prospect;
  readonly cost: number;
}

/** The ways on from where a case stands: changes alone, and each of some checks before them, that with the least cost first. */
export interface WaysOn {
  readonly now: Prospect;
  readonly checks: readonly WeighedCheck[];
}

/** Weighs these checks by all that comes after them, every failed proof counted: the order of changes is reckoned anew after each. */
export function waysOn(standing: Standing, checks: readonly ScoredCheck[], givingUp = GIVING_UP): WaysOn {
  return inOneGo(waysInTurns(standing, checks, givingUp));
}

/** The same, a check at a time: whoever calls may do something else in between, or stop. */
export function* waysInTurns(standing: Standing, checks: readonly ScoredCheck[], givingUp = GIVING_UP): Generator<undefined, WaysOn> {
  const weighed: WeighedCheck[] = [];
  for (const check of checks) {
    const after = prospectOf(endingsWithCheck(standing, check, givingUp));
    weighed.push({ check, after, cost: costOf(after, givingUp) });
    yield;
  }
  return { now: prospectOf(endingsOfChanges(standing, givingUp)), checks: weighed.sort((a, b) => a.cost - b.cost) };
}

/** What work in turns gives when nobody waits in between. */
export function inOneGo<T>(work: Generator<unknown, T>): T {
  for (let step = work.next(); ; step = work.next()) if (step.done === true) return step.value;
}

/** Of these ways on that with the least cost: its check, or the best change; with neither, giving up. */
export function stepAmong({ now, checks }: WaysOn, standing: Standing, givingUp = GIVING_UP): Step {
  const [best] = checks;
  if (best !== undefined && best.cost < costOf(now, givingUp)) return { kind: 'check', check: best.check, ahead: { now, after: best.after } };
  const change = standing.orderOfChanges(givingUp).changes[0];
  return change === undefined ? { kind: 'give-up' } : { kind: 'change', change };
}

/** The checks that the rule weighs. */
export function weighedChecks(standing: Standing): ScoredCheck[] {
  return mostTelling(standing.scoredChecks()).slice(0, WEIGHED);
}

/** What is told of a step; plain data. */
export function toldStep(step: Step): ToldStep {
  if (step.kind === 'give-up') return step;
  return { kind: step.kind, id: step.kind === 'check' ? step.check.id : step.change.id };
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

/** Of the checks that are weighed the one with the least expected cost; undefined when none tells enough. */
function cheapestCheck(standing: Standing, givingUp: number): ScoredCheck | undefined {
  const costed = weighedChecks(standing).map((check) => ({ check, cost: costWithCheck(standing, check, givingUp) }));
  return costed.reduce<(typeof costed)[number] | undefined>((best, each) => (best === undefined || each.cost < best.cost ? each : best), undefined)?.check;
}
