import type { CaseFile } from '@/lib/cases';

/** Changes that were fitted and did not cure it. */
export function triedChanges(file: Pick<CaseFile, 'rounds'>): ReadonlySet<string> {
  return new Set(file.rounds.flatMap((round) => (round.remedy !== undefined && round.verdict !== undefined && round.verdict !== 'cured' ? [round.remedy, ...(round.also ?? [])] : [])));
}
