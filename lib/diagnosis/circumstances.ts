import type { CaseFile, Casebook } from '../cases';
import type { Circumstances, KnownCause } from '../knowledge';
import { casebookFactor } from './casebook-factor';

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

/** Where a case is, and what its casebook taught. */
export type Circumstanced = Pick<CaseFile, 'machine' | 'print'> & { readonly casebook?: Casebook | undefined };

/** Everything of a case that its net rests on besides what was told. */
export type CaseFacts = Circumstanced & Pick<CaseFile, 'rounds'>;

/** The prior of a cause in these circumstances: its odds times the factor of the casebook and of every circumstance that holds. */
export function priorInCircumstances(cause: KnownCause, facts: Circumstanced): number {
  if (!cause.context && !facts.casebook) return cause.prior;
  let odds = (cause.prior / (1 - cause.prior)) * casebookFactor(cause.prior, cause.id, facts.casebook);
  for (const row of cause.context ?? []) if (circumstancesHold(row.when, facts)) odds *= row.odds;
  return odds / (1 + odds);
}

function among<T extends string>(allowed: readonly T[] | undefined, fact: T | undefined): boolean {
  return allowed === undefined || (fact !== undefined && allowed.includes(fact));
}
