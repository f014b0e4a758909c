import type { CaseFile } from '@/lib/cases';
import { remediesOfRound } from '@/lib/diagnosis';

/** Changes that were fitted and did not cure it. */
export function triedChanges(file: Pick<CaseFile, 'rounds'>): ReadonlySet<string> {
  return new Set(file.rounds.flatMap((round) => (round.verdict !== undefined && round.verdict !== 'cured' ? remediesOfRound(round) : [])));
}
