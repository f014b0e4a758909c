/** What a row of readings says about its own middle and scatter. */
export interface Sample {
  readonly count: number;
  readonly mean: number;
  /** Standard deviation of one reading (divisor n − 1); NaN never, 0 for a single reading. */
  readonly deviation: number;
}

/**
 * Mean and standard deviation of one or more finite readings, any unit. Two passes with a correction, so that readings
 * that differ in their last digits keep them (NIST StRD NumAcc4). Throws on an empty row. Source: JCGM 100, 4.2.
 * `describe([15.2, 14.8, 15.6])` is mean 15.2, deviation 0.4.
 */
export function describe(readings: readonly number[]): Sample {
  const [first] = readings;
  if (first === undefined) throw new Error('describe: got no readings, expected at least one');
  const count = readings.length;
  // Taking the first reading away first keeps the sums small.
  const rough = first + sum(readings.map((reading) => reading - first)) / count;
  const offsets = readings.map((reading) => reading - rough);
  const correction = sum(offsets) / count;
  const squares = sum(offsets.map((offset) => (offset - correction) ** 2));
  return { count, mean: rough + correction, deviation: count === 1 ? 0 : Math.sqrt(squares / (count - 1)) };
}

/** Sum with carried rounding error (Neumaier's form of compensated summation). */
export function sum(values: readonly number[]): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
}
