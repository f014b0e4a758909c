import type { CaseFile } from '@/lib/cases';
import type { Diagnosis } from '@/lib/diagnosis';

/** What one way of reasoning says of one case. */
export interface Ranked {
  /** Every cause id, likeliest first. Empty when no answer was given. */
  readonly ranking: readonly string[];
  /** Cause id → chance that it is at work, 0 … 1. */
  readonly chances: ReadonlyMap<string, number>;
  /** The whole diagnosis where the way gives one. */
  readonly diagnosis?: Diagnosis;
}

/** One way of reasoning from a case to its causes, to be put beside the others. */
export interface Ranker {
  readonly name: string;
  readonly rank: (file: CaseFile) => Ranked | Promise<Ranked>;
}

/** Ranks by chance, equal chances in the order of their ids, so that a tie does not lean on where it is written. */
export function rankedBy(chances: ReadonlyMap<string, number>): Ranked {
  const ranking = [...chances].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([id]) => id);
  return { ranking, chances };
}
