import type { CaseFile } from '../cases';
import type { Circumstances, KnownCause } from '../knowledge';

/**
 * True when everything that `when` asks for is known of the case and fits. A fact that is not known never fits, so
 * an unanswered question changes nothing.
 */
export function circumstancesHold(when: Circumstances, { machine, print }: Pick<CaseFile, 'machine' | 'print'>): boolean {
  return (
    among(when.material, print.material) && among(when.kinematics, machine.kinematics) && among(when.feedPath, machine.feedPath) &&
    among(when.enclosure, machine.enclosure) && among(when.supply, machine.supply) && among(when.onset, print.onset) &&
    among(when.fanMarking, machine.fanMarking) && (when.touched === undefined || when.touched.some((part) => print.touched?.includes(part)))
  );
}

/** The prior of a cause in these circumstances: its odds times the odds factor of every circumstance that holds. */
export function priorInCircumstances(cause: KnownCause, facts: Pick<CaseFile, 'machine' | 'print'>): number {
  if (!cause.context) return cause.prior;
  let odds = cause.prior / (1 - cause.prior);
  for (const row of cause.context) if (circumstancesHold(row.when, facts)) odds *= row.odds;
  return odds / (1 + odds);
}

function among<T extends string>(allowed: readonly T[] | undefined, fact: T | undefined): boolean {
  return allowed === undefined || (fact !== undefined && allowed.includes(fact));
}
