import type { Band } from '@/lib/airflow';
import { valuesInOrder } from './values-in-order';

/**
 * Median and the edges that nine of ten values lie between. Endless values sort last; an empty list throws.
 * Worked: 1 to 101 gives 51, 6 and 96.
 */
export function bandOf(values: Float64Array): Band {
  if (values.length === 0) throw new Error('bandOf: got no values, expected at least one');
  const known = KNOWN.get(values);
  if (known !== undefined) return known;
  const last = values.length - 1;
  const [low = 0, value = 0, high = 0] = valuesInOrder(values, [Math.round(0.05 * last), Math.round(0.5 * last), Math.round(0.95 * last)]);
  const band = { value, low, high };
  KNOWN.set(values, band);
  return band;
}

/** Bands of arrays met before; many options share theirs. Arrays of samples are never written to once they are solved. */
const KNOWN = new WeakMap<Float64Array, Band>();

/** Sum of all values. */
export function sumOf(values: Float64Array): number {
  const count = values.length;
  let sum = 0;
  for (let s = 0; s < count; s += 1) sum += values[s] ?? 0;
  return sum;
}

/** Share of samples for which a holds over b, 0 to 1: how often `a[s] >= b[s]·factor`. */
export function chanceAtLeast(a: Float64Array, b: Float64Array, factor = 1): number {
  let held = 0;
  for (let s = 0; s < a.length; s += 1) if ((a[s] ?? 0) >= factor * (b[s] ?? 0)) held += 1;
  return held / a.length;
}
