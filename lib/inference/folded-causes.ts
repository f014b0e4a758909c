import { largerOf } from './level-row';
import type { Digit, FoldedCause, Model } from './model';
import type { Distribution } from './reduced-gate';

/** Distribution that the leak, known earlier gates and all causes of this digit alone contribute together. */
export function foldedRow(model: Model, digit: Digit, weights: Float64Array): Distribution {
  return digit.folded.reduce((row, folded) => largerOf(row, mixture(model, folded, weights)), digit.base);
}

/**
 * Posterior of the causes folded into a digit.
 *
 * `worth[c]` is what the rest of the evidence says of the digit when they, the leak and known earlier gates together
 * contribute class c. Each cause is set against the product of all others, so nothing is divided out.
 */
export function foldedPosteriors(model: Model, digit: Digit, weights: Float64Array, worth: Float64Array, states: Float64Array): void {
  const { folded, base } = digit;
  const mixtures = folded.map((cause) => mixture(model, cause, weights));
  const after = suffixes(mixtures, base.length);
  let before = base;
  folded.forEach(({ cause, contributes }, j) => {
    const others = largerOf(before, after[j + 1] ?? nothing(base.length));
    const first = model.firstState[cause] ?? 0;
    states[first] = (weights[first] ?? 0) * worthOf(others, worth);
    contributes.forEach((row, k) => {
      states[first + 1 + k] = (weights[first + 1 + k] ?? 0) * worthOf(row === undefined ? others : largerOf(others, row), worth);
    });
    normaliseStates(states, first, contributes.length + 1);
    before = largerOf(before, mixtures[j] ?? nothing(base.length));
  });
}

/** What one cause contributes on average over its states; sums to the cause's total weight. */
export function mixture(model: Model, { cause, contributes }: FoldedCause, weights: Float64Array): Distribution {
  const first = model.firstState[cause] ?? 0;
  const radix = contributes.find((row) => row !== undefined)?.length ?? 1;
  const out = new Float64Array(radix);
  out[0] = weights[first] ?? 0;
  contributes.forEach((row, k) => {
    const weight = weights[first + 1 + k] ?? 0;
    if (row === undefined) out[0] = (out[0] ?? 0) + weight;
    else row.forEach((p, c) => (out[c] = (out[c] ?? 0) + weight * p));
  });
  return out;
}

function nothing(radix: number): Distribution {
  const row = new Float64Array(radix);
  row[0] = 1;
  return row;
}

function suffixes(mixtures: readonly Distribution[], radix: number): Distribution[] {
  const out: Distribution[] = [nothing(radix)];
  for (let j = mixtures.length - 1; j >= 0; j--) out.unshift(largerOf(mixtures[j] ?? nothing(radix), out[0] ?? nothing(radix)));
  return out;
}

function worthOf(distribution: Distribution, worth: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < distribution.length; c++) sum += (distribution[c] ?? 0) * (worth[c] ?? 0);
  return sum;
}

function normaliseStates(states: Float64Array, first: number, count: number): void {
  let sum = 0;
  for (let s = first; s < first + count; s++) sum += states[s] ?? 0;
  for (let s = first; s < first + count; s++) states[s] = (states[s] ?? 0) / sum;
}
