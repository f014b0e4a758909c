/** A chance and how far it may be off: mean and standard deviation of a Beta law. */
export interface UpdatedChance {
  readonly mean: number;
  readonly deviation: number;
}

/**
 * A chance `before` that weighs as much as `weight` cases of one's own, after `count` more of which `found` had it; parts of a case
 * count as such. Throws unless 0 < before < 1, weight > 0 and 0 ≤ found ≤ count.
 * Source: conjugate updating of a binomial share. Worked: 0.1 at a weight of 20, then 3 of 10: 5/30 = 0.1667 ± 0.0669.
 */
export function betaUpdate(before: number, weight: number, found: number, count: number): UpdatedChance {
  if (!(before > 0 && before < 1 && weight > 0 && found >= 0 && found <= count)) throw new Error(`betaUpdate: got ${before} at a weight of ${weight}, then ${found} of ${count}; expected 0 < chance < 1, a weight above 0, and no more found than counted`);
  const total = weight + count;
  const mean = (before * weight + found) / total;
  return { mean, deviation: Math.sqrt((mean * (1 - mean)) / (total + 1)) };
}
