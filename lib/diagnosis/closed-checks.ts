import type { Knowledge, KnownCheck } from '../knowledge';
import type { Diagnosis } from './diagnose';
import { fittedInRound } from './remedies-of-round';

/**
 * Checks that there is no reason to take now: answered since the last change that may have cured something they hear of, or put
 * off in this round with "can't tell". After such a change an old answer speaks of the machine as it was, so the check is open again.
 */
export function closedChecks({ net, items, putOff = [] }: Pick<Diagnosis, 'net' | 'items'> & { readonly putOff?: readonly string[] }): ReadonlySet<string> {
  const { fitted, knowledge } = net.builtFrom;
  const closed = new Set(putOff);
  for (const item of items) {
    const check = item.kind === 'symptom' ? undefined : knowledge.checks[item.about];
    if (check !== undefined && !fitted.some((round) => round.number >= item.round && fittedInRound(round).some((id) => mayCure(id, check, knowledge)))) closed.add(item.about);
  }
  return closed;
}

/** True where a remedy may cure a cause that the check hears of. */
function mayCure(remedy: string, check: KnownCheck, knowledge: Knowledge): boolean {
  return Object.keys(knowledge.remedies[remedy]?.cures ?? {}).some((cause) => cause in check.yes || cause in check.reads);
}
