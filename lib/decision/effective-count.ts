/**
 * How many independent samples a list with copies in it is worth: count² over the sum of the squares of how often each value stands in it
 * (Kish's effective sample size, from memory). An empty list gives 0.
 * Worked: 1, 2, 3, 4 gives 4; 1, 1, 2, 2 gives 2; 1, 1, 1, 2 gives 16/10.
 */
export function effectiveCount(values: Float64Array): number {
  const sorted = values.slice().sort();
  let squares = 0;
  let start = 0;
  for (let s = 1; s <= sorted.length; s += 1) {
    if (sorted[s] === sorted[start]) continue;
    squares += (s - start) ** 2;
    start = s;
  }
  return squares === 0 ? 0 : sorted.length ** 2 / squares;
}
