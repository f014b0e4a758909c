import { exponential, mulberry32 } from '@/lib/elementary';

/** Chance that repeats: the same seed gives the same numbers on every machine. */
export interface SeededRandom {
  /** The next number, 0 up to but not including 1. */
  readonly uniform: () => number;
}

/**
 * A small generator with a 32-bit state (`mulberry32`). `seed` any integer.
 * Good enough for stratified sampling; not for secrets.
 */
export function seededRandom(seed: number): SeededRandom {
  return { uniform: mulberry32(seed) };
}

/**
 * Standard normal samples in `dimensions` columns of `count`, each column stratified: one sample from the middle of each of
 * `count` equally likely slices, in an order of its own (Latin hypercube). Column after column in one array.
 */
export function stratifiedNormals(count: number, dimensions: number, seed: number): Float64Array {
  const random = seededRandom(seed);
  const slices = normalSlices(count);
  const samples = new Float64Array(count * dimensions);
  for (let d = 0; d < dimensions; d += 1) {
    const column = samples.subarray(d * count, (d + 1) * count);
    column.set(slices);
    shuffle(column, random);
  }
  return samples;
}

/**
 * The standard normal deviate with a given share below it; `share` strictly between 0 and 1, throws outside.
 * Acklam's rational approximation, relative error below 1.2e-9. Worked: 0.975 gives 1.959964.
 */
export function normalDeviate(share: number): number {
  if (!(share > 0 && share < 1)) throw new Error(`normalDeviate: got ${share}, expected between 0 and 1`);
  if (share > 0.5) return -normalDeviate(1 - share);
  if (share < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(share));
    return polynomial(TAIL_TOP, q) / (polynomial(TAIL_BOTTOM, q) * q + 1);
  }
  const q = share - 0.5;
  const r = q * q;
  return (polynomial(MIDDLE_TOP, r) * q) / (polynomial(MIDDLE_BOTTOM, r) * r + 1);
}

/** Share of a standard normal below a deviate, 0 to 1. Abramowitz and Stegun 26.2.17, absolute error below 7.5e-8. */
export function normalShare(deviate: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(deviate));
  const tail =
    0.3989422804014327 * exponential(-0.5 * deviate * deviate) *
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return deviate > 0 ? 1 - tail : tail;
}

function normalSlices(count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, k) => normalDeviate((k + 0.5) / count));
}

function shuffle(values: Float64Array, random: SeededRandom): void {
  for (let k = values.length - 1; k > 0; k -= 1) {
    const other = Math.floor(random.uniform() * (k + 1));
    const kept = values[k] ?? 0;
    values[k] = values[other] ?? 0;
    values[other] = kept;
  }
}

/* Coefficients, highest power first. */
const MIDDLE_TOP = [-39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239];
const MIDDLE_BOTTOM = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572];
const TAIL_TOP = [-0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968, 2.938163982698783];
const TAIL_BOTTOM = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416];

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}
