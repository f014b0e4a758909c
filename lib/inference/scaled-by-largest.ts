/** A copy scaled to a largest entry of 1, and the natural log of what was divided out. */
export function scaledByLargest(numbers: readonly number[]): { values: Float64Array; logScale: number } {
  const largest = numbers.reduce((a, b) => Math.max(a, b), 0);
  return { values: Float64Array.from(numbers, (x) => (largest > 0 ? x / largest : 0)), logScale: Math.log(largest) };
}
