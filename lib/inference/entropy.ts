/**
 * Sum, over the causes listed, of the entropy in bits of their states, times `total`.
 *
 * `states` holds joint probabilities P(state, something) flat, so each cause's row sums to `total` = P(something):
 * −Σ x log2 x + total log2 total. One cause at .5/.5 with total 1 gives 1.
 */
export function entropyTimesTotal(states: Float64Array, total: number, causes: readonly number[], firstState: Int32Array): number {
  let nats = 0;
  for (const cause of causes) {
    const end = firstState[cause + 1] ?? 0;
    for (let s = firstState[cause] ?? 0; s < end; s++) {
      const x = states[s] ?? 0;
      if (x > 0) nats -= x * Math.log(x);
    }
  }
  return (nats + (total > 0 ? causes.length * total * Math.log(total) : 0)) / Math.LN2;
}
