/** Shannon entropy in bits of a row of non-negative numbers taken relative to their sum `total`; 0 when that is 0. */
export function entropyBits(row: Float64Array, from: number, to: number, total: number): number {
  if (total <= 0) return 0;
  let bits = 0;
  for (let i = from; i < to; i++) {
    const share = (row[i] ?? 0) / total;
    // Differences of nearly equal sums can leave a rounding error below 0.
    if (share > 0 && share < 1) bits -= share * Math.log2(share);
  }
  return bits;
}
