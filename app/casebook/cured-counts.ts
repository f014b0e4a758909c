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

/**
 * Counts what was wrong, from closed cases: the causes that the change cures whose proof said "cured". A change that
 * cures several causes counts for each of them, once a case. Most frequent first.
 */
export function curedCounts(cases: readonly CaseFile[], knowledge: Knowledge): CuredCount[] {
  const byCause = new Map<string, Map<string, number>>();
  for (const file of cases) {
    if (file.state !== 'closed') continue;
    const machine = file.machine.name ?? NO_MACHINE;
    const remedies = file.rounds.flatMap((round) => (round.verdict === 'cured' && round.remedy !== undefined ? [round.remedy] : []));
    for (const cause of new Set(remedies.flatMap((remedy) => Object.keys(knowledge.remedies[remedy]?.cures ?? {})))) {
      const machines = byCause.get(cause) ?? new Map<string, number>();
      byCause.set(cause, machines.set(machine, (machines.get(machine) ?? 0) + 1));
    }
  }
  return [...byCause].map(([cause, machines]) => countOf(cause, machines)).sort((a, b) => b.cases - a.cases || (a.cause < b.cause ? -1 : 1));
}

function countOf(cause: string, machines: ReadonlyMap<string, number>): CuredCount {
  const rows = [...machines].map(([name, cases]) => ({ name, cases })).sort((a, b) => b.cases - a.cases || (a.name < b.name ? -1 : 1));
  return { cause, cases: rows.reduce((sum, row) => sum + row.cases, 0), machines: rows };
}
