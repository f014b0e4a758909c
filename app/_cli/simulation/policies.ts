import { chanceOfUse, costOf, costWithCheck, endingsOfChanges, endingsWithCheck, mostTelling, nextStep, prospectOf, stepAmong, waysOn, weighedChecks, type Change, type ScoredCheck, type Standing, type Step } from '@/lib/diagnosis';
import { beforeCallingHelp } from '@/lib/inference';
import type { Knowledge } from '@/lib/knowledge';

/** A step without the figures behind it. */
export type Choice = Exclude<Step, { readonly kind: 'check' }> | { readonly kind: 'check'; readonly check: ScoredCheck };

/** One way of choosing the next step. */
export interface Policy {
  readonly name: string;
  readonly choose: (standing: Standing, givingUp: number) => Choice;
}

/** All policies that are put side by side, the shipped one first. Each gives up where its own order of changes costs more than that. */
export function policies(knowledge: Knowledge): Policy[] {
  return [
    { name: 'shipped: best of five checks, while it pays', choose: nextStep },
    { name: 'the same, picked by every failed proof too (as the case page does)', choose: (standing, givingUp) => stepAmong(waysOn(standing, weighedChecks(standing), givingUp), standing, givingUp) },
    { name: 'the same, but it pays by orders fixed beforehand', choose: byFixedOrders },
    { name: 'the same, but after the first change where that is cheaper', choose: beforeOrAfter },
    { name: 'most telling check, while it pays and leader under .85', choose: telling(0.85, true) },
    { name: 'most telling check until leader .70, then changes', choose: telling(0.7, false) },
    { name: 'most telling check until leader .85, then changes', choose: telling(0.85, false) },
    { name: 'changes by odds per cost', choose: (standing, givingUp) => asStep(standing.orderOfChanges(givingUp).changes[0]) },
    { name: 'changes by chance per cost', choose: (standing, givingUp) => changeBy(standing, givingUp, (change, chance) => chance / change.cost) },
    { name: 'changes by chance', choose: (standing, givingUp) => changeBy(standing, givingUp, (_, chance) => chance) },
    { name: 'fixed list by prior per cost', choose: fixedList(knowledge) },
  ];
}

/** As the shipped rule, unless the best change made first, and the check only when that did not cure it, costs less: the delay test. */
const beforeOrAfter: Policy['choose'] = (standing, givingUp) => {
  const step = nextStep(standing, givingUp);
  const change = standing.orderOfChanges(givingUp).changes[0];
  if (step.kind !== 'check' || change === undefined) return step;
  const cheaper = (left: Standing): number => Math.min(costOf(prospectOf(endingsWithCheck(left, step.check, givingUp)), givingUp), costOf(prospectOf(endingsOfChanges(left, givingUp)), givingUp));
  const checkAfter = standing.afterChange(change).reduce((sum, { standing: left }) => (left.total === 0 ? sum : sum + (left.total / standing.total) * cheaper(left)), change.cost);
  return costOf(step.ahead.after, givingUp) <= checkAfter ? step : { kind: 'change', change };
};

/** Whether the check pays is told by the same fixed orders that pick it, blind to what a failed proof would tell. */
const byFixedOrders: Policy['choose'] = (standing, givingUp) => {
  const plan = standing.orderOfChanges(givingUp);
  const costed = weighedChecks(standing).map((check) => ({ check, cost: costWithCheck(standing, check, givingUp) }));
  const [best] = costed.sort((a, b) => a.cost - b.cost);
  return best !== undefined && best.cost < plan.cost ? { kind: 'check', check: best.check } : asStep(plan.changes[0]);
};

/** Most doubt per minute until the leader has this chance; `mustPay`: and only while it lowers the expected cost. */
function telling(sure: number, mustPay: boolean): Policy['choose'] {
  return (standing, givingUp) => {
    const plan = standing.orderOfChanges(givingUp);
    const check = mostTelling(standing.scoredChecks())[0];
    const isWanted = check !== undefined && (standing.leader < sure || plan.changes.length === 0) && (!mustPay || costWithCheck(standing, check, givingUp) < plan.cost);
    return isWanted ? { kind: 'check', check } : asStep(plan.changes[0]);
  };
}

/** The changes of every cause that shows one of the symptoms, in an order fixed beforehand; nothing is ever reckoned anew. */
function fixedList(knowledge: Knowledge): Policy['choose'] {
  const causes = Object.values(knowledge.causes);
  return (standing, givingUp) => changeBy(standing, givingUp, (change) => [...change.removes].reduce((sum, [cause, works]) => sum + (standing.chances.has(cause) ? (causes[cause]?.prior ?? 0) * works : 0), 0) / change.cost);
}

/** Best change by this worth; gives up by the same rule as the others. */
function changeBy(standing: Standing, givingUp: number, worthOf: (change: Change, chance: number) => number): Choice {
  const scenarios = standing.repairScenarios();
  const rows = standing.changes
    .map((change) => ({ change, chance: chanceOfUse(change, scenarios) }))
    .filter((row) => row.chance > 0.01)
    .map((row) => ({ change: row.change, worth: worthOf(row.change, row.chance) }))
    .sort((a, b) => b.worth - a.worth).slice(0, 24).map((row) => row.change);
  return asStep(rows[beforeCallingHelp([...rows.keys()], rows, scenarios, givingUp).order[0] ?? -1]);
}

function asStep(change: Change | undefined): Choice {
  return change === undefined ? { kind: 'give-up' } : { kind: 'change', change };
}
