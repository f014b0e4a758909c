import type { Band } from '@/lib/airflow';

/**
 * Median and the edges that nine of ten values lie between. Endless values sort last; an empty list throws.
 * Worked: 1 to 101 gives 51, 6 and 96.
 */
export function bandOf(values: Float64Array): Band {
  if (values.length === 0) throw new Error('bandOf: got no values, expected at least one');
  const known = KNOWN.get(values);
  if (known !== undefined) return known;
  const work = values.slice();
  const last = work.length - 1;
  const middle = select(work, Math.round(0.5 * last), 0, last);
  const band = {
    value: middle,
    low: select(work, Math.round(0.05 * last), 0, Math.round(0.5 * last)),
    high: select(work, Math.round(0.95 * last), Math.round(0.5 * last), last),
  };
  KNOWN.set(values, band);
  return band;
}

/** Bands of arrays met before; many options share theirs. Arrays of samples are never written to once they are solved. */
const KNOWN = new WeakMap<Float64Array, Band>();

/** Share of samples for which a holds over b, 0 to 1: how often `a[s] >= b[s]·factor`. */
export function chanceAtLeast(a: Float64Array, b: Float64Array, factor = 1): number {
  let held = 0;
  for (let s = 0; s < a.length; s += 1) if ((a[s] ?? 0) >= factor * (b[s] ?? 0)) held += 1;
  return held / a.length;
}

/** The value that would stand at `place` if work[left..right] were sorted (Hoare's selection); puts smaller ones before it. */
function select(work: Float64Array, place: number, left: number, right: number): number {
  let low = left;
  let high = right;
  while (low < high) {
    const pivot = work[(low + high) >> 1] ?? 0;
    let i = low;
    let j = high;
    while (i <= j) {
      while ((work[i] ?? 0) < pivot) i += 1;
      while ((work[j] ?? 0) > pivot) j -= 1;
      if (i > j) break;
      const kept = work[i] ?? 0;
      work[i] = work[j] ?? 0;
      work[j] = kept;
      i += 1;
      j -= 1;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else break;
  }
  return work[place] ?? Number.NaN;
}
