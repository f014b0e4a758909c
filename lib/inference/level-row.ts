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
  const at = distribution.slice();
  const upTo = new Float64Array(at.length);
  let sum = 0;
  for (let c = 0; c < at.length; c++) upTo[c] = sum += at[c] ?? 0;
  const top = at.length - 1;
  if (top > 0) at[top] = (at[top] ?? 0) * lift;
  return { at, upTo };
}

/**
 * Contributes to a table: `size` entries of `source`, from `offset` on, hold a digit of `radix` levels that are
 * `stride` entries apart; the result goes to the first entries of `target`, which may be `source` at offset 0.
 */
export function contribute(source: Float64Array, offset: number, target: Float64Array, size: number, place: DigitPlace, row: LevelRow): void {
  if (isBit(place)) contributeBit(source, offset, target, size, place.stride, row);
  else contributeDigit(source, offset, target, size, place.stride, place.radix, row);
}

/** The transpose of `contribute`: carries what each later level is worth back to before the contribution. */
export function contributeBack(source: Float64Array, offset: number, target: Float64Array, size: number, place: DigitPlace, row: LevelRow): void {
  if (isBit(place)) contributeBackBit(source, offset, target, size, place.stride, row);
  else contributeBackDigit(source, offset, target, size, place.stride, place.radix, row);
}

interface DigitPlace {
  readonly stride: number;
  readonly radix: number;
}

/** True for a two-level digit above two-level digits only: its level is one bit of the index. */
export function isBit({ stride, radix }: DigitPlace): boolean {
  return radix === 2 && isPowerOfTwo(stride);
}

/** True for 1, 2, 4, …: strides below which only two-level digits lie, so that bits can be used instead of divisions. */
export function isPowerOfTwo(stride: number): boolean {
  return (stride & (stride - 1)) === 0;
}

function contributeBit(source: Float64Array, offset: number, target: Float64Array, size: number, stride: number, row: LevelRow): void {
  const stay = row.at[0] ?? 0;
  const rise = row.at[1] ?? 0;
  const keep = row.upTo[1] ?? 0;
  const low = stride - 1;
  const half = size >> 1;
  for (let j = 0; j < half; j++) {
    const i = ((j & ~low) << 1) | (j & low);
    const off = source[offset + i] ?? 0;
    target[i + stride] = (source[offset + i + stride] ?? 0) * keep + off * rise;
    target[i] = off * stay;
  }
}

function contributeBackBit(source: Float64Array, offset: number, target: Float64Array, size: number, stride: number, row: LevelRow): void {
  const stay = row.at[0] ?? 0;
  const rise = row.at[1] ?? 0;
  const keep = row.upTo[1] ?? 0;
  const low = stride - 1;
  const half = size >> 1;
  for (let j = 0; j < half; j++) {
    const i = ((j & ~low) << 1) | (j & low);
    const on = source[offset + i + stride] ?? 0;
    target[i] = (source[offset + i] ?? 0) * stay + on * rise;
    target[i + stride] = on * keep;
  }
}

function contributeDigit(source: Float64Array, offset: number, target: Float64Array, size: number, stride: number, radix: number, row: LevelRow): void {
  const { at, upTo } = row;
  for (let base = 0; base < size; base += stride * radix) {
    for (let i = base; i < base + stride; i++) {
      let below = 0;
      for (let c = 0, e = i; c < radix; c++, e += stride) {
        const old = source[offset + e] ?? 0;
        target[e] = old * (upTo[c] ?? 0) + below * (at[c] ?? 0);
        below += old;
      }
    }
  }
}

function contributeBackDigit(source: Float64Array, offset: number, target: Float64Array, size: number, stride: number, radix: number, row: LevelRow): void {
  const { at, upTo } = row;
  for (let base = 0; base < size; base += stride * radix) {
    for (let i = base; i < base + stride; i++) {
      let above = 0;
      for (let c = radix - 1, e = i + c * stride; c >= 0; c--, e -= stride) {
        const old = source[offset + e] ?? 0;
        target[e] = old * (upTo[c] ?? 0) + above;
        above += old * (at[c] ?? 0);
      }
    }
  }
}
