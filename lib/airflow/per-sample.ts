/** `values.map(make)`, several times as fast: for columns of joint samples. */
export function perSample(values: Float64Array, make: (value: number, sample: number) => number): Float64Array {
  const count = values.length;
  const made = new Float64Array(count);
  for (let s = 0; s < count; s += 1) made[s] = make(values[s] ?? 0, s);
  return made;
}
