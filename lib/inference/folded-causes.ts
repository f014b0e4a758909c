import type { Digit, FoldedCause, Model } from './model';
import type { Distribution } from './reduced-gate';

/** Distribution that the leak, known earlier gates and all causes of this digit alone contribute together. */
export function foldedRow(model: Model, digit: Digit, weights: Float64Array): Distribution {
  const row = digit.base.slice();
  const mixed = new Float64Array(row.length);
  for (const folded of digit.folded) {
    mixture(model, folded, weights, mixed);
    takeLarger(row, mixed);
  }
  return row;
}

/** Where the posterior of causes is written, flat over all states: of each state, and of it contributing nothing. */
export interface CausePosterior {
  readonly states: Float64Array;
  readonly silent: Float64Array;
}

/**
 * Posterior of the causes folded into a digit.
 *
 * `worth[c]` is what the rest of the evidence says of the digit when they, the leak and known earlier gates together
 * contribute class c. Each cause is set against the product of all others, so nothing is divided out.
 */
export function foldedPosteriors(model: Model, digit: Digit, weights: Float64Array, worth: Float64Array, out: CausePosterior): void {
  const { folded, base } = digit;
  const radix = base.length;
  const last = folded.length * radix;
  // Row j of `mixtures`: cause j alone; row j of `after`: the causes from j on together.
  const mixtures = new Float64Array(last);
  const after = new Float64Array(last + radix);
  after[last] = 1;
  for (let j = folded.length - 1, row = last - radix; j >= 0; j--, row -= radix) {
    mixture(model, folded[j], weights, mixtures, row, radix);
    for (let c = 0; c < radix; c++) after[row + c] = after[row + radix + c] ?? 0;
    takeLarger(after, mixtures, row, row, radix);
  }
  const before = base.slice();
  const others = new Float64Array(radix);
  for (let j = 0, row = 0; j < folded.length; j++, row += radix) {
    others.set(before);
    takeLarger(others, after, 0, row + radix);
    foldedPosterior(model, folded[j], others, weights, worth, out);
    takeLarger(before, mixtures, 0, row);
  }
}

/** What one cause contributes on average over its states, written to row `at` of `out`; sums to the cause's total weight. */
export function mixture(model: Model, folded: FoldedCause | undefined, weights: Float64Array, out: Distribution, at = 0, radix = out.length): Distribution {
  if (folded === undefined) return out;
  const { cause, contributes } = folded;
  const first = model.firstState[cause] ?? 0;
  for (let c = 0; c < radix; c++) out[at + c] = 0;
  let lowest = weights[first] ?? 0;
  for (let k = 0; k < contributes.length; k++) {
    const weight = weights[first + 1 + k] ?? 0;
    const row = contributes[k];
    if (row === undefined) lowest += weight;
    else for (let c = 0; c < radix; c++) out[at + c] = (out[at + c] ?? 0) + weight * (row[c] ?? 0);
  }
  out[at] = (out[at] ?? 0) + lowest;
  return out;
}

/** Turns the distribution of a level into that of the larger of it and an independent one; rows that begin at `at` and `otherAt`. */
export function takeLarger(level: Distribution, other: Distribution, at = 0, otherAt = 0, radix = level.length): void {
  let below = 0;
  let upTo = 0;
  for (let c = 0; c < radix; c++) {
    const mass = level[at + c] ?? 0;
    const added = other[otherAt + c] ?? 0;
    upTo += added;
    level[at + c] = mass * upTo + below * added;
    below += mass;
  }
}

function foldedPosterior(model: Model, folded: FoldedCause | undefined, others: Distribution, weights: Float64Array, worth: Float64Array, { states, silent }: CausePosterior): void {
  if (folded === undefined) return;
  const first = model.firstState[folded.cause] ?? 0;
  const count = folded.contributes.length + 1;
  const untouched = worthOf(others, worth);
  let total = 0;
  for (let k = 0; k < count; k++) {
    const weight = weights[first + k] ?? 0;
    const row = k === 0 ? undefined : folded.contributes[k - 1];
    const joint = weight * (row === undefined ? untouched : worthWith(others, row, worth));
    states[first + k] = joint;
    silent[first + k] = weight * (row?.[0] ?? 1) * untouched;
    total += joint;
  }
  for (let s = first; s < first + count; s++) {
    states[s] = (states[s] ?? 0) / total;
    silent[s] = (silent[s] ?? 0) / total;
  }
}

function worthOf(distribution: Distribution, worth: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < distribution.length; c++) sum += (distribution[c] ?? 0) * (worth[c] ?? 0);
  return sum;
}

/** As `worthOf`, for the larger of the distribution and one more contribution. */
function worthWith(distribution: Distribution, row: Distribution, worth: Float64Array): number {
  let sum = 0;
  let below = 0;
  let upTo = 0;
  for (let c = 0; c < distribution.length; c++) {
    upTo += row[c] ?? 0;
    sum += ((distribution[c] ?? 0) * upTo + below * (row[c] ?? 0)) * (worth[c] ?? 0);
    below += distribution[c] ?? 0;
  }
  return sum;
}
