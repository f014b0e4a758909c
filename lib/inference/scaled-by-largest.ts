/** A copy scaled to a largest entry of 1, and the natural log of what was divided out. */
export function scaledByLargest(numbers: readonly number[]): { values: Float64Array; logScale: number } {
  let largest = 0;
  for (const x of numbers) largest = Math.max(largest, x);
  const values = new Float64Array(numbers.length);
  if (largest > 0) for (let i = 0; i < values.length; i++) values[i] = (numbers[i] ?? 0) / largest;
  return { values, logScale: Math.log(largest) };
}
