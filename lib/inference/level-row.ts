/**
 * How one contributor moves the level of a gate.
 *
 * A gate at level s that receives contribution c goes to max(s, c). With `at[c]` = P(contribution = c) and
 * `upTo[c]` = P(contribution ≤ c), the mass at level c after the contribution is
 *
 *     new[c] = old[c] · upTo[c] + (old[0] + … + old[c−1]) · at[c]
 *
 * which adds and multiplies non-negative numbers only. A row may sum to less than 1: what it lacks is a level that
 * the observation has ruled out.
 */
export interface LevelRow {
  readonly at: Float64Array;
  readonly upTo: Float64Array;
}

/**
 * The row of a plain distribution, with the top level counted in units of 1/lift.
 *
 * A frontier in which many rare findings must all be explained would hold numbers like 1e-400. Counting every
 * explained top level `lift` times keeps them near 1; the closing weight of the top level is divided by `lift`.
 */
export function liftedRow(distribution: Float64Array, lift: number): LevelRow {
  const at = Float64Array.from(distribution);
  const upTo = new Float64Array(at.length);
  let sum = 0;
  for (let c = 0; c < at.length; c++) upTo[c] = sum += at[c] ?? 0;
  const top = at.length - 1;
  if (top > 0) at[top] = (at[top] ?? 0) * lift;
  return { at, upTo };
}

/** Contributes in place: the first `size` entries of `table` hold a digit of `radix` levels, `stride` entries apart. */
export function contribute(table: Float64Array, size: number, stride: number, radix: number, row: LevelRow): void {
  if (radix === 2 && isPowerOfTwo(stride)) contributeBit(table, size, stride, row);
  else contributeDigit(table, size, stride, radix, row);
}

/** The transpose of `contribute`: carries what each later level is worth back to before the contribution. */
export function contributeBack(table: Float64Array, size: number, stride: number, radix: number, row: LevelRow): void {
  if (radix === 2 && isPowerOfTwo(stride)) contributeBackBit(table, size, stride, row);
  else contributeBackDigit(table, size, stride, radix, row);
}

function isPowerOfTwo(stride: number): boolean {
  return (stride & (stride - 1)) === 0;
}

function contributeBit(table: Float64Array, size: number, stride: number, row: LevelRow): void {
  const stay = row.at[0] ?? 0;
  const rise = row.at[1] ?? 0;
  const keep = row.upTo[1] ?? 0;
  const low = stride - 1;
  const half = size >> 1;
  for (let j = 0; j < half; j++) {
    const i = ((j & ~low) << 1) | (j & low);
    const off = table[i] ?? 0;
    table[i + stride] = (table[i + stride] ?? 0) * keep + off * rise;
    table[i] = off * stay;
  }
}

function contributeBackBit(table: Float64Array, size: number, stride: number, row: LevelRow): void {
  const stay = row.at[0] ?? 0;
  const rise = row.at[1] ?? 0;
  const keep = row.upTo[1] ?? 0;
  const low = stride - 1;
  const half = size >> 1;
  for (let j = 0; j < half; j++) {
    const i = ((j & ~low) << 1) | (j & low);
    const on = table[i + stride] ?? 0;
    table[i] = (table[i] ?? 0) * stay + on * rise;
    table[i + stride] = on * keep;
  }
}

function contributeDigit(table: Float64Array, size: number, stride: number, radix: number, row: LevelRow): void {
  const { at, upTo } = row;
  for (let base = 0; base < size; base += stride * radix) {
    for (let i = base; i < base + stride; i++) {
      let below = 0;
      for (let c = 0, e = i; c < radix; c++, e += stride) {
        const old = table[e] ?? 0;
        table[e] = old * (upTo[c] ?? 0) + below * (at[c] ?? 0);
        below += old;
      }
    }
  }
}

function contributeBackDigit(table: Float64Array, size: number, stride: number, radix: number, row: LevelRow): void {
  const { at, upTo } = row;
  for (let base = 0; base < size; base += stride * radix) {
    for (let i = base; i < base + stride; i++) {
      let above = 0;
      for (let c = radix - 1, e = i + c * stride; c >= 0; c--, e -= stride) {
        const old = table[e] ?? 0;
        table[e] = old * (upTo[c] ?? 0) + above;
        above += old * (at[c] ?? 0);
      }
    }
  }
}
