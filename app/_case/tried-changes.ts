import type { CaseFile } from '@/lib/cases';
import { remediesOfRound } from '@/lib/diagnosis';

/** Changes that were fitted and did not cure it. */
export function triedChanges(file: Pick<CaseFile, 'rounds'>): ReadonlySet<string> {
  return new Set(file.rounds.flatMap((round) => (round.verdict !== undefined && round.verdict !== 'cured' ? remediesOfRound(round) : [])));
}

/** Changes that cured it in an earlier round of a case whose trouble came back. */
export function changesThatCured(file: Pick<CaseFile, 'rounds'>): ReadonlySet<string> {
  return new Set(file.rounds.slice(0, -1).flatMap((round) => (round.verdict === 'cured' ? remediesOfRound(round) : [])));
}
