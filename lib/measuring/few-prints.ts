import { betaQuantile, chiSquareQuantile, solveIncreasing, studentPower, studentQuantile } from './distributions';

/** What a number of prints can and cannot show, before any is made. */
export interface FewPrints {
  readonly prints: number;
  /** Half-width of the 95 % interval of the mean, in standard deviations of one print. */
  readonly meanPlusMinus: number;
  /** Smallest change found with 80 % chance when each print has its partner before, in deviations of the differences. */
  readonly smallestPairedChange: number;
  /** The same for two separate groups of this size, in standard deviations of one print. */
  readonly smallestGroupChange: number;
  /** The true deviation lies between these multiples of the measured one, 95 %. */
  readonly deviationRange: readonly [low: number, high: number];
  /** Smallest two-sided p that better/worse signs alone can reach. */
  readonly smallestSignP: number;
  /** After this many prints without a failure, the failure rate may still be this high (95 %). */
  readonly failureRateBelow: number;
}

/**
 * Limits of what `prints` (2 to 100, whole) can show. Two-sided 5 %, power 80 %, independent and roughly normal prints.
 * Source: motion sheet 8 (3 prints: 2.484, 3.264, 3.071, 0.521 to 6.285, 0.25, 0.632). Throws outside the range.
 */
export function whatPrintsCanShow(prints: number): FewPrints {
  if (!Number.isInteger(prints) || prints < 2 || prints > 100) throw new Error(`whatPrintsCanShow: got ${prints}, expected a whole number from 2 to 100`);
  const freedom = prints - 1;
  return {
    prints,
    meanPlusMinus: studentQuantile(0.975, freedom) / Math.sqrt(prints),
    smallestPairedChange: smallestPairedChange(prints),
    smallestGroupChange: smallestGroupChange(prints),
    deviationRange: [Math.sqrt(freedom / chiSquareQuantile(0.975, freedom)), Math.sqrt(freedom / chiSquareQuantile(0.025, freedom))],
    smallestSignP: 2 * 0.5 ** prints,
    failureRateBelow: failureRateBelow(prints),
  };
}

/** Smallest change found with 80 % chance by n pairs (2 to 100), in deviations of the differences. 5 gives 1.682. */
export function smallestPairedChange(pairs: number): number {
  return smallestChange(pairs - 1, Math.sqrt(pairs));
}

/** Smallest change found with 80 % chance by two groups of n prints (2 to 100), in deviations of one print. 5 gives 2.024. */
export function smallestGroupChange(prints: number): number {
  return smallestChange(2 * (prints - 1), Math.sqrt(prints / 2));
}

/** Failure rate that n prints without a failure leave possible, 95 %: 1 − 0.05^(1/n). `failureRateBelow(3)` is 0.632. */
export function failureRateBelow(goodPrints: number): number {
  if (!(goodPrints >= 0)) throw new Error(`failureRateBelow: got ${goodPrints}, expected 0 or more`);
  return goodPrints === 0 ? 1 : 1 - 0.05 ** (1 / goodPrints);
}

/**
 * 95 % interval of a rate from `hits` in `tries` (exact, Clopper and Pearson): 1 failure in 5 is 0.00505 to 0.7164.
 * Throws unless 0 ≤ hits ≤ tries, whole, tries ≥ 1.
 */
export function rateInterval(hits: number, tries: number): readonly [low: number, high: number] {
  if (!Number.isInteger(hits) || !Number.isInteger(tries) || hits < 0 || tries < 1 || hits > tries) {
    throw new Error(`rateInterval: got ${hits} of ${tries}, expected whole numbers with 0 ≤ hits ≤ tries and tries ≥ 1`);
  }
  return [
    hits === 0 ? 0 : betaQuantile(0.025, hits, tries - hits + 1),
    hits === tries ? 1 : betaQuantile(0.975, hits + 1, tries - hits),
  ];
}

/**
 * Smallest change, in deviations, that a two-sided 5 % test finds with 80 % chance; `root` turns a change into the offset of t
 * (√n paired, √(n/2) for two groups of n).
 */
function smallestChange(freedom: number, root: number): number {
  const t = studentQuantile(0.975, freedom);
  return solveIncreasing((delta) => studentPower(t, freedom, delta) - 0.8, 0, 2 * t, 1e-7) / root;
}
