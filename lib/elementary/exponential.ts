/**
 * e to the power x, two to four times as fast as `Math.exp`, for loops over thousands of samples. Off by 1e-15 of itself at
 * most. Beyond ±700 it is `Math.exp`.
 *
 * x = k · ln 2 / 1024 + r with |r| < 0.00034: 2^(k / 1024) from two tables, and three terms of the series in r.
 */
export function exponential(x: number): number {
  if (!(x > -700 && x < 700)) return Math.exp(x);
  const k = Math.floor(x * PARTS_PER_UNIT + 0.5);
  const r = x - k * PART_HIGH - k * PART_LOW;
  const power = (wholePowers[(k >> BITS) + MOST_POWER] ?? 0) * (partPowers[k & (PARTS - 1)] ?? 0);
  return power + power * (r + r * r * (1 / 2 + r * (1 / 6)));
}

const BITS = 10;
const PARTS = 1 << BITS;
/** ln 2 / 1024 in two: the first in so few digits that its multiples are exact, the second with the digits that a double leaves off. */
const PART_HIGH = Math.fround(Math.LN2 / PARTS);
const LEFT_OFF = 2.3190468138462996e-17;
const PART_LOW = Math.LN2 / PARTS - PART_HIGH + LEFT_OFF / PARTS;
const PARTS_PER_UNIT = PARTS / Math.LN2;
const partPowers = Float64Array.from({ length: PARTS }, (_, part) => 2 ** (part / PARTS));
/** 700 / ln 2 is 1010. */
const MOST_POWER = 1012;
const wholePowers = Float64Array.from({ length: 2 * MOST_POWER + 1 }, (_, k) => 2 ** (k - MOST_POWER));
