import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';

/** How often a cause was cured, in all and on each machine. */
export interface CuredCount {
  readonly cause: string;
  readonly cases: number;
  readonly machines: readonly { readonly name: string; readonly cases: number }[];
}

/** What a case without the name of its machine is counted under. */
export const NO_MACHINE = 'machine not told';

/** Per cause the chance that it was there and was cured in this case; undefined or empty where that is not known. */
export type CuredOf = (file: CaseFile) => ReadonlyMap<string, number> | undefined;

/** From this chance on a cause counts as cured. */
const LIKELY = 0.5;

/**
 * Counts what was wrong, from closed cases whose proof said "cured": the causes that were most likely cured, each once a case. Most
 * frequent first.
 */
export function curedCounts(cases: readonly CaseFile[], knowledge: Knowledge, curedOf: CuredOf): CuredCount[] {
  const byCause = new Map<string, Map<string, number>>();
  for (const file of cases) {
    const machine = file.machine.name ?? NO_MACHINE;
    for (const cause of causesOf(file, knowledge, curedOf)) {
      const machines = byCause.get(cause) ?? new Map<string, number>();
      byCause.set(cause, machines.set(machine, (machines.get(machine) ?? 0) + 1));
    }
  }
  return [...byCause].map(([cause, machines]) => countOf(cause, machines)).sort((a, b) => b.cases - a.cases || (a.cause < b.cause ? -1 : 1));
}

/** Causes that a case counts for: those as likely cured as not, else the likeliest; where no chance is known, all that the change of the cure cures. */
function causesOf(file: CaseFile, knowledge: Knowledge, curedOf: CuredOf): readonly string[] {
  const cures = file.rounds.filter((round) => round.verdict === 'cured');
  if (file.state !== 'closed' || cures.length === 0) return [];
  const chances = [...(curedOf(file) ?? [])].sort((a, b) => b[1] - a[1]);
  if (chances.length > 0) return chances.filter(([, chance], place) => place === 0 || chance >= LIKELY).map(([cause]) => cause);
  return [...new Set(cures.flatMap(({ remedy }) => Object.keys(knowledge.remedies[remedy ?? '']?.cures ?? {})))];
}

function countOf(cause: string, machines: ReadonlyMap<string, number>): CuredCount {
  const rows = [...machines].map(([name, cases]) => ({ name, cases })).sort((a, b) => b.cases - a.cases || (a.name < b.name ? -1 : 1));
  return { cause, cases: rows.reduce((sum, row) => sum + row.cases, 0), machines: rows };
}
