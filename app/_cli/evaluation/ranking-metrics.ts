import { meanOf } from './probability-scores';

/**
 * Place of the first true cause in a ranking, 1 for the top; Infinity when none of the true causes is ranked, or there
 * are none. `firstTrueRank(['a', 'b', 'c'], ['c', 'b'])` is 2.
 */
export function firstTrueRank(ranking: readonly string[], truth: readonly string[]): number {
  const place = ranking.findIndex((id) => truth.includes(id));
  return place === -1 ? Infinity : place + 1;
}

/** Share of ranks, 0 … 1, that are at most `places`. Ranks 1 1 2 5 3 1 8 4: .375 in 1 place, .625 in 3. */
export function shareWithin(ranks: readonly number[], places: number): number {
  return meanOf(ranks.map((rank) => (rank <= places ? 1 : 0)));
}

/** Mean of 1/rank, 0 … 1, an unranked one counting 0. Ranks 1 1 2 5 3 1 8 4 give .551041666667. */
export function meanReciprocalRank(ranks: readonly number[]): number {
  return meanOf(ranks.map((rank) => 1 / rank));
}

/**
 * Share of a case's true causes, 0 … 1, among its first max(3, k) places, k being how many true causes there are; 0 when
 * no true cause is known. `recallAmongFirst(['a', 'b', 'c', 'd'], ['a', 'd'])` is 0.5.
 */
export function recallAmongFirst(ranking: readonly string[], truth: readonly string[]): number {
  if (truth.length === 0) return 0;
  const first = new Set(ranking.slice(0, Math.max(3, truth.length)));
  return truth.filter((id) => first.has(id)).length / truth.length;
}
