import type { Band } from '@/lib/airflow';

/**
 * Median and the edges that nine of ten values lie between. Endless values sort last; an empty list throws.
 * Worked: 1 to 101 gives 51, 6 and 96.
 */
export function bandOf(values: Float64Array): Band {
  if (values.length === 0) throw new Error('bandOf: got no values, expected at least one');
  const sorted = values.slice().sort();
  const pick = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
  return { value: pick(0.5), low: pick(0.05), high: pick(0.95) };
}

/** Share of samples for which a holds over b, 0 to 1: how often `a[s] >= b[s]·factor`. */
export function chanceAtLeast(a: Float64Array, b: Float64Array, factor = 1): number {
  let held = 0;
  for (let s = 0; s < a.length; s += 1) if ((a[s] ?? 0) >= factor * (b[s] ?? 0)) held += 1;
  return held / a.length;
}
