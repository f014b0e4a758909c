/**
 * Where a function that only rises passes 0 between `low` and `high`: false position with the Illinois rule, halving when it crawls.
 * The answer lies within `within` (a share of the interval) of the root; an end of the interval when all of it lies on one side.
 * Worked: x² − 2 between 0 and 2 gives 1.41421356.
 */
export function risingRoot(f: (x: number) => number, low: number, high: number, within = 1e-13): number {
  let [left, right] = [low, high];
  let [atLeft, atRight] = [f(left), f(right)];
  if (atLeft >= 0) return left;
  if (atRight <= 0) return right;
  const near = within * (high - low);
  let last = 0;
  for (let round = 1; round < 200 && right - left > near; round += 1) {
    const middle = round % 4 === 0 ? (left + right) / 2 : (left * atRight - right * atLeft) / (atRight - atLeft);
    const value = f(middle);
    if (value === 0) return middle;
    if (value < 0) { left = middle; atLeft = value; if (last < 0) atRight /= 2; } else { right = middle; atRight = value; if (last > 0) atLeft /= 2; }
    last = value;
  }
  return (left + right) / 2;
}
