import type { Knowledge } from '@/lib/knowledge';
import { brierScore, logScore } from './probability-scores';
import { firstTrueRank, recallAmongFirst } from './ranking-metrics';
import type { Ranked, Ranker } from './ranker';
import type { SolvedCase } from './read-solved-cases';

/**
 * Chances are held within this and its complement before their log score is taken, for every ranker alike: an exact 0 or
 * 1 would make a single miss infinite. Well below the chance of an unlikely cause (thousandths), so that it changes none of
 * those; what higher floors would give is printed beside it.
 */
export const LOG_FLOOR = 1e-6;
export const OTHER_FLOORS = [1e-3, 1e-4] as const;

/** Figures of one case under one ranker. */
export interface CaseScore {
  readonly solved: SolvedCase;
  readonly ranked: Ranked;
  /** Place of the first confirmed cause, Infinity when it is not ranked or has no page. */
  readonly rank: number;
  readonly recall: number;
  /** Over all causes of the knowledge base. */
  readonly brier: number;
  readonly log: number;
  /** The log score with each of `OTHER_FLOORS`. */
  readonly logAt: readonly number[];
}

/** Runs every case through one ranker. */
export async function scoreCases(ranker: Ranker, cases: readonly SolvedCase[], knowledge: Knowledge): Promise<CaseScore[]> {
  const causes = Object.keys(knowledge.causes);
  const scores: CaseScore[] = [];
  for (const solved of cases) {
    const ranked = await ranker.rank(solved.file);
    const chances = causes.map((id) => Math.min(1, Math.max(0, ranked.chances.get(id) ?? 0)));
    const so = causes.map((id) => solved.confirmed.includes(id));
    scores.push({
      solved, ranked,
      rank: firstTrueRank(ranked.ranking, solved.confirmed),
      recall: recallAmongFirst(ranked.ranking, solved.confirmed),
      brier: brierScore(chances, so),
      log: logScore(chances, so, LOG_FLOOR),
      logAt: OTHER_FLOORS.map((floor) => logScore(chances, so, floor)),
    });
  }
  return scores;
}

/** All chances of all cases with what was so, for a reliability table. */
export function pooledChances(scores: readonly CaseScore[], knowledge: Knowledge): { chances: number[]; so: boolean[] } {
  const causes = Object.keys(knowledge.causes);
  return {
    chances: scores.flatMap(({ ranked }) => causes.map((id) => Math.min(1, Math.max(0, ranked.chances.get(id) ?? 0)))),
    so: scores.flatMap(({ solved }) => causes.map((id) => solved.confirmed.includes(id))),
  };
}
