import { logGamma } from './gamma-function';

/**
 * Chance, two-sided, that a 2 × 2 table of failed and good prints before and after differs this much by luck (Fisher's
 * exact test, tables no likelier than the one seen). Counts are whole and not negative. Source: motion sheet 8: 0 of 5 failed
 * against 4 of 5 is 0.0476.
 */
export function failureTableP(failedBefore: number, goodBefore: number, failedAfter: number, goodAfter: number): number {
  const counts = [failedBefore, goodBefore, failedAfter, goodAfter];
  if (counts.some((count) => !Number.isInteger(count) || count < 0)) throw new Error(`failureTableP: got ${counts.join(', ')}, expected whole numbers from 0`);
  const before = failedBefore + goodBefore;
  const failed = failedBefore + failedAfter;
  const all = before + failedAfter + goodAfter;
  const chanceOf = (x: number): number => Math.exp(logChoose(before, x) + logChoose(all - before, failed - x) - logChoose(all, failed));
  const seen = chanceOf(failedBefore);
  let p = 0;
  for (let x = Math.max(0, failed - (all - before)); x <= Math.min(before, failed); x += 1) {
    // Rounding must not drop the mirror image of the table seen.
    if (chanceOf(x) <= seen * (1 + 1e-9)) p += chanceOf(x);
  }
  return Math.min(1, p);
}

/**
 * Two-sided p of the signs alone: as many or more differences on one side by luck. Zero differences do not count.
 * Five differences of one sign give 0.0625. No difference at all gives 1.
 */
export function signTestP(differences: readonly number[]): number {
  const ups = differences.filter((value) => value > 0).length;
  const downs = differences.filter((value) => value < 0).length;
  const tries = ups + downs;
  let tail = 0;
  for (let k = 0; k <= Math.min(ups, downs); k += 1) tail += Math.exp(logChoose(tries, k) - tries * Math.LN2);
  return Math.min(1, 2 * tail);
}

/**
 * Exact two-sided p of the signed ranks (Wilcoxon) for up to 20 differences; ties share their rank, zeros do not count. For scores
 * that only have an order. Source: motion sheet 8: 0.12, 0.05, 0.09, 0.15, 0.04 give 0.0625.
 */
export function signedRankP(differences: readonly number[]): number {
  const kept = differences.filter((value) => value !== 0);
  if (kept.length > 20) throw new Error(`signedRankP: got ${kept.length} differences, expected at most 20`);
  // Doubled, so that shared ranks stay whole.
  const ranks = kept.map((value) => doubledRank(Math.abs(value), kept));
  const whole = ranks.reduce((total, rank) => total + rank, 0);
  const positive = ranks.reduce((total, rank, index) => total + ((kept[index] ?? 0) > 0 ? rank : 0), 0);
  const ways = waysToSum(ranks, whole);
  const extreme = Math.min(positive, whole - positive);
  let tail = 0;
  for (let total = 0; total <= extreme; total += 1) tail += ways[total] ?? 0;
  return Math.min(1, (2 * tail) / 2 ** kept.length);
}

function doubledRank(size: number, values: readonly number[]): number {
  const below = values.filter((value) => Math.abs(value) < size).length;
  const same = values.filter((value) => Math.abs(value) === size).length;
  return 2 * below + same + 1;
}

function waysToSum(ranks: readonly number[], whole: number): readonly number[] {
  const ways = new Array<number>(whole + 1).fill(0);
  ways[0] = 1;
  for (const rank of ranks) {
    for (let total = whole; total >= rank; total -= 1) ways[total] = (ways[total] ?? 0) + (ways[total - rank] ?? 0);
  }
  return ways;
}

function logChoose(n: number, k: number): number {
  return logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
}
