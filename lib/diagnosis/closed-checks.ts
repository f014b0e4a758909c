import type { Knowledge, KnownCheck } from '../knowledge';
import type { Diagnosis } from './diagnose';

/**
 * Checks that there is no reason to take now: answered since the last change that may have cured something they hear of, or put
 * off in this round with "can't tell". After such a change an old answer speaks of the machine as it was, so the check is open again.
 */
export function closedChecks({ net, items, putOff = [] }: Pick<Diagnosis, 'net' | 'items'> & { readonly putOff?: readonly string[] }): ReadonlySet<string> {
  const { fitted, knowledge } = net.builtFrom;
  const closed = new Set(putOff);
  for (const item of items) {
    const check = item.kind === 'symptom' ? undefined : knowledge.checks[item.about];
    if (check !== undefined && !fitted.some((round) => round.number >= item.round && mayHaveCured(round, check, knowledge))) closed.add(item.about);
  }
  return closed;
}

function mayHaveCured({ remedy, also = [], fittedOn, verdict }: Diagnosis['net']['builtFrom']['fitted'][number], check: KnownCheck, knowledge: Knowledge): boolean {
  if (fittedOn === undefined && verdict === undefined) return false;
  return (remedy === undefined ? also : [remedy, ...also]).some((id) => Object.keys(knowledge.remedies[id]?.cures ?? {}).some((cause) => cause in check.yes || cause in check.reads));
}
